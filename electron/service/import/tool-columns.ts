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
    meaning: 'drive unit, cassette, reducer, pump, gauge or hose',
    example: 'drive unit',
  },
  { heading: 'serial', ...optional, meaning: 'Serial number', example: '20417' },
  {
    heading: 'status',
    ...optional,
    meaning: 'available, issued, at the laboratory, quarantined or scrapped; blank is read as available',
    example: 'available',
  },
  { heading: 'place', ...optional, meaning: 'Where it is kept', example: 'tool room, shelf 4' },
  {
    heading: 'family',
    ...optional,
    meaning: 'Drive unit, cassette: parts of one family fit each other',
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
    meaning: 'Drive unit, pump, hose: needed',
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
    meaning: 'Cassette, reducer: needed; across flats marked on the hex opening',
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
  { heading: 'made on', ...optional, meaning: 'Hose: date as YYYY-MM-DD', example: '2023-05-01' },
  { heading: 'remarks', ...optional, meaning: 'Anything else', example: 'new seals 2026-02' },
];
