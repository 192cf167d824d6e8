import { decide, deliveredFromIndicated, indicatedFromDelivered } from '../../core/calibration/decision.ts';
import { hysteresis } from '../../core/calibration/hysteresis.ts';
import { leaveOneOut } from '../../core/calibration/leave-one-out.ts';
import { inverse, NO_COMMON, predict, weightedLineUncertainty } from '../../core/calibration/prediction.ts';
import { type WeightedLine, weightedLine } from '../../core/calibration/weighted-line.ts';
import { studentQuantile } from '../../core/uncertainty/student-t.ts';
import { GUM_CORRECTIONS, GUM_TEMPERATURES } from './gum-h3.rows.ts';
import { known } from './known.ts';
import { NORRIS_X, NORRIS_Y } from './nist-strd-data.ts';
import { type Loose, lastDigit, row, rowsOf, type TruthRow } from './row.ts';

function lineOf(xs: readonly number[], ys: readonly number[], us?: readonly number[]): WeightedLine {
  return known(weightedLine(xs.map((x, i) => ({ x, y: ys[i] ?? Number.NaN, u: us?.[i] ?? null }))));
}

const or = (value: number | null) => value ?? Number.NaN;

const SIX = [1, 2, 3, 4, 5, 6];
const iso = rowsOf('iso-28037');
const EQUAL = '6.3, p. 13, known equal uncertainties';
const UNEQUAL = '6.3, p. 14, known unequal uncertainties';
const equal = () =>
  lineOf(
    SIX,
    [3.3, 5.6, 7.1, 9.3, 10.7, 12.1],
    SIX.map(() => 0.5),
  );
const unequal = () => lineOf(SIX, [3.2, 4.3, 7.6, 8.6, 11.7, 12.8], [0.5, 0.5, 0.5, 1, 1, 1]);

const gtc = rowsOf('gtc');
const RELATIVE = 'straight-line fit with relative weights, after ISO/TS 28037:2010, Appendix E';
const relative = () =>
  lineOf(SIX, [3.014, 5.225, 7.004, 9.061, 11.201, 12.762], [0.2, 0.2, 0.2, 0.4, 0.4, 0.4]);
const scaled = (u: number) => u * or(relative().birgeRatio);

/** Weights of York for the data of Pearson, on the ordinate alone. */
const PEARSON = 'test of weighted straight-line fits, data of Pearson with weights of York on y';
const pearson = () =>
  lineOf(
    [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5],
    [0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4],
    [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1].map((weight) => 1 / Math.sqrt(weight)),
  );

const SOLIDS = 'linear regression results, data of Walpole and Myers';
const solids = () =>
  lineOf(
    [
      3, 7, 11, 15, 18, 27, 29, 30, 30, 31, 31, 32, 33, 33, 34, 36, 36, 36, 37, 38, 39, 39, 39, 40, 41, 42,
      42, 43, 44, 45, 46, 47, 50,
    ],
    [
      5, 11, 21, 16, 16, 28, 27, 25, 35, 30, 40, 32, 34, 32, 34, 37, 38, 34, 36, 38, 37, 36, 45, 39, 41, 40,
      44, 37, 44, 46, 46, 49, 51,
    ],
  );

const CADMIUM = 'after EURACHEM/CITAC CG 4 (2012), Example A5, cadmium by calibration line';
const cadmium = () =>
  lineOf(
    [0.1, 0.1, 0.1, 0.3, 0.3, 0.3, 0.5, 0.5, 0.5, 0.7, 0.7, 0.7, 0.9, 0.9, 0.9],
    [0.028, 0.029, 0.029, 0.084, 0.083, 0.081, 0.135, 0.131, 0.133, 0.18, 0.181, 0.183, 0.215, 0.23, 0.216],
  );
/** Two further readings, 0.0712 and 0.0716. */
const cadmiumRead = () =>
  known(inverse(cadmium(), 0.0714, cadmium().residualDeviation / Math.SQRT2, NO_COMMON, 0.95));

const GUM_COMMON = 'GUM H.3.6 worked with an error of the standard common to all points, u = 0.005 °C';
const gumLine = () =>
  lineOf(
    GUM_TEMPERATURES.map((t) => t - 20),
    GUM_CORRECTIONS,
  );
