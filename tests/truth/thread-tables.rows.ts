import { metricThread, unifiedThread } from '../../core/bolting/thread.ts';
import { targetLoad } from '../../core/joint/target.ts';
import { typed } from './entered.ts';
import { rowsOf, type TruthRow } from './row.ts';

const INCH = 0.0254;
const MM = 0.001;

/** Nominal diameter, pitch and printed pitch diameter, mm. */
const DIN_13: readonly (readonly [number, number, string])[] = [
  [10, 1.5, '9.026'],
  [12, 1.75, '10.863'],
  [14, 2, '12.701'],
  [16, 2, '14.701'],
  [18, 2.5, '16.376'],
  [20, 2.5, '18.376'],
  [22, 2.5, '20.376'],
  [24, 3, '22.051'],
  [27, 3, '25.051'],
  [30, 3.5, '27.727'],
  [33, 3.5, '30.727'],
  [36, 4, '33.402'],
  [39, 4, '36.402'],
  [42, 4.5, '39.077'],
  [45, 4.5, '42.077'],
  [48, 5, '44.752'],
  [52, 5, '48.752'],
  [56, 5.5, '52.428'],
  [60, 5.5, '56.428'],
  [64, 6, '60.103'],
  [8, 1, '7.350'],
  [10, 1.25, '9.188'],
  [12, 1.25, '11.188'],
  [12, 1.5, '11.026'],
  [14, 1.5, '13.026'],
  [16, 1.5, '15.026'],
  [18, 1.5, '17.026'],
  [20, 1.5, '19.026'],
  [20, 2, '18.701'],
  [22, 1.5, '21.026'],
  [24, 2, '22.701'],
  [27, 2, '25.701'],
  [30, 2, '28.701'],
  [30, 3, '28.051'],
  [33, 2, '31.701'],
  [33, 3, '31.051'],
  [36, 3, '34.051'],
  [39, 3, '37.051'],
  [42, 3, '40.051'],
  [45, 3, '43.051'],
  [48, 3, '46.051'],
  [52, 3, '50.051'],
  [56, 4, '53.402'],
  [60, 4, '57.402'],
  [64, 4, '61.402'],
  [64, 3, '62.051'],
  [72, 6, '68.103'],
  [72, 4, '69.402'],
  [80, 6, '76.103'],
  [80, 4, '77.402'],
  [90, 6, '86.103'],
  [90, 4, '87.402'],
  [100, 6, '96.103'],
  [100, 4, '97.402'],
];

/** Nominal diameter in inches, threads per inch and printed tensile area, in². */
const SHIGLEY_8_2: readonly (readonly [number, number, string])[] = [
  [0.19, 24, '0.0175'],
  [0.19, 32, '0.0200'],
  [0.216, 24, '0.0242'],
  [0.216, 28, '0.0258'],
  [0.25, 20, '0.0318'],
  [0.25, 28, '0.0364'],
  [0.3125, 18, '0.0524'],
  [0.3125, 24, '0.0580'],
  [0.375, 16, '0.0775'],
  [0.375, 24, '0.0878'],
  [0.4375, 14, '0.1063'],
  [0.4375, 20, '0.1187'],
  [0.5, 13, '0.1419'],
  [0.5, 20, '0.1599'],
  [0.5625, 12, '0.182'],
  [0.5625, 18, '0.203'],
  [0.625, 11, '0.226'],
  [0.625, 18, '0.256'],
  [0.75, 10, '0.334'],
  [0.75, 16, '0.373'],
  [0.875, 9, '0.462'],
  [0.875, 14, '0.509'],
  [1, 8, '0.606'],
  [1, 12, '0.663'],
  [1.25, 7, '0.969'],
  [1.25, 12, '1.073'],
  [1.5, 6, '1.405'],
  [1.5, 12, '1.581'],
];

