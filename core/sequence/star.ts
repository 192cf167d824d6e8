import type { BoltOrder } from '../contract/setting.ts';
import { PUBLISHED_ORDERS, PUBLISHED_SOURCE } from './published.ts';

export const FEWEST_STUDS = 1;
export const MOST_STUDS = 400;

/**
 * Star order of a joint, bolts numbered clockwise from 1: the published list where there is one, else the rule below.
 *
 * @param count N, whole number from 1 to 400
 * @returns the order in groups for reading, with its origin; null when `count` is outside
 * @example starOrder(12)?.groups // [[1, 7, 4, 10], [2, 8, 5, 11], [3, 9, 6, 12]]
 * @source ASME PCC-1-2013, Table 4, from memory; rule of this program elsewhere
 */
export function starOrder(count: number): BoltOrder | null {
  if (!Number.isInteger(count) || count < FEWEST_STUDS || count > MOST_STUDS) return null;
  const published = PUBLISHED_ORDERS[count];
  if (published !== undefined) {
    return { groups: published.map((group) => [...group]), origin: 'published', source: PUBLISHED_SOURCE };
  }
  return { groups: inFours(ownOrder(count)), origin: 'own rule', source: ruleText(count) };
}

/**
 * Order by this program's rule. Even N: each bolt is followed by the one opposite; the next pair is the one farthest
 * from the pairs already turned, the pair 90° from the last where that leaves a choice. Odd N has no opposite bolt:
 * the next bolt is the one that brings the centre of those turned closest to the middle of the joint.
 *
 * @param count N, whole number of at least 1
 * @returns bolt numbers in order; a permutation of 1…N
 * @example ownOrder(6) // [1, 4, 2, 5, 3, 6]
 * @source rule of this program; its properties are tested for every N from 4 to 100
 */
export function ownOrder(count: number): number[] {
  return count % 2 === 0 ? evenOrder(count) : oddOrder(count);
}

function evenOrder(count: number): number[] {
  const half = count / 2;
  const turned: number[] = [0];
  const left = new Set(Array.from({ length: half - 1 }, (_, index) => index + 1));
  while (left.size > 0) {
    const last = turned.at(-1) ?? 0;
    const next = best([...left], (axis) => [
      Math.min(...turned.map((other) => axisDistance(axis, other, half))),
      axisDistance(axis, last, half),
      -axis,
    ]);
    turned.push(next);
    left.delete(next);
  }
  return turned.flatMap((axis) => [axis + 1, axis + 1 + half]);
}

/** Steps between two diameters, counted the short way round: N/2 of them close the circle. */
function axisDistance(a: number, b: number, half: number): number {
  const apart = Math.abs(a - b);
  return Math.min(apart, half - apart);
}

function oddOrder(count: number): number[] {
  const turned: number[] = [0];
  let x = 1;
  let y = 0;
  const left = new Set(Array.from({ length: count - 1 }, (_, index) => index + 1));
  while (left.size > 0) {
    const next = best([...left], (bolt) => {
      const [bx, by] = position(bolt, count);
      // Rounded, so that two mirror-image bolts tie on every engine and the lower number wins.
      return [-Number(Math.hypot(x + bx, y + by).toFixed(9)), -bolt];
    });
    const [nx, ny] = position(next, count);
    x += nx;
    y += ny;
    turned.push(next);
    left.delete(next);
  }
  return turned.map((bolt) => bolt + 1);
}

function position(bolt: number, count: number): [number, number] {
  const angle = (2 * Math.PI * bolt) / count;
  return [Math.cos(angle), Math.sin(angle)];
}

/** Candidate whose marks are largest, compared one after the other. */
function best(candidates: readonly number[], marks: (candidate: number) => readonly number[]): number {
  let winner = candidates[0] ?? 0;
  let winning = marks(winner);
  for (const candidate of candidates.slice(1)) {
    const own = marks(candidate);
    const first = own.findIndex((mark, index) => mark !== winning[index]);
    if (first >= 0 && (own[first] ?? 0) > (winning[first] ?? 0)) {
      winner = candidate;
      winning = own;
    }
  }
  return winner;
}

function inFours(order: readonly number[]): number[][] {
  const groups: number[][] = [];
  for (let from = 0; from < order.length; from += 4) groups.push(order.slice(from, from + 4));
  return groups;
}

function ruleText(count: number): string {
  return count % 2 === 0
    ? 'rule of this program: opposite, then the pair farthest from those already turned'
    : 'rule of this program for odd counts: the bolt that brings the centre back to the middle';
}
