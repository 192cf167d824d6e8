import { describe, expect, it } from 'vitest';
import { importColumn, importKind, importReport } from '../../core/contract/import.ts';
import { COLUMNS_OF_KIND } from '../../electron/service/import/columns.ts';
import { bytesOf, EMPTY_REGISTER, readCertificate, readTools, toolsByNumber } from './files.ts';

describe.each(importKind.options)('headings for %s', (kind) => {
  it('answer the contract, each heading once, with meaning and example', () => {
    const columns = COLUMNS_OF_KIND[kind];
    for (const column of columns) {
      const { heading, needed, meaning, example } = column;
      expect(importColumn.safeParse({ heading, needed, meaning, example }).success).toBe(true);
      expect(column.meaning).not.toBe('');
      expect(column.example).not.toBe('');
    }
    const headings = columns.map(({ heading }) => heading.toLowerCase());
    expect(new Set(headings).size).toBe(headings.length);
    expect(columns.some(({ needed }) => needed)).toBe(true);
  });

  it('as an empty file are a file without rows, not a file with unknown columns', () => {
    const text = COLUMNS_OF_KIND[kind].map(({ heading }) => heading).join(',');
    const { report } = bytesOf(kind, Buffer.from(`${text}\n`));
    expect(report.fileFault).toBe('The file has a heading line but no rows');
  });

  it('make a report the contract takes, also for a broken file', () => {
    const { report } = bytesOf(kind, Buffer.from('a,b\n1,2'));
    expect(importReport.parse({ ...report, fingerprint: 'x' })).toEqual({ ...report, fingerprint: 'x' });
    expect(report.unknownColumns).toEqual(['a', 'b']);
  });
});

it('examples of the tool columns are taken by the import for the classes they are for', () => {
  const example = new Map(COLUMNS_OF_KIND.tools.map(({ heading, example: text }) => [heading, text]));
  const row = (headings: string[]) =>
    readTools(`${headings.join(',')}\n${headings.map((heading) => `"${example.get(heading)}"`).join(',')}`, {
      lookup: EMPTY_REGISTER,
    }).report;
  expect(
    row([
      'number',
      'class',
      'serial',
      'status',
      'place',
      'family',
      'rated torque',
      'rated pressure',
      'head radius',
      'remarks',
    ]),
  ).toMatchObject({
    faults: [],
    good: 1,
  });
});

it('examples of the certificate columns are read as one point, of which it takes three', () => {
  const columns = COLUMNS_OF_KIND.certificate.filter(
    ({ heading }) => !['indicated', 'reference', 'set torque', 'reference torque'].includes(heading),
  );
  const drive = (number: string) => ({
    number,
    serial: '',
    status: 'available' as const,
    place: '',
    remarks: '',
    owner: { kind: 'own' as const },
    weight: null,
    properties: {
      class: 'drive unit' as const,
      ratedTorque: { text: '1', unit: 'N.m' as const, si: 1 },
      ratedPressure: { text: '1', unit: 'bar' as const, si: 1e5 },
      family: 'S',
      headRadius: null,
      reactionArm: null,
      coupling: '',
    },
  });
  const { report } = readCertificate(
    `${columns.map(({ heading }) => heading).join(',')}\n${columns.map(({ example }) => `"${example}"`).join(',')}`,
    { lookup: { tool: toolsByNumber(drive('W-03')) } },
  );
  expect(report.faults.map(({ column }) => column)).toEqual(['with tools', 'with tools', 'torque']);
});
