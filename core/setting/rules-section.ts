import type { RetighteningView, Rule, ToolOrderView } from '../contract/card-views.ts';
import type { Raised } from '../findings/finding.ts';
import { atSettings, raise } from '../findings/raise.ts';
import { COMMON_WINDOW, retighteningReasons } from '../joint/retightening.ts';
import { multiToolOrder, type ToolCount } from '../sequence/multi-tool.ts';
import type { PassPlan } from '../sequence/plans.ts';
import { retighteningText, rulesFor } from '../text/rules.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';

/**
 * Chooses the rules of stopping, waiting and trying for a plan.
 *
 * @param input input of the card
 * @param plan plan chosen, or null
 * @returns rules, each with its source
 * @example planRules(input, plan).map((rule) => rule.kind) // ['stop', 'stop', 'no turn']
 * @source each rule names its own
 */
export function planRules(input: CardInput, plan: PassPlan | null): Rule[] {
  const waits = plan?.steps.flatMap(({ wait }) => (wait === undefined ? [] : [wait])) ?? [];
  const checks = (plan?.checks ?? []).map(
    (text): Rule => ({ kind: 'plan check', text, source: plan?.source ?? '' }),
  );
  const longest = waits.length === 0 ? null : Math.max(...waits);
  return [...rulesFor(input.method, longest), ...checks];
}

/**
 * Window of a start-up retightening, with the reasons against it that are known already.
 *
 * @param input input of the card
 * @param torque torque of the last full pass, N·m, above 0, or null
 * @returns window in °C, reasons and text; it never allows anything
 * @example retighteningView(input, 384).from // 120 °C
 * @source COMMON_WINDOW: common practice
 */
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

/**
 * Number of tools a plan turns at the same time: the most of its passes.
 *
 * @param plan plan chosen, or null
 * @returns 1, 2 or 4
 * @example toolsOf(plan) // 1
 * @source the plan
 */
export function toolsOf(plan: PassPlan | null): ToolCount {
  const counts = plan?.steps.map(({ tools }) => tools) ?? [];
  return counts.includes(4) ? 4 : counts.includes(2) ? 2 : 1;
}

/**
 * Order of the studs for two or four tools.
 *
 * @param basis what the joint alone says
 * @param tools 1, 2 or 4
 * @returns steps, or null for one tool and while the number of studs is not known
 * @example toolOrderOf(basis, 1) // null
 * @source rule of this program
 */
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

/**
 * Says that the plan turns more tools at the same time than the set has wrenches.
 *
 * @param input input of the card
 * @param tools 1, 2 or 4
 * @returns findings; none when nothing stands against it
 * @example checkFurtherTools(input, 1).length // 0
 * @source rule of this program
 */
export function checkFurtherTools(input: CardInput, tools: ToolCount): Raised[] {
  const chosen = input.method === 'hydraulic wrench' ? 1 + input.set.further.length : 1;
  if (tools <= chosen) return [];
  return [
    raise('further_tools_unchecked', () => ({ tools, chosen }), {
      severity: 'warning',
      subject: input.joint.data.tag,
      place: atSettings('planId'),
      source: 'pass plan',
      value: tools,
      limit: chosen,
      unit: 'one',
    }),
  ];
}
