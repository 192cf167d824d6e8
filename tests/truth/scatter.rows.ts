import { circulant, interaction } from '../../core/scatter/bolts.ts';
import { tightenByCoefficients } from '../../core/scatter/coefficients.ts';
import { planSteps } from '../../core/scatter/plan-steps.ts';
import { ringCompliance } from '../../core/scatter/ring.ts';
import { simulate, simulateOn } from '../../core/scatter/simulate.ts';
import { findPlan } from '../../core/sequence/plans.ts';
import { JOINT_B, STAR_12 } from '../laws/scatter-joints.ts';
import { row as anyRow, type TruthRow } from './row.ts';

const NPS_8 = 'NPS 8 Class 300';

function row(
  what: string,
  place: string,
  expected: number,
  tolerance: number,
  why: string,
  computed: () => number,
): TruthRow {
  const source = place === NPS_8 ? 'worked-joint-b' : 'eight-bolt-case';
  return anyRow('computed', what, source, place, String(expected), computed, { tolerance, why });
}

const both = (flange: (typeof JOINT_B)['flanges'][0], place: number) =>
  2000 * (ringCompliance(flange, JOINT_B.gasket, JOINT_B.boltRadius, 12)[place] ?? Number.NaN);

const RIGID = { bending: Infinity, torsion: Infinity, centroidRadius: JOINT_B.flanges[0].centroidRadius };

const ELASTIC = [5.8508, 3.7515, 1.0417, -0.2487, -0.3764, -0.1215, 0.013];
const AFTER_STAR = [2.2, 74, 111, 0, 60.5, 99.7, 1.1, 76.8, 112, 0, 60.9, 100];
const AFTER_THIRDS = [58.7, 105, 70.9, 73, 93.5, 69.4, 76.5, 100.5, 71.8, 74.9, 76.5, 100];

const afterStar = () =>
  simulateOn(
    circulant(interaction(JOINT_B)),
    STAR_12.map((bolt) => ({ bolts: [bolt], load: 100, pass: 0 })),
  ).loads;

function afterThirds(): readonly number[] {
  const plan = findPlan('staged-thirds');
  const steps = plan === null ? null : planSteps(plan, 12, 100);
  if (steps === null) throw new Error('the plan in thirds has no steps for 12 bolts');
  return simulate(JOINT_B, steps).loads;
}

/** Each unit put on a bolt takes 0.2 from each neighbour and nothing elsewhere. */
const EIGHT = Array.from({ length: 8 }, (_, i) =>
  Array.from({ length: 8 }, (_unused, j) => ((i - j + 8) % 8 === 1 || (j - i + 8) % 8 === 1 ? 0.2 : 0)),
);
const ORDER_8 = [1, 5, 3, 7, 2, 6, 4, 8];

function eight(sets: readonly number[], contact: 'one-sided' | 'two-sided', bolt: number): () => number {
  const steps = sets.flatMap((load) => ORDER_8.map((one) => ({ bolt: one - 1, load })));
  return () => tightenByCoefficients(EIGHT, steps, contact).at(-1)?.[bolt - 1] ?? Number.NaN;
}

const eightRow = (
  what: string,
  expected: number,
  sets: readonly number[],
  contact: 'one-sided' | 'two-sided',
  bolt = 1,
) =>
  row(
    what,
    'eight bolts, c = 0.20',
    expected,
    6e-4,
    'half the last of three printed places',
    eight(sets, contact, bolt),
  );

const RIGID_WHY = 'stated tolerance 1e-5 relative';

export const SCATTER_ROWS: readonly TruthRow[] = [
  row(
    'rigid flanges, bolt itself, mm/N × 1e6',
    NPS_8,
    1.44891,
    1.44891e-5,
    RIGID_WHY,
    () => both(RIGID, 0) * 1e6,
  ),
  row(
    'rigid flanges, bolt opposite, mm/N × 1e7',
    NPS_8,
    -8.08577,
    8.08577e-5,
    RIGID_WHY,
    () => both(RIGID, 6) * 1e7,
  ),
  ...ELASTIC.map((expected, place) =>
    row(
      `elastic flanges, ${place * 30}° apart, mm/N × 1e6`,
      NPS_8,
      expected,
      0.003 * 5.8508,
      'stated tolerance 0.3 % of the bolt’s own',
      () => both(JOINT_B.flanges[0], place) * 1e6,
    ),
  ),
  ...AFTER_STAR.map((expected, bolt) =>
    row(
      `bolt ${bolt + 1} after one star pass, % of the target`,
      NPS_8,
      expected,
      1,
      'stated tolerance 1 % of the target',
      () => afterStar()[bolt] ?? Number.NaN,
    ),
  ),
  ...AFTER_THIRDS.map((expected, bolt) =>
    row(
      `bolt ${bolt + 1} after thirds and a round, % of the target`,
      NPS_8,
      expected,
      1,
      'stated tolerance 1 % of the target',
      () => afterThirds()[bolt] ?? Number.NaN,
    ),
  ),
  eightRow('odd bolts after one pass', 60, [100], 'one-sided'),
  eightRow('odd bolts after two passes', 93.6, [100, 100], 'one-sided'),
  eightRow('odd bolts after three passes', 98.976, [100, 100, 100], 'one-sided'),
  eightRow('even bolts after three passes', 100, [100, 100, 100], 'one-sided', 2),
  eightRow('odd bolts after one pass, linear', 44, [100], 'two-sided'),
  eightRow('odd bolts after two passes, linear', 91.04, [100, 100], 'two-sided'),
  eightRow('odd bolts after three passes, linear', 98.566, [100, 100, 100], 'two-sided'),
  eightRow('odd bolts after 30, linear', 13.2, [30], 'two-sided'),
  eightRow('odd bolts after 30 and 70, linear', 44.912, [30, 70], 'two-sided'),
  eightRow('odd bolts after 30, 70 and 100, linear', 79.186, [30, 70, 100], 'two-sided'),
];
