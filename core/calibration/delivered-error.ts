import type { CertificateLineView } from '../contract/tool.ts';
import { compute, type Outcome, positive, type RelationInput, within } from '../findings/outcome.ts';
import { loadInterval } from '../uncertainty/probabilities.ts';
import { lineUncertainty } from './line.ts';
import { torqueAtPressure } from './reading.ts';

const EVALUATE = 'evaluate it from the readings';

/** Line a setting was made by. */
export type IntendedLine = Pick<CertificateLineView, 'intercept' | 'slope'>;

/** Line a tool really had, with what it leaves uncertain. */
export type DeliveredLine = Pick<
  CertificateLineView,
  'intercept' | 'slope' | 'interceptUncertainty' | 'slopeUncertainty' | 'covariance' | 'residualDeviation'
>;

/** Error of what was delivered, as a fraction of what was intended. */
export interface DeliveredError {
  /** (delivered − intended)/intended: negative when the joint got less than the sheet says. */
  readonly error: number;
  /** Standard uncertainty of the error; null when a part of it is not known. */
  readonly uncertainty: number | null;
  /** N·m */
  readonly intended: number;
  readonly delivered: number;
}

/**
 * Error of the torque a wrench delivered at an event's pressure. The intended torque is a number on a sheet and has no
 * uncertainty; the delivered one has that of its line, of one use, and of the laboratory's reference.
 *
 * Equation: e = (Td(p) − Ti(p))/Ti(p); u(e) = √(u²(line) + s² + (ur·Td)²)/Ti.
 * @param intended line the setting was made by, SI
 * @param delivered line really in force then, SI: the as-found line of the failing certificate
 * @param pressure of the event, Pa, above 0; null when not recorded
 * @param reference relative standard uncertainty of the laboratory's reference, 1, 0 to 1; null when not stated
 * @returns the error with its standard uncertainty
 * @example deliveredError({ intercept: 0, slope: 1.5e-5 }, { intercept: 0, slope: 1.38e-5, interceptUncertainty: 0,
 * slopeUncertainty: 0, covariance: 0, residualDeviation: 0 }, 3e7, 0.005).value?.error // -0.08
 * @source JCGM 100:2008 (GUM), 5.1.2 and Annex H.3; sign as a delivered error, see `decision.ts` for ISO 6789
 */
export function deliveredError(
  intended: IntendedLine,
  delivered: DeliveredLine,
  pressure: number | null,
  reference: number | null,
): Outcome<DeliveredError> {
  const at = compute(
    {
      p: positive('p', 'pressure of the event, Pa', pressure, 'take it from the event’s record'),
      ur: fraction('ur', 'relative standard uncertainty of the reference', reference ?? 0),
    },
    (v) => ({
      ti: torqueAtPressure(intended, v.p),
      td: torqueAtPressure(delivered, v.p),
      own: Math.hypot(lineUncertainty(delivered, v.p), delivered.residualDeviation),
      ur: v.ur,
    }),
  );
  if (at.value === null) return at;
  const { ti, td, own, ur } = at.value;
  const u = reference === null ? null : Math.hypot(own, ur * td);
  return errorOf(ti, td, u);
}

/**
 * Error of the torque when the gauge showed another pressure than there was.
 *
 * Equation: e = (T(p true) − T(p intended))/T(p intended); u(e) = b·u(p true)/T(p intended).
 * @param line the wrench's line, SI
 * @param intended true pressure the setting meant, Pa, above 0
 * @param actual true pressure there was, by the gauge's as-found certificate, Pa, at least 0
 * @param uncertainty standard uncertainty of the actual pressure, Pa, at least 0; null when not known
 * @returns the error with its standard uncertainty from the pressure alone
 * @example gaugeTorqueError({ intercept: -6, slope: 1.5e-5 }, 260e5, 250e5, 1e5).value?.error // -0.0391
 * @source JCGM 100:2008 (GUM), 5.1.2; T = a + b·p of the certificate
 */
export function gaugeTorqueError(
  line: IntendedLine,
  intended: number | null,
  actual: number | null,
  uncertainty: number | null,
): Outcome<DeliveredError> {
  const at = compute(
    {
      pi: positive('pi', 'true pressure the setting meant, Pa', intended, 'take it from the setting'),
      p: pressureInput('p', 'true pressure, Pa', actual),
      u: pressureInput('u(p)', 'standard uncertainty of the true pressure, Pa', uncertainty ?? 0),
    },
    (v) => ({
      ti: torqueAtPressure(line, v.pi),
      t: torqueAtPressure(line, v.p),
      u: Math.abs(line.slope) * v.u,
    }),
  );
  if (at.value === null) return at;
  return errorOf(at.value.ti, at.value.t, uncertainty === null ? null : at.value.u);
}

