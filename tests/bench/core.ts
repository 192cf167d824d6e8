import type { RingJoint } from '../../core/scatter/bolts.ts';
import { rectangularSection } from '../../core/scatter/ring.ts';
import { simulate } from '../../core/scatter/simulate.ts';
import { ownOrder } from '../../core/sequence/star.ts';
import { assess } from '../../core/setting/assessment.ts';
import { settingCard } from '../../core/setting/card.ts';
import { simulateLoad } from '../../core/uncertainty/monte-carlo.ts';
import { plantJobs } from './jobs.ts';
import { atLeast, below, type Measured, measure } from './measure.ts';

const PER_MINUTE = 60;
const MS = 1000;

/** Settings of the core alone, in processor time: one thread, whatever the machine does beside it. */
export async function coreBenches(): Promise<Measured[]> {
  const jobs = plantJobs();
  const about = `${jobs.length} tightenings of the invented plant by nut factor, staged thirds`;
  const perMinute = (seconds: number) => (jobs.length / seconds) * PER_MINUTE;
  const each = (compute: (job: (typeof jobs)[number]) => unknown) => () => {
    for (const job of jobs) compute({ ...job });
  };
  // The engine compiles a relation once it has seen it often: a register that has been open for a minute.
  for (let warm = 0; warm < 10; warm += 1) each(settingCard)();
  return [
    await measure(
      {
        name: 'Settings',
        what: `numbers and every finding with its values, limits and source, its sentences left until somebody reads them, no workings; ${about}`,
        unit: 'per minute',
        rounds: 100,
        figure: perMinute,
        better: 'more',
        goal: atLeast(1e6, 'at least 1,000,000'),
      },
      each(assess),
    ),
    await measure(
      {
        name: 'Setting cards',
        what: `whole cards: settings with the words of every finding, uncertainty budget, order, workings and cautions; ${about}`,
        unit: 'per minute',
        rounds: 100,
        figure: perMinute,
        better: 'more',
      },
      each(settingCard),
    ),
    await measure(
      {
        name: 'Monte Carlo',
        what: 'spread of the load of a single bolt, 100,000 draws of 5 contributors, seeded',
        unit: 'ms',
        rounds: 15,
        figure: (seconds) => seconds * MS,
        better: 'less',
        goal: below(1000, 'below 1,000'),
      },
      () => simulateLoad({ nominal: 108e3, contributors: CONTRIBUTORS, draws: 100_000, seed: 1, bolts: 1 }),
    ),
    await measure(
      {
        name: 'Load scatter',
        what: 'every load after every step, 100 bolts, 10 passes of which the first 9 are staged',
        unit: 'ms',
        rounds: 15,
        figure: (seconds) => seconds * MS,
        better: 'less',
        goal: below(100, 'below 100'),
      },
      () => simulate(HUNDRED_BOLTS, TEN_PASSES),
    ),
    await measure(
      {
        name: 'Order of 100 bolts',
        what: 'by the rule for even counts, worked out anew',
        unit: 'ms',
        rounds: 50,
        figure: (seconds) => seconds * MS,
        better: 'less',
      },
      () => ownOrder(100),
    ),
  ];
}

const contributor = (name: string, of: 'torque' | 'nut factor', relative: number, perBolt: boolean) => ({
  name,
  of,
  relative,
  scope: perBolt ? ('per bolt' as const) : ('common' as const),
  basis: 'invented',
  degreesOfFreedom: null,
  shape: of === 'torque' ? ('normal' as const) : ('lognormal' as const),
});

const CONTRIBUTORS = [
  contributor('certificate', 'torque', 0.005, false),
  contributor('gauge', 'torque', 0.01, false),
  contributor('repeatability', 'torque', 0.01, true),
  contributor('scatter of friction', 'nut factor', 0.1, true),
  contributor('batch of lubricant', 'nut factor', 0.03, false),
];

const GIRTH = { ...rectangularSection(200e9, 0.12, 0.09, 0.3), centroidRadius: 0.9 };
const HUNDRED_BOLTS: RingJoint = {
  boltCount: 100,
  boltRadius: 0.93,
  boltStiffness: 6e8,
  flanges: [GIRTH, GIRTH],
  gasket: { radius: 0.84, foundation: 4e9, width: 0.02 },
};
const TEN_PASSES = Array.from({ length: 10 }, (_, pass) =>
  ownOrder(100).map((bolt) => ({ bolts: [bolt], load: Math.min(1, 0.2 + pass / 10) * 1e5, pass })),
).flat();
