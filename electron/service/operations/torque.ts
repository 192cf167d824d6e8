import { torqueAtPressure } from '../../../core/calibration/reading.ts';
import { certifiedRange } from '../../../core/calibration/setting.ts';
import { certificateStanding } from '../../../core/calibration/validity.ts';
import type { BreakoutData } from '../../../core/contract/event.ts';
import { type Hydraulics, hydraulicsOf } from '../../../core/setting/hydraulics.ts';
import type { CardInput, ToolOnRegister } from '../../../core/setting/input.ts';
import type { Entered } from '../../../core/units/entered.ts';
import { FROZEN_DIGITS, roundSignificant } from '../../../core/units/round.ts';
import type { KnownTorque } from '../chain/events.ts';

interface Typed {
  readonly torque: Entered | null;
  readonly dialled: Entered | null;
}

/**
 * The torque a record stands for: read as torque, or the dialled pressure through gauge and wrench as their certificates
 * stood on that day, by the same relation as the card's. A lapsed certificate still gives the best number there is; the
 * basis says that it had lapsed.
 */
export function knownTorque(
  typed: Typed,
  { set, startsOn, method }: Pick<CardInput, 'set' | 'startsOn' | 'method'>,
): KnownTorque {
  if (method === 'tensioner') return notKnown('tensioned: recorded with its load; no torque belongs to it');
  if (typed.torque !== null) {
    return { torque: frozen(typed.torque.si), basis: 'read as torque', certificateId: null };
  }
  if (typed.dialled === null) return notKnown('not read');
  if (set.drive === null) return notKnown('not known: the drive unit was not recorded');
  const hydraulics = hydraulicsOf({ set, startsOn });
  const { line, certificate } = hydraulics;
  if (certificate === null || line === null) return notKnown(`not known: ${missing(set.drive, startsOn)}`);
  const lapsed = certificate.data.validUntil < startsOn ? `, lapsed on ${certificate.data.validUntil}` : '';
  const gauge = gaugeReading(typed.dialled.si, hydraulics, set);
  const named = `certificate ${certificate.data.number} of ${set.drive.data.number}`;
  const range = certifiedRange(line);
  if (gauge.pressure > range.highest * SLACK) {
    return notKnown(`not known: above the highest point of ${named}${gauge.basis}`);
  }
  const torque = torqueAtPressure(line, gauge.pressure);
  if (torque <= 0) return notKnown(`not known: too far below the lowest point of ${named}${gauge.basis}`);
  const below = gauge.pressure * SLACK < range.lowest ? ', below its lowest point' : '';
  return {
    torque: frozen(torque),
    basis: `${named}${lapsed}${below}${gauge.basis}`,
    certificateId: certificate.id,
  };
}

/** A pressure converted between units may differ in its last bits from the point it stands for. */
const SLACK = 1 + 1e-9;

function missing(drive: ToolOnRegister<'drive unit'>, date: string): string {
  const { number } = drive.data;
  const standing = certificateStanding(drive.certificates, date);
  if (standing.state === 'none') return `${number} has no certificate`;
  const { data } = standing.certificate;
  if (standing.state === 'later')
    return `${number} was first calibrated on ${data.calibratedOn}, after that day`;
  return `certificate ${data.number} of ${number} gives no line`;
}

/** True pressure behind what the gauge showed; as shown where its certificate doesn't say. */
function gaugeReading(shown: number, { correction, gaugeStanding }: Hydraulics, { gauge }: CardInput['set']) {
  if (correction === null || gauge === null || gaugeStanding === null || gaugeStanding.state === 'none') {
    return { pressure: shown, basis: ', pressure as the gauge showed it' };
  }
  const { number } = gaugeStanding.certificate.data;
  const pressure = correction.toReference(shown);
  return pressure === null
    ? { pressure: shown, basis: `, pressure as shown, outside certificate ${number} of ${gauge.data.number}` }
    : { pressure, basis: `, gauge by ${number} of ${gauge.data.number}` };
}

const frozen = (torque: number) => roundSignificant(torque, FROZEN_DIGITS);

function notKnown(basis: string): KnownTorque {
  return { torque: null, basis, certificateId: null };
}

/**
 * Median and largest of a breakout's torques, over the studs that turned; where none turned, over the torques that were
 * tried in vain, which are then lower bounds. `read` counts the studs with a torque at all.
 */
export function breakoutTorques(
  readings: BreakoutData['readings'],
  torques: readonly KnownTorque[],
): { readonly median: number | null; readonly highest: number | null; readonly read: number } {
  const read = readings.flatMap(({ outcome }, index) => {
    const torque = torques[index]?.torque ?? null;
    return torque === null ? [] : [{ turned: outcome === 'turned', torque }];
  });
  const turned = read.filter((reading) => reading.turned);
  const sorted = (turned.length > 0 ? turned : read).map(({ torque }) => torque).sort((a, b) => a - b);
  const middle = sorted.length / 2;
  const low = sorted[Math.ceil(middle) - 1];
  const high = sorted[Math.floor(middle)];
  if (low === undefined || high === undefined) return { median: null, highest: null, read: 0 };
  return {
    median: (low + high) / 2,
    highest: Math.max(...read.map(({ torque }) => torque)),
    read: read.length,
  };
}