function errorOf(intended: number, delivered: number, u: number | null): Outcome<DeliveredError> {
  return compute(
    { ti: positive('Ti', 'intended torque, N·m', intended, 'the line gives no torque at this pressure') },
    ({ ti }) => ({
      error: (delivered - ti) / ti,
      uncertainty: u === null ? null : u / ti,
      intended: ti,
      delivered,
    }),
  );
}

function pressureInput(symbol: string, name: string, value: number | null): RelationInput {
  return within(symbol, name, value, [0, 1e12], 'read the gauge’s as-found certificate');
}

function fraction(symbol: string, name: string, value: number): RelationInput {
  return within(symbol, name, value, [0, 1], 'enter it as a fraction, from the certificate');
}

/**
 * Error of the bolt load when a batch of lubricant or of studs had another nut factor than the setting assumed.
 *
 * Equation: F = T/(K·D): e = K assumed/K real − 1; u(e) = (K assumed/K real)·u(K real)/K real.
 * @param assumed K of the setting, 1, above 0
 * @param real K of the batch as measured, 1, above 0
 * @param uncertainty standard uncertainty of the real K, 1, at least 0; null when not known
 * @returns error of the load with its standard uncertainty
 * @example batchLoadError(0.15, 0.2, 0.01).value?.error // -0.25
 * @source short form T = K·D·F; JCGM 100:2008 (GUM), 5.1.6
 */
export function batchLoadError(
  assumed: number | null,
  real: number | null,
  uncertainty: number | null,
): Outcome<Pick<DeliveredError, 'error' | 'uncertainty'>> {
  return compute(
    {
      assumed: positive('K', 'nut factor of the setting', assumed, 'take it from the setting'),
      real: positive('K', 'nut factor of the batch', real, 'measure it'),
      u: within(
        'u(K)',
        'standard uncertainty of the batch’s nut factor',
        uncertainty ?? 0,
        [0, 10],
        EVALUATE,
      ),
    },
    (v) => ({
      error: v.assumed / v.real - 1,
      uncertainty: uncertainty === null ? null : ((v.assumed / v.real) * v.u) / v.real,
    }),
  );
}

/** Load a joint really got. */
export interface RealLoad {
  /** N */
  readonly load: number;
  /** 95 % of loads lie between, N; null when the error's uncertainty is not known. */
  readonly interval: readonly [number, number] | null;
  /** Whether the interval carries the scatter of friction; without it, it speaks of the tool alone. */
  readonly withFriction: boolean;
}

/**
 * Load a bolt really got when the tool, the gauge or the batch was off.
 *
 * Equation: F' = F·(1 + e); u(F')/F' = √((u(e)/(1 + e))² + v²); 95 % lognormal.
 * @param intended load the sheet promises, N, above 0
 * @param error e with its standard uncertainty, above −1
 * @param friction relative standard uncertainty of the load from friction, as entered, 1, 0 to 1; null when not entered
 * @returns load with its interval, which says whether friction is in it; no interval without the error's uncertainty
 * @example realLoad(100e3, { error: -0.08, uncertainty: 0.01 }, 0.1).value?.load // 92e3 N
 * @source JCGM 100:2008 (GUM), 5.1.6; lognormal because friction stands in the denominator
 */
export function realLoad(
  intended: number | null,
  { error, uncertainty }: Pick<DeliveredError, 'error' | 'uncertainty'>,
  friction: number | null,
): Outcome<RealLoad> {
  const scaled = compute(
    {
      F: positive('F', 'load the sheet promises, N', intended, 'take it from the setting'),
      factor: positive(
        '1 + e',
        'delivered over intended',
        1 + error,
        'a tool that gave nothing leaves no load',
      ),
      u: within('u(e)', 'standard uncertainty of the error', uncertainty ?? 0, [0, 10], EVALUATE),
      v: fraction('v', 'relative standard uncertainty from friction', friction ?? 0),
    },
    (v) => ({ load: v.F * v.factor, tool: v.u / v.factor, friction: v.v }),
  );
  if (scaled.value === null) return scaled;
  const { load, tool } = scaled.value;
  const withFriction = friction !== null;
  if (uncertainty === null) return { value: { load, interval: null, withFriction }, missing: [] };
  const interval = loadInterval(
    { load, common: tool, perBolt: scaled.value.friction, boltCount: 1, shape: 'lognormal' },
    'single bolt',
    0.95,
  );
  if (interval.value === null) return interval;
  return { value: { load, interval: interval.value, withFriction }, missing: [] };
}
