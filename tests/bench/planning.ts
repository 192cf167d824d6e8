import { planCampaign } from '../../core/planning/plan-campaign.ts';
import type { Operation, PlanningProblem, Span } from '../../core/planning/problem.ts';
import { verifyPlan } from '../../core/planning/verify-plan.ts';
import { uniformSource } from '../../core/uncertainty/draw.ts';
import { below, type Measured, measure } from './measure.ts';

const JOINTS = 1000;
const SETS = 12;
const DAYS = 14;
/** A quarter of an hour. */
const STEPS_A_DAY = 96;
const HORIZON = DAYS * STEPS_A_DAY;
const SHIFT = 48;
/** Four hours between breaking and making up. */
const DWELL = 16;
const AREAS = 8;
const SEED = 20_261_127;
const TRIES = 20;

/** A shutdown of a thousand joints to be opened and closed, drawn from a fixed seed. */
export function bigCampaign(): PlanningProblem {
  const uniform = uniformSource(SEED);
  const whole = (least: number, most: number) => least + Math.floor(uniform() * (most - least + 1));
  const all: Span = { from: 0, until: HORIZON };
  const shifts = (from: number): Span[] =>
    Array.from({ length: DAYS }, (_, day) => ({
      from: day * STEPS_A_DAY + from,
      until: Math.min(HORIZON, day * STEPS_A_DAY + from + SHIFT),
    }));
  const crews = Array.from({ length: 2 * SETS }, (_, crew) => ({
    name: `Crew ${crew + 1}`,
    works: shifts(crew % 2 === 0 ? 0 : SHIFT),
  }));
  const everybody = crews.map((_, crew) => ({ crew, until: HORIZON }));
  const operations: Operation[] = [];
  const lags: PlanningProblem['lags'][number][] = [];
  for (let joint = 0; joint < JOINTS; joint += 1) {
    const size = whole(0, 2);
    const suiting = Array.from({ length: SETS }, (_, set) => set).filter((set) => set % 3 === size);
    const weight = whole(1, 4);
    const area = whole(0, AREAS - 1);
    const half = (part: string, steps: number): Operation => ({
      key: `${joint} ${part}`,
      name: `J-${joint} ${part}`,
      window: all,
      weight,
      area,
      options: suiting.map((set) => ({ set, steps, until: HORIZON })),
      crews: everybody,
      locked: null,
    });
    lags.push({ before: operations.length, after: operations.length + 1, steps: DWELL, why: 'dwell' });
    operations.push(half('break', whole(2, 4)), half('make', whole(3, 8)));
  }
  return {
    horizon: HORIZON,
    operations,
    lags,
    parts: Array.from({ length: SETS }, (_, part) => ({ name: `W-${part + 1}`, free: [all] })),
    sets: Array.from({ length: SETS }, (_, set) => ({ name: `Set ${set + 1}`, parts: [set] })),
    crews,
    travel: 1,
    finishWeight: 0,
  };
}

export async function planningBench(): Promise<Measured> {
  const problem = bigCampaign();
  const told: string[] = [];
  const measured = await measure(
    {
      name: 'Plan of a campaign',
      what: '',
      unit: 's',
      rounds: 2,
      figure: (seconds) => seconds,
      better: 'less',
      goal: below(10, 'below 10'),
    },
    () => {
      const run = planCampaign(problem, { seed: 1, tries: TRIES });
      let next = run.next();
      while (!next.done) next = run.next();
      const { plan, gap } = next.value;
      const faults = verifyPlan(problem, plan);
      if (faults.length > 0 || plan.unplaced.length > 0) {
        throw new Error(`${plan.unplaced.length} left out; ${faults.slice(0, 3).join('; ')}`);
      }
      told.push(gap === null ? 'not known' : `${(gap * 100).toFixed(1)} %`);
    },
  );
  return {
    ...measured,
    what: `${JOINTS} joints to open and close, ${SETS} sets, ${DAYS} days, ${TRIES} tries, verified; at most ${told.at(-1)} above the bound`,
  };
}
