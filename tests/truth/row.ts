import type { SourceId } from './sources.ts';

/**
 * Where an expected value comes from. `from memory` and `computed` rows are checked but do not count as checks against
 * a source outside the project.
 */
export type TruthKind = 'published' | 'published table cell' | 'from memory' | 'computed';

/** One value from outside the project against what the core computes for it. */
export interface TruthRow {
  readonly what: string;
  readonly source: SourceId;
  /** Page, table, example or equation; the edition where the source has several. */
  readonly place: string;
  /** The value as the source prints it. */
  readonly printed: string;
  readonly expected: number | string;
  /** What one unit of the last printed digit is worth; 0 for texts. */
  readonly step: number;
  /** Largest absolute difference; 0 for texts. */
  readonly tolerance: number;
  /** Why the tolerance is what it is. */
  readonly why: string;
  readonly kind: TruthKind;
  readonly computed: () => number | string;
  /** Keys of the sources of the shipped row that the core looks this cell up in. */
  readonly shippedFrom?: () => string;
}

export const HALF_DIGIT = 'half the last printed digit';

/** A tolerance other than half the last printed digit, or a print that is rounded more coarsely than it looks. */
export interface Loose {
  readonly tolerance?: number;
  readonly step?: number;
  readonly why: string;
}

/** Ties such as 1.0625 printed as 1.062 lie exactly on the bound; a hair keeps rounding noise from deciding them. */
const HAIR = 1 + 1e-9;

/** One unit of the last printed digit: '0.0775' gives 0.0001, '57e-6' gives 1e-6. */
export function lastDigit(printed: string): number {
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e');
  return 10 ** (Number(exponent) - (mantissa.split('.')[1]?.length ?? 0));
}

/** Half of the last digit of a printed number: '0.0775' gives 0.00005. */
export function halfDigit(printed: string): number {
  return 0.5 * lastDigit(printed) * HAIR;
}

/** A row whose expected value is the printed number. */
export function row(
  kind: TruthKind,
  what: string,
  source: SourceId,
  place: string,
  printed: string,
  computed: () => number | string,
  loose?: Loose,
): TruthRow {
  const step = loose?.step ?? lastDigit(printed);
  return {
    what,
    source,
    place,
    printed,
    expected: Number(printed),
    step,
    tolerance: loose?.tolerance ?? 0.5 * step * HAIR,
    why: loose?.why ?? HALF_DIGIT,
    kind,
    computed,
  };
}

/** Rows of one source, all of one kind. */
export function rowsOf(source: SourceId, kind: TruthKind = 'published') {
  return (
    place: string,
    what: string,
    printed: string,
    computed: () => number | string,
    loose?: Loose,
  ): TruthRow => row(kind, what, source, place, printed, computed, loose);
}
