import {
  type CertificateData,
  certificateData,
  type ToolClass,
  type ToolData,
  type ToolProperties,
  toolClass,
} from '../../../core/contract/tool.ts';
import { certificateDoubts } from '../operations/certificate-doubts.ts';
import { CERTIFICATE_HEAD } from './certificate-columns.ts';
import { checkTorquePoints } from './certificate-points.ts';
import type { OnRegister, RegisterLookup } from './lookup.ts';
import type { RowReader } from './row.ts';
import { type Cell, type HeadingOfPath, headingAt, validated } from './validate.ts';

const RESULTS = certificateData.shape.result.options;
const CONDITIONS = certificateData.shape.condition.options;
const DIRECTIONS = ['up', 'down'] as const;
const COMPANIONS: readonly string[] = [
  toolClass.enum.cassette,
  toolClass.enum['square-drive head'],
  toolClass.enum.reducer,
];

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
  method: 'method',
  'environment.temperature': 'temperature',
  'environment.humidity': 'humidity %',
  'decisionRule.limit': 'limit %',
  'decisionRule.guardBand': 'guard band',
  confirmed: 'confirmed',
  remarks: 'remarks',
  'asFound.points': 'torque',
  'measured.points': 'torque',
  'measured.expandedUncertainty': 'expanded uncertainty %',
  'measured.coverageFactor': 'coverage factor',
};

const SERIES = ['as found', 'as left'] as const;

/** Rows of the points taken before adjustment, and of those that settings will rest on. */
interface PointRows {
  readonly measured: readonly RowReader[];
  readonly asFound: readonly RowReader[];
}

/** One certificate from the rows of its file; faults are left at the rows they were found in. */
export function certificateFromRows(
  rows: readonly RowReader[],
  lookup: RegisterLookup,
): CertificateData | null {
  const [head, ...others] = rows;
  if (!head) return null;
  for (const row of others) checkRepeated(head, row);
  const of = pointRows(rows);
  const tool = measuredTool(head, lookup);
  const candidate = {
    number: head.raw('certificate number'),
    toolId: tool?.id ?? null,
    withToolIds: companions(head, lookup),
    laboratory: head.raw('laboratory'),
    calibratedOn: head.raw('calibrated on'),
    validUntil: head.raw('valid until'),
    validityBasis: head.raw('validity basis'),
    result: head.choice('result', RESULTS),
    condition: head.choice('condition', CONDITIONS),
    measured: measuredFrom(head, of.measured),
    asFound: of.asFound.length === 0 ? null : measuredFrom(head, of.asFound),
    method: head.raw('method'),
    environment: environment(head),
    decisionRule: decisionRule(head),
    confirmed: namesIn(head.raw('confirmed')),
    remarks: head.raw('remarks'),
  };
  const certificate = validated(certificateData, candidate, locator(head, of), 'needed');
  if (certificate === null || tool === null) return null;
  if (certificate.validUntil < certificate.calibratedOn) {
    head.fault('valid until', `not before "calibrated on" (${certificate.calibratedOn})`);
  }
  if (certificate.asFound !== null && certificate.condition === 'as found') {
    head.fault(
      'condition',
      'as left: with points as found in the file, the others were taken after adjustment',
    );
  }
  checkPoints(certificate, of);
  if (rows.every(({ faults }) => faults.length === 0)) {
    reportDoubts(certificate, tool.data.properties, head, of, lookup.today);
  }
  return rows.some(({ faults }) => faults.length > 0) ? null : certificate;
}

function pointRows(rows: readonly RowReader[]): PointRows {
  const series = new Map(rows.map((row) => [row, row.choice('condition of the point', SERIES)]));
  const asFound = rows.filter((row) => series.get(row) === 'as found');
  const measured = rows.filter((row) => series.get(row) !== 'as found');
  if (measured.length === 0) {
    rows[0]?.fault(
      'condition of the point',
      'as left for some points; a certificate that has only points as found says so in "condition"',
    );
  }
  return { measured, asFound };
}

function locator(head: RowReader, of: PointRows) {
  return (path: readonly PropertyKey[]): Cell => {
    const [which, list, index, name] = path;
    const series = which === 'asFound' ? of.asFound : of.measured;
    const row = list === 'points' && typeof index === 'number' ? series[index] : undefined;
    return row
      ? { row, heading: pointHeading(head, String(name ?? 'pressure')) }
      : { row: head, heading: headingAt(path, HEADINGS) };
  };
}

