import { metricThread, unifiedThread } from '../../core/bolting/thread.ts';
import { looseningTorque, meanBearingDiameter, torqueSplit, wholeTorque } from '../../core/bolting/torque.ts';
import { seizedStudCeiling } from '../../core/breakout/allowance.ts';
import { toSI } from '../../core/units/units.ts';
import { row, type TruthRow } from './row.ts';

/** Thread, smallest bearing face and hole in mm; loosening over tightening torque by friction. */
const RATIOS: readonly (readonly [
  diameter: number,
  pitch: number,
  face: number,
  hole: number,
  ratios: Readonly<Record<string, number>>,
])[] = [
  [16, 2, 22.49, 17.5, { '0.08': 0.646, '0.10': 0.706, '0.12': 0.749, '0.14': 0.781, '0.20': 0.841 }],
  [24, 3, 33.61, 26, { '0.08': 0.645, '0.10': 0.705, '0.12': 0.748, '0.14': 0.78, '0.20': 0.841 }],
  [36, 4, 51.11, 39, { '0.08': 0.68, '0.10': 0.736, '0.12': 0.775, '0.14': 0.804, '0.20': 0.858 }],
];

const SOURCE = 'own-arithmetic';

function ratio(diameter: number, pitch: number, face: number, hole: number, friction: number): number {
  const thread = metricThread(diameter, pitch);
  const bearing = meanBearingDiameter(face, hole) / 1000;
  const on = wholeTorque(torqueSplit(1e5, thread, bearing, friction, friction));
  return looseningTorque(on, 1e5, thread.pitch) / on;
}

/** 1-1/2 in B7 stud installed at 345 MPa on the root area, friction 0.16 in thread and bearing face. */
function seizedRatio(model: 'elastic' | 'plastic'): number {
  const thread = unifiedThread(1.5, 8);
  const load = 345e6 * thread.rootArea;
  const bearing = meanBearingDiameter(0.0254 * (1.5 * 1.5 + 0.125), thread.diameter);
  const installed = wholeTorque(torqueSplit(load, thread, bearing, 0.16, 0.16));
  return seizedStudCeiling(thread, toSI(105, 'ksi'), load, 0.16, bearing, model) / installed;
}

export const LOOSENING_ROWS: readonly TruthRow[] = [
  ...RATIOS.flatMap(([diameter, pitch, face, hole, ratios]) =>
    Object.entries(ratios).map(
      ([friction, expected]): TruthRow =>
        row(
          'computed',
          `loosening over tightening torque, M${diameter}, μ ${friction}`,
          SOURCE,
          'coarse thread, hexagon face, load unchanged',
          String(expected),
          () => ratio(diameter, pitch, face, hole, Number(friction)),
          { tolerance: 0.002, why: 'three printed digits, bearing faces from memory' },
        ),
    ),
  ),
  ...(
    [
      ['elastic', 1.8],
      ['plastic', 2.2],
    ] as const
  ).map(
    ([model, expected]): TruthRow =>
      row(
        'computed',
        `breakout over installed torque at which a seized 1-1/2 in B7 stud yields, ${model}`,
        SOURCE,
        'installed at 345 MPa on the root area, friction 0.16',
        String(expected),
        () => seizedRatio(model),
        { tolerance: 0.05, why: 'stated to two digits' },
      ),
  ),
];
