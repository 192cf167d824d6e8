import { gaugeCorrection } from '../../core/calibration/gauge-correction.ts';
import { type FittedLine, fitLine, lineUncertainty } from '../../core/calibration/line.ts';
import { torqueAtPressure } from '../../core/calibration/reading.ts';
import { combined } from '../../core/calibration/uncertainty.ts';
import { fromLimits } from '../../core/uncertainty/type-b.ts';
import { known } from './known.ts';
import { NORRIS_X, NORRIS_Y } from './nist-strd-data.ts';
import { type Loose, lastDigit, rowsOf, type TruthRow } from './row.ts';

function lineOf(xs: readonly number[], ys: readonly number[]): FittedLine {
  const line = fitLine(xs, ys);
  if (line === null) throw new Error('the published points give no line');
  return line;
}

const squares = (line: FittedLine) => line.residuals.reduce((sum, r) => sum + r * r, 0);
/** Standard uncertainty of one new reading at x. */
const newReading = (line: FittedLine, x: number) =>
  combined([line.residualDeviation, lineUncertainty(line, x)]);

const SIX = [1, 2, 3, 4, 5, 6];
const iso = rowsOf('iso-28037');
const isoEqual = () => lineOf(SIX, [3.3, 5.6, 7.1, 9.3, 10.7, 12.1]);
const isoUnknown = () => lineOf(SIX, [3.014, 5.225, 7.004, 9.061, 11.201, 12.762]);

const strd = rowsOf('nist-strd');
const NORRIS_PLACE = 'linear regression, Norris.dat, lines 31–46';
const norris = () => lineOf(NORRIS_X, NORRIS_Y);
/** Certified to 15 digits; a sum over 36 pairs in double precision keeps about ten of them. */
const certified = (printed: string): Loose => ({
  tolerance: Math.abs(Number(printed)) * 1e-9,
  step: Math.abs(Number(printed)) * 2e-9,
  why: 'certified to 15 digits, of which double precision keeps nine: step taken at 2·10⁻⁹ of the value',
});
const norrisRow = (what: string, printed: string, computed: () => number) =>
  strd(NORRIS_PLACE, `Norris: ${what}`, printed, computed, certified(printed));

const natrella = rowsOf('natrella');
const MODULUS_T = [30, ...Array.from({ length: 15 }, (_, index) => 100 * (index + 1))];
const MODULUS = [
  4642, 4612, 4565, 4513, 4476, 4433, 4389, 4347, 4303, 4251, 4201, 4140, 4100, 4073, 4024, 3999,
];
const modulus = () => lineOf(MODULUS_T, MODULUS);
const desk = (printed: string): Loose => ({
  tolerance: Math.max(2e-7 * Math.abs(Number(printed)), 2 * lastDigit(printed)),
  why: 'worked with a desk calculator: the last digit or two',
});
const WORKSHEET: Loose = { tolerance: 0.06, why: 'the worksheet rounds inside' };

const glantz = rowsOf('glantz');
const martians = () =>
  lineOf([31, 32, 33, 34, 35, 35, 40, 41, 42, 46], [7.8, 8.3, 7.6, 9.1, 9.6, 9.8, 11.8, 12.1, 14.7, 13.0]);
/** t of 95 %, 8 degrees of freedom, as both books print it. */
const T_8 = 2.306;

const miller = rowsOf('miller');
const evaporation = () =>
  lineOf(
    [20, 60, 100, 140, 180, 220, 260, 300, 340, 380],
    [0.18, 0.37, 0.35, 0.78, 0.56, 0.75, 1.18, 1.36, 1.17, 1.65],
  );

const sawhney = rowsOf('sawhney');
const sawhneyLine = () => lineOf([0.9, 2.3, 3.3, 4.5, 5.7, 6.7], [1.1, 1.6, 2.6, 3.2, 4.0, 5.0]);
/** The book divides the squares by n where n − 2 belongs. */
const BY_N = Math.sqrt(4 / 6);

