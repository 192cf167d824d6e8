import { hasOneOf, rolesInWords } from '../../access/roles.ts';
import type { ClassRuleData, GuardView, JointStep, OpenStep } from '../../contract/life.ts';
import type { Role } from '../../contract/roles.ts';
import { misfits, standingNext } from './fold.ts';
import type { Guards, StepFacts, StepGuards } from './guard.ts';
import { CLOSING_GUARDS } from './guards-closing.ts';
import { OPENING_GUARDS } from './guards-opening.ts';
import { type JointStanding, momentOf, type StepEvent } from './standing.ts';
import { leadsTo, STEPS } from './steps.ts';

const GUARDS: StepGuards = { ...OPENING_GUARDS, ...CLOSING_GUARDS };

/** What is never refused, because it has to be known whatever else is wrong. */
const NEVER_REFUSED: readonly JointStep[] = ['report leak'];
/** Steps that do not wait for the decision on a deviation. */
const DESPITE_DEVIATION: readonly JointStep[] = ['report leak', 'assess'];

export type StepAnswer =
  | { readonly next: JointStanding; readonly refused: null }
  | { readonly next: null; readonly refused: readonly string[] };

/**
 * Whether a step may be taken now.
 *
 * @param standing standing of the joint
 * @param event the step as it would be recorded
 * @param facts what it is held against
 * @returns the standing after it, or every reason against it
 * @example stepAllowed(UNASSESSED, { data: { step: 'hold' } }, {}).refused // ['the joint is unassessed: hold does not
 * lead on from there']
 * @source rule of this program; docs/joint-states.md
 */
export function stepAllowed(
  standing: JointStanding,
  event: Omit<StepEvent, 'outOfOrder'>,
  facts: StepFacts,
): StepAnswer {
  const { step } = event.data;
  const refused = NEVER_REFUSED.includes(step) ? [] : reasonsAgainst(standing, event, facts);
  if (refused.length > 0) return { next: null, refused };
  return { next: standingNext(standing, { ...event, outOfOrder: [] }), refused: null };
}

/** A step that does not lead on has no other reasons: its guards speak of another state. */
function reasonsAgainst(
  standing: JointStanding,
  { data, happenedAt }: Omit<StepEvent, 'outOfOrder'>,
  facts: StepFacts,
): string[] {
  const misfit = misfits(standing, data);
  if (misfit.length > 0) return misfit;
  const { joint, form } = GUARDS[data.step] as Guards<JointStep>;
  const roles = rolesFor(data.step, facts.rule);
  return [
    ...waiting(standing, data.step),
    ...(standing.since !== null && momentOf(happenedAt) < momentOf(standing.since)
      ? [`the joint has been ${standing.state} since ${standing.since}; the step is dated before that`]
      : []),
    ...(facts.roles === null || hasOneOf(facts.roles, roles)
      ? []
      : [`${data.step} is for ${rolesInWords(roles)}`]),
    ...joint.flatMap((guard) => guard.fails(standing, facts, happenedAt) ?? []),
    ...form.flatMap((guard) => guard.fails(data, standing, facts) ?? []),
  ];
}

function waiting({ deviation }: JointStanding, step: JointStep): string[] {
  return deviation === null || DESPITE_DEVIATION.includes(step)
    ? []
    : ['a deviation waits for its decision; the state goes no further until then'];
}

/**
 * Roles that may take a step, as the class narrows them.
 *
 * @param step name of the step
 * @param rule rule of the joint's class; null for a joint without one
 * @returns roles; the program's own where the class names none of them
 * @example rolesFor('clear hold', null) // ['engineer']
 * @source rule of this program
 */
export function rolesFor(step: JointStep, rule: ClassRuleData | null): readonly Role[] {
  const usual = STEPS[step].roles;
  const asked = rule?.signs.find((one) => one.step === step)?.roles;
  return asked === undefined ? usual : usual.filter((role) => asked.includes(role));
}

/**
 * Steps that lead on from the present state, with everything each needs and how it stands.
 *
 * @param standing standing of the joint
 * @param facts what they are held against
 * @param now moment of asking, with its offset
 * @returns steps in the order of the table
 * @example stepsFrom(UNASSESSED, { rule: null }, '2026-03-16T07:00:00Z').map(({ step }) => step) // ['assess', 'report
 * leak']
 * @source rule of this program; docs/joint-states.md
 */
export function stepsFrom(standing: JointStanding, facts: StepFacts, now: string): OpenStep[] {
  return (Object.keys(STEPS) as JointStep[]).flatMap((step) => {
    const good = leadsTo(standing, step, 'good');
    if (good === null) return [];
    const { joint, form } = GUARDS[step] as Guards<JointStep>;
    const guards: GuardView[] = [
      ...waiting(standing, step).map((reason) => guardView('no deviation is open', reason)),
      ...bare(standing, step).map((reason) => guardView('what the state asks', reason)),
      ...joint.map(({ says, fails }) => guardView(says, fails(standing, facts, now))),
      ...form.map(({ says }) => ({ says, standing: 'asked' as const, reason: null })),
    ];
    const open = guards.every((guard) => guard.standing !== 'not met');
    const bad = leadsTo(standing, step, 'bad');
    return [
      { step, leadsTo: good === bad ? good : null, roles: [...rolesFor(step, facts.rule)], guards, open },
    ];
  });
}

function guardView(says: string, reason: string | null): GuardView {
  return { says, standing: reason === null ? 'met' : 'not met', reason };
}

/** Of the reasons that lie in the state, those that no form can answer. */
function bare(standing: JointStanding, step: JointStep): string[] {
  if (step !== 'inspect' && step !== 'test') return [];
  return misfits(standing, { step, evidence: {} } as StepEvent['data']);
}
