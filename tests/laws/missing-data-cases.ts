import type { Case } from './finding-case.ts';
import { cassette, custom, gasket, noLimits } from './finding-parts.ts';
import { SITE_PLAN } from './site-fixtures.ts';

/** What makes each finding about something that is not known appear. */
export const MISSING_DATA_CASES = {
  thread_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.bolting.thread = '7/8-19 UNC';
    },
  },
  bolt_count_unknown: {
    severity: 'refusal',
    change: (input) => {
      custom(input);
      input.joint.data.bolting.count = null;
    },
  },
  bolt_circle_unknown: {
    severity: 'note',
    change: (input) => {
      custom(input);
      input.joint.data.bolting.circle = null;
    },
  },
  yield_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.bolting.grade = 'a grade of no table';
    },
  },
  nut_unknown: { severity: 'warning', change: custom },
  friction_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.lubricant = null;
    },
  },
  target_missing: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.target = null;
    },
  },
  limit_unknown: { severity: 'note', change: noLimits },
  looseness_unknown: {
    severity: 'note',
    change: (input) => {
      cassette(input).looseness = null;
    },
  },
  clearance_unknown: {
    severity: 'note',
    change: (input) => {
      input.joint.data.space.radialGap = null;
    },
  },
  protrusion_unknown: {
    severity: 'note',
    change: (input) => {
      custom(input);
      input.joint.data.bolting.nutSeries = 'ASME B18.2.2 heavy hex';
      input.joint.data.bolting.studLength = null;
    },
  },
  rating_unknown: {
    severity: 'warning',
    change: (input) => {
      cassette(input).ratedTorque = null;
    },
  },
  part_missing: {
    severity: 'refusal',
    change: (input) => {
      input.set.pump = null;
    },
  },
  gauge_certificate_points_missing: {
    severity: 'note',
    change: (input) => {
      const measured = input.set.gauge?.certificates[0]?.data.measured;
      if (measured?.kind === 'gauge') measured.points = [];
    },
  },
  plan_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.planId = 'a plan of nobody';
    },
  },
  plan_not_approved: {
    severity: 'refusal',
    change: (input) => {
      input.planId = SITE_PLAN.id;
      input.site.plan = structuredClone(SITE_PLAN);
    },
  },
  bolt_set_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.boltSet = 1;
    },
  },
  gasket_target_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.target = { mode: 'component limits', basis: 'fixture' };
      gasket(input).targetStress = null;
    },
  },
  check_not_made: {
    severity: 'note',
    change: (input) => {
      gasket(input).seatingStress = null;
    },
  },
  torque_tool_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.method = 'hand torque wrench';
    },
  },
} satisfies Record<string, Case>;
