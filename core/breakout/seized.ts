import betaIncomplete from '@stdlib/math-base-special-betainc';
import { risingRoot } from '../statistics/quadrature.ts';

/** One opening: studs that were tried, and of them those that were cut or would not turn. */
export interface SeizedCount {
  readonly studs: number;
  readonly seized: number;
}

/** Studs of a joint that are expected to be cut. */
export interface SeizedStuds {
  readonly expected: number;
  readonly low: number;
  readonly high: number;
  /** Part of the studs of the class. */
  readonly share: number;
  readonly studs: number;
  readonly openings: number;
}

/** Studs of one joint seize together; taken while too few openings show how much. */
const USUAL_CORRELATION = 0.2;
const TELLING_OPENINGS = 8;

/**
 * Studs that are expected to be cut or not to turn at the next opening of a joint, with a 90 % interval of the share
 * behind it.
 *
 * Equation: share ~ beta(½ + s/D, ½ + (n − s)/D), D = 1 + (n̄ − 1)·ρ; expected = N·mean of the share.
 * @param openings openings of the class
 * @param bolts N, whole, at least 1
 * @returns expected number with its interval; null without an opening
 * @example seizedStuds([{ studs: 24, seized: 0 }, { studs: 24, seized: 2 }], 12)?.expected // 1.075
 * @source Jeffreys interval of a share; L. D. Brown, T. T. Cai, A. DasGupta, Statistical Science 16 (2001) 101; design effect after L. Kish (both from memory)
 */
export function seizedStuds(openings: readonly SeizedCount[], bolts: number): SeizedStuds | null {
  const tried = openings.filter(({ studs }) => studs > 0);
  const studs = tried.reduce((sum, one) => sum + one.studs, 0);
  if (studs === 0) return null;
  const seized = tried.reduce((sum, one) => sum + one.seized, 0);
  const effect = 1 + (studs / tried.length - 1) * togetherness(tried, studs, seized);
  const a = 0.5 + seized / effect;
  const b = 0.5 + (studs - seized) / effect;
  const at = (p: number) => risingRoot((x) => betaIncomplete(x, a, b) - p, 0, 1, 1e-9);
  return {
    expected: (bolts * a) / (a + b),
    low: bolts * at(0.05),
    high: bolts * at(0.95),
    share: seized / studs,
    studs,
    openings: tried.length,
  };
}

/** Correlation of seizing within an opening by the analysis of variance of shares. */
function togetherness(tried: readonly SeizedCount[], studs: number, seized: number): number {
  if (tried.length < TELLING_OPENINGS || seized === 0 || seized === studs) return USUAL_CORRELATION;
  const share = seized / studs;
  let between = 0;
  let within = 0;
  let squares = 0;
  for (const one of tried) {
    const own = one.seized / one.studs;
    between += one.studs * (own - share) ** 2;
    within += one.studs * own * (1 - own);
    squares += one.studs ** 2;
  }
  const size = (studs - squares / studs) / (tried.length - 1);
  const msb = between / (tried.length - 1);
  const msw = studs > tried.length ? within / (studs - tried.length) : 0;
  const total = msb + (size - 1) * msw;
  return total > 0 ? Math.min(1, Math.max(0, (msb - msw) / total)) : USUAL_CORRELATION;
}
