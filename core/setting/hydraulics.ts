import { correctionOfCertificate, lineOfCertificate } from '../calibration/certificate.ts';
import type { GaugeCorrection } from '../calibration/gauge-correction.ts';
import { torqueAtPressure } from '../calibration/reading.ts';
import { certifiedRange, pressureForTorque } from '../calibration/setting.ts';
import { type CertificateStanding, certificateStanding } from '../calibration/validity.ts';
import type { Dial } from '../contract/setting.ts';
import type { CertificateLineView } from '../contract/tool.ts';
import { type GaugeScale, roundToMark } from '../tools/gauge.ts';
import { lowestPressure, lowestTorque, type RatedPart, ratedParts } from '../tools/rating.ts';
import type { AnyTool, CardInput } from './input.ts';

type Certificate = AnyTool['certificates'][number];

/** The chosen set as the pressure sees it. */
export interface Hydraulics {
  readonly parts: readonly RatedPart[];
  readonly driveStanding: CertificateStanding<Certificate> | null;
  readonly gaugeStanding: CertificateStanding<Certificate> | null;
  /** The drive unit's certificate behind the line, in force or just lapsed, and its line. */
  readonly certificate: Certificate | null;
  readonly line: CertificateLineView | null;
  readonly scale: GaugeScale | null;
  readonly correction: GaugeCorrection | null;
  /** Highest pressure that every wrench of the set is certified for; null while none has a line. */
  readonly certified: CertifiedUpTo | null;
  /** Pressures no mark may stand above: ratings, the end of the scale, the highest certified point, Pa. */
  readonly ceilings: readonly number[];
}

interface CertifiedUpTo {
  /** Pa */
  readonly highest: number;
  /** Number of the drive unit whose points end there; null for the first wrench, whose certificate the card names. */
  readonly further: string | null;
}

/** A torque turned into what to dial, and what that really gives. */
export interface Dialled {
  /** True pressure the torque needs before rounding, Pa. */
  readonly wanted: number;
  readonly dial: Dial | null;
  /** True pressure at the dialled mark, Pa, and the torque it gives, N·m; null without a gauge. */
  readonly pressure: number | null;
  readonly torque: number | null;
  /** False when the gauge's certificate has points but the pressure lies outside them. */
  readonly corrected: boolean;
}

/**
 * Reads ratings, certificates and scale of the chosen set as they stand on the job's first day.
 *
 * @param input set and first day of the job
 * @returns ratings, certificate line, gauge correction and scale; null where they are not known
 * @example hydraulicsOf(input).line?.throughOrigin // false
 * @source certificates as recorded; lowest-rated part governs: common practice
 */
export function hydraulicsOf({ set, startsOn }: Pick<CardInput, 'set' | 'startsOn'>): Hydraulics {
  const driveStanding = set.drive === null ? null : certificateStanding(set.drive.certificates, startsOn);
  const gaugeStanding = set.gauge === null ? null : certificateStanding(set.gauge.certificates, startsOn);
  // A lapsed certificate still shows what it said; the refusal beside it keeps the setting from being issued.
  const certificate = usable(driveStanding);
  const line = certificate === null ? null : lineOfCertificate(certificate.data);
  const gaugeCertificate = usable(gaugeStanding);
  const scale =
    set.gauge === null
      ? null
      : {
          unit: set.gauge.data.properties.scaleMax.unit,
          scaleMax: set.gauge.data.properties.scaleMax.si,
          graduation: set.gauge.data.properties.graduation.si,
        };
  const correction = gaugeCertificate === null ? null : correctionOfCertificate(gaugeCertificate.data);
  const parts = ratedParts(set);
  const certified = certifiedUpTo(line, set.further, startsOn);
  const hydraulics = { parts, driveStanding, gaugeStanding, certificate, line, scale, correction, certified };
  return { ...hydraulics, ceilings: ceilingsOf(hydraulics) };
}

/** One pump drives all wrenches: the pressure is certified for the set only where it is for each of them. */
function certifiedUpTo(
  line: CertificateLineView | null,
  further: CardInput['set']['further'],
  startsOn: string,
): CertifiedUpTo | null {
  const ends: CertifiedUpTo[] =
    line === null ? [] : [{ highest: certifiedRange(line).highest, further: null }];
  for (const { drive } of further) {
    const own = drive === null ? null : usable(certificateStanding(drive.certificates, startsOn));
    const ownLine = own === null ? null : lineOfCertificate(own.data);
    if (drive === null || ownLine === null) continue;
    ends.push({ highest: certifiedRange(ownLine).highest, further: drive.data.number });
  }
  return ends.reduce<CertifiedUpTo | null>(
    (lowest, one) => (lowest === null || one.highest < lowest.highest ? one : lowest),
    null,
  );
}

