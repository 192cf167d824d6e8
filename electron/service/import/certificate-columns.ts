import type { Column } from './column.ts';

const optional = { needed: false } as const;
const needed = { needed: true } as const;
const inFirstRow = 'same in every row, or blank below the first';

/** Headings that belong to the certificate as a whole. */
export const CERTIFICATE_HEAD: readonly Column[] = [
  {
    heading: 'tool number',
    ...needed,
    meaning: `Drive unit or gauge it hangs on; ${inFirstRow}`,
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
    heading: 'remarks',
    ...optional,
    meaning: `Anything else; ${inFirstRow}`,
    example: 'new seals before calibration',
  },
];

/** Headings of one point: pressure and torque of a wrench, or indicated and reference of a gauge. */
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
];

export const CERTIFICATE_COLUMNS: readonly Column[] = [...CERTIFICATE_HEAD, ...CERTIFICATE_POINT];
