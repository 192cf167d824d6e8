import type { ClassRuleInput } from '../core/contract/life.ts';
import { addDays, siteMoment } from './calendar.ts';
import { SEIZING, WRONG_NUT_FACTOR } from './faults.ts';
import { ENGINEER, SUPERVISOR, TECHNICIANS } from './people.ts';
import type { DemoLife, DemoStepTaken } from './types.ts';

const PLANNER = 'Oskar Brennfield';
const [FIRST, SECOND] = TECHNICIANS;
const PROCEDURE = 'Invented site procedure BP-07, issue 2';

/** Class of the joints of the invented amine unit. */
export const AMINE_CLASS: ClassRuleInput = {
  name: 'Amine (invented)',
  level: 'critical',
  fields: null,
  completeRecord: false,
  witnessPercent: 100,
  loadCheckPercent: 10,
  leakTest: { needed: true, methods: ['soap solution', 'tracer gas'], words: 'invented' },
  retightening: { afterDwell: true, dwell: 4, duringStartUp: false, words: 'invented' },
  technicianLevel: '',
  signs: [{ step: 'reinstate', roles: ['engineer'] }],
  source: PROCEDURE,
};

type Told = Omit<DemoStepTaken, 'joint' | 'happenedAt'>;

const step = (name: Told['step'], by: string, evidence: Told['evidence'] = {}): Told => ({
  step: name,
  by,
  evidence,
  reallyDone: null,
});

const ASSESSED = step('assess', ENGINEER, { basis: `${PROCEDURE}: toxic service` });
const IN_SERVICE = [ASSESSED, step('declare in service', PLANNER, { basis: 'walked down, invented survey' })];
const SCHEDULED = [...IN_SERVICE, step('schedule', PLANNER, { workOrder: 'WO-7 (invented)' })];

const isolated = (reference: string) => [
  ...SCHEDULED,
  step('isolate', FIRST, { isolationRef: reference, method: 'blind or spade', proven: 'yes' }),
];

/** People stand in the evidence by their names, in braces; they get ids when the plant is entered. */
const released = (joint: string, reference: string) => [
  ...isolated(reference),
  step('release', PLANNER, {
    identityChecks: [
      { personId: `{${FIRST}}`, how: 'tag read', tagSeen: joint },
      { personId: `{${SECOND}}`, how: 'drawing and landmark' },
    ],
    permitRef: 'P-31 (invented)',
    zeroEnergyProven: 'yes',
    provenBy: `{${FIRST}}`,
  }),
];

const broken = (joint: string, reference: string) => [
  ...released(joint, reference),
  step('break', FIRST, { zeroEnergyProven: 'yes', seizedBolts: [], cutBolts: [] }),
];

const madeUp = (joint: string, reference: string) => [
  ...broken(joint, reference),
  step('inspect', SECOND, { result: 'fit for assembly', inspectorId: `{${SUPERVISOR}}` }),
  step('make up', FIRST, { gasket: { condition: 'new', matchesJoint: 'yes', verifiedBy: `{${SECOND}}` } }),
];

const LIVES: readonly (readonly [string, readonly Told[]])[] = [
  ['J-500-002', IN_SERVICE],
  ['J-500-003', IN_SERVICE],
  [
    'J-500-004',
    [
      ...IN_SERVICE,
      step('report leak', SECOND, { clock: 5, phase: 'in service', rateWords: 'a drop a minute' }),
    ],
  ],
  ['J-500-005', SCHEDULED],
  ['J-500-006', isolated('I-12 (invented)')],
  ['J-500-007', broken('J-500-007', 'I-12 (invented)')],
  ['J-500-009', madeUp('J-500-009', 'I-13 (invented)')],
  [
    'J-500-010',
    [
      ...broken('J-500-010', 'I-13 (invented)'),
      step('hold', FIRST, { reason: 'scratch across the face, to be looked at' }),
    ],
  ],
  [
    'J-500-011',
    [
      ...isolated('I-14 (invented)'),
      {
        ...step('break', SECOND, { zeroEnergyProven: 'yes' }),
        reallyDone: 'Opened with the joint beside it; the release was written down for one of them only',
      },
    ],
  ],
];

const MINUTES_BETWEEN = 20;
const BEGIN = 7 * 60;
/** Time of a round on which leaks are found, minutes. */
const ROUND = 15 * 60;

/** Leaks of the invented plant, days before today. The first joint leaked twice; a site measured its nut factor since. */
const LEAKS: readonly (readonly [joint: string, daysAgo: number, told: Told])[] = [
  [
    WRONG_NUT_FACTOR[0],
    150,
    step('report leak', FIRST, {
      clock: 5,
      seenFrom: 'the pump side',
      nearBolts: [4, 5],
      phase: 'start-up',
      medium: 'condensate',
      rate: { text: '4', unit: 'mL/min' },
      method: 'seen on a round',
      causes: [{ cause: 'thermal transient or shock', level: 'inferred', why: 'first heat-up' }],
      action: 'drained off, barrier set up',
    }),
  ],
  [
    WRONG_NUT_FACTOR[0],
    149,
    {
      ...step('test', SECOND, { result: 'passed', medium: 'water', action: 'nuts gone round again' }),
      reallyDone: 'Entered from a paper record (invented)',
    },
  ],
  [
    WRONG_NUT_FACTOR[0],
    36,
    step('report leak', SECOND, {
      clock: 4,
      seenFrom: 'the pump side',
      nearBolts: [4],
      phase: 'in service',
      medium: 'condensate',
      rateWords: 'two drops a minute',
      causes: [
        { cause: 'load low at assembly', level: 'inferred', why: 'nut factor assumed, not measured' },
        { cause: 'load lost', level: 'inferred', why: '' },
      ],
    }),
  ],
  [
    SEIZING,
    9,
    step('report leak', FIRST, {
      clock: 11,
      seenFrom: 'along the flow',
      phase: 'in service',
      medium: 'hydrogen-rich gas',
      rate: { text: '600', unit: 'ppmv' },
      method: 'gas detector at the rim',
    }),
  ],
];

/** What was done on the day before today at joints of the invented amine unit, so that every kind of state is there. */
export function demoLife(today: string, timeZone: string): DemoLife {
  const day = addDays(today, -1);
  const at = (place: number) => siteMoment(day, BEGIN + place * MINUTES_BETWEEN, timeZone);
  return {
    classAt: siteMoment(day, BEGIN - MINUTES_BETWEEN, timeZone),
    class: AMINE_CLASS,
    steps: [
      ...LEAKS.map(([joint, daysAgo, told]) => ({
        joint,
        happenedAt: siteMoment(addDays(today, -daysAgo), ROUND, timeZone),
        ...told,
      })),
      ...LIVES.flatMap(([joint, told]) =>
        told.map((one, place) => ({ joint, happenedAt: at(place), ...one })),
      ),
    ],
  };
}
