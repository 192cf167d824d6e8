import { compute, type Outcome, positive, whole, within } from '../findings/outcome.ts';
import { normalProbability, normalQuantile } from './normal.ts';

/** Bolt load with its relative uncertainty in two parts. */
export interface UncertainLoad {
  /** Load, N: the mean of a normal load, the median of a lognormal one. */
  readonly load: number | null;
  /** Relative standard uncertainty common to all bolts. */
  readonly common: number | null;
  /** Relative standard uncertainty drawn anew for each bolt. */
  readonly perBolt: number | null;
  readonly boltCount: number | null;
  /** Lognormal suits the load better: friction stands in the denominator. */
  readonly shape: 'normal' | 'lognormal';
}

/** What a limit is about: a bolt's limit each bolt by itself, a gasket's limit the mean load of the joint. */
export type LimitSubject = 'single bolt' | 'joint mean';

/** Probability that a load keeps a limit. */
export interface Probability {
  readonly subject: LimitSubject;
  readonly side: 'at least' | 'at most';
  /** 0 to 1 */
  readonly probability: number;
  /** Relative standard uncertainty it rests on. */
  readonly relative: number;
  readonly shape: UncertainLoad['shape'];
}

/**
 * Probability of keeping a limit of the bolt (single bolt) or of the gasket (mean load of the joint).
 *
 * Equation: u² = uc² + ub² for a single bolt, uc² + ub²/N for the mean; normal: P = Φ(±(L − F)/(u·F)); lognormal: P =
 * Φ(±ln(L/F)/s), s² = ln(1 + u²).
 * @param load bolt load with its common and per-bolt parts
 * @param limit L, as a bolt load, N, above 0
 * @param side whether the load has to stay at least or at most at the limit
 * @param subject single bolt or joint mean
 * @returns probability that says what it is about
 * @example limitProbability({ load: 100e3, common: 0.02, perBolt: 0.1, boltCount: 12, shape: 'lognormal' }, 120e3, 'at
 * most', 'single bolt').value?.probability // 0.963
 * @source JCGM 106:2012, section 7 (from memory); JCGM 100:2008 (GUM), equation (10)
 */
export function limitProbability(
  load: UncertainLoad,
  limit: number | null,
  side: 'at least' | 'at most',
  subject: LimitSubject,
): Outcome<Probability> {
  return compute(
    {
      ...loadInputs(load),
      limit: positive('L', `limit of the ${subject}, N`, limit, 'enter the limit from site or data sheet'),
    },
    (v) => {
      const relative = Math.sqrt(v.common ** 2 + v.perBolt ** 2 / (subject === 'single bolt' ? 1 : v.count));
      const above = distance(v.load, v.limit, relative, load.shape);
      return {
        subject,
        side,
        // A load exactly at its limit without uncertainty keeps it, on either side.
        probability:
          above === 0 && relative === 0 ? 1 : normalProbability(side === 'at most' ? above : -above),
        relative,
        shape: load.shape,
      };
    },
  );
}

/** Standard deviations from the load up to the limit; at no uncertainty the limit is kept or not, for certain. */
function distance(load: number, limit: number, relative: number, shape: UncertainLoad['shape']): number {
  if (relative === 0) return limit === load ? 0 : Math.sign(limit - load) * Number.POSITIVE_INFINITY;
  if (shape === 'normal') return (limit - load) / (relative * load);
  return Math.log(limit / load) / Math.sqrt(Math.log1p(relative ** 2));
}

/**
 * Interval that holds a share of the loads.
 *
 * Equation: normal: F·(1 ± z·u); lognormal: F·exp(±z·s), s² = ln(1 + u²); z = Φ⁻¹((1 + share)/2).
 * @param load bolt load with its common and per-bolt parts
 * @param subject single bolt or joint mean
 * @param share p, 1, from 0.5 to 0.9999
 * @returns lower and upper end, N; a normal interval never goes below zero
 * @example loadInterval({ load: 100e3, common: 0.02, perBolt: 0.1, boltCount: 12, shape: 'lognormal' }, 'single bolt',
 * 0.95).value // [81.9e3, 122.1e3] N
 * @source JCGM 100:2008 (GUM), Annex G
 */
export function loadInterval(
  load: UncertainLoad,
  subject: LimitSubject,
  share: number,
): Outcome<readonly [number, number]> {
  return compute(
    {
      ...loadInputs(load),
      share: within('p', 'share of the loads', share, [0.5, 0.9999], 'choose 0.95'),
    },
    (v): readonly [number, number] => {
      const relative = Math.sqrt(v.common ** 2 + v.perBolt ** 2 / (subject === 'single bolt' ? 1 : v.count));
      const z = normalQuantile((1 + v.share) / 2);
      if (load.shape === 'normal') {
        return [Math.max(0, v.load * (1 - z * relative)), v.load * (1 + z * relative)];
      }
      const spread = z * Math.sqrt(Math.log1p(relative ** 2));
      return [v.load * Math.exp(-spread), v.load * Math.exp(spread)];
    },
  );
}

function loadInputs({ load, common, perBolt, boltCount }: UncertainLoad) {
  return {
    load: positive('F', 'bolt load, N', load, 'choose a target or a torque and friction'),
    common: within('uc', 'relative uncertainty common to all bolts', common, [0, 1], 'compute the budget'),
    perBolt: within(
      'ub',
      'relative uncertainty per bolt',
      perBolt,
      [0, 1],
      'measure the scatter of K between bolts',
    ),
    count: whole('N', 'number of bolts', boltCount, [1, 400], 'count the bolts'),
  };
}
