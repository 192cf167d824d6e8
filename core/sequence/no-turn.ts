/** Result of trying one nut at the set value. */
export interface TriedNut {
  readonly bolt: number;
  /** Null when it could not be seen. */
  readonly turned: boolean | null;
}

/** What such a check is and is not; printed with every result. */
export const NO_TURN_MEANING =
  'A nut that stands at the set torque shows that friction holds it there. It does not show how much load the stud carries.';

export interface NoTurnResult {
  readonly state: 'all stand' | 'some turned' | 'incomplete';
  readonly turned: readonly number[];
  /** Bolts not tried, or tried without seeing. */
  readonly open: readonly number[];
  /** Bolts of the record that the joint does not have, or has twice. */
  readonly wrong: readonly number[];
  readonly meaning: typeof NO_TURN_MEANING;
}

/**
 * Sums up a no-turn check. It is a check of friction and never a proof of load.
 *
 * Equation: all stand when every bolt 1…N was tried, was seen, and none turned.
 * @param count N, whole, 1 to 400
 * @param tried one result per nut
 * @returns state with the bolts behind it; null when `count` is outside
 * @example noTurnCheck(4, [{ bolt: 1, turned: false }])?.state // 'incomplete'
 * @source common practice; ASME PCC-1-2013, section 11, for the last circular pass (from memory)
 */
export function noTurnCheck(count: number, tried: readonly TriedNut[]): NoTurnResult | null {
  if (!Number.isInteger(count) || count < 1 || count > 400) return null;
  const seen = new Map<number, boolean>();
  const wrong: number[] = [];
  for (const { bolt, turned } of tried) {
    if (!Number.isInteger(bolt) || bolt < 1 || bolt > count || seen.has(bolt)) wrong.push(bolt);
    else if (turned !== null) seen.set(bolt, turned);
  }
  const bolts = Array.from({ length: count }, (_, index) => index + 1);
  const turned = bolts.filter((bolt) => seen.get(bolt) === true);
  const open = bolts.filter((bolt) => !seen.has(bolt));
  const state =
    turned.length > 0 ? 'some turned' : open.length + wrong.length > 0 ? 'incomplete' : 'all stand';
  return { state, turned, open, wrong, meaning: NO_TURN_MEANING };
}
