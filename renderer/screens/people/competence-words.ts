import type { CompetenceRow } from '../../../core/contract/access.ts';
import { day } from '../../app/text/time.ts';

export interface CompetenceWords {
  readonly words: string;
  /** Stands against work done today: lapsed, withdrawn, or nothing known. */
  readonly against: boolean;
}

/** One paper, as it stands today. */
export function competenceWords({ state, lastGoodDay, data }: CompetenceRow): CompetenceWords {
  if (state === 'withdrawn') return { words: 'withdrawn', against: true };
  if (state === 'not yet') return { words: `from ${day(data.issuedOn)}`, against: false };
  if (lastGoodDay === null) return { words: 'last day not known', against: true };
  const until = day(lastGoodDay);
  return state === 'expired'
    ? { words: `expired, counted to ${until}`, against: true }
    : { words: `counts to ${until}`, against: false };
}

/** Best of a person's papers today; several that count are told by the one that counts longest. */
export function bestOf(rows: readonly CompetenceRow[]): CompetenceWords {
  const longest = rows
    .filter(({ state }) => state === 'in date')
    .toSorted((a, b) => ((a.lastGoodDay ?? '') < (b.lastGoodDay ?? '') ? 1 : -1))[0];
  const told = longest ?? rows.findLast(({ state }) => state !== 'withdrawn') ?? rows.at(-1);
  if (told === undefined) return { words: 'not known', against: true };
  const { words, against } = competenceWords(told);
  return { words: `${told.data.scheme} ${words}`, against };
}
