/** A count of thermal cycles over a period, as it was recorded. Moments in UTC. */
export interface CycleCount {
  readonly from: string;
  readonly until: string;
  readonly cycles: number;
}

export interface CyclesSince {
  /** Counted in periods that lie wholly after the make-up. */
  readonly cycles: number;
  /** Counted in periods the make-up lies in: how many came after it is not known. */
  readonly partly: number;
  /** Share of the time since the make-up that is counted, 0 to 1; 0 where nothing is. */
  readonly covered: number;
}

/**
 * Thermal cycles of a joint since it was made up. What nobody counted is not known, and never taken for none.
 *
 * Equation: sum of the counts from the make-up on; covered = counted time / time since the make-up.
 * @param counts periods that do not overlap
 * @param madeUpAt moment of the newest tightening, UTC
 * @param now moment of asking, UTC, not before the make-up
 * @returns cycles with how much of the time they stand for
 * @example cyclesSince([{ from: '2026-01-01T00:00:00Z', until: '2026-01-11T00:00:00Z', cycles: 3 }],
 * '2026-01-01T00:00:00Z', '2026-01-21T00:00:00Z').covered // 0.5
 * @source rule of this program
 */
export function cyclesSince(counts: readonly CycleCount[], madeUpAt: string, now: string): CyclesSince {
  const start = Date.parse(madeUpAt);
  const end = Date.parse(now);
  let cycles = 0;
  let partly = 0;
  let counted = 0;
  for (const count of counts) {
    const from = Date.parse(count.from);
    const until = Math.min(Date.parse(count.until), end);
    if (until <= start) continue;
    if (from >= start) cycles += count.cycles;
    else partly += count.cycles;
    counted += until - Math.max(from, start);
  }
  return { cycles, partly, covered: end > start ? Math.min(1, counted / (end - start)) : 0 };
}
