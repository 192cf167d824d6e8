import { type Budget, budget, type Contributor, loadBudget } from '../../core/uncertainty/budget.ts';
import { simulateLoad } from '../../core/uncertainty/monte-carlo.ts';
import { normalQuantile } from '../../core/uncertainty/normal.ts';
import { propagate } from '../../core/uncertainty/propagate.ts';
import { fromLimits } from '../../core/uncertainty/type-b.ts';
import { known } from './known.ts';
import { type Loose, row, type TruthRow } from './row.ts';

const GUM = 'gum';
const SUPPLEMENT_1 = 'gum-supplement-1';
const EURACHEM_WORKED = 'gtc';
const TN_1900 = 'tn-1900';
const NPL = 'npl';
const ARITHMETIC = 'own-arithmetic';

function contributor(
  name: string,
  u: number,
  sensitivity: number,
  degreesOfFreedom: number | null,
): Contributor {
  return { name, u, sensitivity, scope: 'common', basis: 'as published', degreesOfFreedom };
}

/** Budget of contributions that are published as such: sensitivity 1. */
function ofContributions(parts: readonly number[], degrees?: readonly number[]): Budget {
  return known(
    budget(parts.map((part, index) => contributor(`part ${index + 1}`, part, 1, degrees?.[index] ?? null))),
  );
}

const IMPEDANCE = {
  V: [5.007, 4.994, 5.005, 4.99, 4.999],
  I: [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3],
  phi: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
};

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Covariance of the means of two series of simultaneous readings. */
function covariance(a: readonly number[], b: readonly number[]): number {
  const [ma, mb] = [mean(a), mean(b)];
  const sum = a.reduce((total, value, index) => total + (value - ma) * ((b[index] ?? mb) - mb), 0);
  return sum / (a.length * (a.length - 1));
}

/** Standard uncertainty of a result of the three correlated readings of GUM H.2. */
function impedance(
  sensitivities: (v: number, i: number, phi: number) => readonly [number, number, number],
): number {
  const { V, I, phi } = IMPEDANCE;
  const c = sensitivities(mean(V), mean(I), mean(phi));
  const series = [
    ['V', V],
    ['I', I],
    ['φ', phi],
  ] as const;
  const pairs = [
    [0, 1],
    [0, 2],
    [1, 2],
  ] as const;
  const result = budget(
    series.map(([name, values], index) =>
      contributor(name, Math.sqrt(covariance(values, values)), c[index] ?? Number.NaN, null),
    ),
    pairs.map(([a, b]) => {
      const [[first, x], [second, y]] = [series[a], series[b]];
      return { first, second, r: covariance(x, y) / Math.sqrt(covariance(x, x) * covariance(y, y)) };
    }),
  );
  return known(result).combined;
}

const ROUNDED_MEANS: Loose = {
  tolerance: 0.0007,
  why: 'half the last digit; the Guide works with rounded means',
};

const CONCENTRATION = (1000 * 100.28 * 0.9999) / 100;

function standardSolution(): Budget {
  return known(
    budget([
      contributor('mass', 0.05, CONCENTRATION / 100.28, null),
      contributor('purity', known(fromLimits(0.0001, 'rectangular')), CONCENTRATION / 0.9999, null),
      contributor('volume, class', known(fromLimits(0.1, 'triangular')), CONCENTRATION / 100, null),
      contributor('volume, filling', 0.02, CONCENTRATION / 100, null),
      contributor('volume, temperature', known(fromLimits(0.084, 'rectangular')), CONCENTRATION / 100, null),
    ]),
  );
}

const contributionOf = (name: string) => () =>
  Math.hypot(
    ...standardSolution()
      .lines.filter((line) => line.name.startsWith(name))
      .map((line) => line.contribution),
  );

/** Relative uncertainties of Example A3 but for the repeatability, and its concentration in µmol/L. */
const TITRATION = [
  9.566822782067895e-4, 8.222469214389317e-4, 7.290379251426474e-4, 3.1500639696285733e-4,
  2.886751345948129e-4, 1.8437371402738157e-5,
];
const TITRATED = 101387.16120227426;

const titration = (repeatability: number) => () =>
  ofContributions([repeatability, ...TITRATION]).combined * TITRATED;

function expansionUncertainty(): number {
  const [l0, t0, l1, t1] = [1.4999, 288.15, 1.5021, 373.1];
  const rise = t1 - t0;
  const alpha = (l1 - l0) / (l0 * rise);
  return known(
    budget([
      contributor('L0', 0.0001, -l1 / (l0 ** 2 * rise), null),
      contributor('L1', 0.0002, 1 / (l0 * rise), null),
      contributor('T0', 0.02, alpha / rise, null),
      contributor('T1', 0.05, -alpha / rise, null),
    ]),
  ).combined;
}

