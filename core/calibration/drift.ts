import type { CertificateLineView } from '../contract/tool.ts';
import {
  compute,
  noSolution,
  type Outcome,
  positive,
  type RelationInput,
  within,
} from '../findings/outcome.ts';
import { lineUncertainty } from './line.ts';
import { certifiedRange } from './setting.ts';

type Line = Pick<
  CertificateLineView,
  'intercept' | 'slope' | 'interceptUncertainty' | 'slopeUncertainty' | 'covariance'
> & { readonly points: readonly { readonly pressure: number }[] };

/** One side of a comparison. */
export interface ComparedCertificate {
  readonly line: Line;
  readonly condition: 'as found' | 'as left';
  /** Relative standard uncertainty of the laboratory's reference, 0 to 1; null when not stated. */
  readonly reference: number | null;
}

/**
 * Drift: the tool was found different from how it was last left. Step: both were read after adjustment, so the difference
 * is what the adjusting did. Not known: both as found, and whether it was adjusted in between is not on these certificates.
 */
export type ChangeMeaning = 'drift' | 'step' | 'not known';

/** Change of the delivered torque at one pressure. */
export interface Change {
  /** Pa */
  readonly pressure: number;
  /** (later − earlier)/earlier */
  readonly relative: number;
  /** Standard uncertainty of the change; null when a reference is needed and not stated. */
  readonly uncertainty: number | null;
  /** |change| above twice its uncertainty; null when the uncertainty is not known and could decide. */
  readonly significant: boolean | null;
}

export interface Drift {
  readonly meaning: ChangeMeaning;
  /** Cancels: one laboratory's reference errs the same way both times. */
  readonly reference: 'cancels' | 'independent' | 'not stated';
  /** Lowest and highest pressure both certificates cover, Pa. */
  readonly range: readonly [number, number];
  /** At every pressure both certificates list; empty when they list none in common. */
  readonly changes: readonly Change[];
  /** Largest over the whole common range; it lies at one of its ends. */
  readonly largest: Change;
}

/** Listed pressures that differ by less than this part are one nominal pressure. */
const SAME_PRESSURE = 1e-3;
const SIGNIFICANT = 2;

/**
 * Compares the torque two certificates of one tool say it delivers.
 *
 * Equation: Δ(p) = T2(p)/T1(p) − 1; u(Δ) = √(u²(T2) + (T2/T1)²·u²(T1))/T1, and (T2/T1)·√(ur1² + ur2²) beside it where the
 * references are independent; significant when |Δ| > 2·u.
 * @param earlier certificate before, SI
 * @param later certificate after, SI
 * @param sameLaboratory true only where both certificates name one laboratory and its reference; then its part cancels
 * @returns change at each common pressure and the largest over the common range; a gap without a common range
 * @example compareCertificates({ line, condition: 'as left', reference: 0.005 }, { line, condition: 'as found', reference: 0.005 }, true).value?.largest.relative // 0
 * @source JCGM 100:2008 (GUM), 5.1 and 5.2 (a common part of a difference cancels), Annex H.3
 */
export function compareCertificates(
  earlier: ComparedCertificate,
  later: ComparedCertificate,
  sameLaboratory: boolean,
): Outcome<Drift> {
  const checked = compute({}, () => true, [...lineInputs(earlier, 'earlier'), ...lineInputs(later, 'later')]);
  if (checked.value === null) return checked;
  const one = certifiedRange(earlier.line);
  const two = certifiedRange(later.line);
  const range = [Math.max(one.lowest, two.lowest), Math.min(one.highest, two.highest)] as const;
  if (range[0] > range[1]) {
    return noSolution(
      'p',
      'common range of the certificates',
      'the certificates share no pressure to compare at',
    );
  }
  const ends = range.map((pressure) => changeAt(earlier, later, pressure, sameLaboratory));
  const changes = commonPressures(earlier.line, later.line, range).map((pressure) =>
    changeAt(earlier, later, pressure, sameLaboratory),
  );
  const [low, high] = ends;
  if (low === undefined || high === undefined || [...ends, ...changes].some((change) => change === null)) {
    return noSolution(
      'T',
      'torque of the earlier line',
      'it gives no torque at a common pressure: check its points',
    );
  }
  const known = changes.flatMap((change) => change ?? []);
  const largest = [high, low, ...known].reduce<Change | null>(
    (most, change) =>
      change !== null && (most === null || Math.abs(change.relative) > Math.abs(most.relative))
        ? change
        : most,
    null,
  );
  if (largest === null) return noSolution('Δ', 'change', 'check the certificates’ points');
  return {
    value: {
      meaning: meaningOf(earlier.condition, later.condition),
      reference: referenceOf(earlier, later, sameLaboratory),
      range,
      changes: known,
      largest,
    },
    missing: [],
  };
}

