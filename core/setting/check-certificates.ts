import { certifiedRange } from '../calibration/setting.ts';
import { type CertificateStanding, lapsesDuringJob } from '../calibration/validity.ts';
import type { Raised } from '../findings/finding.ts';
import { atSettings, atTool, raise } from '../findings/raise.ts';
import { showQuantity } from '../text/number.ts';
import { partText } from './check-set.ts';
import type { Hydraulics } from './hydraulics.ts';
import type { AnyTool, CardInput } from './input.ts';
import { pressureUnit } from './show.ts';

type Standing = CertificateStanding<AnyTool['certificates'][number]>;

/** Farthest a point may lie from the line, as a share of the highest certified torque: a choice of this program. */
const LARGEST_BEND = 0.05;
const SLACK = 1 + 1e-9;

/**
 * Looks at the certificates of drive unit and gauge on the job’s days.
 *
 * @param input input of the card
 * @param hydraulics chosen set as it stands on the job’s first day
 * @returns findings; none when nothing stands against it
 * @example checkCertificates({ ...input, endsOn: '2027-06-01' }, hydraulics).length > 0 // true
 * @source validity as written on the certificate; ISO/IEC 17025:2017, 7.8.4
 */
export function checkCertificates(input: CardInput, hydraulics: Hydraulics): Raised[] {
  const { gauge } = input.set;
  return [
    ...(gauge === null ? [] : checkValidity(input, gauge, hydraulics.gaugeStanding)),
    ...checkDriveCertificate(input, hydraulics),
    ...gaugePoints(input, hydraulics),
  ];
}

/**
 * Looks at the certificate of one wrench on the job’s days, and at what it was calibrated with.
 *
 * @param input input of the card, with this wrench in its set
 * @param hydraulics this wrench as it stands on the job’s first day
 * @returns findings; none when nothing stands against it
 * @example checkDriveCertificate({ ...input, endsOn: '2027-06-01' }, hydraulics).length > 0 // true
 * @source validity as written on the certificate; ISO/IEC 17025:2017, 7.8.4
 */
export function checkDriveCertificate(input: CardInput, hydraulics: Hydraulics): Raised[] {
  const { drive } = input.set;
  return [
    ...(drive === null ? [] : checkValidity(input, drive, hydraulics.driveStanding)),
    ...driveCertificate(input, hydraulics),
  ];
}

/**
 * Looks at a tool’s certificate on the job’s days and at its result.
 *
 * @param input input of the card
 * @param tool tool that has to have a certificate
 * @param standing its certificate on the job’s first day
 * @returns findings; none when nothing stands against it
 * @example checkValidity(input, input.set.drive, { state: 'none' })[0].code // 'certificate_missing'
 * @source validity as written on the certificate; ISO/IEC 17025:2017, 7.8.4
 */
export function checkValidity(input: CardInput, tool: AnyTool, standing: Standing | null): Raised[] {
  const { startsOn, endsOn } = input;
  const about = { subject: tool.data.number, place: atTool(tool, 'certificates') };
  if (standing === null || standing.state === 'none') {
    return [
      raise('certificate_missing', () => ({ part: partText(tool), reason: 'none' }), {
        ...about,
        severity: 'refusal',
        source: 'tool register',
      }),
    ];
  }
  const { number, calibratedOn, validUntil, validityBasis, result, condition } = standing.certificate.data;
  const findings: Raised[] = [];
  if (standing.state === 'later') {
    findings.push(
      raise('certificate_later_than_job', () => ({ certificate: number, calibratedOn, startsOn }), {
        ...about,
        severity: 'refusal',
        source: `certificate ${number}`,
        value: calibratedOn,
        limit: startsOn,
      }),
    );
  } else if (standing.state === 'lapsed') {
    findings.push(
      raise('certificate_lapsed', () => ({ certificate: number, validUntil, startsOn }), {
        ...about,
        severity: 'refusal',
        source: validityBasis,
        value: validUntil,
        limit: startsOn,
      }),
    );
  } else if (lapsesDuringJob(standing.certificate, endsOn)) {
    findings.push(
      raise('certificate_lapses_during_job', () => ({ certificate: number, validUntil, endsOn }), {
        ...about,
        severity: 'warning',
        source: validityBasis,
        value: validUntil,
        limit: endsOn,
      }),
    );
  }
  if (result === 'outside limits') {
    findings.push(
      raise('certificate_outside_limits', () => ({ certificate: number, condition }), {
        ...about,
        severity: 'refusal',
        source: `certificate ${number}`,
        value: result,
      }),
    );
  }
  return findings;
}

