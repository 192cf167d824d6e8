import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { importKind, importOptions, importReport } from '../../core/contract/import.ts';
import { COLUMNS_OF_KIND } from '../../electron/service/import/columns.ts';
import { bytesOf, METRIC } from './files.ts';

const kind = fc.constantFrom(...importKind.options);
const options = fc.record({
  encoding: fc.constantFrom(...importOptions.shape.encoding.options),
  delimiter: fc.constantFrom(...importOptions.shape.delimiter.options),
  decimalSign: fc.constantFrom(...importOptions.shape.decimalSign.options),
});

function checkCounts(result: ReturnType<typeof bytesOf>) {
  const { report } = result;
  expect(importReport.safeParse({ ...report, fingerprint: 'x' }).success).toBe(true);
  expect(report.faults.length).toBe(Math.min(report.faultCount, 200));
  if (report.fileFault !== null) expect(report.added + report.changed + report.unchanged).toBe(0);
  if (result.kind === 'certificate') {
    expect(result.record === null).toBe(report.fileFault !== null);
    return;
  }
  expect(result.records.length).toBe(report.added + report.changed + report.unchanged);
  if (report.fileFault !== null) return;
  expect(report.good + report.faultyRows).toBe(report.rows);
  expect(result.records.length).toBe(report.good);
}

it('any bytes give a report whose counts agree, never an exception', () => {
  fc.assert(
    fc.property(kind, fc.uint8Array({ maxLength: 200 }), options, (of, bytes, chosen) => {
      checkCounts(bytesOf(of, bytes, { options: { ...METRIC, ...chosen } }));
    }),
    { numRuns: 500 },
  );
});

it('any cells under the known headings give a report whose counts agree', () => {
  const file = kind.chain((of) => {
    const headings = COLUMNS_OF_KIND[of].map(({ heading }) => heading);
    const cell = fc.oneof(
      fc.constantFrom(
        '',
        '12',
        '1-7/16',
        '0.16',
        '8',
        '300',
        '2026-01-31',
        ...COLUMNS_OF_KIND[of].map(({ example }) => example),
      ),
      fc.string({ maxLength: 8 }),
    );
    const row = fc.array(cell, { minLength: headings.length, maxLength: headings.length });
    return fc.record({
      of: fc.constant(of),
      headings: fc.constant(headings),
      rows: fc.array(row, { minLength: 1, maxLength: 4 }),
    });
  });
  const quoted = (cells: string[]) => cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(',');
  fc.assert(
    fc.property(file, ({ of, headings, rows }) => {
      const text = [headings, ...rows].map(quoted).join('\n');
      checkCounts(bytesOf(of, Buffer.from(text, 'utf8')));
    }),
    { numRuns: 500 },
  );
});