const gumCentred = () =>
  lineOf(
    GUM_TEMPERATURES.map((t) => t - 24.0085),
    GUM_CORRECTIONS,
  );
const gumMemory = (what: string, printed: string, computed: () => number) =>
  row('from memory', what, 'gum', 'H.3.5, elimination of the correlation', printed, computed);

const norris = () =>
  lineOf(
    NORRIS_X,
    NORRIS_Y,
    NORRIS_X.map(() => 0.7),
  );
const certified = (printed: string): Loose => ({
  tolerance: Math.abs(Number(printed)) * 1e-9,
  step: Math.abs(Number(printed)) * 2e-9,
  why: 'certified to 15 digits, of which double precision keeps nine: step taken at 2·10⁻⁹ of the value',
});
const strd = rowsOf('nist-strd');
const NORRIS = 'linear regression, Norris.dat, as a fit of equal stated weights';

const LOAD_CELL = 'example of the module, hysteresis; gain from its test of the same points';
/** Reading of a load cell up to 500 and back, times its gain, as a torque of which up and down differ. */
function loadCell() {
  const up = [0, 0.55983, 1.11975, 1.67982, 2.24005, 2.80039];
  const down = [2.24023, 1.68021, 1.12026, 0.56021];
  const gain = 178.5465596;
  return known(
    hysteresis(
      [
        ...up.map((y, i) => ({ pressure: 100 * i, torque: gain * y, direction: 'up' as const })),
        ...down.map((y, i) => ({ pressure: 400 - 100 * i, torque: gain * y, direction: 'down' as const })),
      ],
      0,
    ),
  );
}
const largestDifference = () => Math.max(...loadCell().pairs.map(({ difference }) => Math.abs(difference)));

const deleted = (index: number) =>
  or(
    known(
      leaveOneOut(
        [2.1, 3.8, 5.2, 2.1].map((y, i) => ({ x: i === 3 ? 10 : i + 1, y, u: null })),
        0.05,
      ),
    ).points[index]?.studentised ?? null,
  );
const STUDENTISED = ['-1.7431', '0.1217', '1.6361', '-19.7990'] as const;
const ROUNDED_TWICE: Loose = {
  tolerance: 0.0001,
  why: 'the test allows a digit in the last place of its own output',
};

const ILAC = '4.2.3, non-binary statement with guard band, p. 10';
/** The four statements of the guideline, of which two are told apart here by whether the limit itself is kept. */
function statement(error: number): string {
  const { verdict, withinLimit } = known(decide({ error, expanded: 0.01 }, 0.04, 'guard band of U'));
  if (verdict === 'accept') return 'Pass';
  if (verdict === 'reject') return 'Fail';
  return withinLimit ? 'Conditional Pass' : 'Conditional Fail';
}
const ilac = (what: string, printed: string, error: number): TruthRow => ({
  what,
  source: 'ilac-g8',
  place: ILAC,
  printed,
  expected: printed,
  step: 0,
  tolerance: 0,
  why: 'a statement is given or it is not',
  kind: 'published',
  computed: () => statement(error),
});

/** The digits after the last are cut off, as the print shows by its dots. */
const cut = (printed: string): Loose => ({
  tolerance: lastDigit(printed),
  why: 'the print cuts the further digits off instead of rounding',
});

