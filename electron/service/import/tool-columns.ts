import { toolClass } from '../../../core/contract/tool.ts';
import type { Column } from './column.ts';

const optional = { needed: false } as const;

/** Headings of a tool list: one tool a row; its class decides which cells are needed. */
export const TOOL_COLUMNS: readonly Column[] = [
  {
    heading: 'number',
    needed: true,
    meaning: 'The site’s own number on the label. A number already on the register changes that tool',
    example: 'W-03',
  },
  {
    heading: 'class',
    needed: true,
    meaning: `One of: ${toolClass.options.join(', ')}`,
    example: 'drive unit',
  },
  { heading: 'serial', ...optional, meaning: 'Serial number', example: '20417' },
  {
    heading: 'status',
    ...optional,
    meaning:
      'New tool: available, issued, at the laboratory, quarantined or scrapped; blank is read as available. A tool on the register keeps its status',
    example: 'available',
  },
  { heading: 'place', ...optional, meaning: 'Where it is kept', example: 'tool room, shelf 4' },
  {
    heading: 'family',
    ...optional,
    meaning: 'Drive unit, cassette, square-drive head: parts of one family fit each other',
    example: 'M',
  },
  {
    heading: 'rated torque',
    ...optional,
    meaning: 'Drive unit: needed. Cassette, reducer: blank means not known',
    example: '2700',
    quantity: 'torque',
  },
  {
    heading: 'rated pressure',
    ...optional,
    meaning: 'Drive unit, pump, hose, coupler: needed',
    example: '690',
    quantity: 'pressure',
  },
  {
    heading: 'head radius',
    ...optional,
    meaning: 'Drive unit, cassette: from the opening’s centre to the outside of the head',
    example: '34',
    quantity: 'length',
  },
  {
    heading: 'opening',
    ...optional,
    meaning:
      'Cassette, reducer, counterhold wrench, square-drive head (its socket): needed; across flats as marked',
    example: '36.5',
    quantity: 'length',
  },
  {
    heading: 'looseness',
    ...optional,
    meaning: 'Cassette, reducer: how far above its mark the opening may measure; blank means not known',
    example: '0.3',
    quantity: 'length',
  },
  {
    heading: 'outer across flats',
    ...optional,
    meaning: 'Reducer: needed; the hex that goes into the cassette',
    example: '46',
    quantity: 'length',
  },
  {
    heading: 'scale max',
    ...optional,
    meaning:
      'Gauge: needed; end of the scale in the unit on its face. Gauges in another unit go in a file of their own',
    example: '1000',
    quantity: 'pressure',
  },
  {
    heading: 'graduation',
    ...optional,
    meaning: 'Gauge: needed; step between two marks',
    example: '10',
    quantity: 'pressure',
  },
  {
    heading: 'accuracy % of scale',
    ...optional,
    meaning: 'Gauge: needed; largest error in percent of the scale (EN 837-1 class 1.0 is 1)',
    example: '1',
    fixedUnit: 'percent',
  },
  {
    heading: 'also printed',
    ...optional,
    meaning: 'Gauge: another pressure unit on the same face, bar, psi or MPa; blank for none',
    example: 'psi',
  },
  {
    heading: 'height',
    ...optional,
    meaning: 'Cassette, square-drive head: size along the stud; blank means not known',
    example: '52',
    quantity: 'length',
  },
  {
    heading: 'bore',
    ...optional,
    meaning: 'Cassette, square-drive head: diameter of the hole for the stud; blank means not known',
    example: '34',
    quantity: 'length',
  },
  {
    heading: 'stud room',
    ...optional,
    meaning: 'Cassette, square-drive head: how far the stud may stand out of the nut; blank means not known',
    example: '28',
    quantity: 'length',
  },
  {
    heading: 'open through',
    ...optional,
    meaning: 'Cassette, square-drive head: yes when the stud may pass right through; blank is read as no',
    example: 'yes',
  },
  {
    heading: 'reaction arm',
    ...optional,
    meaning:
      'Drive unit, cassette, square-drive head: from the nut’s axis to where the reaction member bears',
    example: '110',
    quantity: 'length',
  },
  {
    heading: 'square',
    ...optional,
    meaning: 'Square-drive head: needed; hand torque wrench: side of the square',
    example: '25.4',
    quantity: 'length',
  },
  {
    heading: 'connections',
    ...optional,
    meaning: 'Pump: wrenches that can be connected at once; blank is read as 1',
    example: '2',
  },
  {
    heading: 'coupling',
    ...optional,
    meaning: 'Pump, hose, drive unit, coupler: the site’s name of the coupling; blank means not known',
    example: 'screwed 3/8',
  },
  {
    heading: 'least torque',
    ...optional,
    meaning: 'Hand torque wrench: needed; least torque of its scale',
    example: '40',
    quantity: 'torque',
  },
  {
    heading: 'most torque',
    ...optional,
    meaning: 'Hand torque wrench: needed; most torque of its scale',
    example: '200',
    quantity: 'torque',
  },
  {
    heading: 'torque graduation',
    ...optional,
    meaning: 'Hand torque wrench: needed; step between two marks',
    example: '5',
    quantity: 'torque',
  },
  { heading: 'weight kg', ...optional, meaning: 'Mass in kilograms', example: '8.5', fixedUnit: 'kg' },
  {
    heading: 'first used on',
    ...optional,
    meaning: 'Hose: day it was put to use, as YYYY-MM-DD; blank means not known',
    example: '2023-09-01',
  },
  { heading: 'made on', ...optional, meaning: 'Hose: date as YYYY-MM-DD', example: '2023-05-01' },
  { heading: 'remarks', ...optional, meaning: 'Anything else', example: 'new seals 2026-02' },
];
