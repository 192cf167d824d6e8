import type { RowStatus } from './status.ts';

/**
 * Room-temperature strength of stud and bolt grades. The inch and the metric edition of a specification are separate
 * tables (A193M prints 720 MPa where 105 ksi converts to 724): `system` says which studs a row is for.
 */
export interface BoltStrengthRow {
  readonly grade: string;
  readonly system: 'inch' | 'metric';
  /** Row holds for diameters above `over` up to and including `upTo`, mm. */
  readonly over: number;
  readonly upTo: number;
  /** Minimum yield strength in the unit the table prints. */
  readonly yield: readonly [number, 'ksi' | 'MPa'];
  readonly tensile: readonly [number, 'ksi' | 'MPa'];
  readonly source: string;
  readonly sources: string;
  readonly status: RowStatus;
  readonly note: string;
}

const IN = 25.4;
const ANY = 1000;
const INCH = 'inch' as const;
const METRIC = 'metric' as const;

type Line = readonly [
  grade: string,
  system: BoltStrengthRow['system'],
  over: number,
  upTo: number,
  yieldMin: number,
  tensileMin: number,
  unit: 'ksi' | 'MPa',
  sources: string,
  status: RowStatus,
  note?: string,
];

function table(source: string, lines: readonly Line[]): BoltStrengthRow[] {
  return lines.map(([grade, system, over, upTo, yieldMin, tensileMin, unit, sources, status, note]) => ({
    grade,
    system,
    over,
    upTo,
    yield: [yieldMin, unit],
    tensile: [tensileMin, unit],
    source,
    sources,
    status,
    note: note ?? '',
  }));
}

// The edition of each specification is not stated by the sources.
const A193 = table('ASTM A193/A193M, inch table', [
  ['ASTM A193 B7', INCH, 0, 2.5 * IN, 105, 125, 'ksi', 'M1+M2+M3+M4+M5', 'AGREE'],
  ['ASTM A193 B7', INCH, 2.5 * IN, 4 * IN, 95, 115, 'ksi', 'M1+M2+M3+M4+M5', 'AGREE'],
  ['ASTM A193 B7', INCH, 4 * IN, 7 * IN, 75, 100, 'ksi', 'M1+M2+M4+M5', 'AGREE'],
  ['ASTM A193 B7M', INCH, 0, 4 * IN, 80, 100, 'ksi', 'M1+M4+M5', 'AGREE'],
  ['ASTM A193 B7M', INCH, 4 * IN, 7 * IN, 75, 100, 'ksi', 'M1+M4+M5', 'AGREE'],
  ['ASTM A193 B16', INCH, 0, 2.5 * IN, 105, 125, 'ksi', 'M1+M5', 'AGREE'],
  ['ASTM A193 B16', INCH, 2.5 * IN, 4 * IN, 95, 110, 'ksi', 'M1+M5', 'AGREE'],
  [
    'ASTM A193 B16',
    INCH,
    4 * IN,
    7 * IN,
    85,
    100,
    'ksi',
    'M1+M5',
    'DISAGREE',
    'upper limit 8 in or 7 in; 7 in used',
  ],
  ['ASTM A193 B8 class 1', INCH, 0, ANY, 30, 75, 'ksi', 'M1+M2+M3+M5+M8', 'AGREE'],
  ['ASTM A193 B8M class 1', INCH, 0, ANY, 30, 75, 'ksi', 'M1+M2+M3+M5+M8', 'AGREE'],
  ['ASTM A193 B8 class 2', INCH, 0, 0.75 * IN, 100, 125, 'ksi', 'M2+M3+M5', 'AGREE'],
  ['ASTM A193 B8 class 2', INCH, 0.75 * IN, IN, 80, 115, 'ksi', 'M2+M3+M5', 'AGREE'],
  ['ASTM A193 B8 class 2', INCH, IN, 1.25 * IN, 65, 105, 'ksi', 'M2+M3+M5', 'AGREE'],
  ['ASTM A193 B8 class 2', INCH, 1.25 * IN, 1.5 * IN, 50, 100, 'ksi', 'M2+M3+M5', 'AGREE'],
  [
    'ASTM A193 B8M class 2',
    INCH,
    0,
    0.75 * IN,
    95,
    110,
    'ksi',
    'M2+M5+M3',
    'DISAGREE',
    'one source prints 96 ksi',
  ],
  ['ASTM A193 B8M class 2', INCH, 0.75 * IN, IN, 80, 100, 'ksi', 'M2+M5', 'AGREE'],
  ['ASTM A193 B8M class 2', INCH, IN, 1.25 * IN, 65, 95, 'ksi', 'M2+M5', 'AGREE'],
  ['ASTM A193 B8M class 2', INCH, 1.25 * IN, 1.5 * IN, 50, 90, 'ksi', 'M2+M5', 'AGREE'],
]);

