import { certificateLine } from '../../../core/calibration/line.ts';
import { torqueAtPressure } from '../../../core/calibration/reading.ts';
import { certificateStanding } from '../../../core/calibration/validity.ts';
import type { BreakoutData } from '../../../core/contract/event.ts';
import type { CertificateData } from '../../../core/contract/tool.ts';
import type { ToolOnRegister } from '../../../core/setting/input.ts';
import type { Entered } from '../../../core/units/entered.ts';
import { FROZEN_DIGITS, roundSignificant } from '../../../core/units/round.ts';
import type { KnownTorque } from '../chain/events.ts';

interface Typed {
  readonly torque: Entered | null;
  readonly dialled: Entered | null;
}

/**
 * The torque a record stands for: read as torque, or the dialled pressure through the wrench's certificate as it stood
 * on that day. A lapsed certificate still gives the best number there is; the basis says that it had lapsed.
 */
export function knownTorque(
  typed: Typed,
  drive: ToolOnRegister<'drive unit'> | null,
  date: string,
): KnownTorque {
  if (typed.torque !== null) {
    return { torque: frozen(typed.torque.si), basis: 'read as torque', certificateId: null };
  }
  if (typed.dialled === null) return notKnown('not read');
  if (drive === null) return notKnown('not known: the drive unit was not recorded');
  const { number } = drive.data;
  const standing = certificateStanding(drive.certificates, date);
  if (standing.state === 'none') return notKnown(`not known: ${number} has no certificate`);
  if (standing.state === 'later') {
    return notKnown(
      `not known: ${number} was first calibrated on ${standing.certificate.data.calibratedOn}, after that day`,
    );
  }
  const { certificate } = standing;
  const line = lineOf(certificate.data);
  if (line === null) return notKnown(`not known: certificate ${certificate.data.number} has no line`);
  const lapsed = standing.state === 'lapsed' ? `, lapsed on ${certificate.data.validUntil}` : '';
  return {
    torque: frozen(torqueAtPressure(line, typed.dialled.si)),
    basis: `certificate ${certificate.data.number} of ${number}${lapsed}`,
    certificateId: certificate.id,
  };
}

const frozen = (torque: number) => roundSignificant(torque, FROZEN_DIGITS);

function notKnown(basis: string): KnownTorque {
  return { torque: null, basis, certificateId: null };
}

/** The line through a wrench certificate's points in SI; null for a gauge's certificate. */
export function lineOf({ measured }: CertificateData) {
  if (measured.kind !== 'pressure-torque') return null;
  return certificateLine(
    measured.points.map(({ pressure, torque, direction }) => ({
      pressure: pressure.si,
      torque: torque.si,
      direction,
    })),
  );
}

/**
 * Median and largest of a breakout's torques, over the studs that turned; where none turned, over the torques that were
 * tried in vain, which are then lower bounds.
 */
export function breakoutTorques(
  readings: BreakoutData['readings'],
  torques: readonly KnownTorque[],
): { readonly median: number | null; readonly highest: number | null } {
  const read = readings.flatMap(({ outcome }, index) => {
    const torque = torques[index]?.torque ?? null;
    return torque === null ? [] : [{ turned: outcome === 'turned', torque }];
  });
  const turned = read.filter((reading) => reading.turned);
  const sorted = (turned.length > 0 ? turned : read).map(({ torque }) => torque).sort((a, b) => a - b);
  const middle = sorted.length / 2;
  const low = sorted[Math.ceil(middle) - 1];
  const high = sorted[Math.floor(middle)];
  if (low === undefined || high === undefined) return { median: null, highest: null };
  return { median: (low + high) / 2, highest: Math.max(...read.map(({ torque }) => torque)) };
}
