import type { ScatterView, SimulatedPlan } from '../contract/scatter.ts';
import { showNumber, showQuantity } from '../text/number.ts';

/** What a simulation is, said wherever one is shown. */
export const MODEL_CAVEAT =
  'A model with the inputs stated here, not a measurement. It leaves out friction scatter, gasket creep and the gasket’s stiffer unloading; loads that matter are measured on the bolts.';

const kN = (load: number) => showQuantity(load, 'kN', 3);
const percent = (part: number) => showQuantity(part, 'percent', 2);

type Result = NonNullable<SimulatedPlan['result']>;

/**
 * One simulated plan in a sentence or two.
 *
 * @param result what the model makes of it; null where the plan has no order for this count of bolts
 * @param passesUntilQuiet passes clockwise at the target after it until it is at rest, whole, at least 0; null when it had not come to rest
 * @returns sentences
 * @example planWords(null, null) // 'The plan has no order for this number of bolts.'
 * @source rule of this program
 */
export function planWords(result: Result | null, passesUntilQuiet: number | null): string {
  if (result === null) return 'The plan has no order for this number of bolts.';
  const { evenness, peak } = result;
  const uneven = evenness.variation === null ? '' : `, standard deviation ${percent(evenness.variation)}`;
  return [
    `Ends between ${kN(evenness.least)} and ${kN(evenness.most)}, mean ${kN(evenness.mean)}${uneven}.`,
    ...(peak === null
      ? []
      : [
          `Highest on the way ${kN(peak.load)} in bolt ${peak.bolt} after step ${peak.step}${OVER[result.overLimit]}.`,
        ]),
    passesUntilQuiet === null
      ? 'It had not come to rest after 200 passes clockwise more.'
      : `${passesUntilQuiet} ${passesUntilQuiet === 1 ? 'pass' : 'passes'} clockwise more until it is at rest.`,
  ].join(' ');
}

const OVER: Readonly<Record<Result['overLimit'], string>> = {
  no: '',
  yes: ', above the limit of one bolt',
  'with scatter': ', above the limit of one bolt when its scatter is added',
  'not known': '; no limit is known to hold it against',
};

/**
 * What the simulated plans come to, in one sentence.
 *
 * @param plans one or two
 * @param missing what has to be entered first
 * @returns a sentence
 * @example simulationFinding([], ['Width of the gasket']) // 'Nothing can be said yet: Width of the gasket not known.'
 * @source rule of this program
 */
export function simulationFinding(
  plans: readonly Pick<SimulatedPlan, 'name' | 'result'>[],
  missing: readonly string[],
): string {
  if (missing.length > 0) return `Nothing can be said yet: ${missing.join(', ')} not known.`;
  const [first, second] = plans.flatMap(({ name, result }) =>
    result === null || result.evenness.variation === null
      ? []
      : [{ name, variation: result.evenness.variation }],
  );
  if (first === undefined) return 'No plan has an order for this number of bolts.';
  if (second === undefined) {
    return `${first.name} ends with loads that vary by ${percent(first.variation)} (standard deviation over mean).`;
  }
  const [even, other] = first.variation <= second.variation ? [first, second] : [second, first];
  return percent(even.variation) === percent(other.variation)
    ? `Both plans end alike: loads vary by ${percent(even.variation)} (standard deviation over mean).`
    : `${even.name} ends more even: loads vary by ${percent(even.variation)}, with ${other.name} by ${percent(other.variation)} (standard deviation over mean).`;
}

/**
 * What hangs on the stiffness of the gasket, which is seldom known well.
 *
 * @param rows each plan's evenness at each stiffness tried, in rising order
 * @param plans the plans with their names
 * @returns sentences; null where no other stiffness was tried or nothing carries
 * @example sensitivityWords([], []) // null
 * @source rule of this program
 */
export function sensitivityWords(
  rows: ScatterView['sensitivity'],
  plans: readonly Pick<SimulatedPlan, 'planId' | 'name'>[],
): string | null {
  const told = plans.flatMap(({ planId, name }) => {
    const variations = rows.map(
      (row) => row.plans.find((plan) => plan.planId === planId)?.evenness?.variation ?? null,
    );
    const known = variations.filter((variation) => variation !== null);
    if (known.length === 0) return [];
    const words = `${name} ends with loads that vary by ${spread(known)}`;
    return [{ name, variations, words }];
  });
  if (told.length === 0) return null;
  const factors = rows.map(({ factor }) => showNumber(factor, 3));
  const range = factors.length === 1 ? factors[0] : `${factors[0]} to ${factors.at(-1)}`;
  return `With a gasket ${range} times as stiff, ${told.map(({ words }) => words).join('; ')} (standard deviation over mean).${moreEven(told)}`;
}

