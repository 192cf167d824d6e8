import { openingSummary, posteriorPart } from '../../core/breakout/model.ts';
import { pairLoad } from '../../core/breakout/residual.ts';
import { expectedProbability, expectedQuantile } from '../../core/breakout/worst.ts';
import { measuredNutFactor } from '../../core/friction/measured.ts';
import { chiSquareQuantile } from '../../core/statistics/chi-square.ts';
import {
  deviationInterval,
  meanInterval,
  predictionInterval,
  type Sample,
  sampleOf,
} from '../../core/statistics/sample.ts';
import { oneSidedTolerance, twoSidedTolerance } from '../../core/statistics/tolerance.ts';
import { studentQuantile } from '../../core/uncertainty/student-t.ts';
import { toSI } from '../../core/units/units.ts';
import { known } from './known.ts';
import { row, rowsOf, type TruthRow } from './row.ts';

const TABLE_21_1 = 'Table 21.1';
const cell = rowsOf('berthouex', 'published table cell');

/** Number of readings, t/√n, and two-sided factors for 90, 95 and 99 % of all at 95 % confidence. */
const BERTHOUEX: readonly (readonly [number, string, string, string, string])[] = [
  [4, '1.59', '5.37', '6.34', '8.22'],
  [5, '1.24', '4.29', '5.08', '6.60'],
  [6, '1.05', '3.73', '4.42', '5.76'],
  [8, '0.84', '3.16', '3.75', '4.89'],
  [9, '0.77', '2.99', '3.55', '4.63'],
  [10, '0.72', '2.86', '3.39', '4.44'],
  [12, '0.64', '2.67', '3.17', '4.16'],
  [20, '0.47', '2.32', '2.76', '3.62'],
  [25, '0.41', '2.22', '2.64', '3.46'],
  [40, '0.32', '2.06', '2.45', '3.22'],
  [60, '0.26', '1.96', '2.34', '3.07'],
];

const tables = BERTHOUEX.flatMap(([n, t, ...factors]) => [
  cell(
    TABLE_21_1,
    `t/√n of ${n} readings, 95 %`,
    t,
    () => known(studentQuantile(0.975, n - 1)) / Math.sqrt(n),
  ),
  ...factors.map((printed, place) => {
    const coverage = [0.9, 0.95, 0.99][place] ?? 0;
    return cell(
      TABLE_21_1,
      `two-sided tolerance factor, ${n} readings, ${100 * coverage} % of all`,
      printed,
      () => known(twoSidedTolerance(n, coverage, 0.95)),
    );
  }),
]);

/** Lower critical values: degrees of freedom and χ² at 0.10, 0.05, 0.025, 0.01 and 0.001 below. */
const NIST: readonly (readonly [number, readonly string[]])[] = [
  [5, ['1.610', '1.145', '.831', '.554', '.210']],
  [10, ['4.865', '3.940', '3.247', '2.558', '1.479']],
  [18, ['10.865', '9.390', '8.231', '7.015', '4.905']],
  [20, ['12.443', '10.851', '9.591', '8.260', '5.921']],
  [50, ['37.689', '34.764', '32.357', '29.707', '24.674']],
  [100, ['82.358', '77.929', '74.222', '70.065', '61.918']],
];
const nist = rowsOf('nist-handbook', 'published table cell');
const chiSquare = NIST.flatMap(([nu, printed]) =>
  printed.map((value, place) => {
    const p = [0.1, 0.05, 0.025, 0.01, 0.001][place] ?? 0;
    return nist('Table 1.3.6.7.4, lower tail', `chi-square, ν ${nu}, ${p} below`, value, () =>
      known(chiSquareQuantile(p, nu)),
    );
  }),
);