const gtc = rowsOf('gtc');
const SENSOR = 'linear calibration equations, after Kessel and others, Measurement 45 (2012) 1661';
/** Straight line through the ends of a pressure sensor's calibration. */
function endPointLine(reading: number): number {
  const line = gaugeCorrection([
    { indicated: 0, reference: 0 },
    { indicated: 2.041, reference: 20 },
  ]);
  return line?.toReference(reading) ?? Number.NaN;
}
/** Pressure, reading and printed departure of the pressure from the line through the ends. */
const DEPARTURES: readonly (readonly [number, number, string])[] = [
  [2, 0.2039, '0.00196'],
  [4, 0.408, '0.00196'],
  [6, 0.612, '0.00294'],
  [8, 0.816, '0.00392'],
  [10, 1.0201, '0.0039'],
  [12, 1.2242, '0.0039'],
  [14, 1.4283, '0.0039'],
  [16, 1.6325, '0.0029'],
  [18, 1.8367, '0.0020'],
];
/** Pressure, reading and printed expanded uncertainty, k = 2. */
const EXPANDED: readonly (readonly [number, number, string])[] = [
  [0, 0, '0.00582812'],
  [2, 0.2039, '0.00584124'],
  [4, 0.408, '0.00589119'],
  [10, 1.0201, '0.00624986'],
  [16, 1.6325, '0.00687865'],
  [20, 2.041, '0.00741554'],
];
function expanded(reading: number): number {
  const [interceptUncertainty, slopeUncertainty, slope] = [0.00028, 0.00114, 9.79912];
  const covariance = -0.1212 * interceptUncertainty * slopeUncertainty;
  return (
    2 *
    combined([
      lineUncertainty({ interceptUncertainty, slopeUncertainty, covariance }, reading),
      slope * known(fromLimits(0.00005, 'rectangular')),
      known(fromLimits(0.005, 'rectangular')),
    ])
  );
}

