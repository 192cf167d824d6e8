import type { Column } from './column.ts';
import { CASE_COLUMNS, CASE_SOURCE, GASKET_QUANTITIES, GASKET_TEXTS } from './gasket-columns.ts';
import { IDENTITY_COLUMNS } from './identity-columns.ts';

type Optional = Omit<Column, 'heading' | 'needed' | 'meaning' | 'example'>;

function column(heading: string, meaning: string, example: string, more: Optional = {}): Column {
  return { heading, needed: false, meaning, example, ...more };
}

const length = { quantity: 'length' } as const;
const stress = { quantity: 'stress' } as const;

/** Headings of a joint list. Examples assume mm, MPa, N·m and °C and a point as the decimal sign. */
export const JOINT_COLUMNS: readonly Column[] = [
  {
    ...column('tag', 'The joint’s own tag. A tag already on the register changes that joint', 'J-100-001'),
    needed: true,
  },
  {
    ...column('unit', 'Plant unit; one that is not on the register yet is created', 'Unit 100'),
    needed: true,
  },
  column(
    'location',
    'Where a person finds it: landmark, elevation, side of valve',
    'pump P-101 discharge, downstream side',
  ),
  ...IDENTITY_COLUMNS,
  column('service', 'What flows through it', 'crude oil'),
  column('service temperature', 'Temperature in service', '180', { quantity: 'temperature' }),
  column(
    'flange standard',
    'Needed unless "flange description" is filled: ASME B16.5, ASME B16.47 A, ASME B16.47 B or EN 1092-1',
    'ASME B16.5',
  ),
  column('size', 'NPS or DN as the standard writes it', '8'),
  column('class', 'Pressure class or PN', '300'),
  column('facing', 'raised face, flat face, ring joint or other', 'raised face'),
  column(
    'flange description',
    'For a bolt circle of its own, in place of standard, size, class and facing',
    'Channel girth flange, exchanger E-201',
  ),
  column('stud count', 'Blank: taken from the flange standard', '12'),
  column('thread', 'Thread designation; blank: taken from the flange standard', '7/8-9 UNC'),
  column(
    'bolt circle',
    'Diameter of the bolt circle; blank: taken from the flange standard',
    '330.2',
    length,
  ),
  column('stud grade', 'Stud specification and grade', 'ASTM A193 B7'),
  column('yield strength', 'Only for a grade without a table row', '720', stress),
  column('yield source', 'Where the yield strength was read', 'mill certificate'),
  column('stud length', 'Overall length of the stud', '139.7', length),
  column('grip', 'Clamped length between the two nuts', '86.6', length),
  column(
    'nut series',
    'ASME B18.2.2 heavy hex, ASME B18.2.4.6M heavy hex, ISO 4032 or DIN 934',
    'ASME B18.2.2 heavy hex',
  ),
  column('pressure retaining', 'yes or no: these bolts hold the pressure in; blank: nobody has said', 'yes'),
  column('gasket', 'Type of gasket', 'spiral wound, inner and outer ring'),
  column('gasket thickness', 'Thickness of the gasket', '4.5', length),
  ...GASKET_TEXTS,
  ...GASKET_QUANTITIES.map((one) => one.column),
  ...CASE_COLUMNS.flatMap(({ pressure, temperature }) => [pressure, temperature]),
  CASE_SOURCE,
  column('flange material', 'Material group as the rating tables number it', '1.1'),
  column('nut grade', 'Nut specification and grade', 'ASTM A194 2H'),
  column('lubricant', 'Product class, never a brand', 'nickel-based anti-seize'),
  column('lubricant batch', 'Batch on the tin', '24-117'),
  column('nut factor', 'Nut factor K', '0.16'),
  column('nut factor scatter %', 'Coefficient of variation of K from stud to stud, in percent', '10', {
    fixedUnit: 'percent',
  }),
  column(
    'nut factor batch scatter %',
    'Coefficient of variation of the mean K from batch to batch, in percent',
    '4',
    { fixedUnit: 'percent' },
  ),
  column('thread friction', 'Friction coefficient of the thread, in place of K', '0.12'),
  column('bearing friction', 'Friction coefficient under the nut, in place of K', '0.12'),
  column('friction evidence', 'published, measured or assumed; blank is read as assumed', 'measured'),
  column('friction source', 'Where the friction value comes from', 'site test report 12'),
  column(
    'target mode',
    'percent of yield, bolt stress, bolt load, torque, gasket stress or component limits',
    'percent of yield',
  ),
  column(
    'target value',
    'Percent, or stress or torque in the file’s unit; a bolt load stands in a column of its own',
    '50',
  ),
  column('target load kN', 'Bolt load in kN for target mode "bolt load"', '108', { fixedUnit: 'kN' }),
  column('target load lbf', 'Bolt load in lbf for target mode "bolt load"', '24300', { fixedUnit: 'lbf' }),
  column('target area', 'Area a percent of yield or bolt stress refers to: tensile or root', 'tensile'),
  column('target basis', 'Procedure or calculation the target comes from', 'site procedure BP-04 rev 3'),
  column('bolt stress max', 'Highest bolt stress allowed', '480', stress),
  column('bolt stress min', 'Lowest bolt stress that seals', '200', stress),
  column('limit area', 'Area both bolt stress limits refer to: tensile or root', 'root'),
  column('flange bolt stress max', 'Highest bolt stress the flange takes', '520', stress),
  column('limit source', 'Where the limits come from', 'data sheet DS-118'),
  column('radial gap', 'Free distance from the stud’s centre to hub or pipe', '42', length),
  column('gap along the stud', 'Free distance along the stud, from the flange outwards', '240', length),
  column('remarks', 'Anything else', 'insulated; scaffold needed'),
];
