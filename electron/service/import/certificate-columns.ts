import type { Column } from './column.ts';

const optional = { needed: false } as const;
const needed = { needed: true } as const;
const inFirstRow = 'same in every row, or blank below the first';

/** Headings that belong to the certificate as a whole. */
export const CERTIFICATE_HEAD: readonly Column[] = [
  {
    heading: 'tool number',
    ...needed,
    meaning: `Drive unit, gauge or hand torque wrench it hangs on; ${inFirstRow}`,
    example: 'W-03',
  },
  { heading: 'certificate number', ...needed, meaning: `As printed; ${inFirstRow}`, example: 'C-2026-0117' },
  {
    heading: 'laboratory',
    ...needed,
    meaning: `Who calibrated; ${inFirstRow}`,
    example: 'Invented laboratory',
  },
  {
    heading: 'calibrated on',
    ...needed,
    meaning: `Date as YYYY-MM-DD; ${inFirstRow}`,
    example: '2026-03-02',
  },
  {
    heading: 'valid until',
    ...needed,
    meaning: `Last valid day as YYYY-MM-DD; ${inFirstRow}`,
    example: '2027-03-01',
  },
  {
    heading: 'validity basis',
    ...needed,
    meaning: `Whose rule sets the validity; ${inFirstRow}`,
    example: 'site rule: 12 months',
  },
  {
    heading: 'result',
    ...needed,
    meaning: `within limits, outside limits or no limits stated; ${inFirstRow}`,
    example: 'within limits',
  },
  { heading: 'condition', ...needed, meaning: `as found or as left; ${inFirstRow}`, example: 'as left' },
  {
    heading: 'with tools',
    ...optional,
    meaning: `Numbers of the parts calibrated with it, joined by +; ${inFirstRow}`,
    example: 'K-41 + R-07',
  },
  {
    heading: 'expanded uncertainty %',
    ...optional,
    meaning: `Expanded uncertainty of the reference in percent of torque; blank means not stated; ${inFirstRow}`,
    example: '1',
    fixedUnit: 'percent',
  },
  {
    heading: 'coverage factor',
    ...optional,
    meaning: `k; needed when the uncertainty is stated; ${inFirstRow}`,
    example: '2',
  },
  {
    heading: 'method',
    ...optional,
    meaning: `Method of the calibration as printed; ${inFirstRow}`,
    example: 'site procedure CP-4, edition 2',
  },
  {
    heading: 'temperature',
    ...optional,
    meaning: `Temperature of the surroundings; blank means not stated; ${inFirstRow}`,
    example: '21',
    quantity: 'temperature',
  },
  {
    heading: 'humidity %',
    ...optional,
    meaning: `Relative humidity in percent; blank means not stated; ${inFirstRow}`,
    example: '45',
    fixedUnit: 'percent',
  },
  {
    heading: 'limit %',
    ...optional,
    meaning: `Largest permissible error in percent of the reading; blank means none stated; ${inFirstRow}`,
    example: '4',
    fixedUnit: 'percent',
  },
  {
    heading: 'guard band',
    ...optional,
    meaning: `yes when error and uncertainty together must keep the limit; blank is read as no; ${inFirstRow}`,
    example: 'yes',
  },
  {
    heading: 'confirmed',
    ...optional,
    meaning: `What looks wrong in the points and was confirmed, by the names the preview gives, joined by +; ${inFirstRow}`,
    example: 'equal pressures',
  },
  {
    heading: 'remarks',
    ...optional,
    meaning: `Anything else; ${inFirstRow}`,
    example: 'new seals before calibration',
  },
];

/** Headings of one point: of a wrench, a gauge, or a hand torque wrench. */
const CERTIFICATE_POINT: readonly Column[] = [
  {
    heading: 'pressure',
    ...optional,
    meaning: 'Wrench: needed with torque',
    example: '140',
    quantity: 'pressure',
  },
  {
    heading: 'torque',
    ...optional,
    meaning: 'Wrench: torque measured at that pressure',
    example: '203',
    quantity: 'torque',
  },
  { heading: 'direction', ...optional, meaning: 'Wrench: up or down; blank is read as up', example: 'up' },
  {
    heading: 'indicated',
    ...optional,
    meaning: 'Gauge: what it showed, needed with reference',
    example: '200',
    quantity: 'pressure',
  },
  {
    heading: 'reference',
    ...optional,
    meaning: 'Gauge: what the reference showed',
    example: '201.5',
    quantity: 'pressure',
  },
  {
    heading: 'set torque',
    ...optional,
    meaning: 'Hand torque wrench: what it was set to, needed with reference torque',
    example: '100',
    quantity: 'torque',
  },
  {
    heading: 'reference torque',
    ...optional,
    meaning: 'Hand torque wrench: what the reference showed',
    example: '101.2',
    quantity: 'torque',
  },
  {
    heading: 'condition of the point',
    ...optional,
    meaning: 'as found, for a point taken before adjustment, or as left; blank is read as as left',
    example: 'as left',
  },
  {
    heading: 'point uncertainty',
    ...optional,
    meaning: 'Wrench: expanded uncertainty of this point alone, in the torque’s unit; blank means not stated',
    example: '2.5',
    quantity: 'torque',
  },
];

export const CERTIFICATE_COLUMNS: readonly Column[] = [...CERTIFICATE_HEAD, ...CERTIFICATE_POINT];
