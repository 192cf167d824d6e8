import type { RetighteningView, Rule, ToolOrderView } from '../contract/card-views.ts';
import type { Finding } from '../findings/finding.ts';
import { atSettings, raise } from '../findings/raise.ts';
import { COMMON_WINDOW, retighteningReasons } from '../joint/retightening.ts';
import { multiToolOrder, type ToolCount } from '../sequence/multi-tool.ts';
import type { PassPlan } from '../sequence/plans.ts';
import { retighteningText, rulesFor } from '../text/rules.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';

/** Rules of stopping, waiting and trying for a plan. */
export function planRules(input: CardInput, plan: PassPlan | null): Rule[] {
  const waits = plan?.steps.flatMap(({ wait }) => (wait === undefined ? [] : [wait])) ?? [];
  const checks = (plan?.checks ?? []).map(
    (text): Rule => ({ kind: 'plan check', text, source: plan?.source ?? '' }),
  );
  const longest = waits.length === 0 ? null : Math.max(...waits);
  return [...rulesFor(input.method === 'hydraulic wrench', longest), ...checks];
}

/** Window of a start-up retightening, with the reasons against it that are known already. */
export function retighteningView(input: CardInput, torque: number | null): RetighteningView {
  const { retightening, gasket } = input.joint.data;
  const { from, to, procedure, gasketExcluded } = retightening;
  const own =
    from === null || to === null ? null : { from: from.si, to: to.si, source: procedure || 'joint data' };
  const type = gasket?.type ?? null;
  const answer = retighteningReasons({
    kind: 'start-up, while warming',
    boltMetalTemperature: null,
    gasketType: type,
    excludedGaskets: gasketExcluded === null ? null : gasketExcluded && type !== null ? [type] : [],
    sinceFullPass: null,
    lastTorque: torque,
    siteProcedure: procedure === '' ? null : procedure,
    window: own,
  });
  const window = own ?? COMMON_WINDOW;
  return {
    text: retighteningText(window, torque),
    from: window.from,
    to: window.to,
    source: window.source,
    reasons: [...answer.reasons],
    deferral: answer.deferral,
  };
}

/** Tools a plan turns at the same time: the most of its passes. */
export function toolsOf(plan: PassPlan | null): ToolCount {
  const counts = plan?.steps.map(({ tools }) => tools) ?? [];
  return counts.includes(4) ? 4 : counts.includes(2) ? 2 : 1;
}

/** Order for two or four tools; null for one, or while the number of studs is not known. */
export function toolOrderOf({ joint }: Basis, tools: ToolCount): ToolOrderView | null {
  if (tools === 1 || joint.boltCount === null) return null;
  const order = multiToolOrder(joint.boltCount, tools);
  if (order === null) return null;
  return {
    tools,
    steps: order.steps.map(({ bolts }) => [...bolts]),
    exact: order.exact,
    source: order.source,
  };
}

/** One pressure for several tools: only the chosen drive unit's certificate was looked at. */
export function checkFurtherTools(input: CardInput, tools: ToolCount): Finding[] {
  if (tools === 1) return [];
  return [
    raise(
      'further_tools_unchecked',
      { tools },
      {
        severity: 'warning',
        subject: input.joint.data.tag,
        place: atSettings('planId'),
        source: 'pass plan',
        value: tools,
        limit: 1,
        unit: 'one',
      },
    ),
  ];
}
