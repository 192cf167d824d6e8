import { lineOfCertificate } from '../../../core/calibration/certificate.ts';
import { referenceOf } from '../../../core/calibration/certificate-fit.ts';
import { compareCertificates, type Drift } from '../../../core/calibration/drift.ts';
import { forecastByDate } from '../../../core/calibration/forecast-date.ts';
import { COMMON_STAIRCASE, suggestInterval } from '../../../core/calibration/interval.ts';
import { torqueAtPressure } from '../../../core/calibration/reading.ts';
import type { CertificateData, Measured } from '../../../core/contract/tool.ts';
import type { CalibrationHistory } from '../../../core/contract/tool-record.ts';
import { driftWords, forecastWords } from '../../../core/text/calibration-words.ts';
import { intervalWords } from '../../../core/text/interval-words.ts';
import { daysTo } from '../../../core/tools/calendar.ts';
import { asFoundErrors, type ErrorAt, verdictOf } from './certificate-analysis.ts';

/** Mean length of a month in the Gregorian calendar, days. */
const MONTH = 30.436875;
/** No tool is suggested a longer interval than this, whatever its results. */
const LONGEST_MONTHS = 60;

/**
 * What a tool's certificates say together: change between the last two, when the limit is reached, the next interval.
 * `certificates` stand in the order of their days.
 */
export function calibrationHistory(certificates: readonly CertificateData[]): CalibrationHistory {
  const results = asFoundResults(certificates);
  return {
    drift: driftOf(certificates),
    forecast: forecastOf(certificates, results),
    interval: intervalOf(certificates.at(-1), results),
  };
}

interface Result {
  readonly data: CertificateData;
  readonly worst: ErrorAt;
}

/** As-found error of each certificate that has one, the worst of its points. */
function asFoundResults(certificates: readonly CertificateData[]): Result[] {
  return certificates.flatMap((data, index) => {
    const errors = asFoundErrors(data, certificates[index - 1] ?? null) ?? [];
    const worst = errors.reduce<ErrorAt | null>(
      (most, one) => (most === null || size(one) > size(most) ? one : most),
      null,
    );
    return worst === null || worst.error === null ? [] : [{ data, worst }];
  });
}

const size = ({ error }: ErrorAt) => Math.abs(error ?? 0);

function driftOf(certificates: readonly CertificateData[]): CalibrationHistory['drift'] {
  const [before, after] = certificates.slice(-2);
  if (before === undefined || after === undefined) return null;
  const line = lineOfCertificate(before);
  const found = lineOfCertificate({ measured: after.asFound ?? after.measured });
  if (line === null || found === null) return null;
  const drift = compareCertificates(
    { line, condition: before.condition, reference: relativeReference(before.measured) },
    {
      line: found,
      // Points on arrival, and points after which nothing was adjusted, are as found.
      condition: after.asFound === null ? after.condition : 'as found',
      reference: relativeReference(after.asFound ?? after.measured),
    },
    before.laboratory === after.laboratory,
  ).value;
  if (drift === null) return null;
  return {
    from: before.number,
    to: after.number,
    points: shown(drift).map(({ pressure, relative, uncertainty }) => ({
      pressure,
      before: torqueAtPressure(line, pressure),
      after: torqueAtPressure(found, pressure),
      change: relative,
      uncertainty,
    })),
    significant: drift.largest.significant,
    text: driftWords(drift),
  };
}

/** Without a pressure in common, the place where the two lines differ most. */
const shown = ({ changes, largest }: Drift) => (changes.length === 0 ? [largest] : changes);

function relativeReference(measured: Measured): number | null {
  return measured.kind === 'pressure-torque' ? (referenceOf(measured)?.scale ?? null) : null;
}

function forecastOf(
  certificates: readonly CertificateData[],
  results: readonly Result[],
): CalibrationHistory['forecast'] {
  const rule = certificates.findLast(({ decisionRule }) => decisionRule !== null)?.decisionRule ?? null;
  const nothing = { on: null, earliest: null, latest: null };
  if (rule === null) return { ...nothing, text: 'No certificate states a limit, so none can be reached.' };
  const expanded = results.at(-1)?.worst.expanded ?? null;
  if (rule.guardBand && expanded === null && results.length > 0) {
    return { ...nothing, text: 'Not known: the guard band needs the uncertainty, which is not stated.' };
  }
  const found = forecastByDate(
    results.map(({ data, worst }) => ({
      on: data.calibratedOn,
      error: worst.error ?? 0,
      uncertainty: null,
      left: errorLeft(data),
    })),
    rule.limit.si,
    rule.guardBand ? (expanded ?? 0) : 0,
  );
  if (found.value === null) {
    const [gap] = found.missing;
    return {
      ...nothing,
      text: `Not known: ${gap?.name ?? 'the results'}, ${gap?.remedy ?? 'look at the certificates'}.`,
    };
  }
  const { on, between } = found.value;
  return {
    on,
    earliest: between?.[0] ?? null,
    latest: between?.[1] ?? null,
    text: forecastWords(found.value),
  };
}

/** A wrench's next settings are made by the new line, so it starts again from no error; others keep their own. */
function errorLeft({ measured, asFound }: CertificateData): number | null {
  if (measured.kind === 'pressure-torque') return 0;
  if (asFound === null) return null;
  const pairs =
    measured.kind === 'gauge'
      ? measured.points.map(({ indicated, reference }) => [indicated.si, reference.si] as const)
      : measured.points.map(({ set, reference }) => [set.si, reference.si] as const);
  const errors = pairs.filter(([aim]) => aim > 0).map(([aim, reference]) => (reference - aim) / aim);
  return errors.reduce((worst, error) => (Math.abs(error) > Math.abs(worst) ? error : worst), 0);
}

function intervalOf(
  newest: CertificateData | undefined,
  results: readonly Result[],
): CalibrationHistory['interval'] {
  const nothing = { days: null, uses: null };
  if (newest === undefined) return { ...nothing, text: 'Not known: no certificate is on the register.' };
  const present = Math.round((daysTo(newest.calibratedOn, newest.validUntil) + 1) / MONTH);
  const judged = results.flatMap(({ data, worst }) => {
    const verdict = verdictOf(data, [worst]);
    if (verdict === null || verdict.verdict === 'not known' || data.decisionRule === null) return [];
    const share = size(worst) / data.decisionRule.limit.si;
    return [{ verdict: BACK[verdict.verdict], share }];
  });
  const found = suggestInterval(present < 1 ? null : present, judged, COMMON_STAIRCASE, {
    least: 1,
    most: LONGEST_MONTHS,
  }).value;
  if (found === null)
    return { ...nothing, text: 'Not known: the interval in force is under a month or over five years.' };
  return { days: Math.round(found.suggested * MONTH), uses: null, text: intervalWords(found, 'months') };
}

const BACK = { accepted: 'accept', rejected: 'reject', 'not sure': 'conditional' } as const;
