import { findThread } from '../../core/bolting/thread.ts';
import { row, type TruthRow } from './row.ts';
import type { SourceId } from './sources.ts';

/** Designation, printed tensile area, printed root area (empty where none is printed). The core computes both. */
type Printed = readonly [designation: string, tensile: string, root: string];

const INCH: readonly Printed[] = [
  ['3/8-16 UNC', '0.0775', '0.0678'],
  ['7/16-14 UNC', '0.1063', '0.0933'],
  ['1/2-13 UNC', '0.1419', '0.1257'],
  ['9/16-12 UNC', '0.182', '0.162'],
  ['5/8-11 UNC', '0.226', '0.202'],
  ['3/4-10 UNC', '0.334', '0.302'],
  ['7/8-9 UNC', '0.462', '0.419'],
  ['1-8 UNC', '0.606', '0.551'],
  ['1-1/8-7 UNC', '0.763', '0.693'],
  ['1-1/4-7 UNC', '0.969', '0.89'],
  ['1-3/8-6 UNC', '1.155', '1.054'],
  ['1-1/2-6 UNC', '1.405', '1.294'],
  ['1-3/4-5 UNC', '1.9', '1.74'],
  ['2-4.5 UNC', '2.5', '2.3'],
  ['2-1/4-4.5 UNC', '3.25', '3.02'],
  ['2-1/2-4 UNC', '4.0', '3.72'],
  ['2-3/4-4 UNC', '4.93', '4.62'],
  ['3-4 UNC', '5.97', '5.62'],
  ['3-1/4-4 UNC', '7.1', '6.72'],
  ['3-1/2-4 UNC', '8.33', '7.92'],
  ['3-3/4-4 UNC', '9.66', '9.21'],
  ['4-4 UNC', '11.08', '10.61'],
  ['1-8 8UN', '0.606', '0.551'],
  ['1-1/16-8 8UN', '0.695', '0.636'],
  ['1-1/8-8 8UN', '0.79', '0.728'],
  ['1-3/16-8 8UN', '0.892', '0.825'],
  ['1-1/4-8 8UN', '1.0', '0.929'],
  ['1-5/16-8 8UN', '1.114', '1.039'],
  ['1-3/8-8 8UN', '1.233', '1.155'],
  ['1-7/16-8 8UN', '1.36', '1.277'],
  ['1-1/2-8 8UN', '1.492', '1.405'],
  ['1-9/16-8 8UN', '1.63', '1.54'],
  ['1-5/8-8 8UN', '1.78', '1.68'],
  ['1-11/16-8 8UN', '1.93', '1.83'],
  ['1-3/4-8 8UN', '2.08', ''],
  ['1-13/16-8 8UN', '2.25', ''],
  ['1-7/8-8 8UN', '2.41', ''],
  ['1-15/16-8 8UN', '2.59', ''],
  ['2-8 8UN', '2.77', ''],
  ['2-1/8-8 8UN', '3.15', ''],
  ['2-1/4-8 8UN', '3.56', ''],
  ['2-3/8-8 8UN', '3.99', ''],
];

const METRIC: readonly Printed[] = [
  ['M5x0.8', '14.2', ''],
  ['M6x1', '20.1', ''],
  ['M7x1', '28.9', ''],
  ['M8x1.25', '36.6', ''],
  ['M10x1.5', '58.0', ''],
  ['M12x1.75', '84.3', ''],
  ['M14x2', '115', ''],
  ['M16x2', '157', ''],
  ['M18x2.5', '192', ''],
  ['M20x2.5', '245', ''],
  ['M22x2.5', '303', ''],
  ['M24x3', '353', ''],
  ['M27x3', '459', ''],
  ['M30x3.5', '561', ''],
  ['M33x3.5', '694', ''],
  ['M36x4', '817', ''],
  ['M39x4', '976', ''],
];

/** Cells whose print is not the nearest rounding, with the tolerance they need and why. */
const ROUNDED_ELSE: Readonly<Record<string, { readonly tolerance: number; readonly why: string }>> = {
  '1-3/8-8 8UN': { tolerance: 0.001, why: 'one last digit: the value lies 5·10⁻⁷ above a rounding tie' },
  '1-5/8-8 8UN': { tolerance: 0.006, why: '1.7747 is printed as 1.78, rounded twice through 1.775' },
};

const SQUARE_INCH = 0.0254 * 0.0254;
const SQUARE_MM = 1e-6;

function cells(printed: readonly Printed[], unit: number, source: SourceId, place: string): TruthRow[] {
  return printed.flatMap(([designation, tensile, root]) => {
    const cell = (name: 'tensileArea' | 'rootArea', text: string): TruthRow =>
      row(
        'published table cell',
        `${name === 'tensileArea' ? 'tensile' : 'root'} area of ${designation}`,
        source,
        place,
        text,
        () => (findThread(designation)?.[name] ?? Number.NaN) / unit,
        name === 'tensileArea' ? ROUNDED_ELSE[designation] : undefined,
      );
    return [
      ...(tensile === '' ? [] : [cell('tensileArea', tensile)]),
      ...(root === '' ? [] : [cell('rootArea', root)]),
    ];
  });
}

const area = (designation: string, name: 'tensileArea' | 'rootArea') => () =>
  (findThread(designation)?.[name] ?? Number.NaN) / SQUARE_INCH;

export const THREAD_ROWS: readonly TruthRow[] = [
  ...cells(INCH, SQUARE_INCH, 'asme-b1-1-charts', 'area columns, in²'),
  ...cells(METRIC, SQUARE_MM, 'iso-898-1', 'tables 3 and 4, mm²'),
  row(
    'published',
    'root area of 1-1/4-8',
    'asme-pcc-1-appendix-h',
    'Appendix H, second-hand',
    '0.9289',
    area('1-1/4-8 8UN', 'rootArea'),
    { tolerance: 0.0002, why: 'a root diameter rounded to 1.0875 in gives the print; 0.02 %' },
  ),
  row(
    'published',
    'tensile area of 1-1/4-8',
    'asme-pcc-1-appendix-h',
    'Appendix H, second-hand',
    '0.9997',
    area('1-1/4-8 8UN', 'tensileArea'),
  ),
  row(
    'published',
    'tensile area of 3/8-16',
    'mott',
    'Example 19-1, 5th ed.',
    '0.0775',
    area('3/8-16 UNC', 'tensileArea'),
  ),
  row(
    'published',
    'tensile area of 2-4½',
    'mott',
    'stress-area table, 5th ed.',
    '2.50',
    area('2-4.5 UNC', 'tensileArea'),
  ),
];
