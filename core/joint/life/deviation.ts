import { setProven } from './proven.ts';
import type { DecisionEvent, DeviatingWork, JointStanding, OpenDeviation, Standing } from './standing.ts';
import { entered } from './standing.ts';

/**
 * The standing with work that was out of order: it opens a deviation or joins the open one; the state stays.
 *
 * @param standing standing the joint keeps
 * @param open deviation that is open; null where none is
 * @param work record with its reasons
 * @param ifAccepted what the joint is if the work is accepted
 * @returns standing with the deviation
 * @example deviated(UNASSESSED, null, { eventId: 'a', what: 'pass', happenedAt: '2026-03-16T07:00:00Z', reasons: [],
 * people: [] }, UNASSESSED).deviation?.id // 'a'
 * @source rule of this program
 */
export function deviated(
  standing: Standing,
  open: OpenDeviation | null,
  work: DeviatingWork,
  ifAccepted: Standing,
): JointStanding {
  const begun = open ?? { id: work.eventId, openedAt: work.happenedAt, works: [] };
  return {
    ...standing,
    deviation: { id: begun.id, openedAt: begun.openedAt, works: [...begun.works, work], ifAccepted },
  };
}

/**
 * The standing after an engineer's decision on the open deviation.
 *
 * @param standing standing with an open deviation
 * @param event the decision with its reason
 * @returns standing without it; unchanged where the decision is about another one
 * @example deviationDecided(UNASSESSED, { deviationId: 'a' }).state // 'unassessed'
 * @source rule of this program
 */
export function deviationDecided(standing: JointStanding, event: DecisionEvent): JointStanding {
  const { deviation, ...kept } = standing;
  if (deviation === null || deviation.id !== event.deviationId) return standing;
  switch (event.decision) {
    case 'to be done again':
      return { ...kept, deviation: null };
    case 'accept as done':
      return { ...accepted(deviation.ifAccepted, event), deviation: null };
    case 'hold':
      return { ...heldInWhatItIs(deviation.ifAccepted, event), deviation: null };
  }
}

function accepted(standing: Standing, { reason, by }: DecisionEvent): Standing {
  const override = { reason, by };
  const tightened = standing.tightened.map((set) => (setProven(set) ? set : { ...set, setAside: override }));
  return { ...standing, tightened, override };
}

function heldInWhatItIs(standing: Standing, { reason, happenedAt }: DecisionEvent): Standing {
  const { state } = standing;
  if (state === 'held') return { ...standing, heldBecause: reason };
  return { ...entered(standing, 'held', happenedAt), heldFrom: state, heldBecause: reason };
}

/**
 * Why a deviation can not be decided in this way.
 *
 * @param standing standing of the joint
 * @param decision which deviation, and who decides
 * @returns reasons; none when it can
 * @example decisionReasons(UNASSESSED, { deviationId: 'a', personId: 'b' }) // ['this deviation is not open']
 * @source rule of this program; that nobody decides on their own work is common practice
 */
export function decisionReasons(
  { deviation }: JointStanding,
  { deviationId, personId }: { readonly deviationId: string; readonly personId: string },
): string[] {
  if (deviation === null || deviation.id !== deviationId) return ['this deviation is not open'];
  const own = deviation.works.some(({ people }) => people.includes(personId));
  return own ? ['nobody decides on work they did themselves'] : [];
}