function changeAt(
  earlier: ComparedCertificate,
  later: ComparedCertificate,
  pressure: number,
  sameLaboratory: boolean,
): Change | null {
  const before = earlier.line.intercept + earlier.line.slope * pressure;
  const after = later.line.intercept + later.line.slope * pressure;
  if (!(before > 0)) return null;
  const ratio = after / before;
  const relative = (after - before) / before;
  const lines = Math.hypot(
    lineUncertainty(later.line, pressure) / before,
    (ratio * lineUncertainty(earlier.line, pressure)) / before,
  );
  const reference = referenceOf(earlier, later, sameLaboratory);
  const references =
    reference === 'independent'
      ? Math.abs(ratio) * Math.hypot(earlier.reference ?? 0, later.reference ?? 0)
      : 0;
  const uncertainty = Math.hypot(lines, references);
  const beyond = Math.abs(relative) > SIGNIFICANT * uncertainty;
  // The reference can only widen the uncertainty: what the lines alone can't tell apart, it can't either.
  if (reference === 'not stated') {
    return { pressure, relative, uncertainty: null, significant: beyond ? null : false };
  }
  return { pressure, relative, uncertainty, significant: beyond };
}

function meaningOf(
  earlier: ComparedCertificate['condition'],
  later: ComparedCertificate['condition'],
): ChangeMeaning {
  if (later === 'as left') return 'step';
  return earlier === 'as left' ? 'drift' : 'not known';
}

function referenceOf(
  earlier: ComparedCertificate,
  later: ComparedCertificate,
  sameLaboratory: boolean,
): Drift['reference'] {
  if (sameLaboratory) return 'cancels';
  return earlier.reference === null || later.reference === null ? 'not stated' : 'independent';
}

function commonPressures(earlier: Line, later: Line, [low, high]: readonly [number, number]): number[] {
  const distinct = [...new Set(later.points.map(({ pressure }) => pressure))].sort((a, b) => a - b);
  const listed = distinct.filter((pressure) =>
    earlier.points.some((point) => Math.abs(point.pressure - pressure) <= SAME_PRESSURE * pressure),
  );
  return listed.filter((pressure) => pressure >= low && pressure <= high);
}

function lineInputs({ line, reference }: ComparedCertificate, which: string): RelationInput[] {
  const any = [-Number.MAX_VALUE, Number.MAX_VALUE] as const;
  return [
    within('a', `intercept of the ${which} line, N·m`, line.intercept, any, 'fit the certificate’s points'),
    positive('b', `slope of the ${which} line, N·m/Pa`, line.slope, 'fit the certificate’s points'),
    within(
      'u(a)',
      `uncertainty of the ${which} intercept`,
      line.interceptUncertainty,
      [0, any[1]],
      'fit the points',
    ),
    within('u(b)', `uncertainty of the ${which} slope`, line.slopeUncertainty, [0, any[1]], 'fit the points'),
    within('cov', `covariance of the ${which} line`, line.covariance, any, 'fit the points'),
    within(
      'n',
      `points of the ${which} certificate`,
      line.points.length,
      [1, 10_000],
      'enter the certificate’s points',
    ),
    ...line.points.map(({ pressure }) =>
      within(
        'p',
        `pressure of the ${which} certificate, Pa`,
        pressure,
        [0, 1e12],
        'enter it from the certificate',
      ),
    ),
    within(
      'ur',
      `relative uncertainty of the ${which} reference`,
      reference ?? 0,
      [0, 1],
      'take it from the certificate',
    ),
  ];
}
