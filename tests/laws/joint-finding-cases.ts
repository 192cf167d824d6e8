import { typed } from '../truth/entered.ts';
import type { Case } from './finding-case.ts';
import { gasket, lubricant, noLimits, target } from './finding-parts.ts';
import { L7M_CONFIRMED } from './site-fixtures.ts';

/** What makes each finding about the joint, its gasket, pressure and temperature appear. */
export const JOINT_CASES = {
  friction_assumed: {
    severity: 'warning',
    change: (input) => {
      lubricant(input).evidence = 'assumed';
    },
  },
  table_value_unconfirmed: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.bolting.grade = 'ASTM A320 L7M';
    },
  },
  table_value_confirmed: {
    severity: 'note',
    change: (input) => {
      input.joint.data.bolting.grade = 'ASTM A320 L7M';
      input.site.confirmations = [structuredClone(L7M_CONFIRMED)];
    },
  },
  count_differs: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.bolting.count = 8;
    },
  },
  thread_differs: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.bolting.thread = '3/4-10 UNC';
    },
  },
  circle_differs: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.bolting.circle = typed('331', 'mm');
    },
  },
  limits_conflict: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.limits.boltStressMin = typed('460', 'MPa');
    },
  },
  above_bolt_limit: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.limits.boltStressMax = typed('360', 'MPa');
    },
  },
  below_bolt_limit: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.limits.boltStressMin = typed('400', 'MPa');
    },
  },
  above_flange_limit: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.limits.flangeBoltStressMax = typed('300', 'MPa');
    },
  },
  above_yield: {
    severity: 'refusal',
    change: (input) => {
      noLimits(input);
      target('99')(input);
    },
  },
  stud_short: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.bolting.studLength = typed('130', 'mm');
    },
  },
  stud_protrusion_low: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.bolting.studLength = typed('133', 'mm');
    },
  },
  stud_protrusion_unusual: {
    severity: 'note',
    change: (input) => {
      input.joint.data.bolting.studLength = typed('160', 'mm');
    },
  },
  gasket_target_not_reached: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.target = { mode: 'component limits', basis: 'fixture' };
      gasket(input).targetStress = typed('180', 'MPa');
    },
  },
  gasket_stress_low: {
    severity: 'refusal',
    change: (input) => {
      gasket(input).seatingStress = typed('130', 'MPa');
    },
  },
  gasket_stress_high: {
    severity: 'refusal',
    change: (input) => {
      gasket(input).stressMax = typed('100', 'MPa');
    },
  },
  flange_rotation_high: {
    severity: 'refusal',
    change: (input) => {
      gasket(input).rotationMax = typed('0.2', 'deg');
    },
  },
  joint_parts: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.pressures.test.pressure = typed('300', 'bar');
    },
  },
  below_code_minimum: {
    severity: 'warning',
    change: (input) => {
      gasket(input).stressY = typed('300', 'MPa');
    },
  },
  hot_load_low: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.hot.boltExpansion = typed('24', 'um/m.K');
    },
  },
  above_yield_hot: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.hot.boltYieldHot = typed('300', 'MPa');
    },
  },
  strip_margin_low: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.bolting.nutTensileStrength = typed('150', 'MPa');
    },
  },
  flange_rating_exceeded: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.pressures.design.pressure = typed('45', 'bar');
    },
  },
} satisfies Record<string, Case>;