/** Nominal diameter and pitch, mm; printed pretension of Group 120 and Group 150, kN; empty where not used. */
const AISC_J3_1M: readonly (readonly [number, number, string, string])[] = [
  [12, 1.75, '49', ''],
  [16, 2, '91', '114'],
  [20, 2.5, '142', '179'],
  [22, 2.5, '176', '221'],
  [24, 3, '205', '257'],
  [27, 3, '267', '334'],
  [30, 3.5, '326', '408'],
  [36, 4, '475', '595'],
];

/** Nominal diameter and pitch, mm; printed tensile area, mm², and capacity of classes 4.6, 8.8 and 10.9, kN. */
const AS_4100: readonly (readonly [number, number, string, string, string, string])[] = [
  [12, 1.75, '84.3', '27.0', '56.0', '69.4'],
  [16, 2, '156.7', '50.1', '104.0', '129.1'],
  [20, 2.5, '244.8', '78.3', '162.5', '201.7'],
  [22, 2.5, '303.4', '97.1', '201.5', '250.0'],
  [24, 3, '352.5', '112.8', '234.1', '290.5'],
  [27, 3, '459.4', '147.0', '305.0', '378.6'],
  [30, 3.5, '560.6', '179.4', '372.2', '461.9'],
  [36, 4, '816.7', '261.4', '542.3', '673.0'],
];

/** Share of a tensile strength in MPa on the tensile area of a metric thread, kN. */
function shareOfTensile(percent: string, megapascal: number, diameter: number, pitch: number): number {
  const stress = typed(String((Number(percent) / 100) * megapascal), 'MPa');
  const target = { mode: 'bolt stress', stress, area: 'tensile', basis: 'as published' } as const;
  return (targetLoad(target, metricThread(diameter, pitch), null, null).load ?? Number.NaN) / 1000;
}

const din = rowsOf('din-13', 'published table cell');
const shigley = rowsOf('shigley', 'published table cell');
const aisc = rowsOf('aisc-360', 'published table cell');
const australian = rowsOf('as-4100', 'published table cell');

export const THREAD_TABLE_ROWS: readonly TruthRow[] = [
  ...DIN_13.map(([diameter, pitch, printed]) =>
    din(
      'nut thread 6H, least pitch diameter',
      `pitch diameter of M${diameter}×${pitch}, mm`,
      printed,
      () => metricThread(diameter, pitch).pitchDiameter / MM,
      { tolerance: 0.0006, why: 'half the last digit; the table rounds a half either way' },
    ),
  ),
  ...SHIGLEY_8_2.map(([diameter, threads, printed]) => {
    const cut = printed === '0.0580' || printed === '0.1599';
    return shigley(
      '10th ed., Table 8-2',
      `tensile area of ${diameter}-${threads}, in²`,
      printed,
      () => unifiedThread(diameter, threads).tensileArea / INCH ** 2,
      cut ? { tolerance: 0.0001, why: 'the table cuts this cell instead of rounding it' } : undefined,
    );
  }),
  ...AISC_J3_1M.flatMap(([diameter, pitch, group120, group150]) =>
    (
      [
        [120, 830, group120],
        [150, 1040, group150],
      ] as const
    )
      .filter(([, , printed]) => printed !== '')
      .map(([group, tensile, printed]) =>
        aisc(
          'Table J3.1M',
          `least pretension of M${diameter}, Group ${group}, kN`,
          printed,
          () => shareOfTensile('70', tensile, diameter, pitch),
          { tolerance: 0.8, why: 'the table rounds the area first; one cell is rounded up' },
        ),
      ),
  ),
  ...AS_4100.flatMap(([diameter, pitch, area, ...capacities]) => [
    australian(
      'bolt table',
      `tensile area of M${diameter}, mm²`,
      area,
      () => metricThread(diameter, pitch).tensileArea / MM ** 2,
    ),
    ...capacities.map((printed, index) =>
      australian(
        'bolt table, φNtf',
        `capacity of M${diameter}, class ${['4.6', '8.8', '10.9'][index]}, kN`,
        printed,
        () => shareOfTensile('80', [400, 830, 1030][index] ?? Number.NaN, diameter, pitch),
        { tolerance: 0.06, why: 'half the last digit and the rounding of the printed area' },
      ),
    ),
  ]),
];
