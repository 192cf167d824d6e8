import { lineOfCertificate } from '../../../core/calibration/certificate.ts';
import { certificateFit, linePoints, referenceOf } from '../../../core/calibration/certificate-fit.ts';
import { decideCertificate, type JudgedPoint } from '../../../core/calibration/decision.ts';
import type { IntendedLine } from '../../../core/calibration/delivered-error.ts';
import { hysteresis } from '../../../core/calibration/hysteresis.ts';
import { leaveOneOut } from '../../../core/calibration/leave-one-out.ts';
import { pointErrors } from '../../../core/calibration/point-errors.ts';
import { predict } from '../../../core/calibration/prediction.ts';
import type { CertificateAnalysis } from '../../../core/contract/certificate-view.ts';
import type {
  CertificateData,
  CertificateLineView,
  Measured,
  ToolProperties,
} from '../../../core/contract/tool.ts';
import { certificateDoubts, OUTLIER_RISK } from './certificate-doubts.ts';

type TorqueMeasured = Extract<Measured, { kind: 'pressure-torque' }>;

/** Pressures nearer than this part of the highest count as one. */
const SAME_PRESSURE = 1e-3;
const COVERAGE = 2;
const PROBABILITY = 0.95;

/** Certificate that settings were made by until this one; null for the first. */
export type Before = CertificateData | null;

/** What a certificate's points say, and how they stand against its own limit. */
export function analyse(
  data: CertificateData,
  properties: ToolProperties,
  before: Before,
  today: string,
): CertificateAnalysis {
  const doubts = certificateDoubts(data, properties, today);
  const verdicts = { asLeft: asLeftVerdict(data), asFound: asFoundVerdict(data, before) };
  const { measured } = data;
  if (measured.kind !== 'pressure-torque') {
    return {
      doubts,
      weighted: false,
      correlation: null,
      hysteresis: null,
      leaveOneOut: null,
      ...verdicts,
      settingUncertainty: [],
    };
  }
  const fit = certificateFit(measured).value;
  return {
    doubts,
    weighted: fit !== null && fit.weighting !== 'equal',
    correlation: fit?.correlation ?? null,
    hysteresis: hysteresisOf(measured),
    leaveOneOut: leaveOneOutOf(measured),
    ...verdicts,
    settingUncertainty: settingUncertainty(measured),
  };
}

/** Line of the points as found; null where there are none, or no line goes through them. */
export function asFoundLineOf({ asFound }: CertificateData): CertificateLineView | null {
  return asFound === null ? null : lineOfCertificate({ measured: asFound });
}

/** Points of one series with their errors, each at its pressure or torque. */
export interface ErrorAt extends JudgedPoint {
  readonly at: number;
}

/** Errors on arrival: against the line in force until then, or of a gauge and a hand torque wrench as they are. */
export function asFoundErrors(data: CertificateData, before: Before): ErrorAt[] | null {
  const measured = data.asFound ?? data.measured;
  const intended = before === null ? null : lineOfCertificate(before);
  return errorsOf(measured, intended);
}

/** Errors of points; null for a wrench without a line to hold them against. */
function errorsOf(measured: Measured, intended: IntendedLine | null): ErrorAt[] | null {
  if (measured.kind === 'pressure-torque') {
    if (intended === null) return null;
    const points = measured.points.map(({ pressure, torque, direction }) => ({
      pressure: pressure.si,
      torque: torque.si,
      direction,
    }));
    const expanded = measured.expandedUncertainty?.si ?? null;
    return pointErrors(points, intended, expanded)
      .filter(({ error }) => error !== null)
      .map(({ pressure, ...point }) => ({ at: pressure, ...point }));
  }
  const pairs =
    measured.kind === 'gauge'
      ? measured.points.map(({ indicated, reference }) => [indicated.si, reference.si] as const)
      : measured.points.map(({ set, reference }) => [set.si, reference.si] as const);
  return pairs
    .filter(([intendedValue]) => intendedValue > 0)
    .map(([at, reference]) => ({ at, error: (reference - at) / at, expanded: null }));
}

type Verdict = NonNullable<CertificateAnalysis['asLeft']>;

const VERDICTS = { accept: 'accepted', reject: 'rejected', conditional: 'not sure' } as const;
const NOT_KNOWN: Verdict = { verdict: 'not known', worst: null, at: null };

/** A wrench is held against the line its settings will be made by. */
function asLeftVerdict(data: CertificateData): Verdict | null {
  return verdictOf(data, errorsOf(data.measured, lineOfCertificate(data)));
}

function asFoundVerdict(data: CertificateData, before: Before): Verdict | null {
  // Points as left after adjustment say nothing of how it arrived.
  if (data.asFound === null && data.measured.kind === 'pressure-torque' && before === null) {
    return data.decisionRule === null ? null : NOT_KNOWN;
  }
  return verdictOf(data, asFoundErrors(data, before));
}

/** Null where the certificate states no limit. */
export function verdictOf(
  { decisionRule }: CertificateData,
  errors: readonly ErrorAt[] | null,
): Verdict | null {
  if (decisionRule === null) return null;
  if (errors === null) return NOT_KNOWN;
  const rule = decisionRule.guardBand ? 'guard band of U' : 'simple acceptance';
  const decided = decideCertificate(errors, decisionRule.limit.si, rule).value;
  if (decided === null) return NOT_KNOWN;
  const worst = errors[decided.worst];
  return { verdict: VERDICTS[decided.verdict], worst: worst?.error ?? null, at: worst?.at ?? null };
}

function hysteresisOf(measured: TorqueMeasured): CertificateAnalysis['hysteresis'] {
  const points = measured.points.map(({ pressure, torque, direction }) => ({
    pressure: pressure.si,
    torque: torque.si,
    direction,
  }));
  const highest = Math.max(...points.map(({ pressure }) => pressure));
  const found = hysteresis(points, SAME_PRESSURE * highest).value;
  if (found === null) return null;
  const { difference, relative, pressure } = found.largest;
  return { largest: difference, relative, pressure };
}

function leaveOneOutOf(measured: TorqueMeasured): CertificateAnalysis['leaveOneOut'] {
  const found = leaveOneOut(linePoints(measured), OUTLIER_RISK).value;
  const farthest = found?.points.find(({ index }) => index === found.farthest);
  if (!found || !farthest || farthest.residual === null || farthest.studentised === null) return null;
  return {
    point: farthest.index,
    pressure: measured.points[farthest.index]?.pressure.si ?? 0,
    residual: farthest.residual,
    studentised: farthest.studentised,
    critical: found.limit,
    outlying: farthest.outlying,
  };
}

/** Of one setting, with what the laboratory's reference leaves uncertain; not known where that is not stated. */
function settingUncertainty(measured: TorqueMeasured): CertificateAnalysis['settingUncertainty'] {
  const line = certificateFit(measured).value;
  const reference = referenceOf(measured);
  const pressures = [...new Set(measured.points.map(({ pressure }) => pressure.si))].sort((a, b) => a - b);
  return pressures.map((pressure) => {
    if (line === null || reference === null) return { pressure, expanded: null };
    const predicted = predict(line, pressure, reference, PROBABILITY).value;
    const known = predicted !== null && predicted.value > 0;
    return { pressure, expanded: known ? (COVERAGE * predicted.combined) / predicted.value : null };
  });
}
