import type { SuspectWindow } from '../contract/recall.ts';

/** Something that shows that the subject was right at a time. A certificate is known by its day: it has a first and a last moment. */
export interface GoodEvidence {
  /** Moments in UTC, ISO 8601 with milliseconds, so that text order is time order. */
  readonly first: string;
  readonly last: string;
  readonly text: string;
}

/** A moment with what it is. */
export interface NamedMoment {
  readonly at: string;
  readonly text: string;
}

export interface WindowEvidence {
  readonly good: readonly GoodEvidence[];
  /** Last moment the failing evidence speaks of; `putRight` when the subject was adjusted there and left within limits. */
  readonly failing: NamedMoment & { readonly putRight: boolean };
  /** Moments at which the subject was barred from use; the failing moment itself where it was barred by then. */
  readonly barred: readonly NamedMoment[];
  readonly opened: NamedMoment;
  /** First suspect moment as entered; null takes it from the good evidence. */
  readonly since: NamedMoment | null;
}

/** What stands for a beginning nobody knows. */
export const NO_GOOD_EVIDENCE = 'no good certificate or check before it is known: every use counts';

/**
 * The time in which a subject may have been wrong. It begins with the last good evidence before the failing one, and ends
 * with the failing evidence, or later where the subject stayed in use until it was barred, shown right again, or the case
 * was opened. Of a day the whole day counts where it can't be said what came first.
 *
 * @param evidence good and failing evidence and bars, moments in UTC
 * @returns both bounds, each with its basis; `from` null while no good evidence is known
 * @example suspectWindow({ good: [], failing: { at: '2026-05-02T10:00:00.000Z', text: 'failed check', putRight: true },
 * barred: [], opened: { at: '2026-05-03T10:00:00.000Z', text: 'opened' }, since: null }).from // null
 * @source ISO 9001:2015, 7.1.5.2; ISO 10012:2003, 8.3 (from memory)
 */
export function suspectWindow({ good, failing, barred, opened, since }: WindowEvidence): SuspectWindow {
  const end = failing.putRight ? failing : endOfUse({ good, failing, barred, opened });
  const to = { to: end.at, toBasis: end.text };
  if (since !== null) return { from: since.at, fromBasis: since.text, ...to };
  const before = good.filter(({ last }) => last < failing.at);
  const latest = before.reduce<GoodEvidence | null>(
    (newest, one) => (newest === null || one.first > newest.first ? one : newest),
    null,
  );
  return latest === null
    ? { from: null, fromBasis: NO_GOOD_EVIDENCE, ...to }
    : { from: latest.first, fromBasis: latest.text, ...to };
}

/** Work done with a wrong tool after it was found wrong is suspect too. */
function endOfUse({ good, failing, barred, opened }: Omit<WindowEvidence, 'since'>): NamedMoment {
  // Barred on the spot, or nothing is asked of a later time.
  if (barred.some(({ at }) => at === failing.at) || opened.at <= failing.at) return failing;
  const ends = [
    ...barred,
    ...good.map(({ last, text }) => ({ at: last, text: `shown right again: ${text}` })),
    opened,
  ].filter(({ at }) => at > failing.at);
  const first = ends.reduce<NamedMoment | null>(
    (earliest, one) => (earliest === null || one.at < earliest.at ? one : earliest),
    null,
  );
  return first === null ? failing : { at: first.at, text: `${failing.text}; ${first.text}` };
}