/** Loads in kN of 20 dry and 10 lubricated bolts 1/2-20 at 800 lbf·in. */
const DRY = [
  23.6, 27.6, 28, 29.4, 30.3, 30.7, 32.9, 33.8, 33.8, 33.8, 34.7, 35.6, 35.6, 37.4, 37.8, 37.8, 39.2, 40,
  40.5, 42.7,
];
const LUBRICATED = [30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5];
const sample = (readings: readonly number[]): Sample => {
  const found = sampleOf(readings);
  if (found === null) throw new Error('no readings');
  return found;
};
const shigley = rowsOf('shigley');
const computed = rowsOf('own-arithmetic', 'computed');
const lower = (readings: readonly number[]) => () => {
  const { count, mean, deviation } = sample(readings);
  return mean - known(oneSidedTolerance(count, 0.95, 0.95)) * (deviation ?? Number.NaN);
};
const half = (readings: readonly number[]) => () =>
  (predictionInterval(sample(readings), 0.95)?.high ?? Number.NaN) - sample(readings).mean;

const factorAt = (kilonewtons: readonly number[]) => () =>
  measuredNutFactor(toSI(800, 'lbf.in'), sample(kilonewtons).mean * 1000, 0.0127) ?? Number.NaN;

const preload = [
  shigley('9th ed., Table 8-13', 'mean load of 20 dry bolts, kN', '34.3', () => sample(DRY).mean),
  shigley('9th ed., Table 8-13', 'deviation of 20 dry loads, kN', '4.91', () => sample(DRY).deviation ?? 0),
  shigley(
    '9th ed., Table 8-14',
    'mean load of 10 lubricated bolts, kN',
    '34.18',
    () => sample(LUBRICATED).mean,
  ),
  shigley(
    '9th ed., Table 8-14',
    'deviation of 10 lubricated loads, kN',
    '2.88',
    () => sample(LUBRICATED).deviation ?? 0,
  ),
  computed('Table 8-13 data', 'load 95 % of dry bolts exceed, 95 % sure, kN', '22.50', lower(DRY)),
  computed(
    'Table 8-14 data',
    'load 95 % of lubricated bolts exceed, 95 % sure, kN',
    '25.79',
    lower(LUBRICATED),
  ),
  computed('Table 8-13 data', 'nut factor at the mean load, 1/2-20 at 800 lbf·in', '0.20774', factorAt(DRY)),
  computed(
    'Table 8-14 data',
    'nut factor at the mean load, 1/2-20 at 800 lbf·in',
    '0.20823',
    factorAt(LUBRICATED),
  ),
  computed('Table 8-13 data', 'half width for one more dry bolt, 95 %, kN', '10.528', half(DRY)),
  computed('Table 8-14 data', 'half width for one more lubricated bolt, 95 %, kN', '6.836', half(LUBRICATED)),
];

/** One-sided factors at 95 % confidence for 90, 95 and 99 % of all. */
const ONE_SIDED: readonly (readonly [number, string, string, string])[] = [
  [3, '6.155', '7.656', '10.553'],
  [5, '3.407', '4.203', '5.741'],
  [6, '3.006', '3.708', '5.062'],
  [8, '2.582', '3.187', '4.354'],
  [10, '2.355', '2.911', '3.981'],
  [15, '2.068', '2.566', '3.520'],
  [20, '1.926', '2.396', '3.295'],
  [30, '1.777', '2.220', '3.064'],
];
const oneSided = ONE_SIDED.flatMap(([n, ...factors]) =>
  factors.map((printed, place) => {
    const coverage = [0.9, 0.95, 0.99][place] ?? 0;
    return row(
      'from memory',
      `one-sided tolerance factor, ${n} readings, ${100 * coverage} % of all`,
      'nist-handbook',
      'standard tables of 7.2.6.3',
      printed,
      () => known(oneSidedTolerance(n, coverage, 0.95)),
    );
  }),
);