const MILLION = 1_000_000;
const fourOf = (shape: 'normal' | 'uniform') =>
  known(
    propagate(
      ['X1', 'X2', 'X3', 'X4'].map((name) => ({ name, mean: 0, u: 1, shape })),
      (x) => x.reduce((sum, value) => sum + value, 0),
      MILLION,
      1,
    ),
  );
const logarithm = () =>
  known(
    propagate(
      [{ name: 'x', mean: 0.6, u: known(fromLimits(0.5, 'rectangular')), shape: 'uniform' }],
      ([x = 1]) => Math.log(x),
      MILLION,
      1,
    ),
  );

const QUANTILE_NOISE = 'three standard errors of the 97.5 % point at a million draws';

const toolAndFriction = (side: 0 | 1) => () =>
  100 *
  known(
    simulateLoad({
      nominal: 100e3,
      contributors: [
        {
          name: 'tool',
          of: 'torque',
          relative: 0.02,
          scope: 'common',
          basis: 'certificate',
          degreesOfFreedom: null,
          shape: 'normal',
        },
        {
          name: 'K',
          of: 'nut factor',
          relative: 0.1,
          scope: 'per bolt',
          basis: 'tests',
          degreesOfFreedom: null,
          shape: 'normal',
        },
      ],
      draws: 100_000,
      seed: 1,
      bolts: 1,
    }),
  ).relativeInterval[side];

const relativeLoad = (torque: number, friction: number) => () =>
  100 *
  known(
    loadBudget([
      {
        name: 'torque',
        of: 'torque',
        relative: torque,
        scope: 'common',
        basis: 'given',
        degreesOfFreedom: null,
      },
      {
        name: 'K',
        of: 'nut factor',
        relative: friction,
        scope: 'per bolt',
        basis: 'given',
        degreesOfFreedom: null,
      },
    ]),
  ).combined;