function pointHeading(head: RowReader, name: string): string {
  if (name === 'set') return 'set torque';
  if (name === 'uncertainty') return 'point uncertainty';
  return name === 'reference' && head.has('set torque') ? 'reference torque' : name;
}

function checkPoints({ measured, asFound, confirmed }: CertificateData, of: PointRows): void {
  const repeated = confirmed.includes('equal pressures');
  if (measured.kind === 'pressure-torque') checkTorquePoints(measured.points, of.measured, repeated);
  if (asFound?.kind === 'pressure-torque') checkTorquePoints(asFound.points, of.asFound, repeated);
}

/** What a form would refuse or have confirmed; a file confirms in its own column. */
function reportDoubts(
  certificate: CertificateData,
  properties: ToolProperties,
  head: RowReader,
  of: PointRows,
  today: string,
): void {
  for (const { code, refuses, point, series, text } of certificateDoubts(certificate, properties, today)) {
    if (!refuses && certificate.confirmed.includes(code)) continue;
    const rows = series === 'as found' ? of.asFound : of.measured;
    const row = (point === null ? null : rows[point]) ?? head;
    const heading = code === 'dated in the future' ? 'calibrated on' : pointColumn(head);
    const allowed = refuses ? text : `what is right, or "${code}" in the column "confirmed": ${text}`;
    row.fault(heading, allowed);
  }
}

const pointColumn = (head: RowReader) =>
  ['torque', 'reference torque'].find((heading) => head.has(heading)) ?? 'reference';

function environment(head: RowReader) {
  const temperature = head.quantity('temperature');
  const humidity = head.quantity('humidity %');
  return temperature === null && humidity === null ? null : { temperature, humidity };
}

function decisionRule(head: RowReader) {
  const limit = head.quantity('limit %');
  const guardBand = head.choice('guard band', ['yes', 'no']);
  if (limit === null) {
    if (guardBand !== null) head.fault('limit %', 'needed with a guard band');
    return null;
  }
  return { limit, guardBand: guardBand === 'yes' };
}

function namesIn(cell: string): string[] {
  return cell
    .split('+')
    .map((name) => name.trim())
    .filter((name) => name !== '');
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

function measuredTool(head: RowReader, lookup: RegisterLookup): OnRegister<ToolData> | null {
  const number = head.raw('tool number');
  if (number === '') return null;
  const tool = lookup.tool(number);
  const wanted = classMeasured(head);
  if (tool === null) head.fault('tool number', 'number of a tool on the register');
  else if (tool.data.properties.class !== wanted) {
    head.fault(
      'tool number',
      `a ${wanted}, as the file's columns say; this tool is a ${tool.data.properties.class}`,
    );
  }
  return tool;
}

function classMeasured(head: RowReader): ToolClass {
  if (head.has('torque')) return 'drive unit';
  return head.has('set torque') ? 'hand torque wrench' : 'gauge';
}

function measuredFrom(head: RowReader, rows: readonly RowReader[]) {
  switch (classMeasured(head)) {
    case 'drive unit':
      return torqueMeasured(head, rows);
    case 'hand torque wrench':
      return handMeasured(rows);
    default:
      return gaugeMeasured(rows);
  }
}

function companions(head: RowReader, lookup: RegisterLookup): string[] {
  return namesIn(head.raw('with tools')).flatMap((number) => {
    const tool = lookup.tool(number);
    if (tool === null || !COMPANIONS.includes(tool.data.properties.class)) {
      head.fault(
        'with tools',
        `numbers of cassettes, square-drive heads and reducers on the register, joined by +; not "${number}"`,
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
      uncertainty: row.quantity('point uncertainty'),
    })),
    expandedUncertainty,
    // Without a stated uncertainty the factor multiplies nothing; the contract still wants a number.
    coverageFactor: coverageFactor ?? 2,
  };
}

function handMeasured(rows: readonly RowReader[]) {
  return {
    kind: 'hand torque',
    points: rows.map((row) => ({
      set: row.quantity('set torque'),
      reference: row.quantity('reference torque'),
    })),
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
