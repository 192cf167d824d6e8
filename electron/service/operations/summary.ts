import { showEntered, showQuantity } from '../../../core/text/number.ts';
import type { EventDataByKind } from '../chain/events.ts';
import { breakoutTorques } from './torque.ts';

const DIGITS = 3;

/** "260 bar → 384 N·m (certificate C-17 of W-03), 12 studs, no nut turned in the last round". */
export function tighteningSummary({ data, torque }: EventDataByKind['tightening recorded']): string {
  const dialled = data.dialled === null ? '' : `${showEntered(data.dialled)} → `;
  if (data.load !== null) return `tensioned to ${showEntered(data.load)}, ${studs(data.boltsTightened)}`;
  const reached =
    torque.torque === null
      ? `torque ${torque.basis}`
      : `${showQuantity(torque.torque, 'N.m', DIGITS)} (${torque.basis})`;
  const round = data.finalPassNoTurn
    ? 'no nut turned in the last round'
    : 'last round without turning not recorded';
  return `${dialled}${reached}, ${studs(data.boltsTightened)}, ${round}`;
}

/** "12 studs, median 431 N·m, highest 622 N·m, 1 cut or would not turn". */
export function breakoutSummary({ data, torques }: EventDataByKind['breakout recorded']): string {
  const { median, highest } = breakoutTorques(data.readings, torques);
  const read =
    median === null || highest === null
      ? 'torque not known'
      : `median ${showQuantity(median, 'N.m', DIGITS)}, highest ${showQuantity(highest, 'N.m', DIGITS)}`;
  const stuck = data.readings.filter(({ outcome }) => outcome !== 'turned').length;
  const rest = stuck === 0 ? '' : `, ${stuck} cut or would not turn`;
  return `${studs(data.readings.length)}, ${read}${rest}`;
}

/** "Second third, pass 3 of 5: 6 studs, last 8, 170 bar, stopped: shift change". */
export function passSummary({ data, lastBolt }: EventDataByKind['pass recorded']): string {
  const times = data.round > 1 ? `, time round ${data.round}` : '';
  const reached = data.dialled ?? data.torque;
  const stop = data.stoppedBecause;
  const words = [
    `${data.name}, pass ${data.pass} of ${data.of}${times}: ${studs(data.boltsDone.length)}`,
    ...(lastBolt === null ? [] : [`last ${lastBolt}`]),
    ...(reached === null ? [] : [showEntered(reached)]),
    ...(data.leftOut.length === 0 ? [] : [`left out ${data.leftOut.join(', ')}`]),
    ...(data.goRoundAgain ? ['to be gone round again'] : []),
    ...(stop === null ? [] : [`stopped: ${stop.reason}${stop.words === '' ? '' : `, ${stop.words}`}`]),
  ];
  return words.join(', ');
}

const studs = (count: number) => `${count} ${count === 1 ? 'stud' : 'studs'}`;
