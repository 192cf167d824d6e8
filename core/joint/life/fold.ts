import type { JointState } from '../../contract/life.ts';
import { deviated, deviationDecided } from './deviation.ts';
import { provenTight } from './proven.ts';
import { WORK_NAMES, workForced, workRecorded } from './records.ts';
import {
  type JointStanding,
  type LifeEvent,
  type StepEvent,
  UNASSESSED,
  type WorkEvent,
} from './standing.ts';
import { leadsTo, resultOf } from './steps.ts';
import { stepForced, stepTaken } from './taken.ts';

/** Steps that are taken while a deviation waits for its decision. */
const TAKEN_MEANWHILE: readonly string[] = ['assess', 'report leak'];

/**
 * Standing of a joint after all its events, in the order they were recorded.
 *
 * @param events events of one joint
 * @returns standing
 * @example standingAfter([]).state // 'unassessed'
 * @source rule of this program
 */
export function standingAfter(events: readonly LifeEvent[]): JointStanding {
  return events.reduce(standingNext, UNASSESSED);
}

/**
 * Standing of a joint after one more event.
 *
 * @param standing standing before
 * @param event step, record of work or decision
 * @returns standing after it
 * @example standingNext(UNASSESSED, { kind: 'decision', deviationId: 'a' }).state // 'unassessed'
 * @source rule of this program
 */
export function standingNext(standing: JointStanding, event: LifeEvent): JointStanding {
  switch (event.kind) {
    case 'decision':
      return deviationDecided(standing, event);
    case 'step':
      return stepNext(standing, event);
    default:
      return workNext(standing, event);
  }
}

function workNext(standing: JointStanding, event: WorkEvent): JointStanding {
  const { deviation, ...kept } = standing;
  const { id: eventId, happenedAt, people, kind } = event;
  const work = { eventId, what: WORK_NAMES[kind], happenedAt, people, reasons: workReasons(standing, event) };
  if (deviation !== null) {
    return deviated(standing, deviation, work, workForced(deviation.ifAccepted, event));
  }
  const after = workRecorded(kept, event);
  if (after.reasons.length === 0) return { ...after.standing, deviation: null };
  return deviated(after.standing, null, work, after.past ? kept : workForced(kept, event));
}

/**
 * Why a record of work is out of order.
 *
 * @param standing standing of the joint before it
 * @param event tightening, breakout or pass
 * @returns reasons; none where it is in order
 * @example workReasons(UNASSESSED, { kind: 'pass', happenedAt: '2026-03-16T07:00:00Z' }) // []
 * @source rule of this program
 */
export function workReasons({ deviation, ...kept }: JointStanding, event: WorkEvent): readonly string[] {
  if (deviation !== null) return [MEANWHILE];
  return workRecorded(kept, event).reasons;
}

const MEANWHILE = 'recorded while a deviation waits for its decision';

function stepNext(standing: JointStanding, event: StepEvent): JointStanding {
  const { deviation, ...kept } = standing;
  // What was held against it when it was recorded says the same of its state.
  const reasons = [...new Set([...event.outOfOrder, ...misfits(standing, event.data)])];
  if (reasons.length === 0 && deviation === null) return { ...stepTaken(kept, event), deviation: null };
  if (reasons.length === 0 && deviation !== null && TAKEN_MEANWHILE.includes(event.data.step)) {
    const ifAccepted = stepTaken(deviation.ifAccepted, event);
    return { ...stepTaken(kept, event), deviation: { ...deviation, ifAccepted } };
  }
  // No order is followed before somebody has given it a class: kept, as a record of work is.
  if (deviation === null && standing.state === 'unassessed') return standing;
  const { id: eventId, happenedAt, data } = event;
  const why = reasons.length === 0 ? [MEANWHILE] : reasons;
  const people = [...new Set([data.by, ...data.personIds])];
  const work = { eventId, what: data.step, happenedAt, people, reasons: why };
  return deviated(kept, deviation, work, stepForced(deviation?.ifAccepted ?? kept, event));
}

/**
 * What stands against a step by state and tightening alone, whatever the site's rules say.
 *
 * @param standing standing of the joint
 * @param data step with its evidence
 * @returns reasons; none where the step leads on
 * @example misfits(UNASSESSED, { step: 'hold' }) // ['the joint is unassessed: hold does not lead on from there']
 * @source rule of this program
 */
export function misfits(standing: JointStanding, data: StepEvent['data']): string[] {
  if (leadsTo(standing, data.step, resultOf(data)) === null) {
    return [`the joint is ${standing.state}: ${data.step} does not lead on from there`];
  }
  switch (data.step) {
    case 'inspect':
      return TO_BE_BROKEN.includes(standing.state) && !standing.firstAssembly
        ? [`the joint is ${standing.state}, and no first assembly: it is broken before it is inspected`]
        : [];
    case 'relaxation pass':
      return passMisfit(standing.state, data.evidence.kind);
    case 'test':
      return provenTight(standing)
        ? []
        : ['no tightening with tools in calibration is recorded, and none is set aside with a reason'];
    default:
      return [];
  }
}

const TO_BE_BROKEN: readonly JointState[] = ['scheduled', 'isolated'];
const DWELLING: readonly JointState[] = ['tightened', 'witnessed'];

function passMisfit(state: JointState, kind: 'after the dwell' | 'during start-up' | null): string[] {
  if (kind === null) return ['not stated: after the dwell, or during start-up'];
  const fits = (kind === 'after the dwell') === DWELLING.includes(state);
  return fits ? [] : [`the joint is ${state}: a pass ${kind} does not belong there`];
}
