import type { BreakoutData } from '../../../core/contract/event.ts';
import type {
  BreakoutEvent,
  DecisionEvent,
  PassEvent,
  StepEvent,
  TighteningEvent,
} from '../../../core/joint/life/standing.ts';
import type { EventDataByKind } from '../chain/events.ts';

/** What a body says of its joint's life; null for a body recorded before joints had states. */
export function lifeOfTightening(
  id: string,
  happenedAt: string,
  { data, life }: Pick<EventDataByKind['tightening recorded'], 'data' | 'life'>,
): TighteningEvent | null {
  if (life === undefined) return null;
  const { classKey: _, ...told } = life;
  return { kind: 'tightening', id, happenedAt, boltSet: data.boltSet, people: data.personIds, ...told };
}

export function lifeOfBreakout(
  id: string,
  happenedAt: string,
  { readings, personIds }: Pick<BreakoutData, 'readings' | 'personIds'>,
): BreakoutEvent {
  const opened = readings.some(({ outcome }) => outcome === 'turned' || outcome === 'cut');
  return { kind: 'breakout', id, happenedAt, opened, people: personIds };
}

export function lifeOfPass(
  id: string,
  happenedAt: string,
  { data, lastBolt }: Pick<EventDataByKind['pass recorded'], 'data' | 'lastBolt'>,
): PassEvent {
  const { boltSet, pass, of, stoppedBecause, personIds } = data;
  return {
    kind: 'pass',
    id,
    happenedAt,
    pass: { boltSet, number: pass, of, lastBolt, stopped: stoppedBecause?.reason ?? null },
    people: personIds,
  };
}

export function lifeOfStep(
  id: string,
  happenedAt: string,
  { data, class: given, outOfOrder }: EventDataByKind['joint stepped'],
): StepEvent {
  return { kind: 'step', id, happenedAt, data, class: given, outOfOrder };
}

export function lifeOfDecision(
  id: string,
  happenedAt: string,
  { data }: EventDataByKind['deviation decided'],
): DecisionEvent {
  const { deviationId, decision, reason, personId } = data;
  return { kind: 'decision', id, happenedAt, deviationId, decision, reason, by: personId };
}