export const UNCERTAINTY_ROWS: readonly TruthRow[] = [
  row(
    'published',
    'end gauge: comparator difference, nm',
    GUM,
    'H.1.3.2',
    '9.7',
    () => ofContributions([5.8, 3.9, 6.7]).combined,
  ),
  row(
    'published',
    'end gauge: effective degrees of freedom of it',
    GUM,
    'H.1.6',
    '25.6',
    () => ofContributions([5.8, 3.9, 6.7], [24, 5, 8]).degreesOfFreedom ?? Number.NaN,
    { tolerance: 0.2, why: 'the Guide rounds the combined value to 9.7 first' },
  ),
  row(
    'published',
    'end gauge: combined standard uncertainty, nm',
    GUM,
    'H.1.4, Table H.1',
    '32',
    () => ofContributions([25, 9.7, 2.9, 16.6]).combined,
  ),
  row('published', 'end gauge: effective degrees of freedom', GUM, 'H.1.6', '16', () =>
    Math.floor(ofContributions([25, 9.7, 2.9, 16.6], [18, 25.6, 50, 2]).degreesOfFreedom ?? Number.NaN),
  ),
  row(
    'published',
    'impedance: u(R), correlated readings, Ω',
    GUM,
    'H.2, Table H.4',
    '0.071',
    () =>
      impedance((v, i, phi) => [Math.cos(phi) / i, (-v * Math.cos(phi)) / i ** 2, (-v / i) * Math.sin(phi)]),
    ROUNDED_MEANS,
  ),
  row(
    'published',
    'impedance: u(X), correlated readings, Ω',
    GUM,
    'H.2, Table H.4',
    '0.295',
    () =>
      impedance((v, i, phi) => [Math.sin(phi) / i, (-v * Math.sin(phi)) / i ** 2, (v / i) * Math.cos(phi)]),
    ROUNDED_MEANS,
  ),
  row(
    'published',
    'impedance: u(Z), correlated readings, Ω',
    GUM,
    'H.2, Table H.4',
    '0.236',
    () => impedance((v, i) => [1 / i, -v / i ** 2, 0]),
    ROUNDED_MEANS,
  ),
  row('published', 'coverage factor of 95 %, normal', GUM, 'Table G.1', '1.960', () => normalQuantile(0.975)),
  row('published', 'coverage factor of 99 %, normal', GUM, 'Table G.1', '2.576', () => normalQuantile(0.995)),
  row('published', 'coverage factor of 90 %, normal', GUM, 'Table G.1', '1.645', () => normalQuantile(0.95)),
  row(
    'published',
    'four normals added: upper 95 % point',
    SUPPLEMENT_1,
    '9.2.2, Table 2',
    '3.92',
    () => fourOf('normal').interval[1],
    { tolerance: 0.016, why: QUANTILE_NOISE },
  ),
  row(
    'published',
    'four normals added: standard uncertainty',
    SUPPLEMENT_1,
    '9.2.2, Table 2',
    '2.00',
    () => fourOf('normal').deviation,
  ),
  row(
    'published',
    'four rectangular ones added: upper 95 % point',
    SUPPLEMENT_1,
    '9.2.3, Table 3',
    '3.88',
    () => fourOf('uniform').interval[1],
    { tolerance: 0.015, why: QUANTILE_NOISE },
  ),
  row(
    'published',
    'four rectangular ones added: standard uncertainty',
    SUPPLEMENT_1,
    '9.2.3, Table 3',
    '2.00',
    () => fourOf('uniform').deviation,
  ),
  row(
    'published',
    'standard solution: combined uncertainty, mg/L',
    EURACHEM_WORKED,
    'after EURACHEM/CITAC CG 4 (2012), Example A1, unrounded',
    '0.835199',
    () => standardSolution().combined,
  ),
  row(
    'published',
    'standard solution: part of the volume, mg/L',
    EURACHEM_WORKED,
    'after EURACHEM/CITAC CG 4 (2012), Example A1, unrounded',
    '0.666525',
    contributionOf('volume'),
  ),
  row(
    'published',
    'standard solution: part of the mass, mg/L',
    EURACHEM_WORKED,
    'after EURACHEM/CITAC CG 4 (2012), Example A1, unrounded',
    '0.49995',
    contributionOf('mass'),
  ),
  row(
    'published',
    'standard solution: part of the purity, mg/L',
    EURACHEM_WORKED,
    'after EURACHEM/CITAC CG 4 (2012), Example A1, unrounded',
    '0.0578967',
    contributionOf('purity'),
  ),
  row(
    'published',
    'sodium hydroxide: combined uncertainty, µmol/L',
    EURACHEM_WORKED,
    'after EURACHEM/CITAC CG 4 (2012), Example A2, printed contributions',
    '100.5007',
    () => ofContributions([74.7292, 51.0681, 32.1735, 29.4842, 1.88312]).combined,
    { tolerance: 2e-4, why: 'the contributions are printed to six digits' },
  ),
  row(
    'published',
    'titration: combined uncertainty, µmol/L',
    EURACHEM_WORKED,
    'after EURACHEM/CITAC CG 4 (2012), Example A3, relative uncertainties',
    '184.3',
    titration(0.001),
  ),
  row(
    'published',
    'titration: combined, repeatability of the mean of three, mmol/L',
    EURACHEM_WORKED,
    'after EURACHEM/CITAC CG 4 (2012), Example A3, A3.6',
    '0.16',
    () => titration(0.001 / Math.sqrt(3))() / 1000,
  ),
  row(
    'published',
    'expansion coefficient: uncertainty, 1e-6/K',
    TN_1900,
    'Example E13, first order',
    '1.76',
    () => expansionUncertainty() * 1e6,
  ),
  row(
    'published',
    'ln x, x between 0.1 and 1.1: first order',
    NPL,
    'section 9.2, Table 9.2',
    '0.481',
    () => known(budget([contributor('x', known(fromLimits(0.5, 'rectangular')), 1 / 0.6, null)])).combined,
  ),
  row(
    'published',
    'ln x, x between 0.1 and 1.1: mean',
    NPL,
    'section 9.2, Table 9.2',
    '-0.665',
    () => logarithm().mean,
    {
      tolerance: 0.0023,
      why: 'half the last digit and three standard errors of the mean at a million draws',
    },
  ),
  row(
    'published',
    'ln x, x between 0.1 and 1.1: deviation',
    NPL,
    'section 9.2, Table 9.2',
    '0.606',
    () => logarithm().deviation,
    {
      tolerance: 0.0025,
      why: 'half the last digit and three standard errors of the deviation at a million draws',
    },
  ),
  row(
    'computed',
    'load, torque 5 % and friction 8 %, first order, %',
    ARITHMETIC,
    'root sum of squares',
    '9.43',
    relativeLoad(0.05, 0.08),
  ),
  row(
    'computed',
    'load of worked joint A, first order, %',
    ARITHMETIC,
    'u(T)/T 2.589 %, CV of K 10 %',
    '10.33',
    relativeLoad(0.02589, 0.1),
  ),
  row(
    'computed',
    'lower end of the load, tool 2 % and K 10 %, %',
    ARITHMETIC,
    '95 % interval of a ratio',
    '-16',
    toolAndFriction(0),
    {
      tolerance: 1,
      why: 'stated as about −16 %',
    },
  ),
  row(
    'computed',
    'upper end of the load, tool 2 % and K 10 %, %',
    ARITHMETIC,
    '95 % interval of a ratio',
    '25',
    toolAndFriction(1),
    {
      tolerance: 1,
      why: 'stated as about +25 %',
    },
  ),
];
