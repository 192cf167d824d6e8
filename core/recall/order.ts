import type { AffectedEvent } from '../contract/recall.ts';

const RANK: Readonly<Record<AffectedEvent['worst'], number>> = {
  broken: 0,
  'not sure': 1,
  'not known': 2,
  kept: 3,
};

interface Loaded {
  readonly error: number | null;
  readonly realLoad: number | null;
  readonly limits: readonly {
    readonly side: 'least' | 'most';
    readonly limit: number;
    readonly standing: 'kept' | 'not sure' | 'broken';
  }[];
}

/**
 * Room that a load leaves to the nearest of the limits its error leads towards, negative beyond it. A broken limit counts
 * on either side.
 *
 * Equation: margin = min((F' − L)/L for a least load, (L − F')/L for a largest one).
 * @param event affected event, loads in N
 * @returns margin as a fraction of the limit, or null while load or limits are not known
 * @example marginOf({ error: -0.08, realLoad: 90, limits: [{ side: 'least', limit: 100, standing: 'broken' }] }) // -0.1
 * @source rule of this program
 */
export function marginOf({ error, realLoad, limits }: Loaded): number | null {
  if (realLoad === null) return null;
  const led = (side: 'least' | 'most') =>
    error === null || error === 0 || (error < 0 ? side === 'least' : side === 'most');
  const margins = limits.flatMap(({ side, limit, standing }) =>
    limit > 0 && (standing === 'broken' || led(side))
      ? [(side === 'least' ? realLoad - limit : limit - realLoad) / limit]
      : [],
  );
  return margins.length === 0 ? null : Math.min(...margins);
}

/**
 * Affected events with the worst first: broken, not sure, not known, kept; among them the one with the least room, then
 * the largest error, then the newest.
 *
 * @param events in any order
 * @returns the same events in an order that does not depend on how they came
 * @example worstFirst([{ eventId: 'a', worst: 'kept', error: 0, realLoad: 1, limits: [], happenedAt: '2026-01-01T00:00:00Z' },
 * { eventId: 'b', worst: 'broken', error: 0, realLoad: 1, limits: [], happenedAt: '2026-01-01T00:00:00Z' }])[0]?.eventId // 'b'
 * @source rule of this program
 */
export function worstFirst(events: readonly AffectedEvent[]): AffectedEvent[] {
  const keyed = events.map((event) => ({
    event,
    rank: RANK[event.worst],
    margin: marginOf(event) ?? Number.POSITIVE_INFINITY,
    size: event.error === null ? Number.POSITIVE_INFINITY : Math.abs(event.error),
    at: Date.parse(event.happenedAt),
  }));
  const apart = (a: number, b: number) => (a === b ? 0 : a < b ? -1 : 1);
  return keyed
    .sort(
      (a, b) =>
        apart(a.rank, b.rank) ||
        apart(a.margin, b.margin) ||
        apart(b.size, a.size) ||
        apart(b.at, a.at) ||
        (a.event.eventId < b.event.eventId ? -1 : 1),
    )
    .map(({ event }) => event);
}
