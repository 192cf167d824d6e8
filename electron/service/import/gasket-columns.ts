import type { GasketData } from '../../../core/contract/gasket.ts';
import type { Column } from './column.ts';

type Optional = Omit<Column, 'heading' | 'needed' | 'meaning' | 'example'>;

const length = { quantity: 'length' } as const;
const stress = { quantity: 'stress' } as const;
const percent = { fixedUnit: 'percent' } as const;

type QuantityField = {
  [K in keyof GasketData]: GasketData[K] extends { readonly si: number } | null ? K : never;
}[keyof GasketData];

/** Quantities of a gasket with their columns; the thickness stands with the gasket's type. */
export const GASKET_QUANTITIES: readonly {
  readonly field: QuantityField;
  readonly column: Column;
}[] = [
  line('contactInside', 'gasket inside', 'Inside diameter of the sealing element', '233.4', length),
  line('contactOutside', 'gasket outside', 'Outside diameter of the sealing element', '263.7', length),
  line('pitchDiameter', 'ring pitch diameter', 'Pitch diameter of a ring-joint gasket', '269.9', length),
  line('ringWidth', 'ring width', 'Width of a ring-joint gasket', '11.1', length),
  line('partitionArea', 'partition area mm2', 'Area of all pass-partition bars together, in mm²', '5200', {
    fixedUnit: 'mm2',
  }),
  line('partitionShare', 'partition share %', 'Part of that area the site counts, in percent', '50', percent),
  line('factorM', 'gasket m', 'Gasket factor m of the design code', '3'),
  line('stressY', 'gasket y', 'Seating stress y of the design code', '69', stress),
  line('seatingStress', 'gasket seating stress', 'Least stress that seats the gasket', '60', stress),
  line('operatingStress', 'gasket operating stress', 'Least gasket stress in operation', '35', stress),
  line('stressMax', 'gasket stress max', 'Largest stress the gasket stands', '200', stress),
  line('targetStress', 'gasket target stress', 'Gasket stress to aim at', '100', stress),
  line(
    'retainedOperating',
    'gasket retained %',
    'Part of the stress left in operation, in percent',
    '70',
    percent,
  ),
  line(
    'retainedTest',
    'gasket retained at test %',
    'Part of the stress left at the pressure test, in percent',
    '90',
    percent,
  ),
];

/** Words of a gasket beside its type. */
export const GASKET_TEXTS: readonly Column[] = [
  text(
    'gasket kind',
    'flat, spiral wound or ring joint: how the tables and the code read it',
    'spiral wound',
  ),
  text(
    'gasket code type',
    'Type and material as the code’s table of m and y names it',
    'solid flat metal, stainless',
  ),
  text('gasket batch', 'Batch or heat of the gasket', 'G-0419'),
  text('gasket source', 'Where the gasket’s values come from', 'data sheet of the gasket, rev 2'),
];

const CASES = ['design', 'operating', 'test'] as const;

/** Pressure and temperature of each case. */
export const CASE_COLUMNS: readonly {
  readonly name: (typeof CASES)[number];
  readonly pressure: Column;
  readonly temperature: Column;
}[] = CASES.map((name) => ({
  name,
  pressure: {
    heading: `${name} pressure`,
    needed: false,
    meaning: `Pressure in the ${name} case, gauge`,
    example: '40',
    quantity: 'pressure',
  },
  temperature: {
    heading: `${name} temperature`,
    needed: false,
    meaning: `Temperature of the fluid in the ${name} case`,
    example: '150',
    quantity: 'temperature',
  },
}));

export const CASE_SOURCE = text('pressure source', 'Where the pressure cases come from', 'line list rev 3');

function line(
  field: QuantityField,
  heading: string,
  meaning: string,
  example: string,
  more: Optional = {},
): { field: QuantityField; column: Column } {
  return { field, column: { heading, needed: false, meaning, example, ...more } };
}

function text(heading: string, meaning: string, example: string): Column {
  return { heading, needed: false, meaning, example };
}
