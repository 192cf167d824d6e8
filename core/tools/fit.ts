import type { CardInput, Head, ToolOnRegister } from '../setting/input.ts';

type Reducer = ToolOnRegister<'reducer'>;
type Counterhold = ToolOnRegister<'counterhold wrench'>;

/** Sizes that differ by less than this are the same nominal size typed in another unit, m. */
const SAME_SIZE = 1e-6;

/** How a hexagon sits in an opening. */
export type Seat = 'fits' | 'too small' | 'too large';

/**
 * Whether an opening takes a hexagon. Exact nominal sizes are compared; an opening larger than the hexagon is accepted
 * only as far as its stated looseness reaches.
 *
 * Equation: fits when 0 ≤ A − F ≤ looseness.
 * @param opening nominal width across flats A and stated looseness, m; looseness null is not known and allows nothing
 * @param hexagon nominal width across flats F of the nut or the reducer’s outside, m, above 0
 * @returns how it sits
 * @example seat({ acrossFlats: 0.036, looseness: null }, 0.0365125) // 'too small'
 * @source nominal sizes of the nut standard; tolerances of openings: none published that could be read
 */
export function seat(
  opening: { readonly acrossFlats: number; readonly looseness: number | null },
  hexagon: number,
): Seat {
  const excess = opening.acrossFlats - hexagon;
  if (excess < -SAME_SIZE) return 'too small';
  return excess > (opening.looseness ?? 0) + SAME_SIZE ? 'too large' : 'fits';
}

/**
 * Opening of a head, reducer or counterhold wrench in SI.
 *
 * @param tool tool of the register with a hex opening
 * @returns nominal width across flats and looseness, m; looseness null when it is not known
 * @example openingOf(set.cassette).acrossFlats // 0.0365125 m
 * @source exact inch and millimetre (NIST SP 811, Appendix B)
 */
export function openingOf(tool: Head | Reducer | Counterhold): {
  acrossFlats: number;
  looseness: number | null;
} {
  const { acrossFlats, looseness } = tool.data.properties;
  return { acrossFlats: acrossFlats.si, looseness: looseness?.si ?? null };
}

/** A way to the nut with what stands on the register. */
export type Remedy =
  | { readonly kind: 'cassette'; readonly cassette: Head }
  | { readonly kind: 'reducer'; readonly reducer: Reducer };

/**
 * Names what on the register would bring the chosen set to the nut: a reducer for the chosen cassette, or else another
 * cassette of the drive unit's family. Parts out of use or rated below the torque are not named.
 *
 * @param nutFlats exact nominal width across flats of the nut, m, above 0
 * @param input chosen set and what is on the register
 * @param torque that has to pass, N·m, above 0, or null when not known
 * @returns remedies, reducers first, each list in order of number
 * @example remedies(0.0365125, input, 384).length // 0: nothing else on the register
 * @source as `seat`
 */
export function remedies(
  nutFlats: number,
  input: Pick<CardInput, 'set' | 'onRegister'>,
  torque: number | null,
): Remedy[] {
  const { cassette, drive } = input.set;
  const usable = (tool: Head | Reducer) =>
    (tool.data.status === 'available' || tool.data.status === 'issued') &&
    (torque === null || (tool.data.properties.ratedTorque?.si ?? Number.POSITIVE_INFINITY) >= torque);
  const reducers =
    cassette === null
      ? []
      : input.onRegister.reducers.filter(
          (reducer) =>
            usable(reducer) &&
            seat(openingOf(cassette), reducer.data.properties.outerAcrossFlats.si) === 'fits' &&
            seat(openingOf(reducer), nutFlats) === 'fits',
        );
  const family = drive?.data.properties.family ?? cassette?.data.properties.family ?? null;
  const cassettes = input.onRegister.cassettes.filter(
    (other) =>
      usable(other) &&
      (family === null || other.data.properties.family === family) &&
      seat(openingOf(other), nutFlats) === 'fits',
  );
  return [
    ...byNumber(reducers).map((reducer): Remedy => ({ kind: 'reducer', reducer })),
    ...byNumber(cassettes).map((other): Remedy => ({ kind: 'cassette', cassette: other })),
  ];
}

function byNumber<T extends Head | Reducer>(tools: readonly T[]): T[] {
  return [...tools].sort((a, b) => (a.data.number < b.data.number ? -1 : 1));
}
