import { NUT_SERIES } from '../bolting/nut.ts';
import { threadDesignations } from '../bolting/thread.ts';
import type { ReferenceChoices } from '../contract/register.ts';
import type { SiteRow } from '../contract/site.ts';
import type { SitePlan } from '../joint/site-tables.ts';
import { PASS_PLANS } from '../sequence/plans.ts';
import { FLANGE_STANDARDS, flangeSizes } from './flanges.ts';
import {
  FRICTION_CLASSES,
  type FrictionClass,
  frictionClass,
  frictionClassName,
} from './friction-classes.ts';
import { GASKET_FACTOR_NAMES } from './gaskets.ts';
import { gradeNames } from './strengths.ts';

/**
 * Everything a form offers from the shipped tables and the site's own.
 *
 * @param rows rows of the site's own tables; retired ones are left out
 * @param plans pass plans of the site's own; retired ones are left out
 * @returns names to choose from, shipped ones first
 * @example referenceChoices().nutSeries[0] // 'ASME B18.2.2 heavy hex'
 * @source the tables of `core/reference`
 */
export function referenceChoices(
  rows: readonly SiteRow[] = [],
  plans: readonly SitePlan[] = [],
): ReferenceChoices {
  const offered = rows.filter(({ data }) => !data.retired);
  return {
    flangeStandards: FLANGE_STANDARDS.map((standard) => ({ standard, sizes: flangeSizes(standard) })),
    threads: threadDesignations(),
    grades: [
      ...gradeNames(),
      ...offered.flatMap(({ data }) => (data.kind === 'stud grade' ? [data.key] : [])),
    ],
    nutSeries: [...NUT_SERIES],
    passPlans: [
      ...PASS_PLANS.map(({ id, name, source }) => ({
        id,
        name,
        source,
        origin: 'shipped' as const,
        approved: true,
      })),
      ...plans
        .filter(({ data }) => !data.retired)
        .map(({ id, name, source, approved }) => ({
          id,
          name,
          source,
          origin: 'site' as const,
          approved: approved !== null,
        })),
    ],
    gasketTypes: [...GASKET_FACTOR_NAMES],
    frictionClasses: FRICTION_CLASSES.flatMap((name) => frictionClass(name) ?? []).map(frictionChoice),
    siteRows: offered,
  };
}

function frictionChoice({ name, min, max, pairs, source }: FrictionClass) {
  return {
    name: frictionClassName(name),
    range: `μ ${max === null ? `${min} and above` : `${min} to ${max}`}`,
    lubricants: [...new Set(pairs.map(({ lubricant }) => lubricant))],
    source,
  };
}
