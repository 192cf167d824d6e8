import { studThread } from '../../core/bolting/thread.ts';
import { exactTorque, meanBearingDiameter } from '../../core/bolting/torque.ts';
import { starOrder } from '../../core/sequence/star.ts';
import { toSI } from '../../core/units/units.ts';
import { row, type TruthRow } from './row.ts';

const INCH = 0.0254;

/** Stud size in inch; torque in lbf·ft not coated and coated. */
const TABLE_1: readonly (readonly [number, number, number])[] = [
  [1.5, 1800, 1400],
  [1.625, 2350, 1800],
  [1.75, 2950, 2300],
  [2, 4500, 3400],
  [2.25, 6500, 4900],
  [2.5, 9000, 6800],
  [3, 15700, 11900],
  [3.25, 20100, 15300],
  [3.75, 31200, 23600],
  [4, 38000, 28800],
];

function torque(diameterIn: number, friction: number): number {
  const thread = studThread(diameterIn);
  if (thread === null) return Number.NaN;
  const load = toSI(50, 'ksi') * thread.rootArea;
  const bearing = meanBearingDiameter((1.5 * diameterIn + 0.125) * INCH, thread.diameter);
  const screw = { lead: thread.pitch, meanDiameter: thread.pitchDiameter, flankAngle: Math.PI / 6 };
  return exactTorque(load, screw, bearing, friction, friction, 1) / toSI(1, 'lbf.ft');
}

function cell(diameterIn: number, coated: boolean, printed: number): TruthRow {
  return row(
    'published table cell',
    `torque of a ${diameterIn} in stud at 50 ksi on the root area, ${coated ? '' : 'not '}coated, lbf·ft`,
    'asme-pcc-1',
    'Table 1, sizes from 1-1/2 in; friction 0.16 and 0.12 as in the 2000 and 2010 editions, Appendix J',
    String(printed),
    () => torque(diameterIn, coated ? 0.12 : 0.16),
    {
      tolerance: (coated ? 0.029 : 0.016) * printed,
      step: printed < 5000 ? 50 : 100,
      why: 'the table is rounded up to 50 or 100 lbf·ft and adjusted by experience; 1.6 %, coated 2.9 %',
    },
  );
}

const STAR: Readonly<Record<number, string>> = {
  4: '1-3-2-4',
  8: '1-5-3-7 2-6-4-8',
  12: '1-7-4-10 2-8-5-11 3-9-6-12',
  16: '1-9-5-13 3-11-7-15 2-10-6-14 4-12-8-16',
  20: '1-11-6-16 3-13-8-18 5-15-10-20 2-12-7-17 4-14-9-19',
  24: '1-13-7-19 4-16-10-22 2-14-8-20 5-17-11-23 3-15-9-21 6-18-12-24',
  36: '1-2-3 19-20-21 10-11-12 28-29-30 4-5-6 22-23-24 13-14-15 31-32-33 7-8-9 25-26-27 16-17-18 34-35-36',
};

export const PCC_1_ROWS: readonly TruthRow[] = [
  ...TABLE_1.flatMap(([diameterIn, plain, coated]) => [
    cell(diameterIn, false, plain),
    cell(diameterIn, true, coated),
  ]),
  ...Object.entries(STAR).map(
    ([count, order]): TruthRow => ({
      what: `star order of ${count} studs`,
      source: 'asme-pcc-1',
      place: 'Table 4, legacy cross-pattern, from memory',
      printed: order,
      expected: order,
      step: 0,
      tolerance: 0,
      why: 'a list',
      kind: 'from memory',
      computed: () =>
        starOrder(Number(count))
          ?.groups.map((group) => group.join('-'))
          .join(' ') ?? '',
    }),
  ),
];
