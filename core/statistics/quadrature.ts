/** Points of a rule with their weights. */
export interface Rule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

const MOST_STEPS = 60;

/**
 * Gauss–Legendre rule, exact for polynomials up to degree 2n − 1.
 *
 * Equation: ∫ f(x) dx ≈ Σ wᵢ·f(xᵢ); Pₙ(xᵢ) = 0, wᵢ = 2/((1 − xᵢ²)·P′ₙ(xᵢ)²), stretched from −1 … 1.
 * @param count n, number of nodes, whole, 1 to 400
 * @param from lower end, any finite number
 * @param to upper end, any finite number
 * @returns nodes in rising order and their weights
 * @example legendreRule(2, -1, 1).nodes[1] // 0.57735
 * @source M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 25.4.29 (from memory)
 */
export function legendreRule(count: number, from: number, to: number): Rule {
  const nodes: number[] = [];
  const weights: number[] = [];
  const half = (to - from) / 2;
  for (let i = count; i >= 1; i--) {
    let x = Math.cos((Math.PI * (i - 0.25)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < MOST_STEPS; step++) {
      const [value, derivative] = legendre(count, x);
      slope = derivative;
      const change = value / derivative;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    nodes.push((from + to) / 2 + half * x);
    weights.push((2 * half) / ((1 - x * x) * slope * slope));
  }
  return { nodes, weights };
}

function legendre(count: number, x: number): readonly [value: number, derivative: number] {
  let value = 1;
  let before = 0;
  for (let n = 1; n <= count; n++) {
    [value, before] = [((2 * n - 1) * x * value - (n - 1) * before) / n, value];
  }
  return [value, (count * (x * value - before)) / (x * x - 1)];
}

/**
 * Root of a rising function between two ends, by halving.
 *
 * Equation: f(x) = 0.
 * @param rising function that rises from one end to the other
 * @param low lower end, any finite number
 * @param high upper end, any finite number, above the lower
 * @param precision largest width of the last interval, in the unit of the ends, above 0
 * @returns x; the nearer end where the function does not change its sign between them
 * @example risingRoot((x) => x * x - 2, 0, 2, 1e-9) // 1.41421
 * @source bisection
 */
export function risingRoot(
  rising: (x: number) => number,
  low: number,
  high: number,
  precision: number,
): number {
  let [below, above] = [low, high];
  while (above - below > precision) {
    const middle = (below + above) / 2;
    if (rising(middle) < 0) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}
