import type { SiteRowKind } from '../contract/site.ts';
import { PASS_PLANS } from '../sequence/plans.ts';
import { sameName } from '../text/same-name.ts';
import { FLANGE_STANDARDS, flangeSizes } from './flanges.ts';
import { FRICTION_CLASSES, frictionClassName } from './friction-classes.ts';
import { GASKET_FACTOR_NAMES } from './gaskets.ts';
import { gradeNames, plainGrade } from './strengths.ts';

/**
 * The shipped row a site's row would hide if it took this name.
 *
 * @param kind which table
 * @param key name the site wants to give
 * @returns name of the shipped row, or null when the name is free
 * @example shippedRowNamed('stud grade', 'A193 B7') // 'ASTM A193 B7'
 * @source rule of this program: nothing shipped is edited in place
 */
export function shippedRowNamed(kind: SiteRowKind, key: string): string | null {
  if (kind === 'stud grade') return gradeNames().find((name) => plainGrade(name) === plainGrade(key)) ?? null;
  if (kind === 'flange') return FLANGE_NAMES.find((name) => sameName(name, key)) ?? null;
  if (kind === 'gasket') return GASKET_FACTOR_NAMES.find((name) => sameName(name, key)) ?? null;
  return FRICTION_NAMES.find((name) => sameName(name, key)) ?? null;
}

/**
 * The shipped pass plan a site's plan would hide.
 *
 * @param name name the site wants to give
 * @returns name of the shipped plan, or null when the name is free
 * @example shippedPlanNamed('staged thirds') // 'Staged thirds'
 * @source rule of this program: nothing shipped is edited in place
 */
export function shippedPlanNamed(name: string): string | null {
  return PASS_PLANS.find((plan) => sameName(plan.name, name) || sameName(plan.id, name))?.name ?? null;
}

const FRICTION_NAMES: readonly string[] = FRICTION_CLASSES.map(frictionClassName);

/** "ASME B16.5 8 300", "ASME B16.5 NPS 8 Class 300", "EN 1092-1 DN 200 PN 16". */
const FLANGE_NAMES: readonly string[] = FLANGE_STANDARDS.flatMap((standard) =>
  flangeSizes(standard).flatMap(({ size, ratings }) =>
    ratings.flatMap((rating) => [
      `${standard} ${size} ${rating}`,
      standard === 'EN 1092-1'
        ? `${standard} DN ${size} PN ${rating}`
        : `${standard} NPS ${size} Class ${rating}`,
    ]),
  ),
);
