/**
 * Where an expected value comes from. `from memory` and `computed` rows are checked but do not count as checks against
 * a source outside the project.
 */
type TruthKind = 'published' | 'published table cell' | 'from memory' | 'computed';

/** One value from outside the project against what the core computes for it. */
export interface TruthRow {
  readonly what: string;
  readonly source: string;
  /** Edition, page, table or equation. */
  readonly place: string;
  readonly expected: number | string;
  /** Largest absolute difference; 0 for texts. */
  readonly tolerance: number;
  /** Why the tolerance is what it is. */
  readonly why: string;
  readonly kind: TruthKind;
  readonly computed: () => number | string;
}

export const HALF_DIGIT = 'half the last printed digit';

/** Half of the last digit of a printed number: '0.0775' gives 0.00005. */
export function halfDigit(printed: string): number {
  const decimals = printed.split('.')[1]?.length ?? 0;
  // Ties such as 1.0625 printed as 1.062 lie exactly on the bound; a hair keeps rounding noise from deciding them.
  return 0.5 * 10 ** -decimals * (1 + 1e-9);
}
