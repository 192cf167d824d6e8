import { compute, type InputGap, type Outcome, positive, within } from '../findings/outcome.ts';

/**
 * How uncertainty enters a decision: not at all (the limit is the limit), or by a guard band as wide as the expanded
 * uncertainty.
 */
export type DecisionRule = 'simple acceptance' | 'guard band of U';

export interface Decision {
  readonly rule: DecisionRule;
  /**
   * Accept: the error is inside the limit by the rule. Reject: outside it by the rule. Conditional: the measurement can't
   * tell, the limit lies within U of the error.
   */
  readonly verdict: 'accept' | 'conditional' | 'reject';
  /** Error as a fraction of what was intended, and its expanded uncertainty; null when not stated. */
  readonly error: number;
  readonly expanded: number | null;
  /** Largest permissible error, and how much of it the rule leaves. */
  readonly limit: number;
  readonly acceptance: number;
  /** Acceptance limit less the error's size: negative when it is exceeded. */
  readonly margin: number;
  readonly withinLimit: boolean;
}

/** A point of a certificate to decide on. */
export interface JudgedPoint {
  readonly error: number | null;
  readonly expanded: number | null;
}

export interface CertificateDecision {
  readonly points: readonly Decision[];
  /** Reject when any point is rejected, else conditional when any is, else accept. */
  readonly verdict: Decision['verdict'];
  /** Index of the point with the least margin. */
  readonly worst: number;
}

/**
 * Turns the relative error as ISO 6789 states it, of the indication against the reference, into the error of what was
 * delivered against what was indicated. The sign turns, and the denominator changes.
 *
 * Equation: as = (xa − xr)/xr; e = (xr − xa)/xa = 1/(1 + as) − 1.
 * @param indicated as, 1, above −1: (indicated − reference)/reference
 * @returns e, 1: (delivered − intended)/intended, the reference being what was delivered
 * @example deliveredFromIndicated(0.087).value // -0.080
 * @source ISO 6789-2:2017, clause 5 (from memory)
 */
export function deliveredFromIndicated(indicated: number | null): Outcome<number> {
  return compute({ ratio: ratioOf('as', indicated) }, ({ ratio }) => 1 / ratio - 1);
}

/**
 * Turns the error of what was delivered into the relative error as ISO 6789 states it.
 *
 * Equation: as = 1/(1 + e) − 1.
 * @param delivered e, 1, above −1: (delivered − intended)/intended
 * @returns as, 1: (indicated − reference)/reference
 * @example indicatedFromDelivered(0.04).value // -0.0385
 * @source ISO 6789-2:2017, clause 5 (from memory)
 */
export function indicatedFromDelivered(delivered: number | null): Outcome<number> {
  return compute({ ratio: ratioOf('e', delivered) }, ({ ratio }) => 1 / ratio - 1);
}

/**
 * Decides whether an error keeps its limit.
 *
 * Equation: simple acceptance: |e| ≤ L; guard band: accept |e| + U ≤ L, reject |e| − U > L, else conditional.
 * @param point error of what was delivered and its expanded uncertainty, fractions of what was intended
 * @param limit L, largest permissible error, 1, above 0
 * @param rule how uncertainty enters
 * @returns verdict with its margin; with a guard band an uncertainty nobody states is a gap, never an acceptance
 * @example decide({ error: 0.035, expanded: 0.01 }, 0.04, 'guard band of U').value?.verdict // 'conditional'
 * @source ILAC-G8:09/2019, 4.2.1 and 4.2.3; ISO/IEC 17025:2017, 7.8.6, and JCGM 106:2012, 8 (both from memory)
 */
export function decide(
  { error, expanded }: JudgedPoint,
  limit: number | null,
  rule: DecisionRule,
): Outcome<Decision> {
  const guarded = rule === 'guard band of U';
  return compute(
    {
      e: within('e', 'error', error, ANY, 'take it from the certificate'),
      U: within(
        'U',
        'expanded uncertainty',
        guarded ? expanded : (expanded ?? 0),
        [0, 1],
        'take it from the certificate; without it a guard band decides nothing',
      ),
      L: positive('L', 'largest permissible error', limit, 'enter the site’s limit'),
    },
    (v) => {
      const size = Math.abs(v.e);
      const acceptance = guarded ? v.L - v.U : v.L;
      return {
        rule,
        verdict: verdictOf(size, v.L, guarded ? v.U : 0),
        error: v.e,
        expanded,
        limit: v.L,
        acceptance,
        margin: acceptance - size,
        withinLimit: size <= v.L * HAIR,
      };
    },
  );
}

/**
 * Decides on a certificate as a whole by its points.
 *
 * @param points errors and expanded uncertainties, at least one
 * @param limit L, largest permissible error, 1, above 0
 * @param rule how uncertainty enters
 * @returns the points' decisions, the worst, and the verdict that follows; gaps of every point at once
 * @example decideCertificate([{ error: 0.01, expanded: 0.01 }, { error: 0.035, expanded: 0.01 }], 0.04, 'guard band of U').value?.worst // 1
 * @source ILAC-G8:09/2019, 4.2; ISO/IEC 17025:2017, 7.8.6 (from memory)
 */
export function decideCertificate(
  points: readonly JudgedPoint[],
  limit: number | null,
  rule: DecisionRule,
): Outcome<CertificateDecision> {
  const outcomes = points.map((point) => decide(point, limit, rule));
  const missing = outcomes.flatMap((outcome, index) => outcome.missing.map((gap) => ofPoint(gap, index)));
  const counted = within('n', 'number of points', points.length, [1, 1000], 'enter the certificate’s points');
  const checked = compute({ n: counted }, ({ n }) => n);
  if (checked.value === null || missing.length > 0)
    return { value: null, missing: [...checked.missing, ...missing] };
  const decisions = outcomes.flatMap(({ value }) => (value === null ? [] : [value]));
  const worst = decisions.reduce(
    (least, { margin }, index) =>
      margin < (decisions[least]?.margin ?? Number.POSITIVE_INFINITY) ? index : least,
    0,
  );
  return { value: { points: decisions, verdict: together(decisions), worst }, missing: [] };
}

const ANY = [-1e6, 1e6] as const;
/** An error that lies on its limit keeps it; rounding of the last bits must not decide. */
const HAIR = 1 + 1e-12;

/** Ratio of the two torques behind a relative error: its other side's error is one over it, less one. */
function ratioOf(symbol: string, error: number | null) {
  const ratio = error === null ? null : 1 + error;
  return positive(`1 + ${symbol}`, 'ratio of the two torques', ratio, 'check the sign and the percent');
}

function verdictOf(size: number, limit: number, guard: number): Decision['verdict'] {
  if (size + guard <= limit * HAIR) return 'accept';
  return size - guard > limit * HAIR ? 'reject' : 'conditional';
}

function together(decisions: readonly Decision[]): Decision['verdict'] {
  if (decisions.some(({ verdict }) => verdict === 'reject')) return 'reject';
  return decisions.some(({ verdict }) => verdict === 'conditional') ? 'conditional' : 'accept';
}

function ofPoint(gap: InputGap, index: number): InputGap {
  return gap.symbol === 'L' ? gap : { ...gap, name: `${gap.name} of point ${index + 1}` };
}
