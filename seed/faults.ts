import { UNCONFIRMED } from './one-source.ts';
import type { DemoJoint } from './types.ts';

/**
 * What is wrong with the demo plant on purpose, and where: so that a person trying the program can look for it, and so
 * that a test can check that it is really there.
 */
export interface PlantedFault {
  readonly what: string;
  /** Tags and tool numbers it concerns. */
  readonly joints: readonly string[];
  readonly tools: readonly string[];
}

export const LAPSED_WRENCH = 'W-05';
export const DRIFTING_WRENCH = 'W-03';
/** Yearly loss of delivered torque, as a fraction. */
export const DRIFT_PER_YEAR = 0.019;
export const WEAK_WRENCH = 'W-02';
/** Fraction by which it delivered less than its certificate said, from the day given in days before today. */
export const WEAK_BY = 0.08;
export const WEAK_SINCE_DAYS = 240;
/** Joints tightened with it between its last good certificate and the one that found it. */
export const WEAK_JOINTS = 23;

/** Came back from the laboratory late; a joint was tightened with it meanwhile, days before today. */
export const LATE_WRENCH = 'W-07';
export const LATE_BY_DAYS = 40;
export const LATE_USE = 'J-200-902';
export const LATE_USE_DAYS = 320;

export const NUT_TRAP = 'J-300-901';
export const NUT_TRAP_CASSETTE = 'K-05';
export const NUT_TRAP_REDUCER = 'R-01';
export const SEIZING = 'J-200-901';
/** Median breakout ratio of the seizing joint, opening by opening. */
export const SEIZING_RATIOS = [1.15, 1.38, 1.62, 1.94] as const;
export const LOOK_ALIKES = ['J-300-902', 'J-300-903'] as const;
export const WRONG_NUT_FACTOR = ['J-400-901', 'J-400-902'] as const;
/** The value that was assumed, and the one the site measured for the same paste. */
const ASSUMED_NUT_FACTOR = '0.11';
export const MEASURED_NUT_FACTOR = '0.16';
export const INCOMPLETE = ['J-500-901', 'J-500-902', 'J-700-901', 'J-700-902', 'J-100-901'] as const;

export const PLANTED_FAULTS: readonly PlantedFault[] = [
  {
    what: 'The last certificate of this wrench lapsed the day before today.',
    joints: [],
    tools: [LAPSED_WRENCH],
  },
  {
    what: 'A 36 mm cassette is half a millimetre too small for the 1-7/16 in nuts of this joint; the cassette one size up with its reducer takes them.',
    joints: [NUT_TRAP],
    tools: [NUT_TRAP_CASSETTE, NUT_TRAP_REDUCER],
  },
  {
    what: 'This wrench delivers about 2 % less at every yearly calibration.',
    joints: [],
    tools: [DRIFTING_WRENCH],
  },
  {
    what: 'Seizing hot service: breakout takes more at every opening, and two studs had to be cut at the last.',
    joints: [SEIZING],
    tools: [],
  },
  {
    what: 'Two look-alike joints 1.5 m apart, same size, class and service, on either side of an isolation valve.',
    joints: LOOK_ALIKES,
    tools: [],
  },
  {
    what: 'A nut factor of 0.11 was assumed where the site measured 0.16 with the same paste: the studs carry about two thirds of the load aimed at.',
    joints: WRONG_NUT_FACTOR,
    tools: [],
  },
  {
    what: 'This wrench was found delivering 8 % less than its certificate said; 23 joints were tightened with it since the last good one, and nobody has opened a case yet.',
    joints: [],
    tools: [WEAK_WRENCH],
  },
  {
    what: 'This joint was tightened with a wrench whose certificate had lapsed: no setting could be issued, the work is recorded and flagged.',
    joints: [LATE_USE],
    tools: [LATE_WRENCH],
  },
  {
    what: 'Data are missing: thread, count, grade, nut, lubricant or target is not known.',
    joints: INCOMPLETE,
    tools: [],
  },
  {
    what: 'A row of the tables that one source prints, and nobody has confirmed: no setting is issued, work is recorded and flagged.',
    joints: UNCONFIRMED,
    tools: [],
  },
];

const NO_BOLTING: DemoJoint['bolting'] = {
  count: null,
  thread: null,
  circle: null,
  grade: null,
  yieldStrength: null,
  yieldOrigin: '',
  studLength: null,
  grip: null,
  nutSeries: null,
};

