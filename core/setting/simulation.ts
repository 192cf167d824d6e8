import type { LimitRow, SimulationView } from '../contract/card-views.ts';
import type { Working } from '../contract/setting.ts';
import { areaOf } from '../joint/target.ts';
import type { LoadContributor } from '../uncertainty/budget.ts';
import { type Distribution, shareKeeping } from '../uncertainty/distribution.ts';
import { type ShapedContributor, simulateLoad } from '../uncertainty/monte-carlo.ts';
import type { Basis } from './basis.ts';
import { number, result, words } from './working.ts';

/** The same seed for every card: a frozen card has to come out the same. */
const SEED = 1;
const DRAWS = 100_000;
/** Draws for the joint's mean, fewer for joints with many bolts so that every card takes about the same time. */
const MEAN_DRAWS = 500_000;

/**
 * Spread of the load of single bolts and of the joint's mean, with the probability of keeping each limit. Limits of the
 * bolt are about each bolt by itself, limits of the gasket about the mean.
 *
 * @param basis joint of the card
 * @param load load without any error F0, N, above 0
 * @param contributors relative uncertainties of torque and nut factor
 * @param limits limit rows of the card
 * @returns the view, or null while something it needs is not known
 * @example simulate(basis, 107829, [], [])?.relativeInterval // [0, 0] without contributors
 * @source JCGM 101:2008 (GUM Supplement 1), section 7
 */
export function simulate(
  basis: Basis,
  load: number,
  contributors: readonly LoadContributor[],
  limits: readonly LimitRow[],
): SimulationView | null {
  const count = basis.joint.boltCount;
  if (count === null) return null;
  const shaped = contributors.map(shapeOf);
  const common = { nominal: load, contributors: shaped, seed: SEED };
  const single = simulateLoad({ ...common, draws: DRAWS, bolts: 1 }).value;
  const draws = Math.max(1000, Math.min(DRAWS, Math.floor(MEAN_DRAWS / count)));
  const mean = simulateLoad({ ...common, draws, bolts: count }).value;
  if (single === null || mean === null) return null;
  return {
    draws: single.draws,
    seed: single.seed,
    generator: single.generator,
    mean: single.mean,
    median: single.median,
    interval: [single.interval[0], single.interval[1]],
    relativeInterval: [single.relativeInterval[0], single.relativeInterval[1]],
    skewness: single.skewness,
    common: rootOfSquares(contributors, 'common'),
    perBolt: rootOfSquares(contributors, 'per bolt'),
    probabilities: limits.flatMap((row) => probability(basis, row, single, mean)),
  };
}

/** Friction can't turn negative; a class limit has hard ends; the rest is taken as normal. */
function shapeOf(contributor: LoadContributor): ShapedContributor {
  if (contributor.of === 'nut factor') return { ...contributor, shape: 'lognormal' };
  const hard = contributor.name === 'Gauge class' || contributor.name === 'Reading';
  return { ...contributor, shape: hard ? 'uniform' : 'normal' };
}

function rootOfSquares(contributors: readonly LoadContributor[], scope: LoadContributor['scope']): number {
  const squares = contributors.map((one) => (one.scope === scope ? (one.relative ?? 0) ** 2 : 0));
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0));
}

function probability(
  { joint, others }: Basis,
  row: LimitRow,
  single: Distribution,
  mean: Distribution,
): SimulationView['probabilities'] {
  if (row.limit === null || joint.thread === null) return [];
  // What the other sets hold is not drawn: how likely the sum keeps a limit of the gasket is not known.
  if (others.length > 0 && isOfGasket(row)) return [];
  const load = row.limit * areaOf(joint.thread.value, row.area);
  // Steps of the component approach and the code's floor are about the gasket; the flange feels all bolts together.
  const ofJoint = isOfGasket(row) || row.name.endsWith('flange');
  const share = shareKeeping(ofJoint ? mean : single, load, row.side);
  if (share.value === null) return [];
  const at = [row.case === null ? '' : `${row.case} case`, row.gasket ?? ''].filter((text) => text !== '');
  return [
    {
      limit: [row.name, ...at].join(', '),
      subject: ofJoint ? 'joint mean' : 'single bolt',
      side: row.side,
      load,
      probability: share.value.probability,
      basis: `${(ofJoint ? mean : single).draws} draws`,
    },
  ];
}

function isOfGasket({ step, name }: LimitRow): boolean {
  return step !== null || name.startsWith('code minimum');
}

/**
 * Shows how the interval came about.
 *
 * @param load load without any error F0, N, above 0
 * @param contributors relative uncertainties of torque and nut factor
 * @param view interval as the card shows it
 * @returns working with each contributor
 * @example intervalWorking(107829, [], simulate(basis, 107829, [], [])).result.unit // 'kN'
 * @source each working names its own
 */
export function intervalWorking(
  load: number,
  contributors: readonly LoadContributor[],
  view: SimulationView,
): Working {
  return {
    of: 'interval',
    title: '95 % of single bolts lie between',
    relation: 'F = F0 · Π( 1 + εT ) / Π( 1 + εK ), common ε drawn once per trial, the others for each bolt',
    inputs: [
      number('F0', 'load without error', load, 'kN', 'calculated', 'load per stud'),
      ...contributors.map(({ name, relative, scope, basis }) =>
        number('u/x', name, relative, 'percent', 'calculated', `${scope}; ${basis}`),
      ),
      words('', 'draws', `${view.draws}, seed ${view.seed}, ${view.generator}`, 'calculated', 'this working'),
      number('', 'upper end', view.interval[1], 'kN', 'calculated', 'this working'),
    ],
    result: result('', 'lower end', view.interval[0], 'kN'),
    source: 'JCGM 101:2008 (GUM Supplement 1)',
  };
}
