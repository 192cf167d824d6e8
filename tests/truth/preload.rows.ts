import { loadByNutAdvance, loadFactor, stretch } from '../../core/bolting/stiffness.ts';
import { axialStress } from '../../core/bolting/stress.ts';
import { metricThread, unifiedThread } from '../../core/bolting/thread.ts';
import { torqueByNutFactor } from '../../core/bolting/torque.ts';
import { endForce } from '../../core/joint/hydrostatic.ts';
import { rodStiffness, seriesStiffness } from '../../core/joint/member-stiffness.ts';
import { targetLoad } from '../../core/joint/target.ts';
import { toSI } from '../../core/units/units.ts';
import { typed } from './entered.ts';
import { known } from './known.ts';
import { rowsOf, type TruthRow } from './row.ts';

const INCH = 0.0254;
const MM = 0.001;
const MPA = 1e6;
const LBF = toSI(1, 'lbf');
const LBF_IN = toSI(1, 'lbf.in');
const PSI = LBF / INCH ** 2;
/** Stiffness unit of the book, a million pounds per inch. */
const MLBF_IN = (1e6 * LBF) / INCH;

const circle = (diameter: number) => (Math.PI / 4) * diameter ** 2;

/** Load of a share of a bolt's strength on the area the book takes, N. */
function shareOf(percent: number, strength: number, area: number): number {
  const thread = { ...metricThread(20, 2.5), tensileArea: area };
  const target = {
    mode: 'percent of yield',
    percent: typed(String(percent), 'percent'),
    area: 'tensile',
    basis: 'as published',
  } as const;
  return targetLoad(target, thread, strength, null).load ?? Number.NaN;
}

const metricShare = (percent: number, megapascal: number, squareMm: number) => () =>
  shareOf(percent, megapascal * MPA, squareMm * MM ** 2) / 1000;
const inchShare = (percent: number, ksi: number, squareInch: number) => () =>
  shareOf(percent, ksi * 1000 * PSI, squareInch * INCH ** 2) / (1000 * LBF);

/** Stiffness of shank and thread in series, each mm and mm², 207 GPa, MN/m. */
const boltStiffness = (thread: readonly [number, number], shank: readonly [number, number]) => () =>
  known(
    stretch(
      0,
      [thread, shank].map(([length, area]) => ({ length: length * MM, area: area * MM ** 2 })),
      207e9,
    ),
  ).stiffness / 1e6;

const inchRod = (area: number, length: number) =>
  known(rodStiffness(area * INCH ** 2, 30e6 * PSI, length * INCH)) / MLBF_IN;

const series = (parts: readonly number[]) => () => known(seriesStiffness(parts));
const share = (bolt: number, members: number) => () => known(loadFactor(bolt, members));

const wentzell = rowsOf('wentzell');
const jindal = rowsOf('jindal');
const shigley = rowsOf('shigley');
const solutions = rowsOf('shigley-solutions');
const gere = rowsOf('gere');

/** Steel bolt through a copper tube, a quarter turn: load, N. */
const quarterTurn = () => {
  const bolt = known(rodStiffness(0.2 * INCH ** 2, 30e6 * PSI, 16 * INCH));
  const tube = known(rodStiffness(0.6 * INCH ** 2, 16e6 * PSI, 16 * INCH));
  return known(loadByNutAdvance(0.25 * 0.052 * INCH, bolt, tube));
};

/** Two bolts on one plastic sleeve, one turn: stress in the sleeve, MPa. */
const twoBolts = () => {
  const bolt = known(rodStiffness(36 * MM ** 2, 200e9, 200 * MM));
  // Each of the two bolts has half of the sleeve to itself.
  const sleeve = known(rodStiffness(960 * MM ** 2, 7.5e9, 200 * MM)) / 2;
  return (2 * known(loadByNutAdvance(1 * MM, bolt, sleeve))) / (960 * MM ** 2) / MPA;
};

