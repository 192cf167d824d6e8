import { type FlangeRing, type GasketBed, MODES, ringCompliance } from './ring.ts';

/** A joint as the ring model sees it, SI. */
export interface RingJoint {
  /** N, whole, 3 to 400. */
  readonly boltCount: number;
  /** Rb, m. */
  readonly boltRadius: number;
  /** kb of one bolt, N/m. */
  readonly boltStiffness: number;
  /** The two flanges; a blind or an unlike one has its own. */
  readonly flanges: readonly [FlangeRing, FlangeRing];
  readonly gasket: GasketBed;
}

/**
 * Turn of bolt i that a unit load on bolt j takes up, by how many places apart they stand: the joint's first row; every
 * other row is the same, shifted.
 *
 * Equation: A(k) = δ(k)/kb + C₁(2πk/N) + C₂(2πk/N).
 * @param joint ring joint
 * @param modes Fourier modes summed, whole, at least 1
 * @returns A(0) … A(N − 1), m/N
 * @example interaction(ringJoint, 400).length // 12
 * @source J. H. Bickford, Introduction to the Design and Behavior of Bolted Joints, 4th ed., elastic interactions (from memory); the ring model is this program's
 */
export function interaction(joint: RingJoint, modes: number = MODES): number[] {
  const { boltCount, boltRadius, boltStiffness, flanges, gasket } = joint;
  const [one, other] = flanges;
  const first = ringCompliance(one, gasket, boltRadius, boltCount, modes);
  const second = one === other ? first : ringCompliance(other, gasket, boltRadius, boltCount, modes);
  return first.map((part, place) => part + (second[place] ?? 0) + (place === 0 ? 1 / boltStiffness : 0));
}

/**
 * Whole matrix from the first row of a joint whose bolts are all alike.
 *
 * Equation: Aᵢⱼ = A(|i − j| mod N).
 * @param row A(0) … A(N − 1), m/N, A(0) above 0
 * @returns N rows, symmetric where A(k) = A(N − k)
 * @example circulant([2, 1, 1]) // [[2, 1, 1], [1, 2, 1], [1, 1, 2]]
 * @source definition of a circulant matrix
 */
export function circulant(row: readonly number[]): number[][] {
  const count = row.length;
  return row.map((_, i) => row.map((_unused, j) => row[(j - i + count) % count] ?? 0));
}