const A193M = table('ASTM A193/A193M, metric table', [
  [
    'ASTM A193 B7',
    METRIC,
    0,
    64,
    720,
    860,
    'MPa',
    'M6+M7',
    'DISAGREE',
    'one source prints 725 MPa, which is 105 ksi converted',
  ],
  [
    'ASTM A193 B7',
    METRIC,
    64,
    100,
    655,
    795,
    'MPa',
    'M6+M7',
    'DISAGREE',
    'tensile strength 795 MPa here, 790 MPa in one source',
  ],
  ['ASTM A193 B7', METRIC, 100, 180, 515, 690, 'MPa', 'M6+M7', 'AGREE'],
  ['ASTM A193 B7M', METRIC, 0, 100, 550, 690, 'MPa', 'M3', 'SINGLE'],
  ['ASTM A193 B8 class 1', METRIC, 0, ANY, 205, 515, 'MPa', 'M1+M2+M3+M5+M8', 'AGREE'],
  ['ASTM A193 B8M class 1', METRIC, 0, ANY, 205, 515, 'MPa', 'M1+M2+M3+M5+M8', 'AGREE'],
  ['ASTM A193 B8 class 2', METRIC, 0, 20, 690, 860, 'MPa', 'M8', 'SINGLE'],
  ['ASTM A193 B8 class 2', METRIC, 20, 24, 550, 795, 'MPa', 'M8', 'SINGLE'],
  ['ASTM A193 B8 class 2', METRIC, 24, 30, 450, 725, 'MPa', 'M8', 'SINGLE'],
  ['ASTM A193 B8 class 2', METRIC, 30, 36, 345, 690, 'MPa', 'M8', 'SINGLE'],
]);

const A320 = table('ASTM A320/A320M', [
  ['ASTM A320 L7', INCH, 0, 2.5 * IN, 105, 125, 'ksi', 'M3+M9', 'AGREE'],
  ['ASTM A320 L7', METRIC, 0, 65, 725, 860, 'MPa', 'M3+M9', 'AGREE'],
  ['ASTM A320 L7M', INCH, 0, 2.5 * IN, 80, 100, 'ksi', 'M3', 'SINGLE'],
  ['ASTM A320 L7M', METRIC, 0, 65, 550, 690, 'MPa', 'M3', 'SINGLE'],
  ['ASTM A320 L43', INCH, 0, 4 * IN, 105, 125, 'ksi', 'M10+M11', 'AGREE'],
  ['ASTM A320 L43', METRIC, 0, 100, 725, 860, 'MPa', 'M10+M11', 'AGREE'],
]);

const A453 = table('ASTM A453/A453M', [
  ['ASTM A453 660 class A, B or C', INCH, 0, ANY, 85, 130, 'ksi', 'M12+M13', 'AGREE'],
  ['ASTM A453 660 class A, B or C', METRIC, 0, ANY, 585, 895, 'MPa', 'M12+M13', 'AGREE'],
  ['ASTM A453 660 class D', INCH, 0, 2.5 * IN, 105, 130, 'ksi', 'M12+M13', 'AGREE'],
  [
    'ASTM A453 660 class D',
    INCH,
    2.5 * IN,
    ANY,
    95,
    120,
    'ksi',
    'M13',
    'DISAGREE',
    'an older text prints 105 ksi at every size',
  ],
  ['ASTM A453 660 class D', METRIC, 0, 63.5, 725, 895, 'MPa', 'M12+M13', 'AGREE'],
  [
    'ASTM A453 660 class D',
    METRIC,
    63.5,
    ANY,
    655,
    825,
    'MPa',
    'M13',
    'DISAGREE',
    'an older text prints 725 MPa at every size',
  ],
]);

const A540 = table('ASTM A540/A540M', [
  ['ASTM A540 B24 class 4', INCH, 0, 9.5 * IN, 120, 135, 'ksi', 'M14', 'SINGLE'],
  ['ASTM A540 B24 class 5', INCH, 0, 6 * IN, 105, 120, 'ksi', 'M14', 'SINGLE'],
  ['ASTM A540 B24 class 5', INCH, 6 * IN, 9.5 * IN, 100, 115, 'ksi', 'M14', 'SINGLE'],
]);

const ISO_898_1 = table('ISO 898-1, minimum values', [
  ['ISO 898-1 5.6', METRIC, 0, 39, 300, 500, 'MPa', 'M15+M16', 'AGREE'],
  ['ISO 898-1 8.8', METRIC, 0, 16, 640, 800, 'MPa', 'M15+M17+M18', 'AGREE'],
  [
    'ISO 898-1 8.8',
    METRIC,
    16,
    39,
    660,
    830,
    'MPa',
    'M15+M17+M18',
    'DISAGREE',
    'nominal 640 MPa is often printed',
  ],
  [
    'ISO 898-1 10.9',
    METRIC,
    0,
    39,
    940,
    1040,
    'MPa',
    'M15+M17+M18',
    'DISAGREE',
    'nominal 900 MPa is often printed',
  ],
  [
    'ISO 898-1 12.9',
    METRIC,
    0,
    39,
    1100,
    1220,
    'MPa',
    'M15+M17+M18',
    'DISAGREE',
    'nominal 1080 MPa is often printed',
  ],
]);

export const BOLT_STRENGTHS: readonly BoltStrengthRow[] = [
  ...A193,
  ...A193M,
  ...A320,
  ...A453,
  ...A540,
  ...ISO_898_1,
];
