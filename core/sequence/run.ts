import { continueFrom } from './continue.ts';
import { nextBolts, type Step } from './pass-steps.ts';

/** A pass of the plan as the crew has to go round it. */
export interface PlannedPass {
  readonly name: string;
  readonly steps: readonly Step[];
}

/** What a crew did of a pass before it finished or stopped. */
export interface Stint {
  /** Number of the pass in the plan, from 1. */
  readonly pass: number;
  /** Time round in this pass, from 1: a last pass is gone round again while nuts turn. */
  readonly round: number;
  readonly boltsDone: readonly number[];
  /** Bolts that would not turn or were cut and are left as they are. */
  readonly leftOut: readonly number[];
  /** The crew ends the round with the decision to go round once more. */
  readonly goRoundAgain: boolean;
}

/** Where a joint stands between its first pass and its last. */
export interface RunStanding {
  readonly state: 'go on' | 'finished' | 'record unclear';
  /** Number of the pass to go on with, from 1; null when finished or unclear. */
  readonly pass: number | null;
  readonly passName: string | null;
  readonly round: number;
  /** Bolts done in this round of this pass, in the order they were recorded. */
  readonly done: readonly number[];
  /** Bolts to be turned now, one per tool. */
  readonly next: readonly number[];
  readonly remaining: readonly number[];
  /** Bolts left out of this pass and those after it. */
  readonly leftOut: readonly number[];
  /** Bolts passed over: earlier in the order than one that is done. */
  readonly skipped: readonly number[];
  /** Numbers of the passes that are complete. */
  readonly finishedPasses: readonly number[];
  readonly problems: readonly string[];
}

/**
 * Where the work stands after any number of stints, whoever did them: pass, time round, and the bolts to turn now. A
 * bolt left out stays out of the later passes too, because a nut that does not move is not moved by more pressure.
 *
 * @param passes every pass of the plan in order
 * @param stints what was recorded, in order
 * @returns standing; unclear when the record contradicts the plan
 * @example runStanding([{ name: 'Full', steps: [[1], [3], [2], [4]] }], [{ pass: 1, round: 1, boltsDone: [1, 3],
 * leftOut: [], goRoundAgain: false }]).next // [2]
 * @source rule of this program
 */
export function runStanding(passes: readonly PlannedPass[], stints: readonly Stint[]): RunStanding {
  const left = new Set<number>();
  const progress = passes.map(({ name, steps }, index) => {
    const own = stints.filter(({ pass }) => pass === index + 1);
    const round = Math.max(1, ...own.map((stint) => stint.round + (stint.goRoundAgain ? 1 : 0)));
    const turned = own.filter((stint) => stint.round === round).flatMap(({ boltsDone }) => boltsDone);
    // A bolt that gave way after all is no longer left out.
    for (const { boltsDone, leftOut } of own) {
      for (const bolt of leftOut) left.add(bolt);
      for (const bolt of boltsDone) left.delete(bolt);
    }
    const leftOut = [...left];
    const done = turned.filter((bolt) => !left.has(bolt));
    const order = steps.flat().filter((bolt) => bolt !== null && !left.has(bolt)) as number[];
    return { name, steps, round, done, leftOut, order };
  });
  const { state, pass, remaining, skipped, problems } = continueFrom(progress);
  const strange = stints
    .filter(({ pass: number }) => passes[number - 1] === undefined)
    .map(({ pass: number }) => `the plan has no pass ${number}`);
  if (state === 'record unclear' || strange.length > 0) {
    return standing({ state: 'record unclear', problems: [...problems, ...strange] });
  }
  const finishedPasses = progress.flatMap((_, index) => (pass === null || index < pass ? [index + 1] : []));
  const current = pass === null ? undefined : progress[pass];
  if (pass === null || current === undefined) {
    return standing({ state: 'finished', finishedPasses, leftOut: [...left] });
  }
  return standing({
    state: 'go on',
    pass: pass + 1,
    passName: current.name,
    round: current.round,
    done: current.done,
    next: nextBolts(current.steps, remaining),
    remaining,
    leftOut: current.leftOut,
    skipped,
    finishedPasses,
  });
}

function standing(known: Partial<RunStanding> & Pick<RunStanding, 'state'>): RunStanding {
  return {
    pass: null,
    passName: null,
    round: 1,
    done: [],
    next: [],
    remaining: [],
    leftOut: [],
    skipped: [],
    finishedPasses: [],
    problems: [],
    ...known,
  };
}

/**
 * Bolts of a stint that were not turned in the order of the plan.
 *
 * @param steps steps of the pass in order
 * @param bolts numbers of the bolts as they were turned, 1 to 400
 * @returns bolts turned after one that comes later in the plan; those of one step have no order among themselves
 * @example outOfOrder([[1], [3], [2], [4]], [1, 2, 3]) // [3]
 * @source rule of this program
 */
export function outOfOrder(steps: readonly Step[], bolts: readonly number[]): number[] {
  let farthest = -1;
  return bolts.filter((bolt) => {
    const place = steps.findIndex((step) => step.includes(bolt));
    const late = place >= 0 && place < farthest;
    farthest = Math.max(farthest, place);
    return late;
  });
}