function usable(standing: CertificateStanding<Certificate> | null): Certificate | null {
  return standing !== null && (standing.state === 'in force' || standing.state === 'lapsed')
    ? standing.certificate
    : null;
}

/**
 * Turns a torque into the gauge's mark. A limit that the exact pressure keeps is kept by the mark too.
 *
 * Equation: p = (T − a)/b, rounded to the mark.
 * @param hydraulics chosen set as it stands on the job’s first day
 * @param torque wanted, N·m, at least 0
 * @param torqueLimits torques the mark may not exceed where the wanted torque doesn’t, N·m, above 0
 * @param direction 'nearest' mark, or the mark 'below'
 * @returns mark, true pressure in Pa and torque in N·m, or null while there is no certificate line
 * @example dialFor(hydraulics, 383.441)?.dial?.value // 260 bar
 * @source JCGM 100:2008 (GUM), Annex H.3; nearest mark is this program’s default
 */
export function dialFor(
  hydraulics: Hydraulics,
  torque: number,
  torqueLimits: readonly number[] = [],
  direction: 'nearest' | 'below' = 'nearest',
): Dialled | null {
  const { line, scale, correction } = hydraulics;
  if (line === null) return null;
  const wanted = pressureForTorque(line, torque);
  if (scale === null) return { wanted, dial: null, pressure: null, torque: null, corrected: true };
  const shown = (reference: number) => correction?.toIndicated(reference) ?? reference;
  const indicated = shown(wanted);
  let ceiling = direction === 'below' ? indicated : Number.POSITIVE_INFINITY;
  const keep = (limit: number) => {
    if (indicated <= limit * (1 + 1e-12)) ceiling = Math.min(ceiling, limit);
  };
  for (const limit of torqueLimits) keep(shown(pressureForTorque(line, limit)));
  for (const limit of hydraulics.ceilings) keep(limit);
  const dial = roundToMark(indicated, scale, ceiling);
  const pressure = correction?.toReference(dial.pressure) ?? dial.pressure;
  return {
    wanted,
    dial,
    pressure,
    torque: torqueAtPressure(line, pressure),
    corrected: correction === null || correction.toIndicated(wanted) !== null,
  };
}

function ceilingsOf({ parts, scale, certified, correction }: Omit<Hydraulics, 'ceilings'>): number[] {
  const rated = lowestPressure(parts)?.value;
  const highest = certified?.highest;
  return [
    ...(rated === undefined ? [] : [rated]),
    ...(scale === null ? [] : [scale.scaleMax]),
    ...(highest === undefined ? [] : [correction?.toIndicated(highest) ?? highest]),
  ];
}

/**
 * Largest torque this set can give: the line at the lowest of ratings, scale and highest certified point of every wrench,
 * and no more than the lowest torque rating.
 *
 * Equation: T = min(a + b·pmin, Tmin) at the lowest rated, readable and certified pressure.
 * @param hydraulics chosen set as it stands on the job’s first day
 * @returns torque in N·m with what governs, or null while there is no certificate line
 * @example capacityOf(hydraulics)?.torque // 1029 N·m
 * @source lowest-rated part governs: common practice
 */
export function capacityOf(
  hydraulics: Hydraulics,
): { torque: number; pressure: number; governs: string } | null {
  const { line, parts, certified } = hydraulics;
  if (line === null || certified === null) return null;
  const { highest, further } = certified;
  const rated = lowestPressure(parts);
  const byRating = rated !== null && rated.value <= highest;
  const pressure = byRating ? rated.value : highest;
  const torque = torqueAtPressure(line, pressure);
  const weakest = lowestTorque(parts);
  if (weakest !== null && weakest.value < torque) {
    return {
      torque: weakest.value,
      pressure: pressureForTorque(line, weakest.value),
      governs: `torque rating of ${weakest.part.tool.data.number}`,
    };
  }
  const governs = byRating
    ? `pressure rating of ${rated.part.tool.data.number}`
    : `highest certified point of ${further === null ? 'the certificate' : further}`;
  return { torque, pressure, governs };
}
