import type { ClassRuleData, JointState } from '../../contract/life.ts';
import { dwellOf } from './dwell.ts';
import { countedLeaks } from './leaks.ts';
import { shareOf } from './share-due.ts';
import { type JointStanding, momentOf, type PassStanding } from './standing.ts';

export interface DueWords {
  readonly text: string;
  /** Moment from which, or until which, it holds; null for what has none. */
  readonly dueAt: string | null;
}

const WAITING_FOR_TEST: readonly JointState[] = ['tightened', 'witnessed', 'test failed'];

/**
 * What is open or due on a joint, in sentences.
 *
 * @param standing standing of the joint
 * @param rule rule of its class; null for a joint without one
 * @param now moment of asking with its offset
 * @returns sentences in the order they matter, each with its moment where it has one
 * @example duesOfJoint(UNASSESSED, null, '2026-03-16T07:00:00Z')[0].text // 'no class is given: no order of steps is
 * followed'
 * @source rule of this program; docs/joint-states.md
 */
export function duesOfJoint(standing: JointStanding, rule: ClassRuleData | null, now: string): DueWords[] {
  const { state, pass, isolationRef, permitRef, permitUntil, leaks, makeUp } = standing;
  if (state === 'unassessed') return [always('no class is given: no order of steps is followed')];
  const recent = countedLeaks(leaks, makeUp).length;
  return [
    ...(pass === null ? [] : [always(halfDone(pass))]),
    ...(WAITING_FOR_TEST.includes(state) ? tightenedDues(standing, rule, now) : []),
    ...startUpDue(standing, rule),
    ...(isolationRef === null ? [] : [always(`isolation ${isolationRef} stands`)]),
    ...(permitRef === null ? [] : [permit(permitRef, permitUntil, now)]),
    ...(recent === 0
      ? []
      : [always(`${recent} ${recent === 1 ? 'leak' : 'leaks'} in this make-up and the one before`)]),
    ...(standing.firstAssembly ? [always('first assembly: there is nothing to break')] : []),
    ...(standing.override === null ? [] : [always(`accepted with a reason: ${standing.override.reason}`)]),
  ];
}

const always = (text: string): DueWords => ({ text, dueAt: null });

function halfDone({ boltSet, number, of, lastBolt, stopped }: PassStanding): string {
  const set = boltSet === 0 ? '' : ` of bolt set ${boltSet}`;
  const last = lastBolt === null ? '' : `, last bolt ${lastBolt}`;
  return `pass ${number} of ${of}${set}${last}${stopped === null ? '' : `, stopped: ${stopped}`}`;
}

function tightenedDues(standing: JointStanding, rule: ClassRuleData | null, now: string): DueWords[] {
  if (rule === null) return [];
  const { state, dueAt, reason } = dwellOf(standing, rule, now);
  const dwell =
    state === 'waiting'
      ? 'the gasket is settling; pass after the dwell from'
      : 'pass after the dwell due since';
  return [
    ...(rule.retightening.afterDwell && standing.dwellPassAt === null
      ? [state === 'not known' ? always(`pass after the dwell: ${reason}`) : { text: dwell, dueAt }]
      : []),
    ...(standing.witnessed === null
      ? [always(`witness: ${shareOf('witnessed', rule.witnessPercent, standing).explained}`)]
      : []),
    ...(standing.loadChecked || rule.loadCheckPercent === 0
      ? []
      : [always(`load measurement: ${shareOf('measured', rule.loadCheckPercent, standing).explained}`)]),
    ...(rule.leakTest.needed ? [always(`leak test asked for by class ${rule.name}`)] : []),
  ];
}

function startUpDue({ state, startUpPassAt, makeUp }: JointStanding, rule: ClassRuleData | null): DueWords[] {
  const now = state === 'tested' || state === 'reinstated' || state === 'in service';
  if (!now || makeUp === 0 || startUpPassAt !== null || !rule?.retightening.duringStartUp) return [];
  return [always(`class ${rule.name} asks for a pass during start-up; none is recorded`)];
}

function permit(reference: string, until: string | null, now: string): DueWords {
  if (until === null) return always(`permit ${reference}, its end not stated`);
  const over = momentOf(until) < momentOf(now);
  return { text: `permit ${reference} ${over ? 'ended' : 'until'}`, dueAt: until };
}
