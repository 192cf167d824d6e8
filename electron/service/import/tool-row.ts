import {
  type ToolClass,
  type ToolData,
  type ToolProperties,
  toolClass,
  toolData,
} from '../../../core/contract/tool.ts';
import type { Quantity, RowReader } from './row.ts';
import { type HeadingOfPath, headingAt, validated } from './validate.ts';

const STATUSES = toolData.shape.status.options;

/** Columns that mean something for each class; a value under another one would be lost, so it is a fault. */
const COLUMNS_OF: Readonly<Record<ToolClass, readonly string[]>> = {
  'drive unit': ['family', 'rated torque', 'rated pressure', 'head radius'],
  cassette: ['family', 'rated torque', 'head radius', 'opening', 'looseness'],
  reducer: ['rated torque', 'opening', 'looseness', 'outer across flats'],
  pump: ['rated pressure'],
  gauge: ['scale max', 'graduation', 'accuracy % of scale'],
  hose: ['rated pressure', 'made on'],
};
const CLASS_COLUMNS = [...new Set(Object.values(COLUMNS_OF).flat())];

const HEADINGS: HeadingOfPath = {
  number: 'number',
  serial: 'serial',
  status: 'status',
  place: 'place',
  remarks: 'remarks',
  'properties.class': 'class',
  'properties.family': 'family',
  'properties.ratedTorque': 'rated torque',
  'properties.ratedPressure': 'rated pressure',
  'properties.headRadius': 'head radius',
  'properties.acrossFlats': 'opening',
  'properties.looseness': 'looseness',
  'properties.outerAcrossFlats': 'outer across flats',
  'properties.scaleMax': 'scale max',
  'properties.graduation': 'graduation',
  'properties.accuracy': 'accuracy % of scale',
  'properties.madeOn': 'made on',
};

/** One tool from its row; columns the file does not have keep what the register holds. */
export function toolFromRow(row: RowReader, existing: ToolData | null): ToolData | null {
  const kind = row.choice('class', toolClass.options);
  if (kind === null) {
    if (row.raw('class') === '') row.fault('class', `needed; one of: ${toolClass.options.join(', ')}`);
    return null;
  }
  if (existing !== null && existing.properties.class !== kind) {
    row.fault(
      'class',
      `${existing.properties.class}, as on the register: a tool can't become another kind of tool`,
    );
    return null;
  }
  for (const heading of CLASS_COLUMNS) {
    if (row.raw(heading) !== '' && !COLUMNS_OF[kind].includes(heading))
      row.fault(heading, `blank for a ${kind}`);
  }
  const candidate = {
    number: row.raw('number'),
    serial: row.text('serial', existing?.serial),
    status: row.choice('status', STATUSES, existing?.status) ?? 'available',
    place: row.text('place', existing?.place),
    properties: properties(row, kind, existing?.properties ?? null),
    remarks: row.text('remarks', existing?.remarks),
  };
  const record = validated(
    toolData,
    candidate,
    (path) => ({ row, heading: headingAt(path, HEADINGS) }),
    `needed for a ${kind}`,
  );
  return row.faults.length === 0 ? record : null;
}

/** Every property by name, as the register holds it; which ones a class has is decided by the schema. */
type Held = Partial<Record<string, Quantity | string | null>>;

function properties(row: RowReader, kind: ToolClass, existing: ToolProperties | null) {
  const held = (existing ?? {}) as Held;
  const quantity = (heading: string, name: string) =>
    row.quantity(heading, (held[name] ?? null) as Quantity | null);
  const family = row.text('family', (held['family'] ?? '') as string);
  const ratedTorque = () => quantity('rated torque', 'ratedTorque');
  const ratedPressure = () => quantity('rated pressure', 'ratedPressure');
  const headRadius = () => quantity('head radius', 'headRadius');
  const opening = () => ({
    acrossFlats: quantity('opening', 'acrossFlats'),
    looseness: quantity('looseness', 'looseness'),
  });
  switch (kind) {
    case 'drive unit':
      return {
        class: kind,
        family,
        ratedTorque: ratedTorque(),
        ratedPressure: ratedPressure(),
        headRadius: headRadius(),
      };
    case 'cassette':
      return { class: kind, family, ...opening(), ratedTorque: ratedTorque(), headRadius: headRadius() };
    case 'reducer':
      return {
        class: kind,
        outerAcrossFlats: quantity('outer across flats', 'outerAcrossFlats'),
        ...opening(),
        ratedTorque: ratedTorque(),
      };
    case 'pump':
      return { class: kind, ratedPressure: ratedPressure() };
    case 'gauge':
      return {
        class: kind,
        scaleMax: quantity('scale max', 'scaleMax'),
        graduation: quantity('graduation', 'graduation'),
        accuracy: quantity('accuracy % of scale', 'accuracy'),
      };
    case 'hose':
      return {
        class: kind,
        ratedPressure: ratedPressure(),
        madeOn: row.optional('made on', (held['madeOn'] ?? null) as string | null),
      };
  }
}
