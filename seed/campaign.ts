import { addDays, siteMoment } from './calendar.ts';
import { TECHNICIANS } from './people.ts';
import type { DemoCampaign, DemoCampaignSet, DemoEvent, DemoJob, DemoJoint } from './types.ts';

const UNIT = 'Unit 300 Reformer';
const STARTS_IN_DAYS = 7;
const LENGTH_DAYS = 9;
const ENTERED_DAYS_AGO = 2;
const SIX = 6 * 60;
const SIXTEEN = 16 * 60;
const EIGHTEEN = 18 * 60;
/** Work at a joint that is opened for an inspection. */
const INSPECTION_MINUTES = 240;
const SETS = 6;
const PACKS = ['TP-31', 'TP-32', 'TP-33'] as const;

interface Site {
  readonly today: string;
  readonly timeZone: string;
}

/** The next shutdown of one unit: its joints as jobs, two crews, and the sets its people have worked with most. */
export function demoCampaign(
  joints: readonly DemoJoint[],
  events: readonly DemoEvent[],
  { today, timeZone }: Site,
): DemoCampaign {
  const first = addDays(today, STARTS_IN_DAYS);
  const last = addDays(first, LENGTH_DAYS);
  const [a, b, c, d] = TECHNICIANS;
  const crew = (name: string, people: readonly string[], from: string, to: string) => ({
    name,
    people,
    from: first,
    to: last,
    shifts: [{ from, to }],
  });
  return {
    at: siteMoment(addDays(today, -ENTERED_DAYS_AGO), SIXTEEN, timeZone),
    name: 'Reformer shutdown (invented)',
    startsAt: siteMoment(first, SIX, timeZone),
    endsAt: siteMoment(last, EIGHTEEN, timeZone),
    crews: [crew('Day', [a, b], '06:00', '18:00'), crew('Night', [c, d], '18:00', '06:00')],
    sets: setsInUse(events),
    testPacks: [...PACKS],
    travelMinutes: 15,
    remarks: 'Invented demo data.',
    jobs: joints.filter(({ unit }) => unit === UNIT).map(jobOf),
  };
}

/** Most of the joints are opened and closed; every seventh is opened only, and every fifth waits for the one before. */
function jobOf({ tag }: DemoJoint, index: number): DemoJob {
  const number = (at: number) => `R-${String(101 + at)}`;
  return {
    joint: tag,
    number: number(index),
    scope: index % 7 === 6 ? 'break' : 'break and make',
    system: index % 2 === 0 ? 'reactor loop' : 'stabiliser',
    testPack: PACKS[index % PACKS.length] ?? '',
    workOrder: `WO-${String(7000 + Math.floor(index / 4))}`,
    isolationRef: `ISO-${String(31 + (index % 4))}`,
    access: index % 6 === 0 ? 'scaffold' : '',
    after: index % 5 === 4 ? [number(index - 1)] : [],
    gapMinutes: index % 3 === 0 ? INSPECTION_MINUTES : 0,
    remarks: 'Invented demo data.',
  };
}

/** Of each drive unit with a cassette the parts it was last used with; those that served most joints first. */
function setsInUse(events: readonly DemoEvent[]): DemoCampaignSet[] {
  const served = new Map<string, { joints: Set<string>; tools: DemoEvent['tools'] }>();
  for (const { joint, tools } of events) {
    if (tools.drive === null || tools.cassette === null || tools.reducers.length > 0) continue;
    const key = `${tools.drive} ${tools.cassette}`;
    const known = served.get(key) ?? { joints: new Set(), tools };
    known.joints.add(joint);
    served.set(key, { ...known, tools });
  }
  return [...served.values()]
    .toSorted((one, other) => other.joints.size - one.joints.size)
    .slice(0, SETS)
    .map(({ tools }) => ({ name: `${tools.drive} with ${tools.cassette}`, tools }));
}
