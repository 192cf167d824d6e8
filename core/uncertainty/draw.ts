import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { normalQuantile } from './normal.ts';

/**
 * Shape of an input. A lognormal one never turns negative; a uniform one has hard ends at ±√3·u; a normal one is cut at
 * ±4.5·u (seven in a million), so that no drawn nut factor comes near zero.
 */
export type Shape = 'normal' | 'lognormal' | 'uniform';

export const GENERATOR = 'xoroshiro128+, inverse transform';

/** Tail left out at each end of a normal input: Φ(−4.5). */
const CUT = 3.4e-6;

/**
 * Source of uniform numbers above 0 and below 1, the same for the same seed on every engine.
 *
 * @param seed whole number of 32 bits
 * @returns function that draws the next number, above 0 and below 1
 * @example uniformSource(1)() === uniformSource(1)() // true
 * @source xoroshiro128+ of D. Blackman and S. Vigna
 */
export function uniformSource(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  // Zero would be an infinite quantile; the smallest step above it stands for it.
  return () => uniformFloat64(generator) || 2 ** -53;
}

/**
 * Turns uniform numbers into values of an input.
 *
 * Equation: x = m·(1 + …) by the inverse of the distribution; a lognormal one has mean m and deviation u.
 * @param mean m; above 0 for the lognormal shape
 * @param u standard uncertainty, in the quantity’s unit, at least 0
 * @param shape normal, lognormal or uniform
 * @returns function from (0, 1) to a value
 * @example samplerOf(0, 1, 'normal')(0.5) // 0
 * @source JCGM 101:2008 (GUM Supplement 1), 6.4
 */
export function samplerOf(mean: number, u: number, shape: Shape): (uniform: number) => number {
  if (shape === 'uniform') return (uniform) => mean + u * Math.sqrt(3) * (2 * uniform - 1);
  if (shape === 'normal') return (uniform) => mean + u * normalQuantile(CUT + (1 - 2 * CUT) * uniform);
  const variance = Math.log1p((u / mean) ** 2);
  const spread = Math.sqrt(variance);
  return (uniform) => mean * Math.exp(spread * normalQuantile(uniform) - variance / 2);
}
