import { AT_LABORATORY, HIGH_GAUGE, HIGH_GAUGE_DAYS, isAbsent } from './absences.ts';
import { addDays, siteMoment } from './calendar.ts';
import { KEEPER, TECHNICIANS } from './people.ts';
import type { DemoEvent, DemoKit, DemoMove } from './types.ts';

/** Days of work whose tools were booked out and in, in days before today. */
const BOOKED = { from: 120, to: 6 };
const MORNING = 6 * 60 + 30;
const EVENING = 17 * 60 + 30;
const LABORATORY = 'Invented calibration laboratory';

type Step = Partial<DemoMove> & Pick<DemoMove, 'tools' | 'step'>;

/** Moves of the tool room, in no order. */
export function roomMoves(events: readonly DemoEvent[], today: string, timeZone: string): DemoMove[] {
  const move = (daysAgo: number, minute: number, rest: Step): DemoMove => ({
    person: KEEPER,
    happenedAt: siteMoment(addDays(today, -daysAgo), minute, timeZone),
    holder: null,
    condition: null,
    place: '',
    reference: '',
    reason: '',
    ...rest,
  });
  const laboratory = AT_LABORATORY.flatMap(({ tool, left, back }) => [
    move(left, MORNING + 60, {
      tools: [tool],
      step: 'send to the laboratory',
      place: LABORATORY,
      reference: 'calibration order (invented)',
    }),
    ...(back === null
      ? []
      : [
          move(back, EVENING - 60, {
            tools: [tool],
            step: 'take back from the laboratory',
            place: 'tool room',
          }),
        ]),
  ]);
  const [first, second] = TECHNICIANS;
  const stillOut = [
    move(3, MORNING, { tools: ['T-01', 'CH-01', 'SD-01'], step: 'issue', holder: first }),
    move(2, MORNING, { tools: ['CH-02', 'T-03'], step: 'issue', holder: second }),
  ];
  const damaged = [
    move(12, MORNING, { tools: ['CH-03'], step: 'issue', holder: second }),
    move(11, EVENING, {
      tools: ['CH-03'],
      step: 'return',
      condition: 'damaged',
      reason: 'crack beside the opening (invented)',
    }),
  ];
  const pastAge = move(60, EVENING, {
    tools: ['H-08'],
    step: 'quarantine',
    reason: 'past the age the site allows for hoses (invented)',
  });
  const setRight = move(HIGH_GAUGE_DAYS.back, EVENING, {
    tools: [HIGH_GAUGE],
    step: 'release from quarantine',
    place: 'tool room, cabinet 4',
    reason: 'pointer set, compared and found within its limit (invented)',
  });
  return [...dayBooks(events, today, move), ...laboratory, ...stillOut, ...damaged, pastAge, setRight];
}

/** What a day's work took, issued in the morning and back in the evening; a tool goes to whoever needs it first. */
function dayBooks(
  events: readonly DemoEvent[],
  today: string,
  move: (daysAgo: number, minute: number, rest: Step) => DemoMove,
): DemoMove[] {
  const days = Array.from({ length: BOOKED.from - BOOKED.to }, (_, index) => BOOKED.from - index);
  return days.flatMap((daysAgo) => {
    const date = addDays(today, -daysAgo);
    const holderOf = new Map<string, string>();
    for (const { tools, people } of events.filter(({ happenedAt }) => happenedAt.startsWith(date))) {
      const parts = [tools.drive, tools.cassette, ...tools.reducers, tools.pump, tools.gauge, ...tools.hoses];
      for (const part of parts) {
        if (part === null || isAbsent(part, date, today) || holderOf.has(part)) continue;
        holderOf.set(part, people[0] ?? KEEPER);
      }
    }
    const taken = Map.groupBy(holderOf, ([, holder]) => holder);
    return [...taken].flatMap(([holder, entries]) => {
      const numbers = entries.map(([number]) => number);
      return [
        move(daysAgo, MORNING, { tools: numbers, step: 'issue', holder, reference: 'work of the day' }),
        move(daysAgo, EVENING, { tools: numbers, step: 'return', condition: 'good', place: 'tool room' }),
      ];
    });
  });
}

/** Kits for coming jobs: two want the same pump on the same days, and one wrench lapses before its job. */
export function roomKits(today: string): DemoKit[] {
  const kit = (
    name: string,
    days: readonly [number, number],
    joints: string[],
    tools: string[],
  ): DemoKit => ({
    name,
    reference: 'invented work order',
    joints,
    from: addDays(today, days[0]),
    to: addDays(today, days[1]),
    tools,
    remarks: 'Invented demo kit.',
  });
  return [
    kit(
      'Exchanger E-202, bundle out',
      [9, 13],
      ['J-200-802', 'J-200-901'],
      ['W-06', 'K-12', 'P-03', 'G-02', 'H-03', 'CP-01', 'W-09'],
    ),
    kit(
      'Pump P-305, overhaul',
      [12, 14],
      ['J-300-902', 'J-300-903'],
      ['W-01', 'K-02', 'P-03', 'G-04', 'H-01'],
    ),
    kit('Reactor R-201, outlet nozzle', [70, 76], ['J-200-902'], ['W-07', 'K-15', 'P-02', 'G-01', 'H-02']),
  ];
}
