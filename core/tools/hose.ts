/** Years a hose assembly is used at most, counted from the day it was made; storage is part of them. */
export const HOSE_LIFE_YEARS = 6;

/**
 * Last day on which a hose assembly is used.
 *
 * Equation: date made + 6 years.
 * @param madeOn date on the hose assembly, YYYY-MM-DD
 * @returns calendar date YYYY-MM-DD
 * @example hoseLifeEnds('2020-03-16') // '2026-03-16'
 * @source DIN 20066:2002-10 (second-hand): in use no longer than six years, at most two of them in storage
 */
export function hoseLifeEnds(madeOn: string): string {
  const year = Number(madeOn.slice(0, 4)) + HOSE_LIFE_YEARS;
  // Six years after a leap year there is no 29 February.
  return `${year}${madeOn.slice(4).replace('-02-29', '-02-28')}`;
}
