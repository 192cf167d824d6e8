import { expect, test } from 'vitest';
import { type SiteRowData, siteRowData } from '../../../core/contract/site.ts';
import { emptyRow, siteRowForm, siteRowInput } from './site-row-form-values.ts';

const ROWS: readonly SiteRowData[] = [
  {
    kind: 'flange',
    key: 'Girth flange',
    source: 'drawing',
    count: 36,
    thread: 'M30x3.5',
    circle: { text: '1219', unit: 'mm' },
    studLength: null,
    grip: null,
  },
  {
    kind: 'stud grade',
    key: 'Site alloy',
    source: 'sheet',
    bands: [
      {
        over: { text: '0', unit: 'in' },
        upTo: { text: '1-1/2', unit: 'in' },
        yieldStrength: { text: '640', unit: 'MPa' },
      },
    ],
  },
  {
    kind: 'gasket',
    key: 'Corrugated',
    source: 'sheet',
    values: { thickness: { text: '3', unit: 'mm' }, contactInside: { text: '200', unit: 'mm' } },
  },
  {
    kind: 'lubricant',
    key: 'Site paste',
    source: 'test 12',
    values: {
      nutFactor: { text: '0.15', unit: 'one' },
      nutFactorCv: null,
      frictionThread: null,
      frictionBearing: null,
      evidence: 'measured',
    },
  },
].map((row) => siteRowData.parse(row));

test.each(ROWS)(
  'a stored $kind row goes through the form unchanged, what the form does not show included',
  (row) => {
    expect(siteRowData.parse(sendable(siteRowInput(row.kind, siteRowForm(row), row)))).toEqual(row);
  },
);

test('an empty form is refused by its fields, not by accident', () => {
  const { error } = siteRowData.safeParse(siteRowInput('stud grade', emptyRow(), null));
  const fields = error?.issues.map(({ path }) => path.join('.'));
  expect(fields).toEqual(expect.arrayContaining(['key', 'source', 'bands.0.upTo', 'bands.0.yieldStrength']));
});

/** As it travels: text and unit, with whatever number was stored beside them. */
const sendable = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
