import type { Thread } from '../bolting/thread.ts';
import { toSI } from '../units/units.ts';
import { BOLT_STRENGTHS, type BoltStrengthRow } from './bolt-strength.ts';

/**
 * Grades the strength tables have, each once, in table order.
 *
 * @returns names of the grades
 * @example gradeNames()[0] // 'ASTM A193 B7'
 * @source ASTM A193, A320, A453, A540; ISO 898-1 (second-hand)
 */
export function gradeNames(): string[] {
  return [...new Set(BOLT_STRENGTHS.map((row) => row.grade))];
}

/**
 * Finds the strength row of a grade for a stud's size and measuring system.
 *
 * @param grade "ASTM A193 B7"; a missing "ASTM" and other spacing are accepted
 * @param thread thread of the stud; metric studs never take the inch table's values
 * @returns the row, or null when the grade has none for this size
 * @example findStrength('ASTM A193 B7', thread)?.yield // [105, 'ksi'] for a 7/8 in stud
 * @source ASTM A193, A320, A453, A540; ISO 898-1 (second-hand)
 */
export function findStrength(grade: string, thread: Thread): BoltStrengthRow | null {
  const diameterMm = thread.diameter * 1000;
  const row = rowsOf(grade).find(
    (candidate) =>
      candidate.system === thread.system &&
      diameterMm > candidate.over + 1e-9 &&
      diameterMm <= candidate.upTo + 1e-9,
  );
  return row ?? null;
}

/**
 * Minimum yield strength of a row.
 *
 * Equation: Re = printed value × unit.
 * @param row row of a strength table
 * @returns Re, Pa
 * @example yieldPa(findStrength('ASTM A193 B7', thread)) // 723.9e6
 * @source the row's own specification
 */
export function yieldPa(row: BoltStrengthRow): number {
  return toSI(row.yield[0], row.yield[1]);
}

const BY_GRADE = Map.groupBy(BOLT_STRENGTHS, (row) => row.grade);
const BY_PLAIN_GRADE = Map.groupBy(BOLT_STRENGTHS, (row) => plainGrade(row.grade));

function rowsOf(grade: string): readonly BoltStrengthRow[] {
  return BY_GRADE.get(grade) ?? BY_PLAIN_GRADE.get(plainGrade(grade)) ?? [];
}

/**
 * One spelling per grade: "A193 Gr. B7" and "ASTM A193 B7" are the same.
 *
 * @param grade grade as typed
 * @returns the grade in capitals, without "ASTM" and "Gr."
 * @example plainGrade('ASTM A193 Gr. B7') // 'A193 B7'
 * @source rule of this program
 */
export function plainGrade(grade: string): string {
  return grade
    .toUpperCase()
    .replace(/^ASTM\s+/, '')
    .replace(/\bGR(ADE)?\.?\s*/, '')
    .replace(/[\s-]+/g, ' ')
    .trim();
}
