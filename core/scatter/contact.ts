/** Loads of all bolts while nuts are turned one after the other, contact one-sided. Bolts count from 0 here. */
export interface BoltField {
  /** F of each bolt, N, never below 0. */
  readonly loads: Float64Array;
  /**
   * Turns nuts at the same moment until each bolt carries at least `load`; one that carries more already is left.
   *
   * @returns true where a nut moved
   */
  turn(bolts: readonly number[], load: number): boolean;
  /** Puts one nut at a position, m of turn from hand-tight, but stops at `most` N; gives the load it then carries. Where that would not raise its load, it is left. */
  place(bolt: number, position: number, most: number): number;
}

/** Below this part of the largest number at hand, a load or a gap is none. */
const NOTHING = 1e-11;

/**
 * Bolts of one joint, hand-tight at first: every nut just touches, no bolt carries.
 *
 * F/kb + C·F = δ for a bolt that carries; F = 0 with a gap of C·F − δ ≥ 0 for a slack one. Turning a nut changes its
 * own δ and leaves every other: the loads are the one solution of that complementarity, found by principal pivots with
 * the least index first. A slack bolt comes back, and an untouched one picks up load, when the flange moves against it.
 *
 * Equation: 0 ≤ F ⊥ A·F − δ ≥ 0 with A = diag(1/kb) + C.
 * @param matrix A, m/N, symmetric and positive definite
 * @returns the field
 * @example boltField(circulant([2, 1, 1])).turn([0], 100) // true
 * @source K. G. Murty, Linear Complementarity, Linear and Nonlinear Programming (1988), chapter 4 (from memory)
 */
