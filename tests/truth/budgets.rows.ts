import { type Budget, budget } from '../../core/uncertainty/budget.ts';
import { summarise } from '../../core/uncertainty/distribution.ts';
import { fromLimits } from '../../core/uncertainty/type-b.ts';
import { known } from './known.ts';
import { LEW, LOTTERY, MAVRO, MICHELSON } from './nist-strd-data.ts';
import { type Loose, rowsOf, type TruthRow } from './row.ts';

/** Name, standard uncertainty and sensitivity of an input quantity. */
type Part = readonly [name: string, u: number, sensitivity: number];

function budgetOf(parts: readonly Part[]): Budget {
  return known(
    budget(
      parts.map(([name, u, sensitivity]) => ({
        name,
        u,
        sensitivity,
        scope: 'common',
        basis: 'as published',
        degreesOfFreedom: null,
      })),
    ),
  );
}

/** Parts of a product of powers: u(y) from relative uncertainties, each already times its exponent. */
const relative = (value: number, parts: Readonly<Record<string, number>>) =>
  budgetOf(Object.entries(parts).map(([name, u]) => [name, u, value]));
const contribution = (result: Budget, name: string) =>
  result.lines.find((line) => line.name === name)?.contribution ?? Number.NaN;
/** Bound that no combination of signs exceeds. */
const absoluteSum = (result: Budget) => result.lines.reduce((sum, line) => sum + line.contribution, 0);

const rectangular = (halfWidth: number) => known(fromLimits(halfWidth, 'rectangular'));
const triangular = (halfWidth: number) => known(fromLimits(halfWidth, 'triangular'));

const gtc = rowsOf('gtc');
const A2 = 'after EURACHEM/CITAC CG 4 (2012), Example A2, compare Fig. A2.9';
const A3 = 'after EURACHEM/CITAC CG 4 (2012), Example A3, compare Fig. A3.6';
const KHP_MASS = 0.3888;
const KHP_MOLAR = 8 * 12.0107 + 5 * 1.00794 + 4 * 15.9994 + 39.0983;
const MOLAR = Math.hypot(8 * 0.0008, 5 * 0.00007, 4 * 0.0003, 0.0001);
const KHP = {
  m_KHP: (Math.SQRT2 * rectangular(0.00015)) / KHP_MASS,
  P_KHP: rectangular(0.0005),
  M_KHP: rectangular(MOLAR) / KHP_MOLAR,
};
const sodiumHydroxide = () =>
  relative((1000 * KHP_MASS) / (KHP_MOLAR * 18.64), {
    ...KHP,
    V_T: Math.hypot(triangular(0.03), 0.006) / 18.64,
    R: 0.0005,
  });
/** Volume by a burette or pipette: its class, and the temperature of ±4 °C. */
const volume = (value: number, mark: number, nominal: number) =>
  Math.hypot(triangular(mark), rectangular(nominal * 2.1e-4 * 4)) / value;
const hydrochloricAcid = () =>
  relative((1000 * KHP_MASS * 14.89) / (18.64 * KHP_MOLAR * 15), {
    ...KHP,
    R: 0.001,
    V_T2: volume(14.89, 0.03, 15),
    V_T1: volume(18.64, 0.03, 19),
    V_HCl: volume(15, 0.02, 15),
  });

const A2_PARTS: Readonly<Record<string, string>> = {
  V_T: '7.47292e-05',
  R: '5.10681e-05',
  m_KHP: '3.21735e-05',
  P_KHP: '2.94842e-05',
  M_KHP: '1.88312e-06',
};
const A3_PARTS: Readonly<Record<string, string>> = {
  R: '0.000101387',
  V_T2: '9.69953e-05',
  V_T1: '8.33653e-05',
  V_HCl: '7.39151e-05',
  m_KHP: '3.19376e-05',
  P_KHP: '2.9268e-05',
  M_KHP: '1.86931e-06',
};

const doebelin = rowsOf('doebelin');
/** Shaft power 2π·R·F·L/t and its parts by R, F, L and t. */
function shaftPower(turns: number, force: number, arm: number, time: number): Budget {
  const power = (2 * Math.PI * turns * force * arm) / time;
  return budgetOf([
    ['force', 0.18, power / force],
    ['turns', 1, power / turns],
    ['arm', 0.00127, power / arm],
    ['time', 0.5, -power / time],
  ]);
}

const sawhney = rowsOf('sawhney');
const DISCHARGE = {
  flow: 0.000586734693877551,
  time: 0.0033333333333333335,
  density: 0.001,
  'diameter, squared': 0.004,
  'gravity, root': 0.0005,
  'head, root': 0.0004098360655737705,
};
const ORDINARY: readonly number[] = [532, 548, 543, 535, 546, 531, 543, 536];
const TEMPERATURES: readonly number[] = [41.7, 42, 41.8, 42, 42.1, 41.9, 42, 41.9, 42.5, 41.8];

const gum = rowsOf('gum');
const DAILY = [
  10.000172, 10.000116, 10.000013, 10.000144, 10.000106, 10.000031, 10.00006, 10.000125, 10.000163, 10.000041,
];

const momentsOf = (values: readonly number[]) => summarise(Float64Array.from(values), 0, 'published');

