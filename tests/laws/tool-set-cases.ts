import { typed } from '../truth/entered.ts';
import type { Case } from './finding-case.ts';
import { cassette, drive, gauge, handWrench, reducer } from './finding-parts.ts';

/** What makes each finding about fit, strength and gauge of the tool set appear. */
export const SET_CASES = {
  opening_too_small: {
    severity: 'refusal',
    change: (input) => {
      cassette(input).acrossFlats = typed('36', 'mm');
    },
  },
  opening_too_large: {
    severity: 'refusal',
    change: (input) => {
      cassette(input).acrossFlats = typed('1-5/8', 'in');
    },
  },
  reducer_does_not_fit: {
    severity: 'refusal',
    change: (input) => {
      input.set.reducers = [reducer('2', '1-7/16')];
    },
  },
  family_differs: {
    severity: 'refusal',
    change: (input) => {
      cassette(input).family = 'F2';
    },
  },
  neighbour_in_the_way: {
    severity: 'refusal',
    change: (input) => {
      cassette(input).headRadius = typed('65', 'mm');
    },
  },
  hub_in_the_way: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.space.radialGap = typed('30', 'mm');
    },
  },
  torque_above_rating: {
    severity: 'refusal',
    change: (input) => {
      cassette(input).ratedTorque = typed('380', 'N.m');
    },
  },
  pressure_above_rating: {
    severity: 'refusal',
    change: (input) => {
      if (input.set.pump !== null) input.set.pump.data.properties.ratedPressure = typed('250', 'bar');
    },
  },
  breakout_above_wrench: {
    kind: 'breakout',
    severity: 'warning',
    change: (input) => {
      drive(input).data.properties.ratedTorque = typed('600', 'N.m');
    },
  },
  breakout_above_stud: {
    kind: 'breakout',
    severity: 'warning',
    change: (input) => {
      input.lastTightening = { torque: 384, happenedAt: '2025-05-04T10:00:00+02:00', eventId: 'invented' };
    },
  },
  installed_torque_unknown: {
    kind: 'breakout',
    severity: 'warning',
    change: (input) => {
      input.lastTightening = null;
    },
  },
  above_gauge_scale: {
    severity: 'refusal',
    change: (input) => {
      gauge(input).scaleMax = typed('250', 'bar');
    },
  },
  gauge_scale_end: {
    severity: 'warning',
    change: (input) => {
      gauge(input).scaleMax = typed('1600', 'bar');
    },
  },
  rounding_large: {
    severity: 'note',
    change: (input) => {
      gauge(input).graduation = typed('50', 'bar');
    },
  },
  hose_age: {
    severity: 'warning',
    change: (input) => {
      const hose = input.set.hoses[0];
      if (hose === undefined) throw new Error('fixture: no hose');
      hose.data.properties.madeOn = null;
    },
  },
  torque_tool_unsuitable: {
    severity: 'refusal',
    change: (input) => {
      input.method = 'hand torque wrench';
      input.torqueTool = handWrench('200');
    },
  },
  further_tools_unchecked: {
    severity: 'warning',
    change: (input) => {
      input.planId = 'two-tools-thirds';
    },
  },
  tension_has_no_torque: {
    severity: 'note',
    change: (input) => {
      input.method = 'tensioner';
    },
  },
} satisfies Record<string, Case>;