const WALPOLE = sample([1.01, 0.97, 1.03, 1.04, 0.99, 0.98, 0.99, 1.01, 1.03]);
const walpole = rowsOf('walpole');
const remembered = rowsOf('walpole', 'from memory');
/** The book goes on with its rounded mean and deviation. */
const ROUNDED: Sample = { count: 9, mean: 1.0056, deviation: 0.0246 };
const intervals = [
  walpole('three interval types, data', 'mean of nine diameters', '1.0056', () => WALPOLE.mean),
  walpole(
    'three interval types, data',
    'deviation of nine diameters',
    '0.0246',
    () => WALPOLE.deviation ?? 0,
  ),
  remembered(
    'three interval types',
    'mean, 99 % confidence, lower end',
    '0.978',
    () => meanInterval(ROUNDED, 0.99)?.low ?? 0,
  ),
  remembered(
    'three interval types',
    'mean, 99 % confidence, upper end',
    '1.033',
    () => meanInterval(ROUNDED, 0.99)?.high ?? 0,
  ),
  remembered(
    'three interval types',
    'one more reading, 99 %, lower end',
    '0.919',
    () => predictionInterval(ROUNDED, 0.99)?.low ?? 0,
  ),
  remembered(
    'three interval types',
    'one more reading, 99 %, upper end',
    '1.093',
    () => predictionInterval(ROUNDED, 0.99)?.high ?? 0,
  ),
];

/** Nine wing lengths, mm, as one opening of one joint: without effects of joints the prior is the textbook's. */
const MIDGES = [1.64, 1.7, 1.72, 1.74, 1.82, 1.82, 1.82, 1.9, 2.08];
/** κ0 1, ν0 1, σ0² 0.01. */
const MIDGE_PRIOR = { mean: 1.9, ratio: 1, shape: 0.5, scale: 0.005, basis: 'textbook' };
const MIDGE = openingSummary(
  'all',
  MIDGES.map((length) => Math.exp(length)),
);
const midge = posteriorPart(MIDGE === null ? [] : [[MIDGE]], MIDGE_PRIOR, { joints: 0, openings: 0 }).part;
const hoff = rowsOf('hoff', 'from memory');
const conjugate = [
  hoff('5.3, midge wing lengths', 'posterior mean', '1.814', () => midge.mean),
  hoff('5.3, midge wing lengths', 'posterior κn', '10', () => midge.precision),
  hoff('5.3, midge wing lengths', 'posterior νn·σn²/νn = 0.153/10', '0.0153', () => (2 * midge.scale) / 10),
];

const certain = (rho: number, sigma: number) => ({
  shape: 1e6,
  parts: [
    { weight: 1, centre: Math.log(1.2), level: rho / (1 - rho), scale: 1e6 * sigma * sigma * (1 - rho) },
  ],
});
const worst = (rho: number, p: number) => () => {
  const expected = certain(rho, 0.25);
  return Math.exp(expectedQuantile(expectedProbability(expected, { kind: 'worst', bolts: 24 }), expected, p));
};
const EXAMPLE = 'worst of 24 bolts, middle 1.2, σ 0.25 of ln R';
const breakout = [
  computed(EXAMPLE, 'independent bolts, median of the worst', '1.93', worst(1e-9, 0.5)),
  computed(EXAMPLE, 'independent bolts, 95 % of the worst', '2.45', worst(1e-9, 0.95)),
  computed(EXAMPLE, 'ρ 0.5, median of the worst', '1.69', worst(0.5, 0.5)),
  computed(EXAMPLE, 'ρ 0.5, 95 % of the worst', '2.35', worst(0.5, 0.95)),
  computed(
    'torque pair at Toff/Ton 0.86',
    'uncertainty of the load, 2 % on each torque',
    '0.19',
    () => pairLoad(1, 0.86, 0.001, 0.02).value?.relative ?? 0,
  ),
];

export const STATISTICS_ROWS: readonly TruthRow[] = [
  ...preload,
  ...intervals,
  ...tables,
  ...chiSquare,
  row(
    'published',
    'one-sided tolerance factor, 50 readings, 95 % of all, 95 % sure',
    'owen',
    'page 47',
    '2.065',
    () => known(oneSidedTolerance(50, 0.95, 0.95)),
  ),
  ...oneSided,
  computed(
    '7.2.3.1 relation, ten lubricated loads',
    'upper end of σ, 95 %, kN',
    '5.260',
    () => deviationInterval(sample(LUBRICATED), 0.95)?.high ?? 0,
  ),
  ...conjugate,
  ...breakout,
];
