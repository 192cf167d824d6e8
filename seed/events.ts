import { breakoutClass, breakoutRatios, breakoutReadings } from './breakout.ts';
import { addDays, daysBetween, siteMoment } from './calendar.ts';
import { type Demand, demandOf } from './demand.ts';
import {
  LATE_USE,
  LATE_USE_DAYS,
  SEIZING,
  SEIZING_RATIOS,
  WEAK_BY,
  WEAK_JOINTS,
  WEAK_SINCE_DAYS,
  WEAK_WRENCH,
} from './faults.ts';
import { TECHNICIANS } from './people.ts';
import { type Random, randomStream } from './random.ts';
import { type ChosenSet, chooseSet, dialFor, type Toolroom } from './toolroom.ts';
import type { DemoBreakout, DemoEvent, DemoJoint, DemoTightening, DemoToolSet } from './types.ts';
import { PLANT_UNITS } from './units.ts';

/** How far the records reach back: a little less than the certificates do. */
const DAYS_OF_RECORDS = 1388;
/** Days from one shutdown of a unit to the next, and from one unit's first shutdown to the next unit's. */
const BETWEEN_SHUTDOWNS = 290;
const BETWEEN_UNITS = 24;
/** Torque a technician still pulls with a hand wrench, N·m. */
const BY_HAND = 250;

const REMARK = 'Invented demo record.';

const NO_TOOLS: DemoToolSet = {
  drive: null,
  cassette: null,
  reducers: [],
  pump: null,
  gauge: null,
  hoses: [],
};

interface Site {
  readonly room: Toolroom;
  readonly today: string;
  readonly timeZone: string;
}

interface Plan extends Site {
  /** Joints that were left to other wrenches while the planted one was suspect. */
  readonly spared: ReadonlySet<string>;
}

interface Job {
  readonly joint: DemoJoint;
  readonly demand: Demand;
  readonly date: string;
  readonly random: Random;
  readonly site: Plan;
}

/** Work on every joint that has the data for it, ordered by time, all before today. */
export function demoEvents(joints: readonly DemoJoint[], site: Site, seed: number): DemoEvent[] {
  const history = (joint: DemoJoint, spared: ReadonlySet<string>) =>
    jointHistory(joint, { ...site, spared }, randomStream(seed, `events ${joint.tag}`));
  const first = new Map(joints.map((joint) => [joint.tag, history(joint, new Set())]));
  const spared = new Set(suspectJoints([...first.values()].flat(), site.room).slice(WEAK_JOINTS));
  const events = joints.flatMap((joint) =>
    spared.has(joint.tag) ? history(joint, spared) : (first.get(joint.tag) ?? []),
  );
  return inOrder(events);
}

const inOrder = (events: readonly DemoEvent[]) =>
  [...events].sort((a, b) => Date.parse(a.happenedAt) - Date.parse(b.happenedAt));

/** Joints worked on with the planted wrench while it was suspect; those that were tightened first. */
function suspectJoints(events: readonly DemoEvent[], { suspect }: Toolroom): string[] {
  const uses = inOrder(events).filter(({ tools, happenedAt }) => {
    const day = happenedAt.slice(0, 10);
    return tools.drive === WEAK_WRENCH && day > suspect.after && day < suspect.before;
  });
  const tightened = uses.filter(({ kind }) => kind === 'tightening');
  return [...new Set([...tightened, ...uses].map(({ joint }) => joint))];
}

function jointHistory(joint: DemoJoint, site: Plan, random: Random): DemoEvent[] {
  const demand = demandOf(joint);
  const seizing = joint.tag === SEIZING;
  const planted = seizing || joint.tag === LATE_USE;
  const never = !planted && random.chance(0.12);
  if (demand === null || never) return [];
  if (joint.tag === LATE_USE) {
    const history: DemoEvent[] = [];
    tighten({ joint, demand, date: addDays(site.today, -LATE_USE_DAYS), random, site }, history);
    return history;
  }
  const openings = seizing ? SEIZING_RATIOS.length : openingsOf(random);
  const unit = PLANT_UNITS.findIndex(({ name }) => name === joint.unit);
  const first = addDays(site.today, unit * BETWEEN_UNITS + random.whole(0, 12) - DAYS_OF_RECORDS);
  // Joints are not all opened at the first shutdown that comes.
  const skipped = seizing ? 0 : random.whole(0, SEIZING_RATIOS.length - openings);

  const history: DemoEvent[] = [];
  const job = (date: string): Job => ({ joint, demand, date, random, site });
  let installed = tighten(job(first), history);
  for (let opening = 0; opening < openings && installed !== null; opening += 1) {
    const date = addDays(first, (skipped + opening + 1) * BETWEEN_SHUTDOWNS + random.whole(-5, 5));
    const closed = addDays(date, random.whole(1, 4));
    if (daysBetween(closed, site.today) < 1) break;
    breakOut(job(date), installed, seizing ? SEIZING_RATIOS[opening] : undefined, history);
    installed = tighten(job(closed), history);
  }
  return history;
}