export function boltField(matrix: readonly (readonly number[])[]): BoltField {
  const count = matrix.length;
  const tableau = Float64Array.from(matrix.flat());
  const active = new Uint8Array(count);
  /** Nut positions δ; for a bolt being turned it follows from its load. */
  const nuts = new Float64Array(count);
  const loads = new Float64Array(count);
  const gaps = new Float64Array(count);
  const at = (row: number, column: number): number => tableau[row * count + column] ?? 0;

  /** Exchanges load and nut position of one bolt: what was asked for becomes what is given. */
  function pivot(k: number): void {
    const diagonal = at(k, k);
    for (let i = 0; i < count; i++) {
      if (i === k) continue;
      const factor = at(i, k) / diagonal;
      if (factor !== 0) {
        const row = i * count;
        const from = k * count;
        for (let j = 0; j < count; j++)
          tableau[row + j] = (tableau[row + j] ?? 0) - factor * (tableau[from + j] ?? 0);
      }
      tableau[i * count + k] = factor;
    }
    for (let j = 0; j < count; j++) tableau[k * count + j] = -at(k, j) / diagonal;
    tableau[k * count + k] = 1 / diagonal;
    active[k] = active[k] === 1 ? 0 : 1;
  }

  /** Loads and gaps of all bolts for given nut positions and given loads of the bolts being turned. */
  function solve(turned: readonly number[], load: number): void {
    for (let i = 0; i < count; i++) {
      let sum = 0;
      for (let j = 0; j < count; j++) if (active[j] === 1) sum += at(i, j) * (nuts[j] ?? 0);
      for (const j of turned) sum += at(i, j) * load;
      if (active[i] === 1) {
        loads[i] = sum;
        gaps[i] = 0;
      } else {
        loads[i] = 0;
        gaps[i] = sum - (nuts[i] ?? 0);
      }
    }
    for (const j of turned) {
      loads[j] = load;
      gaps[j] = 0;
      nuts[j] = nutOf(j, turned, load);
    }
  }

  function nutOf(bolt: number, turned: readonly number[], load: number): number {
    let sum = 0;
    for (let j = 0; j < count; j++) if (active[j] === 1) sum += at(bolt, j) * (nuts[j] ?? 0);
    for (const j of turned) sum += at(bolt, j) * load;
    return sum;
  }

  /** First bolt whose contact is wrong: one that pulls its nut away, or one whose nut stands inside the flange. */
  function wrong(turned: readonly number[]): number {
    let largest = 0;
    for (const load of loads) largest = Math.max(largest, Math.abs(load));
    const leastLoad = -NOTHING * largest;
    const leastGap = leastLoad * (matrix[0]?.[0] ?? 1);
    for (let i = 0; i < count; i++) {
      if (turned.includes(i)) continue;
      if (active[i] === 1 ? (loads[i] ?? 0) < leastLoad : (gaps[i] ?? 0) < leastGap) return i;
    }
    return -1;
  }

  /** All of them at `load`, every other nut as it stands. */
  function bring(turned: readonly number[], load: number): void {
    for (const bolt of turned) if (active[bolt] === 1) pivot(bolt);
    solve(turned, load);
    // Least index first ends for every matrix of this kind; the count only stops what can't happen.
    for (let tries = 0; tries < 200 * count; tries++) {
      const bolt = wrong(turned);
      if (bolt < 0) break;
      pivot(bolt);
      solve(turned, load);
    }
    for (const bolt of turned) if (load > 0) pivot(bolt);
    for (let i = 0; i < count; i++) if ((loads[i] ?? 0) < 0) loads[i] = 0;
  }

  /**
   * One nut turned until its bolt carries `load`, contact by contact: loads and gaps run straight between one bolt
   * losing or making contact and the next. False where it does not get there and the whole has to be solved afresh.
   */
  function broughtAlone(bolt: number, load: number): boolean {
    if (active[bolt] !== 1) {
      nuts[bolt] = (nuts[bolt] ?? 0) + (gaps[bolt] ?? 0);
      gaps[bolt] = 0;
      pivot(bolt);
    }
    for (let contacts = 0; contacts <= 4 * count; contacts++) {
      let turn = (load - (loads[bolt] ?? 0)) / at(bolt, bolt);
      let changing = -1;
      for (let i = 0; i < count; i++) {
        const slope = at(i, bolt);
        if (slope >= 0 || i === bolt) continue;
        const room = Math.max(0, (active[i] === 1 ? loads[i] : gaps[i]) ?? 0) / -slope;
        if (room < turn) {
          turn = room;
          changing = i;
        }
      }
      nuts[bolt] = (nuts[bolt] ?? 0) + turn;
      for (let i = 0; i < count; i++) {
        const values = active[i] === 1 ? loads : gaps;
        values[i] = (values[i] ?? 0) + at(i, bolt) * turn;
      }
      if (changing < 0) {
        loads[bolt] = load;
        return true;
      }
      loads[changing] = 0;
      gaps[changing] = 0;
      pivot(changing);
    }
    return false;
  }

  return {
    loads,
    turn(bolts, load) {
      let turned = bolts.filter((bolt) => (loads[bolt] ?? 0) < load * (1 - NOTHING));
      if (turned.length === 0) return false;
      const [only] = turned;
      if (turned.length === 1 && bolts.length === 1 && only !== undefined && broughtAlone(only, load))
        return true;
      const before = bolts.map((bolt) => nuts[bolt] ?? 0);
      // Of several tools one may be carried past its set value by the others (its nut is then not turned), or a bolt
      // that was left may drop below it (its nut is then turned too).
      for (let rounds = 0; rounds <= 2 * bolts.length; rounds++) {
        bring(turned, load);
        const back = turned.filter((bolt) => (nuts[bolt] ?? 0) < (before[bolts.indexOf(bolt)] ?? 0));
        const low = bolts.filter(
          (bolt) => !turned.includes(bolt) && (loads[bolt] ?? 0) < load * (1 - NOTHING),
        );
        if (turned.length === 1 || back.length + low.length === 0) break;
        for (const bolt of back) nuts[bolt] = before[bolts.indexOf(bolt)] ?? 0;
        turned = [...turned.filter((bolt) => !back.includes(bolt)), ...low];
      }
      return true;
    },
    place(bolt, position, most) {
      const [from, carried] = [nuts[bolt] ?? 0, loads[bolt] ?? 0];
      nuts[bolt] = position;
      bring([], 0);
      // A nut that others hold slack there can't be set by its load: it stays where it was.
      if ((loads[bolt] ?? 0) <= carried * (1 + NOTHING)) {
        nuts[bolt] = from;
        bring([], 0);
      } else if ((loads[bolt] ?? 0) > most) bring([bolt], most);
      return loads[bolt] ?? 0;
    },
  };
}
