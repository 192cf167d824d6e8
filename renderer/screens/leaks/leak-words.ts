import type { JointLeaks, LeakRow } from '../../../core/contract/leak-log.ts';
import { openWords } from '../../../core/leak/leak-words.ts';
import { counted } from '../../app/text/number.ts';

type Cause = LeakRow['firstCauses'][number];

export const causeWords = ({ cause, level, why }: Cause): string =>
  why === '' ? `${cause} (${level})` : `${cause} (${level}: ${why})`;

/** As they are known now. */
export const causesNow = ({ firstCauses, foundCauses }: LeakRow): readonly Cause[] =>
  foundCauses ?? firstCauses;

export const clockWords = ({ closed, openFor }: LeakRow): string =>
  closed === null ? `open ${openWords(openFor)}` : `closed after ${openWords(openFor)}`;

export const closedWords = ({ closed }: LeakRow): string =>
  closed === null ? '' : [closed.done, closed.how].filter((part) => part !== '').join('; ');

export function positionWords({ clock, seenFrom, nearBolts }: LeakRow): string {
  const hour = clock === null ? '' : `${clock} o’clock`;
  const from = seenFrom === '' ? (clock === null ? '' : 'side not stated') : `seen from ${seenFrom}`;
  const bolts =
    nearBolts === null || nearBolts.length === 0
      ? ''
      : `${nearBolts.length === 1 ? 'bolt' : 'bolts'} ${nearBolts.join(', ')}`;
  return [hour, from, bolts].filter((part) => part !== '').join(', ');
}

type Since = NonNullable<JointLeaks['sinceMakeUp']>;

/** What was counted, how much of the time that is, and what can't be told apart. */
export function cycleWords({ cycles, partly, covered }: Since): string {
  const share = covered >= 0.995 ? 'all of the time' : `${Math.round(covered * 100)} % of the time`;
  const across =
    partly === 0 ? '' : `, and of ${counted(partly, 'cycle')} counted across the make-up an unknown part`;
  return `${counted(cycles, 'cycle')} in ${share} since then${across}`;
}
