import { assemblyLoad, type TorsionModel } from '../../core/bolting/stress.ts';
import { metricThread } from '../../core/bolting/thread.ts';
import { meanBearingDiameter, torqueSplit, wholeTorque } from '../../core/bolting/torque.ts';
import { row, type TruthRow } from './row.ts';

const CLASSES = ['8.8', '10.9', '12.9'] as const;

/** Thread, μ, then force in kN and torque in N·m for 8.8, 10.9 and 12.9. */
type Printed = readonly [
  diameter: number,
  pitch: number,
  friction: number,
  force: readonly [string, string, string],
  torque: readonly [string, string, string],
];

const FINE: readonly Printed[] = [
  [8, 1, 0.1, ['20.7', '30.4', '35.6'], ['22.8', '33.5', '39.2']],
  [8, 1, 0.12, ['20.2', '29.7', '34.7'], ['26.1', '38.3', '44.9']],
  [8, 1, 0.14, ['19.7', '28.9', '33.9'], ['29.2', '42.8', '50.1']],
  [10, 1.25, 0.1, ['32.4', '47.5', '55.6'], ['44', '65', '76']],
  [10, 1.25, 0.12, ['31.6', '46.4', '54.3'], ['51', '75', '87']],
  [10, 1.25, 0.14, ['30.8', '45.2', '52.9'], ['57', '83', '98']],
  [12, 1.25, 0.1, ['49.1', '72.1', '84.4'], ['79', '116', '135']],
  [12, 1.25, 0.12, ['48.0', '70.5', '82.5'], ['90', '133', '155']],
  [12, 1.25, 0.14, ['46.8', '68.7', '80.4'], ['101', '149', '174']],
  [16, 1.5, 0.1, ['89.6', '131.6', '154.0'], ['189', '278', '325']],
  [16, 1.5, 0.12, ['87.6', '128.7', '150.6'], ['218', '320', '374']],
  [16, 1.5, 0.14, ['85.5', '125.5', '146.9'], ['244', '359', '420']],
  [20, 1.5, 0.1, ['151', '215', '252'], ['392', '558', '653']],
  [20, 1.5, 0.12, ['148', '211', '246'], ['454', '646', '756']],
  [20, 1.5, 0.14, ['144', '206', '241'], ['511', '728', '852']],
  [24, 2, 0.1, ['213', '304', '355'], ['666', '949', '1110']],
  [24, 2, 0.12, ['209', '297', '348'], ['769', '1095', '1282']],
  [24, 2, 0.14, ['204', '290', '339'], ['865', '1232', '1442']],
];

const COARSE_FROM_MEMORY: readonly Printed[] = [
  [8, 1.25, 0.12, ['18.6', '27.3', '32.0'], ['24.6', '36.1', '42.2']],
  [10, 1.5, 0.12, ['29.6', '43.4', '50.8'], ['48', '71', '83']],
  [12, 1.75, 0.12, ['43.0', '63.2', '74.0'], ['84', '123', '144']],
  [16, 2, 0.12, ['80.9', '118.8', '139.0'], ['206', '302', '354']],
  [20, 2.5, 0.12, ['130', '186', '217'], ['415', '592', '692']],
  [24, 3, 0.12, ['188', '267', '313'], ['714', '1017', '1190']],
  [30, 3.5, 0.12, ['300', '427', '499'], ['1428', '2033', '2380']],
  [36, 4, 0.12, ['438', '623', '729'], ['2482', '3535', '4136']],
];

/** Smallest bearing face of the hexagon head and medium clearance hole, mm (ISO 4014, ISO 273; from memory). */
const FACES: Readonly<Record<number, readonly [head: number, hole: number]>> = {
  8: [11.63, 9],
  10: [14.63, 11],
  12: [16.63, 13.5],
  16: [22.49, 17.5],
  20: [28.19, 22],
  24: [33.61, 26],
  30: [42.75, 33],
  36: [51.11, 39],
};

function yieldOf(strengthClass: number, diameter: number): number {
  const small = diameter <= 16;
  return [small ? 640e6 : 660e6, 940e6, 1100e6][strengthClass] ?? Number.NaN;
}

function load([diameter, pitch, friction]: Printed, strengthClass: number): number {
  return assemblyLoad(
    metricThread(diameter, pitch),
    yieldOf(strengthClass, diameter),
    0.9,
    friction,
    'plastic',
  );
}

function torque(printed: Printed, strengthClass: number): number {
  const [diameter, pitch, friction] = printed;
  const [head, hole] = FACES[diameter] ?? [Number.NaN, Number.NaN];
  const bearing = meanBearingDiameter(head, hole) / 1000;
  const split = torqueSplit(
    load(printed, strengthClass),
    metricThread(diameter, pitch),
    bearing,
    friction,
    friction,
  );
  return wholeTorque(split);
}

function rows(printed: readonly Printed[], kind: TruthRow['kind'], place: string): TruthRow[] {
  return printed.flatMap((line) => {
    const [diameter, pitch, friction, forces, torques] = line;
    const name = `M${diameter}x${pitch}, μ ${friction}`;
    return CLASSES.flatMap((strengthClass, index): TruthRow[] => {
      const force = forces[index] ?? '';
      const moment = torques[index] ?? '';
      return [
        row(
          kind,
          `assembly load of ${name}, ${strengthClass}, kN`,
          'vdi-2230',
          place,
          force,
          () => load(line, index) / 1000,
          {
            tolerance: 0.005 * Number(force),
            why: '0.5 %: three printed digits, and thread data rounded inside the guideline',
          },
        ),
        row(
          kind,
          `assembly torque of ${name}, ${strengthClass}, N·m`,
          'vdi-2230',
          place,
          moment,
          () => torque(line, index),
          {
            tolerance: Math.max(0.01 * Number(moment), 0.6),
            why: '1 % or 0.6 N·m: whole newton metres printed, bearing faces of the heads from memory',
          },
        ),
      ];
    });
  });
}

/** Stainless bolts: this older table takes the elastic section modulus. Force in kN, classes 50, 70, 80, μ 0.10. */
const STAINLESS: readonly (readonly [number, number, readonly [string, string, string]])[] = [
  [8, 1.25, ['5.86', '12.6', '16.7']],
  [10, 1.5, ['9.32', '20', '26.6']],
  [12, 1.75, ['13.6', '29.1', '38.8']],
  [16, 2, ['25.7', '55', '73.3']],
];

const STAINLESS_YIELD = [210e6, 450e6, 600e6] as const;

function stainless(model: TorsionModel): TruthRow[] {
  return STAINLESS.flatMap(([diameter, pitch, forces]) =>
    forces.map((force, index) =>
      row(
        'published table cell',
        `assembly load of M${diameter}, stainless class ${[50, 70, 80][index]}, μ 0.10, kN`,
        'din-en-iso-3506',
        'A2/A4, total friction 0.10, torsion with the elastic section modulus',
        force,
        () =>
          assemblyLoad(metricThread(diameter, pitch), STAINLESS_YIELD[index] ?? Number.NaN, 0.9, 0.1, model) /
          1000,
        {
          tolerance: 0.012 * Number(force),
          why: '1.2 %: printed to three digits from rounded thread data',
        },
      ),
    ),
  );
}

export const VDI_ROWS: readonly TruthRow[] = [
  ...rows(FINE, 'published table cell', 'metric fine thread, hexagon head, ν 0.9, reprint p. 685'),
  ...rows(COARSE_FROM_MEMORY, 'from memory', 'Table A1, metric coarse thread, from memory'),
  ...stainless('elastic'),
];