export const LINE_ROWS: readonly TruthRow[] = [
  iso('6.3, p. 13, equal weights', 'intercept', '1.867', () => isoEqual().intercept),
  iso('6.3, p. 13, equal weights', 'slope', '1.757', () => isoEqual().slope),
  iso('Appendix E, pp. 58–59', 'intercept', '1.172', () => isoUnknown().intercept),
  iso('Appendix E, pp. 58–59', 'slope', '1.964', () => isoUnknown().slope),
  iso('Appendix E, pp. 58–59', 'u(a) from the residuals', '0.159', () => isoUnknown().interceptUncertainty),
  iso('Appendix E, pp. 58–59', 'u(b) from the residuals', '0.041', () => isoUnknown().slopeUncertainty),
  iso('Appendix E, pp. 58–59', 'cov(a, b)', '-0.006', () => isoUnknown().covariance),
  norrisRow('intercept', '-0.262323073774029', () => norris().intercept),
  norrisRow('slope', '1.00211681802045', () => norris().slope),
  norrisRow('deviation of the intercept', '0.232818234301152', () => norris().interceptUncertainty),
  norrisRow('deviation of the slope', '0.429796848199937E-03', () => norris().slopeUncertainty),
  norrisRow('residual deviation', '0.884796396144373', () => norris().residualDeviation),
  norrisRow('residual sum of squares', '26.6173985294224', () => squares(norris())),
  natrella(
    '5-4.1, Worksheet',
    'slope of modulus over temperature',
    '-0.44985482',
    () => modulus().slope,
    desk('-0.44985482'),
  ),
  natrella('5-4.1, Worksheet', 'intercept', '4654.9846', () => modulus().intercept, desk('4654.9846')),
  natrella(
    '5-4.1, Worksheet',
    'residual deviation',
    '9.277617',
    () => modulus().residualDeviation,
    desk('9.277617'),
  ),
  natrella(
    '5-4.1, Worksheet',
    'variance of the slope',
    '0.000025649045',
    () => modulus().slopeUncertainty ** 2,
    desk('0.000025649045'),
  ),
  natrella(
    '5-4.1, Worksheet',
    'variance of the intercept',
    '19.879452',
    () => modulus().interceptUncertainty ** 2,
    desk('19.879452'),
  ),
  natrella(
    '5-4.1.2.1, p. 5-15',
    'variance of the line at 1200',
    '10.53',
    () => lineUncertainty(modulus(), 1200) ** 2,
    WORKSHEET,
  ),
  natrella(
    '5-4.1.2.3, p. 5-15',
    'variance of a new reading at 750',
    '91.45',
    () => newReading(modulus(), 750) ** 2,
    WORKSHEET,
  ),
  glantz('Table 2-1, p. 19', 'slope', '0.44', () => martians().slope),
  glantz('Table 2-1, p. 19', 'intercept', '-6.0', () => martians().intercept),
  glantz('equation 2.9, p. 24', 'standard error of the slope', '0.064', () => martians().slopeUncertainty),
  glantz('Table 2-1, p. 24', 'standard error of the intercept', '2.4', () => martians().interceptUncertainty),
  glantz(
    'Table 2-1, p. 27',
    'lower 95 % limit of the slope',
    '0.29',
    () => martians().slope - T_8 * martians().slopeUncertainty,
    { tolerance: 0.01, why: 'the book rounds slope and error first' },
  ),
  glantz(
    'Table 2-1, p. 27',
    'upper 95 % limit of the slope',
    '0.59',
    () => martians().slope + T_8 * martians().slopeUncertainty,
  ),
  miller('p. 305', 'value of the line at 190', '0.80', () => torqueAtPressure(evaporation(), 190)),
  miller('p. 305', 'residual sum of squares', '0.20238', () => squares(evaporation()), {
    tolerance: 2e-5,
    why: 'the solution rounds its sums',
  }),
  miller(
    'p. 311',
    'lower 95 % limit of the intercept',
    '-0.164',
    () => evaporation().intercept - T_8 * evaporation().interceptUncertainty,
    { tolerance: 0.0012, why: 'the book rounds intercept and s to three digits' },
  ),
  miller(
    'p. 311',
    'upper 95 % limit of the intercept',
    '0.302',
    () => evaporation().intercept + T_8 * evaporation().interceptUncertainty,
    { tolerance: 0.0012, why: 'the book rounds intercept and s to three digits' },
  ),
  miller('p. 311', 't of the slope', '8.75', () => evaporation().slope / evaporation().slopeUncertainty, {
    tolerance: 0.015,
    why: 'the book rounds s to 0.159',
  }),
  miller(
    'p. 313',
    'lower 95 % limit of the line at 190',
    '0.68',
    () => torqueAtPressure(evaporation(), 190) - T_8 * lineUncertainty(evaporation(), 190),
    { tolerance: 0.0051, why: 'half the last digit, t rounded to 2.306' },
  ),
  miller(
    'p. 315',
    'upper 95 % limit of a new value at 190',
    '1.18',
    () => torqueAtPressure(evaporation(), 190) + T_8 * newReading(evaporation(), 190),
    { tolerance: 0.0055, why: 'the book rounds the value to 0.80 first' },
  ),
  miller(
    'p. 315',
    'lower 95 % limit of a new value at 450',
    '1.33',
    () => torqueAtPressure(evaporation(), 450) - T_8 * newReading(evaporation(), 450),
    { tolerance: 0.0075, why: 'the book rounds the value to 1.79 first' },
  ),
  miller(
    'p. 315',
    'upper 95 % limit of a new value at 450',
    '2.25',
    () => torqueAtPressure(evaporation(), 450) + T_8 * newReading(evaporation(), 450),
    { tolerance: 0.0075, why: 'the book rounds the value to 1.79 first' },
  ),
  sawhney(
    'Example 3.32, p. 121',
    'deviation of the slope, squares divided by n',
    '0.0354898238647',
    () => sawhneyLine().slopeUncertainty * BY_N,
  ),
  sawhney(
    'Example 3.32, p. 121',
    'deviation of the intercept, squares divided by n',
    '0.155116651415',
    () => sawhneyLine().interceptUncertainty * BY_N,
  ),
  ...DEPARTURES.map(([pressure, reading, printed]) =>
    gtc(
      `${SENSOR}, after Table 4`,
      `sensor, departure from the line through its ends at ${pressure}`,
      printed,
      () => pressure - endPointLine(reading),
    ),
  ),
  gtc(`${SENSOR}, calibration equation`, 'sensor, slope of the line through its ends', '9.79912', () =>
    endPointLine(1),
  ),
  ...EXPANDED.map(([pressure, reading, printed]) =>
    gtc(`${SENSOR}, compare Table 7`, `sensor, expanded uncertainty at ${pressure}`, printed, () =>
      expanded(reading),
    ),
  ),
];
