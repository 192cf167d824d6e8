import { NUT_SERIES } from '../bolting/nut.ts';
import { threadDesignations } from '../bolting/thread.ts';
import type { ReferenceChoices } from '../contract/register.ts';
import { PASS_PLANS } from '../sequence/plans.ts';
import { FLANGE_STANDARDS, flangeSizes } from './flanges.ts';
import { gradeNames } from './strengths.ts';

/** Everything a form offers from the shipped tables. */
export function referenceChoices(): ReferenceChoices {
  return {
    flangeStandards: FLANGE_STANDARDS.map((standard) => ({ standard, sizes: flangeSizes(standard) })),
    threads: threadDesignations(),
    grades: gradeNames(),
    nutSeries: [...NUT_SERIES],
    passPlans: PASS_PLANS.map(({ id, name, source }) => ({ id, name, source })),
  };
}
