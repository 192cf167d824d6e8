import { elongation } from '../../core/bolting/elongation.ts';
import { axialStress } from '../../core/bolting/stress.ts';
import { unifiedThread } from '../../core/bolting/thread.ts';
import { exactTorque, nutFactorOf, torqueByNutFactor } from '../../core/bolting/torque.ts';
import { measuredNutFactor } from '../../core/friction/measured.ts';
import { toSI } from '../../core/units/units.ts';
import { row, type TruthRow } from './row.ts';

const INCH = 0.0254;
const LBF = toSI(1, 'lbf');
const LBF_IN = toSI(1, 'lbf.in');
const DEGREE = Math.PI / 180;

const SHIGLEY = 'shigley';
const BHANDARI = 'bhandari';
const MOTT = 'mott';
const SPECK = 'speck';

// Bhandari 6.1: square thread, three starts of 8 mm, dm 46 mm, collar 100/65 mm under uniform wear, 15 kN.
const jack = (direction: 1 | -1, collar = 0.0825) =>
  exactTorque(15000, { lead: 0.024, meanDiameter: 0.046, flankAngle: 0 }, collar, 0.15, 0.15, direction);
// Bhandari 6.2: trapezoidal 30°, two starts of 12 mm, dm 94 mm, no collar, 300 kN.
const press = (direction: 1 | -1) =>
  exactTorque(300000, { lead: 0.024, meanDiameter: 0.094, flankAngle: 15 * DEGREE }, 0, 0.15, 0, direction);

const ACME = { lead: 0.1 * INCH, meanDiameter: 0.45 * INCH, flankAngle: 14.47 * DEGREE };
const MOTT_SCREW = { lead: 0.25 * INCH, meanDiameter: 1.3429 * INCH, flankAngle: 14.5 * DEGREE };
const mottTorque = () => exactTorque(12500 * LBF, MOTT_SCREW, 0, 0.15, 0, 1);

const SHIGLEY_8_1 = { lead: 0.008, meanDiameter: 0.03, flankAngle: 0 };
const FINE = unifiedThread(0.75, 16);
// Shigley takes the mean of major and root diameter as the thread's mean diameter.
const FINE_MEAN = (FINE.diameter + FINE.rootDiameter) / 2;