function spread(variations: readonly number[]): string {
  const [least, most] = [percent(Math.min(...variations)), percent(Math.max(...variations))];
  return least === most ? least : `${least} to ${most}`;
}

function moreEven(
  told: readonly { readonly name: string; readonly variations: readonly (number | null)[] }[],
): string {
  const [first, second] = told;
  if (first === undefined || second === undefined) return '';
  const signs = first.variations.map((variation, index) => {
    const other = second.variations[index] ?? null;
    return variation === null || other === null ? null : Math.sign(variation - other);
  });
  if (signs.includes(null)) return '';
  if (signs.every((sign) => sign === 0)) return ' Both end alike with each of them.';
  if (signs.every((sign) => sign === -1)) return ` ${first.name} ends more even with each of them.`;
  if (signs.every((sign) => sign === 1)) return ` ${second.name} ends more even with each of them.`;
  return ' Which of the two ends more even depends on the stiffness.';
}

/** The highest load on the way, and what it is held against; N. */
export interface HeldOnTheWay {
  readonly target: number;
  readonly limit: number | null;
  readonly overLimit: Result['overLimit'];
  readonly peak: Result['peak'];
}

/**
 * What the search for even loads came to. Where no limit is known, nothing is said to keep it.
 *
 * @param plan the largest difference at the end as a part of the target, and the steps
 * @param tolerance allowed difference as a part of the target, 1, above 0
 * @param held highest load on the way with the limit, N
 * @returns a sentence or two
 * @example evenWords({ deviation: 0.004, steps: [] }, 0.01, { target: 1e5, limit: null, overLimit: 'not known', peak: null }).includes('No limit is known') // true
 * @source rule of this program
 */
export function evenWords(
  plan: { readonly deviation: number; readonly steps: readonly unknown[] },
  tolerance: number,
  { target, limit, overLimit, peak }: HeldOnTheWay,
): string {
  if (limit !== null && limit < target) {
    return `The most one bolt may carry, ${kN(limit)}, is below the load to set, ${kN(target)}: no loads end even at it.`;
  }
  const came = `${plan.steps.length} steps, each nut to its own load, end within ${percent(plan.deviation)} of the target`;
  const most = peak === null ? '' : ` The highest load on the way is ${kN(peak.load)}, in bolt ${peak.bolt}.`;
  const wide =
    plan.deviation <= tolerance
      ? `${came}.`
      : `${came}; asked for were ${percent(tolerance)}: allow more trips or a wider tolerance.`;
  switch (overLimit) {
    case 'no':
      return `${wide} None is above the limit on the way.`;
    case 'with scatter':
      return `${wide}${most} With the scatter of one bolt’s load the limit, ${limit === null ? 'not known' : kN(limit)}, may be passed.`;
    case 'yes':
      return `${wide}${most} That is above the limit: do not use these loads.`;
    case 'not known':
      return `${wide}${most} No limit is known to hold it against.`;
  }
}

/**
 * What measured loads make of the gasket's stiffness.
 *
 * @param fit fitted stiffness with its range, Pa, and the standard deviation of measured less modelled, N
 * @returns a sentence
 * @example fitWords({ gasketStiffness: 4e9, low: 3e9, high: 5e9, openLow: false, openHigh: false, residual: 1000, measurements: 12 }).startsWith('12 measured loads') // true
 * @source as of `fitGasket`
 */
export function fitWords(fit: {
  readonly gasketStiffness: number;
  readonly low: number;
  readonly high: number;
  readonly openLow: boolean;
  readonly openHigh: boolean;
  readonly residual: number;
  readonly measurements: number;
}): string {
  const gpa = (si: number) => `${showNumber(si / 1e9, 3)} GPa`;
  const open = fit.openLow || fit.openHigh ? '; the search ended at its edge, so the range is open' : '';
  return `${fit.measurements} measured loads fit best with ${gpa(fit.gasketStiffness)} (95 %: ${gpa(fit.low)} to ${gpa(fit.high)}${open}); measured and modelled then differ by ${kN(fit.residual)} (standard deviation).`;
}
