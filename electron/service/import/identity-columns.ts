import type { Column } from './column.ts';

const column = (heading: string, meaning: string, example: string): Column => ({
  heading,
  needed: false,
  meaning,
  example,
});

/** Headings that tell a joint from the ones beside it. */
export const IDENTITY_COLUMNS: readonly Column[] = [
  column(
    'joint type',
    'pipe flange, valve or equipment nozzle, girth flange, manway, bonnet, blind, clamp connector, compact flange or other',
    'pipe flange',
  ),
  column('system', 'System it belongs to', 'crude charge'),
  column('line', 'Number of the line or equipment', 'P-1001-8'),
  column('drawing', 'Drawing that shows it', 'ISO-1001-3'),
  column('drawing revision', 'Revision of that drawing', 'C'),
  column('landmark', 'A fixed thing nearby', 'pump P-101'),
  column('direction', 'Where the joint lies from it', 'north, above the pump'),
  {
    ...column('distance', 'How far from it', '1500'),
    quantity: 'length',
  },
  column('grid', 'Grid or elevation as the drawing gives it', 'B4, +6.2 m'),
  column('valve', 'Tag of the valve it lies at', 'XV-1012'),
  column('side of valve', 'upstream, downstream or bonnet', 'downstream'),
  column('neighbours', 'Tags of the joints beside it, parted by a semicolon', 'J-100-002; J-100-003'),
  column('test pack', 'Joints tested together', 'TP-14'),
  column('isolation boundary', 'Limits it is isolated within', 'IB-7'),
  column('numbering mark', 'Where bolt 1 is marked', 'at the name plate, top'),
  column(
    'confusable with',
    'Tags it could be taken for, parted by a semicolon; "none" when somebody looked and there is none',
    'J-100-101',
  ),
];
