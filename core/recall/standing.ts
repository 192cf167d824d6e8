import type { AffectedEvent } from '../contract/recall.ts';
import type { JointLimit } from './joint-limits.ts';
import type { LoadRange, RealLoads } from './real-load.ts';

export type Worst = AffectedEvent['worst'];

export interface Standing {
  readonly limits: AffectedEvent['limits'];
  readonly worst: Worst;
  /** What keeps the load from being called kept although no known limit is broken; empty when nothing does. */
  readonly open: string;
}

/**
 * Holds the load that was really there against the joint's limits. Broken where the load itself breaks a limit, kept only
 * where the whole interval keeps it, not sure between. A load below the intended one is not called kept while no least
 * load is known, nor one above it while no largest load is.
 *
 * @param real load with its intervals
 * @param error e, 1, above −1
 * @param limits limits of the joint as bolt loads
 * @param assumption what the error was taken over from, so that nothing is called kept by it; empty without one
 * @returns each limit's standing and the worst of them
 * @example standingOf({ load: 92e3, singleBolt: [75e3, 113e3], jointMean: null }, -0.08, [{ name: 'least', side: 'least',
 * limit: 80e3, subject: 'single bolt' }], '').worst // 'not sure'
 * @source rule of this program; a decision by the whole interval: JCGM 106:2012, 8.3 (from memory)
 */
export function standingOf(
  real: RealLoads,
  error: number,
  limits: readonly JointLimit[],
  assumption: string,
): Standing {
  const rows = limits.map(({ name, side, limit, subject }) => {
    const range = subject === 'single bolt' ? real.singleBolt : real.jointMean;
    const standing = against(real.load, range, side, limit);
    const held = standing === 'kept' && assumption !== '' ? 'not sure' : standing;
    return { name, side, limit, standing: held } as const;
  });
  const has = (standing: string) => rows.some((row) => row.standing === standing);
  if (has('broken')) return { limits: rows, worst: 'broken', open: '' };
  if (has('not sure')) return { limits: rows, worst: 'not sure', open: assumption };
  const missing = missingSide(rows, error);
  return missing === ''
    ? { limits: rows, worst: 'kept', open: '' }
    : { limits: rows, worst: 'not known', open: missing };
}

/** Floating point must not break a limit that a load lies on. */
const SLACK = 1 + 1e-9;

function against(load: number, range: LoadRange | null, side: JointLimit['side'], limit: number) {
  const keeps = (value: number) => (side === 'most' ? value <= limit * SLACK : value * SLACK >= limit);
  if (!keeps(load)) return 'broken' as const;
  if (range === null) return 'not sure' as const;
  return keeps(side === 'most' ? range[1] : range[0]) ? ('kept' as const) : ('not sure' as const);
}

function missingSide(rows: readonly { readonly side: JointLimit['side'] }[], error: number): string {
  const knows = (side: JointLimit['side']) => rows.some((row) => row.side === side);
  if (error <= 0 && !knows('least')) return 'no least load is known for this joint';
  if (error >= 0 && !knows('most')) return 'no largest load is known for this joint';
  return '';
}