/** Sets built to be hard: a level and deviations of 0.1 about it, 1001 values. */
const hardSet = (level: number) => [
  level,
  ...Array.from({ length: 1000 }, (_, index) => level + (index % 2 === 0 ? -0.1 : 0.1)),
];
const STRD: readonly (readonly [
  name: string,
  values: readonly number[],
  mean: string,
  deviation: string,
  relative: number,
])[] = [
  ['Lew', LEW, '-177.435000000000', '277.332168044316', 1e-12],
  ['Lottery', LOTTERY, '518.958715596330', '291.699727470969', 1e-12],
  ['Mavro', MAVRO, '2.00185600000000', '0.000429123454003053', 1e-10],
  ['Michelso', MICHELSON, '299.852400000000', '0.0790105478190518', 1e-10],
  ['NumAcc1', [10000001, 10000003, 10000002], '10000002', '1', 1e-12],
  ['NumAcc2', hardSet(1.2), '1.2', '0.1', 1e-10],
  ['NumAcc3', hardSet(1000000.2), '1000000.2', '0.1', 1e-7],
  ['NumAcc4', hardSet(10000000.2), '10000000.2', '0.1', 1e-5],
];
function precise(printed: string, relativeTolerance: number): Loose {
  const tolerance = Math.abs(Number(printed)) * relativeTolerance;
  return {
    tolerance,
    step: 2 * tolerance,
    why: `exact or certified to 15 digits; double precision keeps ${relativeTolerance} of the value on this set`,
  };
}

export const BUDGET_ROWS: readonly TruthRow[] = [
  ...Object.entries(A2_PARTS).map(([name, printed]) =>
    gtc(A2, `sodium hydroxide, part of ${name}, mol/L`, printed, () => contribution(sodiumHydroxide(), name)),
  ),
  gtc(A2, 'sodium hydroxide, combined, mol/L', '0.00010050072212', () => sodiumHydroxide().combined, {
    tolerance: 1e-14,
    why: 'printed to eleven digits, worked in double precision there and here',
  }),
  ...Object.entries(A3_PARTS).map(([name, printed]) =>
    gtc(A3, `hydrochloric acid, part of ${name}, mol/L`, printed, () =>
      contribution(hydrochloricAcid(), name),
    ),
  ),
  doebelin(
    'Example 3.2, p. 62',
    'shaft power: combined, W',
    '22.075336595',
    () => shaftPower(1202, 45, 0.397, 60).combined,
  ),
  doebelin('Example 3.2, p. 62', 'shaft power: sum of the parts, W', '36.798728247', () =>
    absoluteSum(shaftPower(1202, 45, 0.397, 60)),
  ),
  doebelin(
    'Example 3.3, p. 64',
    'second set: combined, W',
    '1631.45984422',
    () => shaftPower(1305, 85, 0.467, 10).combined,
  ),
  sawhney('Example 3.21, p. 99', 'mean of eight readings, kHz', '539.25', () => momentsOf(ORDINARY).mean),
  sawhney(
    'Example 3.21, p. 99',
    'their deviation, kHz',
    '6.54107898482',
    () => momentsOf(ORDINARY).deviation,
  ),
  sawhney('Example 3.22, p. 101', 'mean of ten readings, °C', '41.97', () => momentsOf(TEMPERATURES).mean),
  sawhney(
    'Example 3.22, p. 101',
    'their deviation, °C',
    '0.221359436212',
    () => momentsOf(TEMPERATURES).deviation,
  ),
  sawhney(
    'Example 3.34, p. 123',
    'sum of two currents, A',
    '5.38516480713',
    () =>
      budgetOf([
        ['first', 2, 1],
        ['second', 5, 1],
      ]).combined,
  ),
  sawhney(
    'Example 3.35, p. 125',
    'resistance of voltage and current, Ω',
    '2.33238075794',
    () =>
      budgetOf([
        ['voltage', 12, 1 / 10],
        ['current', 2, -100 / 10 ** 2],
      ]).combined,
  ),
  sawhney(
    'Example 3.37, p. 127',
    'discharge coefficient: combined, %',
    '0.537339132325',
    () => relative(100, DISCHARGE).combined,
  ),
  sawhney('Example 3.37, p. 127', 'discharge coefficient: sum of the parts, %', '0.982990409278', () =>
    absoluteSum(relative(100, DISCHARGE)),
  ),
  sawhney(
    'Example 3.38, p. 129',
    'power of voltage and current, %',
    '1.14653078526',
    () => relative(100, { voltage: 0.2 / 110.2, current: 0.06 / 5.3 }).combined,
  ),
  sawhney(
    'Example 3.39, p. 131',
    'resistors in series, Ω',
    '0.104403065089',
    () =>
      budgetOf([
        ['first', 0.1, 1],
        ['second', 0.03, 1],
      ]).combined,
  ),
  sawhney(
    'Example 3.39, p. 131',
    'resistors in parallel, Ω',
    '0.0173561103909',
    () =>
      budgetOf([
        ['first', 0.1, (50 / 150) ** 2],
        ['second', 0.03, (100 / 150) ** 2],
      ]).combined,
  ),
  sawhney(
    'Example 3.41, p. 135',
    'power as E²/R, %',
    '2.2360679775',
    () => relative(100, { 'voltage, squared': 2 * 0.01, resistance: 0.01 }).combined,
  ),
  sawhney(
    'Example 3.41, p. 135',
    'power as E·I, %',
    '1.41421356237',
    () => relative(100, { voltage: 0.01, current: 0.01 }).combined,
  ),
  gum('H.5, Table H.9', 'mean of ten daily means, V', '10.000097', () => momentsOf(DAILY).mean),
  gum('H.5, Table H.9', 'deviation of the daily means, V', '57e-6', () => momentsOf(DAILY).deviation),
  ...STRD.flatMap(([name, values, mean, deviation, tolerance]) => [
    rowsOf('nist-strd')(
      `univariate summary statistics, ${name}.dat`,
      `${name}: mean`,
      mean,
      () => momentsOf(values).mean,
      precise(mean, 1e-12),
    ),
    rowsOf('nist-strd')(
      `univariate summary statistics, ${name}.dat`,
      `${name}: deviation`,
      deviation,
      () => momentsOf(values).deviation,
      precise(deviation, tolerance),
    ),
  ]),
];