export const TORQUE_ROWS: readonly TruthRow[] = [
  ...(
    [
      ['0.30', '72.7'],
      ['0.25', '60.6'],
      ['0.20', '48.5'],
      ['0.15', '36.3'],
      ['0.10', '24.2'],
    ] as const
  ).map(([nutFactor, torque]) =>
    row(
      'published',
      `torque of a 0.190 in screw at 1275 lbf, K ${nutFactor}, lbf·in`,
      SPECK,
      'p. 85',
      torque,
      () => torqueByNutFactor(Number(nutFactor), 1275 * LBF, 0.19 * INCH) / LBF_IN,
    ),
  ),
  row(
    'published',
    'nut factor of a 0.190 in screw, 1275 lbf at 48.5 lbf·in',
    SPECK,
    'p. 85',
    '0.20',
    () => measuredNutFactor(48.5 * LBF_IN, 1275 * LBF, 0.19 * INCH) ?? Number.NaN,
  ),
  row(
    'published',
    'torque of a 3/8-16 screw at 4000 lbf, K 0.15, lbf·in',
    MOTT,
    'Example 19-1, 5th ed.',
    '225',
    () => torqueByNutFactor(0.15, 4000 * LBF, 0.375 * INCH) / LBF_IN,
  ),
  row(
    'published',
    'initial stress of 25 kip on 0.373 in², kpsi',
    SHIGLEY,
    '9th ed., Example 8-3, p. 439',
    '67.02',
    () => axialStress(25000 * LBF, 0.373 * INCH * INCH) / toSI(1, 'ksi'),
  ),
  row(
    'published',
    'torque to raise, square thread with collar, N·mm',
    BHANDARI,
    'Example 6.1',
    '204644.14',
    () => jack(1) * 1000,
  ),
  row(
    'published',
    'torque to lower, square thread with collar, N·mm',
    BHANDARI,
    'Example 6.1',
    '87401.51',
    () => jack(-1) * 1000,
  ),
  row(
    'published',
    'collar’s share of the torque, N·mm',
    BHANDARI,
    'Example 6.1',
    '92812.5',
    () => (jack(1) - jack(1, 0)) * 1000,
  ),
  row('published', 'force on a 500 mm lever, N', BHANDARI, 'Example 6.1', '409.29', () => jack(1) / 0.5),
  row('published', 'torque to raise, trapezoidal thread, N·m', BHANDARI, 'Example 6.2', '3378.159', () =>
    press(1),
  ),
  row('published', 'torque to lower, trapezoidal thread, N·m', BHANDARI, 'Example 6.2', '1030.686', () =>
    press(-1),
  ),
  row(
    'published',
    'efficiency of the trapezoidal screw, %',
    BHANDARI,
    'Example 6.2',
    '33.92',
    () => (100 * 300000 * 0.024) / (2 * Math.PI * press(1)),
  ),
  row(
    'published',
    'torque of an Acme screw with collar, 150 lbf, lbf·in',
    'juvinall',
    'Solution 10.1 (its arithmetic uses 150 lbf)',
    '14.73',
    () => exactTorque(150 * LBF, ACME, 0.625 * INCH, 0.15, 0.15, 1) / LBF_IN,
    { tolerance: 0.01, why: 'the sum of two terms, each printed to 0.01' },
  ),
  row(
    'published',
    'torque to raise 12 500 lbf, Acme screw, lbf·in',
    MOTT,
    '4th ed., Example 17-1, p. 703',
    '1809',
    () => mottTorque() / LBF_IN,
    {
      tolerance: 6,
      why: 'the book rounds the lead angle to 3.39° and the cosine inside; 0.3 %',
    },
  ),
  row(
    'published',
    'efficiency of the same screw, %',
    MOTT,
    '4th ed., Example 17-1, p. 703',
    '27.5',
    () => (100 * 12500 * LBF * MOTT_SCREW.lead) / (2 * Math.PI * mottTorque()),
    { tolerance: 0.1, why: 'follows from the torque, which the book rounds inside' },
  ),
  row(
    'published',
    'elongation of 7/8-9 over 5 in at 10 000 lbf, in',
    'stretch-example',
    '7/8-9, E 30·10⁶ psi',
    '0.0036',
    () =>
      elongation(
        10000 * LBF,
        [{ length: 5 * INCH, area: unifiedThread(0.875, 9).tensileArea }],
        toSI(30000, 'ksi'),
      ) / INCH,
  ),
  row(
    'published',
    'K at μ 0.15, 1/2-20, collar 0.625·μ·d',
    SHIGLEY,
    '9th ed., p. 438: K about 0.20 whatever the size or thread',
    '0.20',
    () => nutFactorOf(unifiedThread(0.5, 20), 1.25 * 0.5 * INCH, 0.15, 0.15),
    { tolerance: 0.01, why: 'the text says about 0.20' },
  ),
  row(
    'from memory',
    'torque of 3/4-16 at 25 kip, K 0.2, lbf·in',
    SHIGLEY,
    'Example 8-3 b',
    '3750',
    () => torqueByNutFactor(0.2, 25000 * LBF, 0.75 * INCH) / LBF_IN,
  ),
  row(
    'from memory',
    'torque of 3/4-16 at 25 kip, exact form, lbf·in',
    SHIGLEY,
    'Example 8-3 c',
    '3551',
    () =>
      exactTorque(
        25000 * LBF,
        { lead: FINE.pitch, meanDiameter: FINE_MEAN, flankAngle: 30 * DEGREE },
        1.25 * FINE.diameter,
        0.15,
        0.15,
        1,
      ) / LBF_IN,
  ),
  row(
    'from memory',
    'torque to raise, double-start square thread, N·m',
    SHIGLEY,
    'Example 8-1',
    '26.18',
    () => exactTorque(6400, SHIGLEY_8_1, 0.04, 0.08, 0.08, 1),
  ),
  row('from memory', 'torque to lower, double-start square thread, N·m', SHIGLEY, 'Example 8-1', '9.77', () =>
    exactTorque(6400, SHIGLEY_8_1, 0.04, 0.08, 0.08, -1),
  ),
  row(
    'from memory',
    'torque of 5/16-18 at 90 % of proof, K 0.21, lbf·in',
    'norton',
    'preload torque example',
    '263',
    () => torqueByNutFactor(0.21, 4011 * LBF, 0.3125 * INCH) / LBF_IN,
  ),
];