export const CALIBRATION_ROWS: readonly TruthRow[] = [
  iso(EQUAL, 'u(a) as stated', '0.465', () => equal().interceptUncertainty),
  iso(EQUAL, 'u(b) as stated', '0.120', () => equal().slopeUncertainty),
  iso(EQUAL, 'cov(a, b) as stated', '-0.050', () => equal().covariance),
  iso(EQUAL, 'observed χ²', '1.665', () => or(equal().chiSquared)),
  iso(
    EQUAL,
    'abscissa for a reading of 10.5',
    '4.913',
    () => known(inverse(equal(), 10.5, 0.5, NO_COMMON, 0.95)).value,
  ),
  iso(
    EQUAL,
    'u of that abscissa, u of the reading 0.5',
    '0.322',
    () => known(inverse(equal(), 10.5, 0.5, NO_COMMON, 0.95)).uncertainty,
  ),
  iso(UNEQUAL, 'intercept, weighted', '0.885', () => unequal().intercept),
  iso(UNEQUAL, 'slope, weighted', '2.057', () => unequal().slope),
  iso(UNEQUAL, 'u(a) of the weighted fit', '0.530', () => unequal().interceptUncertainty),
  iso(UNEQUAL, 'u(b) of the weighted fit', '0.178', () => unequal().slopeUncertainty),
  iso(UNEQUAL, 'cov(a, b) of the weighted fit', '-0.082', () => unequal().covariance),
  iso(UNEQUAL, 'observed χ² of the weighted fit', '4.131', () => or(unequal().chiSquared)),
  iso(
    UNEQUAL,
    'abscissa for a reading of 10.5, weighted',
    '4.674',
    () => known(inverse(unequal(), 10.5, 1, NO_COMMON, 0.95)).value,
  ),
  gtc(RELATIVE, 'intercept, relative weights', '1.14', () => relative().intercept),
  gtc(RELATIVE, 'slope, relative weights', '1.973', () => relative().slope),
  gtc(RELATIVE, 'u(a) times the Birge ratio', '0.12', () => scaled(relative().interceptUncertainty)),
  gtc(RELATIVE, 'u(b) times the Birge ratio', '0.041', () => scaled(relative().slopeUncertainty)),
  gtc(RELATIVE, 'correlation, relative weights', '-0.87', () => or(relative().correlation)),
  gtc(
    RELATIVE,
    'weighted sum of squared residuals',
    '1.3395217958',
    () => or(relative().chiSquared),
    cut('1.3395217958'),
  ),
  gtc(PEARSON, 'intercept, weights on y', '9.4302', () => pearson().intercept, ROUNDED_TWICE),
  gtc(PEARSON, 'slope, weights on y', '-1.5862', () => pearson().slope, ROUNDED_TWICE),
  gtc(
    PEARSON,
    'variance of the intercept, weights on y',
    '0.011384624',
    () => pearson().interceptUncertainty ** 2,
  ),
  gtc(PEARSON, 'variance of the slope, weights on y', '0.0004400409', () => pearson().slopeUncertainty ** 2),
  gtc(PEARSON, 'covariance, weights on y', '-0.002211235', () => pearson().covariance),
  gtc(SOLIDS, 'u of the line at 21.5', '0.821607058888506', () => weightedLineUncertainty(solids(), 21.5), {
    tolerance: 1e-12,
    why: 'printed to 15 digits, of which double precision keeps twelve',
    step: 2e-12,
  }),
  gtc(
    SOLIDS,
    'value of the line at 21.5',
    '23.2579622250441',
    () => known(predict(solids(), 21.5, NO_COMMON, 0.95)).value,
    {
      tolerance: 1e-11,
      why: 'printed to 15 digits, of which double precision keeps twelve',
      step: 2e-11,
    },
  ),
  gtc(
    SOLIDS,
    'u of one new reading at 21.5',
    '3.332409257957110',
    () => known(predict(solids(), 21.5, NO_COMMON, 0.95)).combined,
    {
      tolerance: 1e-11,
      why: 'printed to 15 digits, of which double precision keeps twelve',
      step: 2e-11,
    },
  ),
  gtc(
    SOLIDS,
    'stimulus behind readings of 31.4, 29.3 and 27.1',
    '28.14942133275184',
    () => threeReadings().value,
    {
      tolerance: 1e-11,
      why: 'printed to 16 digits, of which double precision keeps twelve',
      step: 2e-11,
    },
  ),
  gtc(SOLIDS, 'u of that stimulus', '2.175140873342519', () => threeReadings().uncertainty, {
    tolerance: 1e-11,
    why: 'printed to 16 digits, of which double precision keeps twelve',
    step: 2e-11,
  }),
  gtc(CADMIUM, 'intercept B0', '0.0087', () => cadmium().intercept),
  gtc(CADMIUM, 's(B0)', '0.0029', () => cadmium().interceptUncertainty),
  gtc(CADMIUM, 'slope B1', '0.2410', () => cadmium().slope),
  gtc(CADMIUM, 's(B1)', '0.0050', () => cadmium().slopeUncertainty),
  gtc(CADMIUM, 'correlation of B0 and B1', '-0.87038', () => or(cadmium().correlation), cut('-0.87038')),
  gtc(CADMIUM, 'concentration c0', '0.260', () => cadmiumRead().value),
  gtc(CADMIUM, 'u(c0)', '0.018', () => cadmiumRead().uncertainty),
  gtc(
    GUM_COMMON,
    'u of the intercept with the common error added after the fit',
    '0.00576893138292676',
    () => Math.hypot(weightedLineUncertainty(gumLine(), 0), 0.005),
    {
      tolerance: 1e-15,
      why: 'printed to 15 digits, of which double precision keeps twelve',
      step: 2e-15,
    },
  ),
  gtc(
    GUM_COMMON,
    'u of the slope, which the common error leaves alone',
    '0.0006679387732278323',
    () => gumLine().slopeUncertainty,
    {
      tolerance: 1e-15,
      why: 'printed to 16 digits, of which double precision keeps twelve',
      step: 2e-15,
    },
  ),
  gumMemory('intercept at the mean temperature, °C', '-0.1625', () => gumCentred().intercept),
  gumMemory('standard uncertainty of that intercept, °C', '0.0011', () => gumCentred().interceptUncertainty),
  gumMemory('slope, the same as before', '0.00218', () => gumCentred().slope),
  gumMemory(
    'standard uncertainty of the slope, the same as before',
    '0.00067',
    () => gumCentred().slopeUncertainty,
  ),
  strd(
    NORRIS,
    'Norris, equal stated weights: slope',
    '1.00211681802045',
    () => norris().slope,
    certified('1.00211681802045'),
  ),
  strd(
    NORRIS,
    'Norris, equal stated weights: intercept',
    '-0.262323073774029',
    () => norris().intercept,
    certified('-0.262323073774029'),
  ),
  strd(
    NORRIS,
    'Norris, equal stated weights: residual deviation',
    '0.884796396144373',
    () => norris().residualDeviation,
    certified('0.884796396144373'),
  ),
  rowsOf('curvefit')(
    LOAD_CELL,
    'largest difference of rising and falling readings',
    '0.091063467',
    largestDifference,
    {
      tolerance: 5e-6,
      step: 1e-5,
      why: 'the gain in the test differs from the gain behind the printed value in the fifth digit',
    },
  ),
  rowsOf('glantz')('Table 2-1, p. 27', 't of 95 %, 8 degrees of freedom', '2.306', () =>
    known(studentQuantile(0.975, 8)),
  ),
  rowsOf('car')(
    'example, Duncan’s data',
    't at a two-sided p of 0.003177202, 41 degrees of freedom',
    '3.134519',
    () => known(studentQuantile(1 - 0.003177202 / 2, 41)),
  ),
  ilac('statement below the limit less the guard band', 'Pass', 0.029),
  ilac('statement inside the guard band, below the limit', 'Conditional Pass', 0.035),
  ilac('statement above the limit, below limit and guard band', 'Conditional Fail', 0.045),
  ilac('statement above limit and guard band', 'Fail', 0.051),
  rowsOf('msl-tg-13')(
    'Introduction, class 1 gauge to 4000 kPa, uncertainty 25 kPa',
    'largest correction that complies, kPa',
    '15',
    () => 4000 * known(decide({ error: 0, expanded: 25 / 4000 }, 0.01, 'guard band of U')).acceptance,
  ),
  ...STUDENTISED.map((printed, index) =>
    row(
      'from memory',
      `studentised deleted residual of point ${index + 1} of 4`,
      'stat-501',
      'section 11.4',
      printed,
      () => deleted(index),
    ),
  ),
  row(
    'from memory',
    'indicated 100, reference 104, as in %',
    'iso-6789',
    'clause 5',
    '-3.85',
    () => 100 * known(indicatedFromDelivered(0.04)),
  ),
  row(
    'from memory',
    'indicated 100, reference 96, as in %',
    'iso-6789',
    'clause 5',
    '4.17',
    () => 100 * known(indicatedFromDelivered(-0.04)),
  ),
  row(
    'from memory',
    'delivered error of a tool with as = −3.846 %',
    'iso-6789',
    'clause 5, turned back',
    '0.0400',
    () => known(deliveredFromIndicated(-4 / 104)),
  ),
];

function threeReadings() {
  const line = solids();
  return known(
    inverse(line, (31.4 + 29.3 + 27.1) / 3, line.residualDeviation / Math.sqrt(3), NO_COMMON, 0.95),
  );
}
