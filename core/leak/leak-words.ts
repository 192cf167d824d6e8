/** Of a list of leaks, what its first sentence says. */
export interface LeakCounts {
  readonly leaks: number;
  readonly joints: number;
  readonly open: number;
  /** Of the open one that is open longest, s; null without an open one. */
  readonly longest: number | null;
  /** Joints with at least two leaks within two make-ups. */
  readonly repeaters: number;
}

const DAY = 86_400;

/**
 * How long a leak has been, or was, open.
 *
 * @param seconds time, s, at least 0
 * @returns whole days, or hours below two days
 * @example openWords(180_000) // '2 days'
 * @source rule of this program
 */
export function openWords(seconds: number): string {
  const days = Math.floor(seconds / DAY);
  if (days >= 2) return `${days} days`;
  const hours = Math.floor(seconds / 3600);
  return `${hours} ${hours === 1 ? 'hour' : 'hours'}`;
}

/**
 * What a list of leaks comes to, in a sentence or two.
 *
 * @param counts counts of the list
 * @returns sentences; with no leak, what that does not mean
 * @example leakSentence({ leaks: 0, joints: 0, open: 0, longest: null, repeaters: 0 }).startsWith('No leak') // true
 * @source rule of this program
 */
export function leakSentence({ leaks, joints, open, longest, repeaters }: LeakCounts): string {
  if (leaks === 0) return 'No leak is on record here. One that nobody recorded would not be found.';
  const told = [
    `${counted(leaks, 'leak')} on ${counted(joints, 'joint')}`,
    open === 0 || longest === null ? 'none open' : `${open} open, the longest for ${openWords(longest)}`,
    repeaters === 0
      ? 'no joint leaked twice within two make-ups'
      : `${counted(repeaters, 'joint')} leaked at least twice within two make-ups`,
  ];
  return `${told.join('; ')}.`;
}

const counted = (count: number, noun: string) => `${count} ${count === 1 ? noun : `${noun}s`}`;
