import type { RequestInput } from '../../../core/contract/requests.ts';
import type { SimulatedPlan } from '../../../core/contract/scatter.ts';
import { enter } from '../../../core/units/entered.ts';

export type Measured = NonNullable<RequestInput<'scatter.simulate'>['measured']>;

export const NONE: ReadonlyMap<number, number> = new Map();

/** Loads measured after the pass that a step ends, N by bolt; none where the step ends no pass. */
export function measuredAt(
  measured: Measured,
  { result }: Pick<SimulatedPlan, 'result'>,
  index: number,
): ReadonlyMap<number, number> {
  const step = result?.steps[index];
  if (step === undefined || result?.steps[index + 1]?.pass === step.pass) return NONE;
  const after = measured.find(({ afterPass }) => afterPass === step.pass);
  return new Map(
    (after?.loads ?? []).flatMap(({ bolt, load }) => {
      const si = enter(load.text, load.unit)?.si;
      return si === undefined ? [] : [[bolt, si] as const];
    }),
  );
}