function openingsOf(random: Random): number {
  return random.weighted([
    [0, 40],
    [1, 38],
    [2, 16],
    [3, 6],
  ]);
}

function common({ joint, date, random, site }: Job, firstHour: number) {
  const [a, b] = [random.pick(TECHNICIANS), random.pick(TECHNICIANS)];
  return {
    joint: joint.tag,
    happenedAt: siteMoment(date, firstHour * 60 + random.whole(0, 239), site.timeZone),
    people: a === b ? [a] : [a, b],
  };
}

/** Records a tightening and returns the torque really installed; null when nobody had a tool for it. */
function tighten(job: Job, history: DemoEvent[]): number | null {
  const { demand, random, date, site, joint } = job;
  // The seizing joint is known to the people there: they bring a wrench that can open it again.
  const careless = joint.tag === LATE_USE;
  const reserve = joint.tag === SEIZING ? 2.2 : 1;
  const want = { demand, torque: demand.torque, date, careless, withoutSuspect: site.spared.has(joint.tag) };
  const set =
    chooseSet(site.room, { ...want, torque: demand.torque * reserve }, random) ??
    chooseSet(site.room, want, random);
  const unfinished = demand.studs > 4 && random.chance(0.01);
  const done = {
    ...common(job, 8),
    boltsTightened: unfinished ? demand.studs - 2 : demand.studs,
    finalPassNoTurn: !unfinished && !random.chance(0.02),
    remarks: unfinished ? `${REMARK} Two studs not reached from the scaffold.` : REMARK,
  };
  if (set === null) {
    if (demand.torque > BY_HAND || random.chance(0.6)) return null;
    const torque = { text: String(Math.round(demand.torque)), unit: 'N.m' } as const;
    const byHand: DemoTightening = {
      ...done,
      kind: 'tightening',
      tools: NO_TOOLS,
      withSetting: false,
      dialled: null,
      torque,
      remarks: `${done.remarks} Hand torque wrench.`,
    };
    history.push(byHand);
    return Number(torque.text);
  }
  const { dialled, torque } = dialFor(set, demand.torque);
  const tightening: DemoTightening = {
    ...done,
    kind: 'tightening',
    tools: set.tools,
    withSetting: careless || random.chance(0.93),
    dialled,
    torque: null,
  };
  history.push(tightening);
  return torque * deliveredShare(set, date, site);
}

/** What a wrench really gave of what its certificate promised. */
function deliveredShare(set: ChosenSet, date: string, site: Plan): number {
  const weak = set.tools.drive === WEAK_WRENCH && daysBetween(date, site.today) <= WEAK_SINCE_DAYS;
  return weak ? 1 - WEAK_BY : 1;
}

function breakOut(job: Job, installed: number, planned: number | undefined, history: DemoEvent[]): void {
  const { demand, random, date, site, joint } = job;
  const usual = breakoutClass(Number(joint.serviceTemperature?.text ?? '20'));
  // A planted ratio is kept close, so that the rise shows through the scatter.
  const kind = planned === undefined ? usual : { median: planned, sigma: 0.04, cut: 0 };
  const torques = breakoutRatios(demand.studs, kind, random).map((ratio) => ratio * installed);
  const atTheLast = planned === SEIZING_RATIOS.at(-1);
  const [, second = Number.POSITIVE_INFINITY] = [...torques].sort((a, b) => b - a);
  const mustBeCut = (torque: number) => (atTheLast ? torque >= second : random.chance(kind.cut));
  // People take a wrench with something in hand, and where there is none, the one they have.
  const want = { demand, torque: demand.torque, date, withoutSuspect: site.spared.has(joint.tag) };
  const set =
    chooseSet(site.room, { ...want, torque: demand.torque * kind.median * 1.2 }, random) ??
    chooseSet(site.room, want, random);
  const breakout: DemoBreakout = {
    ...common(job, 7),
    kind: 'breakout',
    tools: set?.tools ?? NO_TOOLS,
    withSetting: set !== null && random.chance(0.9),
    readings: breakoutReadings(torques, mustBeCut, set),
    remarks: set === null ? `${REMARK} Hand torque wrench.` : REMARK,
  };
  history.push(breakout);
}