/** The joints of the planted faults, made from an ordinary joint of the plant. */
export function plantedJoints(ordinary: DemoJoint): DemoJoint[] {
  const standard = (size: string, rating: string): DemoJoint['flange'] => ({
    kind: 'standard',
    standard: 'ASME B16.5',
    size,
    rating,
    facing: 'raised face',
  });
  const joint = (tag: string, unit: string, changes: Partial<DemoJoint>): DemoJoint => ({
    ...ordinary,
    bolting: { ...ordinary.bolting, grade: 'ASTM A193 B7' },
    tag,
    unit,
    remarks: 'Invented demo data.',
    ...changes,
  });
  const lookAlike = (tag: string, place: string, other: string) =>
    joint(tag, 'Unit 300 Reformer', {
      location: place,
      service: 'reformate',
      serviceTemperature: { text: '145', unit: 'degC' },
      flange: standard('6', '300'),
      remarks: `Invented demo data. Looks like ${other}, which is 1.5 m away on the other side of the isolation valve.`,
    });
  const assumed = (tag: string, place: string) =>
    joint(tag, 'Unit 400 Steam and condensate', {
      location: place,
      service: 'medium-pressure steam',
      serviceTemperature: { text: '235', unit: 'degC' },
      flange: standard('10', '300'),
      lubricant: {
        name: 'nickel-based anti-seize',
        batch: '',
        nutFactor: { text: ASSUMED_NUT_FACTOR, unit: 'one' },
        nutFactorCv: null,
        frictionThread: null,
        frictionBearing: null,
        evidence: 'assumed',
        source: '',
      },
    });
  const [first, second] = LOOK_ALIKES;
  return [
    joint(NUT_TRAP, 'Unit 300 Reformer', {
      location: 'exchanger E-301, shell outlet, elevation +4 m',
      service: 'reformate',
      serviceTemperature: { text: '150', unit: 'degC' },
      flange: standard('4', '600'),
    }),
    joint(SEIZING, 'Unit 200 Hydrotreater', {
      location: 'exchanger E-202, tube-side inlet, elevation +11 m',
      service: 'reactor effluent',
      serviceTemperature: { text: '410', unit: 'degC' },
      flange: standard('8', '900'),
      bolting: { ...ordinary.bolting, grade: 'ASTM A193 B16' },
    }),
    joint(LATE_USE, 'Unit 200 Hydrotreater', {
      location: 'reactor R-201, outlet nozzle, elevation +5 m',
      service: 'reactor effluent',
      serviceTemperature: { text: '405', unit: 'degC' },
      flange: standard('12', '1500'),
      bolting: { ...ordinary.bolting, grade: 'ASTM A193 B16' },
    }),
    lookAlike(first, 'pump P-305, suction side of isolation valve, elevation +1 m', second),
    lookAlike(second, 'pump P-305, discharge side of isolation valve, elevation +1 m', first),
    assumed(WRONG_NUT_FACTOR[0], 'header S-18, branch to E-410, elevation +6 m'),
    assumed(WRONG_NUT_FACTOR[1], 'header S-18, branch to V-420, elevation +6 m'),
    joint(INCOMPLETE[0], 'Unit 500 Amine treating', {
      location: 'absorber C-501, handhole, elevation +3 m',
      service: 'rich amine',
      flange: { kind: 'custom', description: 'Handhole cover, absorber C-501' },
      bolting: NO_BOLTING,
      lubricant: null,
      target: null,
    }),
    joint(INCOMPLETE[1], 'Unit 500 Amine treating', {
      location: 'regenerator C-510, reflux nozzle, elevation +18 m',
      service: 'rich amine',
      flange: standard('6', '150'),
      bolting: NO_BOLTING,
    }),
    joint(INCOMPLETE[2], 'Unit 700 Tank farm and loading', {
      location: 'loading arm L-3, swivel joint, elevation +2 m',
      service: 'gasoline',
      flange: standard('4', '150'),
      lubricant: null,
    }),
    joint(INCOMPLETE[3], 'Unit 700 Tank farm and loading', {
      location: 'tank T-702, suction nozzle, elevation +1 m',
      service: 'gasoline',
      flange: standard('12', '150'),
      target: null,
    }),
    joint(INCOMPLETE[4], 'Unit 100 Crude distillation', {
      location: 'pump P-102, casing drain, elevation 0 m',
      service: 'crude oil',
      flange: { kind: 'custom', description: 'Drain flange, pump P-102, size not marked' },
      bolting: { ...NO_BOLTING, count: 4, grade: 'ASTM A193 B7' },
      lubricant: null,
      target: null,
    }),
  ];
}