function driveCertificate(input: CardInput, { certificate, line }: Hydraulics): Raised[] {
  const { drive, cassette, reducers, pump, gauge } = input.set;
  if (drive === null || certificate === null) return [];
  const about = { subject: drive.data.number, place: atTool(drive, 'certificates') };
  const { number, withToolIds, measured } = certificate.data;
  const source = `certificate ${number}`;
  const findings: Raised[] = [];
  if (line === null) {
    findings.push(
      raise('certificate_missing', () => ({ part: partText(drive), reason: 'no usable points' }), {
        ...about,
        severity: 'refusal',
        source,
      }),
    );
  }
  const farthest = Math.abs(line?.largestResidual ?? 0);
  const highest = Math.max(0, ...(line?.points.map(({ torque }) => torque) ?? []));
  if (farthest > LARGEST_BEND * highest) {
    findings.push(
      raise(
        'certificate_not_straight',
        () => ({
          certificate: number,
          residual: showQuantity(farthest, 'N.m', 3),
          share: showQuantity(farthest / highest, 'percent', 2),
        }),
        {
          ...about,
          severity: 'refusal',
          source: `certificate ${number}; limit of this program: ${showQuantity(LARGEST_BEND, 'percent')} of the highest torque`,
          value: farthest,
          limit: LARGEST_BEND * highest,
          unit: 'N.m',
        },
      ),
    );
  }
  const chosen = [...(cassette === null ? [] : [cassette.id]), ...reducers.map((reducer) => reducer.id)];
  // A certificate that names pump and gauge speaks for these; one that leaves them out speaks for any.
  const named = withToolIds.filter((id) => id !== pump?.id && id !== gauge?.id);
  if (cassette !== null && !sameSet(chosen, named)) {
    findings.push(
      raise('combination_not_certified', () => ({ certificate: number }), {
        ...about,
        severity: 'warning',
        place: atSettings('cassetteId'),
        source,
      }),
    );
  }
  if (measured.kind === 'pressure-torque' && measured.expandedUncertainty === null) {
    findings.push(
      raise('reference_uncertainty_unknown', () => ({ certificate: number }), {
        ...about,
        severity: 'note',
        source,
      }),
    );
  }
  return findings;
}

function sameSet(a: readonly string[], b: readonly string[]): boolean {
  const inB = new Set(b);
  return inB.size === new Set(a).size && a.every((id) => inB.has(id));
}

function gaugePoints(input: CardInput, { gaugeStanding, correction }: Hydraulics): Raised[] {
  const { gauge } = input.set;
  if (gauge === null || correction !== null) return [];
  if (gaugeStanding?.state !== 'in force' && gaugeStanding?.state !== 'lapsed') return [];
  return [
    raise('gauge_certificate_points_missing', () => ({ reason: 'no points' }), {
      severity: 'note',
      subject: gauge.data.number,
      place: atTool(gauge, 'certificates'),
      source: `certificate ${gaugeStanding.certificate.data.number}`,
    }),
  ];
}

/**
 * Says that the dialled pressure lies outside the points of the gauge’s certificate.
 *
 * @param input input of the card
 * @param pressure p, Pa, at least 0
 * @returns one finding, or none without a gauge
 * @example gaugeOutsidePoints(input, 260e5).length // 1
 * @source ISO/IEC 17025:2017, 7.8.4: a certificate speaks for the points it lists
 */
export function gaugeOutsidePoints(input: CardInput, pressure: number): Raised[] {
  const { gauge } = input.set;
  if (gauge === null) return [];
  return [
    raise('gauge_certificate_points_missing', () => ({ reason: 'outside the points' }), {
      severity: 'note',
      subject: gauge.data.number,
      place: atTool(gauge, 'certificates'),
      source: 'certificate of the gauge',
      value: pressure,
      unit: pressureUnit(input),
    }),
  ];
}

/** A pass by name with its true pressure, Pa; the last one is the final. */
export interface PassPressure {
  readonly name: string;
  readonly pressure: number;
  readonly final: boolean;
}

/**
 * Looks at the pressures of the passes against the points the certificate holds.
 *
 * @param input input of the card
 * @param hydraulics chosen set as it stands on the job’s first day
 * @param passes passes by name with their true pressure, Pa
 * @returns findings; none when nothing stands against it
 * @example checkCertifiedRange(input, hydraulics, [{ name: 'Full', pressure: 260e5 }]).length // 0
 * @source ISO/IEC 17025:2017, 7.8.4: a certificate speaks for the points it lists
 */
export function checkCertifiedRange(
  input: CardInput,
  { line, certificate }: Hydraulics,
  passes: readonly PassPressure[],
): Raised[] {
  const { drive } = input.set;
  if (line === null || certificate === null || drive === null) return [];
  const { lowest, highest } = certifiedRange(line);
  const unit = pressureUnit(input);
  const about = {
    subject: drive.data.number,
    place: atSettings('driveId'),
    source: `certificate ${certificate.data.number}`,
    unit,
  };
  const findings: Raised[] = [];
  const above = passes.find((pass) => pass.pressure > highest * SLACK);
  if (above !== undefined) {
    findings.push(
      raise(
        'above_certified_points',
        () => ({ pressure: showQuantity(above.pressure, unit), highest: showQuantity(highest, unit) }),
        { ...about, severity: 'refusal', value: above.pressure, limit: highest },
      ),
    );
  }
  const below = passes.filter((pass) => pass.pressure * SLACK < lowest);
  const least = below[0];
  if (least !== undefined) {
    const final = below.some((pass) => pass.final);
    findings.push(
      raise(
        'below_certified_points',
        () => ({
          pressure: showQuantity(least.pressure, unit),
          lowest: showQuantity(lowest, unit),
          passes: below.map((pass) => pass.name),
          final,
        }),
        { ...about, severity: final ? 'warning' : 'note', value: least.pressure, limit: lowest },
      ),
    );
  }
  return findings;
}
