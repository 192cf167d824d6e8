import {
  compute,
  noSolution,
  type Outcome,
  positive,
  type RelationInput,
  within,
} from '../findings/outcome.ts';
import { studentQuantile } from '../uncertainty/student-t.ts';
import { inflationOf, type WeightedLine } from './weighted-line.ts';

/**
 * Uncertainty that all points share, because one reference measured them: it joins after the fit and stays whole however
 * many points there are.
 */
export interface CommonUncertainty {
  /** Standard uncertainty of an error that shifts every ordinate alike, in the ordinate's unit, at least 0. */
  readonly shift: number;
  /** Standard uncertainty of an error that scales every ordinate alike, as a fraction, at least 0. */
  readonly scale: number;
}

export const NO_COMMON: CommonUncertainty = { shift: 0, scale: 0 };

/** What a line says of one ordinate, and how well. */
export interface Prediction {
  readonly value: number;
  /** Standard uncertainty from the fitted line, from one use's scatter, and from the common reference. */
  readonly line: number;
  readonly scatter: number;
  readonly common: number;
  readonly combined: number;
  /** Effective degrees of freedom; null when unlimited. */
  readonly degreesOfFreedom: number | null;
  /** Student factor for the probability asked. */
  readonly coverage: number;
  readonly interval: readonly [number, number];
}

/** The abscissa that gives an ordinate: the pressure of a setting. */
export interface InversePrediction {
  readonly value: number;
  readonly uncertainty: number;
  readonly interval: readonly [number, number];
  readonly coverage: number;
}

/**
 * Standard uncertainty of a weighted line at an abscissa, without what the points share.
 *
 * Equation: u² = max(1, χ²/(n − 2))·(u²(a) + x²·u²(b) + 2·x·cov(a, b)).
 * @param line fitted line
 * @param x abscissa, any finite value; Pa for a certificate
 * @returns standard uncertainty in the ordinate's unit
 * @example weightedLineUncertainty(fitted, 1.5) // 0.095
 * @source JCGM 100:2008 (GUM), equation (H.15); factor as in `inflationOf`
 */
export function weightedLineUncertainty(line: WeightedLine, x: number): number {
  const { interceptUncertainty, slopeUncertainty, covariance } = line;
  const variance = interceptUncertainty ** 2 + (x * slopeUncertainty) ** 2 + 2 * x * covariance;
  return inflationOf(line) * Math.sqrt(Math.max(0, variance));
}

/**
 * Ordinate the line gives at an abscissa, for one use, with its interval.
 *
 * Equation: y = a + b·x; u² = u²(line) + s² + shift² + (scale·y)²; y ± t(ν)·u.
 * @param line fitted line
 * @param x abscissa, any finite value; Pa for a certificate
 * @param common what all points share, each part at least 0
 * @param probability of the interval, 1, above 0 and below 1
 * @returns value, its parts and interval
 * @example predict(fitted, 2, NO_COMMON, 0.95).value?.value // 4.98
 * @source JCGM 100:2008 (GUM), Annexes G.4 and H.3; ISO/TS 28037:2010, 11
 */
export function predict(
  line: WeightedLine,
  x: number,
  common: CommonUncertainty,
  probability: number,
): Outcome<Prediction> {
  const parts = compute(
    { x: within('x', 'abscissa', x, ANY, 'enter a number') },
    (v) => {
      const value = line.intercept + line.slope * v.x;
      const fromLine = weightedLineUncertainty(line, v.x);
      const shared = Math.hypot(common.shift, common.scale * value);
      const scatter = line.residualDeviation;
      const combined = Math.hypot(fromLine, scatter, shared);
      // Uncertainties the points state count as known; those that come from the scatter have its n − 2.
      const counted =
        line.weighting === 'equal' || inflationOf(line) > 1 ? Math.hypot(fromLine, scatter) : scatter;
      return { value, line: fromLine, scatter, common: shared, combined, counted };
    },
    [...commonInputs(common), probabilityInput(probability)],
  );
  if (parts.value === null) return parts;
  const { counted, ...shown } = parts.value;
  const degreesOfFreedom = counted === 0 ? null : line.degreesOfFreedom * (shown.combined / counted) ** 4;
  const factor = studentQuantile((1 + probability) / 2, degreesOfFreedom ?? UNLIMITED);
  if (factor.value === null) return factor;
  const half = factor.value * shown.combined;
  return {
    value: {
      ...shown,
      degreesOfFreedom,
      coverage: factor.value,
      interval: [shown.value - half, shown.value + half],
    },
    missing: [],
  };
}

/**
 * Abscissa that gives an ordinate: the pressure to set for a torque, with what one use and the line leave uncertain.
 *
 * Equation: x = (y − a)/b; u(x) = √(u²(line at x) + u²(y) + shift² + (scale·y)²)/|b|.
 * @param line fitted line, slope not 0
 * @param y ordinate wanted or read, any finite value; N·m for a certificate
 * @param spread standard uncertainty of y in one use, at least 0; null takes the scatter s about the line
 * @param common what all points share
 * @param probability of the interval, 1, above 0 and below 1
 * @returns abscissa with its standard uncertainty, first order
 * @example inverse(fitted, 4.98, null, NO_COMMON, 0.95).value?.value // 2.00
 * @source ISO/TS 28037:2010, 11.1; EURACHEM/CITAC CG 4, Appendix E.4
 */
export function inverse(
  line: WeightedLine,
  y: number,
  spread: number | null,
  common: CommonUncertainty,
  probability: number,
): Outcome<InversePrediction> {
  if (line.slope === 0) return noSolution('b', 'slope', 'a level line can’t be read backwards');
  const parts = compute(
    {
      y: within('y', 'ordinate', y, ANY, 'enter a number'),
      spread: within(
        'u(y)',
        'standard uncertainty of the ordinate',
        spread ?? line.residualDeviation,
        [0, Number.MAX_VALUE],
        'evaluate it',
      ),
    },
    (v) => {
      const value = (v.y - line.intercept) / line.slope;
      const combined = Math.hypot(
        weightedLineUncertainty(line, value),
        v.spread,
        common.shift,
        common.scale * v.y,
      );
      return { value, uncertainty: combined / Math.abs(line.slope) };
    },
    [...commonInputs(common), probabilityInput(probability)],
  );
  if (parts.value === null) return parts;
  const estimated = line.weighting === 'equal' || spread === null || inflationOf(line) > 1;
  const factor = studentQuantile((1 + probability) / 2, estimated ? line.degreesOfFreedom : UNLIMITED);
  if (factor.value === null) return factor;
  const { value, uncertainty } = parts.value;
  const half = factor.value * uncertainty;
  return {
    value: { value, uncertainty, coverage: factor.value, interval: [value - half, value + half] },
    missing: [],
  };
}

const ANY = [-Number.MAX_VALUE, Number.MAX_VALUE] as const;
/** From here on Student's t is the normal distribution to more digits than a report has. */
const UNLIMITED = 1e9;

function commonInputs({ shift, scale }: CommonUncertainty): RelationInput[] {
  return [
    within('u', 'common standard uncertainty', shift, [0, Number.MAX_VALUE], 'take it from the certificate'),
    within('ur', 'common relative standard uncertainty', scale, [0, 1], 'take it from the certificate'),
  ];
}

function probabilityInput(probability: number): RelationInput {
  return positive('p', 'probability', probability < 1 ? probability : Number.NaN, 'choose 0.95');
}
