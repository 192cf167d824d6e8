import { type CertificateData, certificateData, toolClass } from '../../../core/contract/tool.ts';
import { CERTIFICATE_HEAD } from './certificate-columns.ts';
import { checkTorquePoints } from './certificate-points.ts';
import type { RegisterLookup } from './lookup.ts';
import type { RowReader } from './row.ts';
import { type HeadingOfPath, headingAt, validated } from './validate.ts';

const RESULTS = certificateData.shape.result.options;
const CONDITIONS = certificateData.shape.condition.options;
const DIRECTIONS = ['up', 'down'] as const;
const COMPANIONS: readonly string[] = [toolClass.enum.cassette, toolClass.enum.reducer];

const HEADINGS: HeadingOfPath = {
  number: 'certificate number',
  toolId: 'tool number',
  withToolIds: 'with tools',
  laboratory: 'laboratory',
  calibratedOn: 'calibrated on',
  validUntil: 'valid until',
  validityBasis: 'validity basis',
  result: 'result',
  condition: 'condition',
  remarks: 'remarks',
  'measured.points': 'torque',
  'measured.expandedUncertainty': 'expanded uncertainty %',
  'measured.coverageFactor': 'coverage factor',
};

/** One certificate from the rows of its file; faults are left at the rows they were found in. */
export function certificateFromRows(
  rows: readonly RowReader[],
  lookup: RegisterLookup,
): CertificateData | null {
  const [head, ...others] = rows;
  if (!head) return null;
  for (const row of others) checkRepeated(head, row);
  const candidate = {
    number: head.raw('certificate number'),
    toolId: measuredTool(head, lookup),
    withToolIds: companions(head, lookup),
    laboratory: head.raw('laboratory'),
    calibratedOn: head.raw('calibrated on'),
    validUntil: head.raw('valid until'),
    validityBasis: head.raw('validity basis'),
    result: head.choice('result', RESULTS),
    condition: head.choice('condition', CONDITIONS),
    measured: head.has('torque') ? torqueMeasured(head, rows) : gaugeMeasured(rows),
    remarks: head.raw('remarks'),
  };
  const locate = (path: readonly PropertyKey[]) => {
    const [, list, index, name] = path;
    const row = list === 'points' && typeof index === 'number' ? rows[index] : undefined;
    return row
      ? { row, heading: String(name ?? 'pressure') }
      : { row: head, heading: headingAt(path, HEADINGS) };
  };
  const certificate = validated(certificateData, candidate, locate, 'needed');
  if (certificate === null) return null;
  if (certificate.validUntil < certificate.calibratedOn) {
    head.fault('valid until', `not before "calibrated on" (${certificate.calibratedOn})`);
  }
  if (certificate.measured.kind === 'pressure-torque') checkTorquePoints(certificate.measured.points, rows);
  return rows.some(({ faults }) => faults.length > 0) ? null : certificate;
}

function checkRepeated(head: RowReader, row: RowReader): void {
  for (const { heading } of CERTIFICATE_HEAD) {
    const value = row.raw(heading);
    if (value === '' || value === head.raw(heading)) continue;
    row.fault(
      heading,
      `"${head.raw(heading)}" as in line ${head.line}, or blank: one file holds one certificate`,
    );
  }
}

function measuredTool(head: RowReader, lookup: RegisterLookup): string | null {
  const number = head.raw('tool number');
  if (number === '') return null;
  const tool = lookup.tool(number);
  const wanted = head.has('torque') ? 'drive unit' : 'gauge';
  if (tool === null) head.fault('tool number', 'number of a tool on the register');
  else if (tool.data.properties.class !== wanted) {
    head.fault(
      'tool number',
      `a ${wanted}, as the file's columns say; this tool is a ${tool.data.properties.class}`,
    );
  }
  return tool?.id ?? null;
}

function companions(head: RowReader, lookup: RegisterLookup): string[] {
  const numbers = head
    .raw('with tools')
    .split('+')
    .map((number) => number.trim())
    .filter((number) => number !== '');
  return numbers.flatMap((number) => {
    const tool = lookup.tool(number);
    if (tool === null || !COMPANIONS.includes(tool.data.properties.class)) {
      head.fault(
        'with tools',
        `numbers of cassettes and reducers on the register, joined by +; not "${number}"`,
      );
      return [];
    }
    return [tool.id];
  });
}

function torqueMeasured(head: RowReader, rows: readonly RowReader[]) {
  const expandedUncertainty = head.quantity('expanded uncertainty %');
  const coverageFactor = head.number('coverage factor');
  if (expandedUncertainty !== null && coverageFactor === null) {
    head.fault('coverage factor', 'needed when the expanded uncertainty is stated');
  }
  return {
    kind: 'pressure-torque',
    points: rows.map((row) => ({
      pressure: row.quantity('pressure'),
      torque: row.quantity('torque'),
      direction: row.raw('direction') === '' ? 'up' : row.choice('direction', DIRECTIONS),
    })),
    expandedUncertainty,
    // Without a stated uncertainty the factor multiplies nothing; the contract still wants a number.
    coverageFactor: coverageFactor ?? 2,
  };
}

function gaugeMeasured(rows: readonly RowReader[]) {
  return {
    kind: 'gauge',
    points: rows.map((row) => ({
      indicated: row.quantity('indicated'),
      reference: row.quantity('reference'),
    })),
  };
}
