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

const HEAD_COLUMNS = ['head radius', 'height', 'bore', 'stud room', 'open through', 'reaction arm'];

/** Columns that mean something for each class; a value under another one would be lost, so it is a fault. */
const COLUMNS_OF: Readonly<Record<ToolClass, readonly string[]>> = {
  'drive unit': ['family', 'rated torque', 'rated pressure', 'head radius', 'reaction arm', 'coupling'],
  cassette: ['family', 'rated torque', 'opening', 'looseness', ...HEAD_COLUMNS],
  'square-drive head': ['family', 'rated torque', 'opening', 'looseness', 'square', ...HEAD_COLUMNS],
  reducer: ['rated torque', 'opening', 'looseness', 'outer across flats'],
  pump: ['rated pressure', 'connections', 'coupling'],
  gauge: ['scale max', 'graduation', 'accuracy % of scale', 'also printed'],
  hose: ['rated pressure', 'made on', 'first used on', 'coupling'],
  coupler: ['rated pressure', 'coupling'],
  'counterhold wrench': ['rated torque', 'opening', 'looseness'],
  'hand torque wrench': ['least torque', 'most torque', 'torque graduation', 'square'],
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
  'properties.firstUsedOn': 'first used on',
  'properties.coupling': 'coupling',
  'properties.connections': 'connections',
  'properties.alsoPrinted': 'also printed',
  'properties.height': 'height',
  'properties.bore': 'bore',
  'properties.studRoom': 'stud room',
  'properties.openThrough': 'open through',
  'properties.reactionArm': 'reaction arm',
  'properties.square': 'square',
  'properties.least': 'least torque',
  'properties.most': 'most torque',
  'properties.torqueGraduation': 'torque graduation',
  weight: 'weight kg',
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
  if (existing !== null) checkCustody(row, existing);
  const candidate = {
    number: row.raw('number'),
    serial: row.text('serial', existing?.serial),
    status: row.choice('status', STATUSES) ?? existing?.status ?? 'available',
    place: row.text('place', existing?.place),
    owner: existing?.owner ?? { kind: 'own' },
    weight: row.quantity('weight kg', existing?.weight ?? null),
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

/** A list says what a tool is; where it is and whether it may go out is for the custody desk. */
function checkCustody(row: RowReader, { status, place }: ToolData): void {
  const listed = row.choice('status', STATUSES);
  if (listed !== null && listed !== status) {
    row.fault('status', `${status}, as on the register, or blank: a status changes at the custody desk`);
  }
  const out = status === 'issued' || status === 'at the laboratory';
  if (out && row.has('place') && row.raw('place') !== place) {
    row.fault(
      'place',
      `"${place}", as on the register: it is ${status}, and its place changes with its next move`,
    );
  }
}

/** Every property by name, as the register holds it; which ones a class has is decided by the schema. */
type Held = Partial<Record<string, unknown>>;

const TEXTS = ['family', 'coupling'];
const DATES = ['made on', 'first used on'];

/** The properties of one class, each read from its column. */
function properties(row: RowReader, kind: ToolClass, existing: ToolProperties | null) {
  const held: Held = { ...existing };
  const read = COLUMNS_OF[kind].map((heading) => {
    const name = nameOfHeading(heading);
    return [name, propertyValue(row, heading, held[name])];
  });
  return { class: kind, ...Object.fromEntries(read) };
}

function propertyValue(row: RowReader, heading: string, held: unknown): unknown {
  if (TEXTS.includes(heading)) return row.text(heading, (held ?? '') as string);
  if (DATES.includes(heading)) return row.optional(heading, (held ?? null) as string | null);
  if (heading === 'connections') return row.number(heading, (held ?? 1) as number) ?? 1;
  if (heading === 'open through') {
    const answer = row.choice(heading, ['yes', 'no'], held === true ? 'yes' : 'no');
    return answer === 'yes';
  }
  if (heading === 'also printed') {
    const unit = row.choice(heading, ['bar', 'psi', 'MPa'], heldUnit(held));
    return unit === 'MPa' ? 'MPa_pressure' : unit;
  }
  return row.quantity(heading, (held ?? null) as Quantity | null);
}

const heldUnit = (held: unknown) =>
  held === 'MPa_pressure' ? 'MPa' : ((held ?? null) as 'bar' | 'psi' | null);

function nameOfHeading(heading: string): string {
  const path = Object.entries(HEADINGS).find(([, named]) => named === heading)?.[0];
  if (path === undefined) throw new Error(`the column "${heading}" belongs to no property`);
  return path.replace('properties.', '');
}