export const PRELOAD_ROWS: readonly TruthRow[] = [
  wentzell('Example 6.1, p. 120', 'torque of 3/4 in, K 0.2, 85 % of proof, lbf·in', '3619.73', () => {
    const load = shareOf(85, 85000 * PSI, 0.334 * INCH ** 2);
    return torqueByNutFactor(0.2, load, 0.75 * INCH) / LBF_IN;
  }),
  wentzell('Example 6.4 part 1, p. 124', 'torque of 1-1/4 in, K 0.15, lbf·in', '21728.25', () => {
    const load = shareOf(90, 120000 * PSI, 1.073 * INCH ** 2);
    return torqueByNutFactor(0.15, load, 1.25 * INCH) / LBF_IN;
  }),
  rowsOf('singh')(
    'Example 9.1, p. 256',
    'axial stress on the core of a jack, MPa',
    '28.87',
    () => axialStress(10000, circle(21 * MM)) / MPA,
  ),
  rowsOf('levinson')(
    'Example 8.4, p. 162',
    'stress of a 3/4 in round, psi',
    '22600',
    () => axialStress(10000 * LBF, circle(0.75 * INCH)) / PSI,
    { step: 100, why: 'half the last printed digit; printed to hundreds' },
  ),
  jindal(
    'Example 9-1, p. 266',
    'tensile area of M16, mm²',
    '156.7',
    () => metricThread(16, 2).tensileArea / MM ** 2,
  ),
  jindal(
    'Example 9-1, p. 266',
    'tensile area of M16×1.5, mm²',
    '167.2',
    () => metricThread(16, 1.5).tensileArea / MM ** 2,
  ),
  jindal(
    'Example 9-5, p. 268',
    'torque of M14, K 0.2, 75 % of proof, N·m',
    '156.97',
    () => torqueByNutFactor(0.2, shareOf(75, 650 * MPA, 115 * MM ** 2), 14 * MM),
    { tolerance: 0.0051, why: 'half the last digit; the print cuts 156.975 to 156.97' },
  ),
  jindal('Example 9-6, p. 269', 'torque of M20, K 0.18, N·m', '432', () =>
    torqueByNutFactor(0.18, 120e3, 20 * MM),
  ),
  shigley('10th ed., Table 8-12', 'share of a 1/2-13 bolt, grip 2 in', '0.168', share(2.57, 12.69)),
  shigley('10th ed., Table 8-12', 'share of a 1/2-13 bolt, grip 3 in', '0.136', share(1.79, 11.33)),
  shigley('10th ed., Table 8-12', 'share of a 1/2-13 bolt, grip 4 in', '0.114', share(1.37, 10.63)),
  solutions('Problem 8-22, p. 213', 'stiffness of M12, MN/m', '466.8', boltStiffness([15, 84.3], [30, 113])),
  solutions('Problem 8-20, p. 212', 'two members in series, MN/m', '1523', series([4722, 2248])),
  solutions('Problem 8-20, p. 212', 'joint constant', '0.2346', share(466.8, 1523)),
  solutions('Problem 8-20, p. 212', 'preload of M12 8.8, kN', '37.9', metricShare(75, 600, 84.3)),
  solutions(
    'Problem 8-22, p. 212',
    'pressure load per bolt, kN',
    '10.6',
    () => known(endForce(150 * MM, 6 * MPA, 10)).perBolt / 1000,
  ),
  solutions('Problem 8-22, p. 213', 'three members in series, MN/m', '1379', series([4470, 52230, 2074])),
  solutions('Problem 8-22, p. 213', 'joint constant', '0.253', share(466.8, 1379)),
  solutions(
    'Problem 8-23, p. 213',
    'pressure load per bolt, kN',
    '8.48',
    () => known(endForce(120 * MM, 6 * MPA, 8)).perBolt / 1000,
  ),
  solutions('Problem 8-23, p. 213', 'stiffness of M12, MN/m', '744', boltStiffness([16, 84.3], [10, 113])),
  solutions('Problem 8-23, p. 214', 'joint constant', '0.256', share(744, 2158)),
  solutions('Problem 8-24, p. 214', 'stiffness of the thread, Mlbf/in', '5.9125', () =>
    inchRod(0.1419, 0.72),
  ),
  solutions('Problem 8-24, p. 214', 'stiffness of the shank, Mlbf/in', '11.778', () => inchRod(0.1963, 0.5)),
  solutions('Problem 8-24, p. 214', 'both in series, Mlbf/in', '3.936', series([5.9125, 11.778])),
  solutions(
    'Problem 8-24, p. 215',
    'four members in series, Mlbf/in',
    '10.79',
    series([33.3, 173.8, 21.47, 97.27]),
  ),
  solutions('Problem 8-24, p. 215', 'joint constant', '0.267', share(3.94, 10.79)),
  solutions('Problem 8-25, p. 215', 'bolt stiffness, Mlbf/in', '5.04', () => inchRod(0.1419, 0.845)),
  solutions(
    'Problem 8-25, p. 215',
    'three members in series, Mlbf/in',
    '12.87',
    series([36.14, 134.6, 23.49]),
  ),
  solutions('Problem 8-25, p. 215', 'joint constant', '0.281', share(5.04, 12.87)),
  solutions('Problem 8-27, p. 217', 'bolt threaded all along, Mlbf/in', '4.63', () =>
    inchRod(0.0775, 0.5025),
  ),
  solutions('Problem 8-29, p. 217', 'preload of M20 8.8, kN', '132.3', metricShare(90, 600, 245)),
  solutions('Problem 8-29, p. 217', 'torque of M20, K 0.18, N·m', '476', () =>
    torqueByNutFactor(0.18, 132.3e3, 20 * MM),
  ),
  solutions('p. 221', 'three members in series, MN/m', '1057', series([3503, 44044, 1567])),
  solutions('p. 221', 'joint constant', '0.239', share(332.4, 1057)),
  solutions('p. 221', 'preload of M10 10.9, kN', '36.1', metricShare(75, 830, 58)),
  solutions('Problem 8-36, p. 226', 'preload, coarse thread, kip', '53.78', inchShare(75, 74, 0.969)),
  solutions('Problem 8-36, p. 226', 'preload, fine thread, kip', '59.55', inchShare(75, 74, 1.073)),
  solutions(
    'Problem 8-36, p. 226',
    'tensile area of 1-1/4-7, in²',
    '0.969',
    () => unifiedThread(1.25, 7).tensileArea / INCH ** 2,
  ),
  solutions(
    'Problem 8-36, p. 226',
    'preload stress, kpsi',
    '55.5',
    () => axialStress(53.78e3 * LBF, 0.969 * INCH ** 2) / (1000 * PSI),
  ),
  solutions('Problem 8-37, p. 227', 'preload of M30 8.8, kN', '252.45', metricShare(75, 600, 561)),
  solutions(
    'Problem 8-37, p. 227',
    'preload stress, MPa',
    '450',
    () => axialStress(252.45e3, 561 * MM ** 2) / MPA,
  ),
  gere('2.5-17 (6th ed.), p. 118', 'bolt load of a quarter turn, lbf', '3000', () => quarterTurn() / LBF),
  gere(
    '2.5-17 (6th ed.), p. 118',
    'bolt stress of a quarter turn, ksi',
    '15',
    () => axialStress(quarterTurn(), 0.2 * INCH ** 2) / (1000 * PSI),
  ),
  gere(
    '2.5-17 (6th ed.), p. 118',
    'tube stress of a quarter turn, ksi',
    '5',
    () => axialStress(quarterTurn(), 0.6 * INCH ** 2) / (1000 * PSI),
  ),
  gere('2.5-20, p. 119', 'sleeve stress of one turn of two bolts, MPa', '25.0', twoBolts),
];
