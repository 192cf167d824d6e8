import type { ToolInput } from '../core/contract/tool.ts';
import { HIGH_GAUGE, HIGH_GAUGE_DAYS, isAbsent } from './absences.ts';
import { addDays, siteMoment } from './calendar.ts';
import { LAPSED_WRENCH } from './faults.ts';
import { KEEPER } from './people.ts';
import { randomStream } from './random.ts';
import {
  CHECKLISTS,
  CLEANING,
  COMPARISON,
  FASTENERS,
  GAUGE_COMPARISON,
  LEAK,
  RULES_SINCE_DAYS,
  SEALS,
  ZERO,
} from './room-rules.ts';
import type { DemoCheck } from './types.ts';

/** Checks are done when the day's tools are back. */
const EVENING = 18 * 60 + 30;
const REMARK = 'Invented demo check.';
export const HIGH_GAUGE_CHECK = 'the gauge found high';
/** Gauges whose zero is looked at every month; a good zero would narrow what the high one was in. */
const ZEROED = ['G-01', 'G-02', 'G-04', 'G-05'] as const;
/** Wrenches that are compared between calibrations, every so many days. */
const COMPARED: readonly (readonly [tool: string, every: number, torque: number])[] = [
  ['W-06', 7, 3600],
  ['W-04', 30, 1800],
];
const COMPARED_FOR_DAYS = 150;
const TESTED_HOSES = ['H-01', 'H-02', 'H-03', 'H-04', 'H-05', 'H-07', 'H-08'] as const;
const HOSES_TESTED = 230;
/** A spare hose whose pressure test has run out. */
const UNTESTED_HOSE = 'H-06';

/** Checks of the tool room since the site has rules for them, in no order. */
export function roomChecks(tools: readonly ToolInput[], today: string, timeZone: string, seed: number) {
  const at = (daysAgo: number) => siteMoment(addDays(today, -daysAgo), EVENING, timeZone);
  const check = (
    tool: string,
    daysAgo: number,
    rest: Partial<DemoCheck> & Pick<DemoCheck, 'kind'>,
  ): DemoCheck => ({
    tool,
    person: KEEPER,
    happenedAt: at(daysAgo),
    checklist: null,
    result: 'passed',
    remarks: REMARK,
    name: null,
    ...rest,
  });
  const listed = (tool: string, daysAgo: number, name: string, rest: Partial<DemoCheck> = {}) => {
    const list = CHECKLISTS.find((each) => each.name === name);
    if (list === undefined) throw new Error(`no list "${name}"`);
    return check(tool, daysAgo, {
      kind: list.kind,
      checklist: name,
      answers: list.questions.map(() => true),
      ...rest,
    });
  };
  const here = ({ tool, happenedAt }: DemoCheck) => !isAbsent(tool, happenedAt.slice(0, 10), today);

  const served = tools.flatMap(({ number, owner, properties }, index) => {
    const { class: kind } = properties;
    if (owner?.kind === 'hired' || (kind !== 'drive unit' && kind !== 'pump')) return [];
    const first = RULES_SINCE_DAYS - 1 - (index % 10);
    const seals = [first, ...(number === LAPSED_WRENCH ? [] : [first - 170])];
    const pressure = properties.ratedPressure;
    const fall = pressure.unit === 'psi' ? '60' : '4';
    return [
      ...seals.map((day) => listed(number, day, SEALS)),
      listed(number, first, LEAK, {
        leak: {
          pressure,
          minutes: 5,
          fallAdvance: { text: fall, unit: pressure.unit },
          fallRetract: { text: fall, unit: pressure.unit },
        },
      }),
      ...(kind === 'pump'
        ? []
        : [
            listed(number, first, FASTENERS),
            listed(number, first - 160, FASTENERS),
            listed(number, first - 100, CLEANING),
            listed(number, first - 190, CLEANING),
          ]),
    ];
  });
  const zeros = ZEROED.flatMap((gauge, index) =>
    [1, 2, 3, 4, 5, 6].map((month) => listed(gauge, 30 * month - 5 * index - 3, ZERO)),
  );
  const compared = COMPARED.flatMap(([wrench, every, torque]) => {
    const random = randomStream(seed, `comparisons ${wrench}`);
    const times = Math.floor(COMPARED_FOR_DAYS / every);
    return Array.from({ length: times }, (_, index) =>
      listed(wrench, COMPARED_FOR_DAYS - index * every, COMPARISON, {
        comparisons: [
          {
            pressure: { text: '460', unit: 'bar' },
            reference: { text: String(Math.round(torque * (1 + 0.006 * random.normal()))), unit: 'N.m' },
            intended: { text: String(torque), unit: 'N.m' },
          },
        ],
        limit: { text: '4', unit: 'percent' },
      }),
    );
  });
  const hoseTest = (hose: string, daysAgo: number) =>
    check(hose, daysAgo, {
      kind: 'pressure test',
      leak: {
        pressure: { text: '1050', unit: 'bar' },
        minutes: 2,
        fallAdvance: { text: '0', unit: 'bar' },
        fallRetract: null,
      },
    });
  const hoses = [...TESTED_HOSES.map((hose) => hoseTest(hose, HOSES_TESTED)), hoseTest(UNTESTED_HOSE, 420)];
  return [...served, ...zeros, ...compared, ...hoses].filter(here).concat(highGauge(listed));
}

type Listed = (tool: string, daysAgo: number, list: string, rest?: Partial<DemoCheck>) => DemoCheck;

/** Found reading high by about 3 %, and within its limit again after the pointer was set. */
function highGauge(listed: Listed): DemoCheck[] {
  const comparisons = (share: number) =>
    ['200', '400', '600'].map((indicated) => ({
      pressure: { text: indicated, unit: 'bar' } as const,
      reference: { text: String(Math.round(Number(indicated) * share)), unit: 'bar' } as const,
      intended: { text: indicated, unit: 'bar' } as const,
    }));
  const limit = { text: '1.5', unit: 'percent' } as const;
  return [
    listed(HIGH_GAUGE, HIGH_GAUGE_DAYS.found, GAUGE_COMPARISON, {
      comparisons: comparisons(0.97),
      limit,
      result: 'failed',
      name: HIGH_GAUGE_CHECK,
      remarks: `${REMARK} Shows about 3 % more than there is: pointer moved on its spindle.`,
    }),
    listed(HIGH_GAUGE, HIGH_GAUGE_DAYS.checked, GAUGE_COMPARISON, {
      comparisons: comparisons(1.005),
      limit,
      remarks: `${REMARK} Pointer set by the invented calibration laboratory, compared again.`,
    }),
    listed(HIGH_GAUGE, HIGH_GAUGE_DAYS.back - 1, ZERO),
    listed(HIGH_GAUGE, 20, ZERO),
  ];
}
