import { type JointData, jointData } from '../../../core/contract/joint.ts';
import { flangeSizes } from '../../../core/reference/flanges.ts';
import { plainRating, plainSize } from '../../../core/reference/size-names.ts';
import type { Unit } from '../../../core/units/units.ts';
import { GASKET_HEADINGS, gasketOf, pressuresOf } from './joint-gasket.ts';
import { IDENTITY_HEADINGS, identityFromRow, yesOrNo } from './joint-identity.ts';
import type { Quantity, RowReader } from './row.ts';
import { type HeadingOfPath, headingAt, validated } from './validate.ts';

const FLANGE_STANDARDS = ['ASME B16.5', 'ASME B16.47 A', 'ASME B16.47 B', 'EN 1092-1'] as const;
const FACINGS = ['raised face', 'flat face', 'ring joint', 'other'] as const;
const NUT_SERIES = ['ASME B18.2.2 heavy hex', 'ASME B18.2.4.6M heavy hex', 'ISO 4032', 'DIN 934'] as const;
const AREAS = ['tensile', 'root'] as const;
const EVIDENCE = ['published', 'measured', 'assumed'] as const;
const TARGET_MODES = [
  'percent of yield',
  'bolt stress',
  'bolt load',
  'torque',
  'gasket stress',
  'component limits',
] as const;

const NAMED_FLANGE = ['flange standard', 'size', 'class', 'facing'];
const LUBRICANT = [
  'lubricant',
  'lubricant batch',
  'nut factor',
  'nut factor scatter %',
  'nut factor batch scatter %',
  'thread friction',
  'bearing friction',
  'friction evidence',
  'friction source',
];
const TARGET = [
  'target mode',
  'target value',
  'target load kN',
  'target load lbf',
  'target area',
  'target basis',
];

const HEADINGS: HeadingOfPath = {
  tag: 'tag',
  unitId: 'unit',
  location: 'location',
  service: 'service',
  serviceTemperature: 'service temperature',
  'flange.standard': 'flange standard',
  'flange.size': 'size',
  'flange.rating': 'class',
  'flange.facing': 'facing',
  'flange.description': 'flange description',
  flange: 'flange standard',
  'bolting.count': 'stud count',
  'bolting.thread': 'thread',
  'bolting.circle': 'bolt circle',
  'bolting.grade': 'stud grade',
  'bolting.yieldStrength': 'yield strength',
  'bolting.yieldOrigin': 'yield source',
  'bolting.studLength': 'stud length',
  'bolting.grip': 'grip',
  'bolting.nutSeries': 'nut series',
  flangeMaterial: 'flange material',
  'bolting.nutGrade': 'nut grade',
  'bolting.pressureRetaining': 'pressure retaining',
  ...GASKET_HEADINGS,
  ...IDENTITY_HEADINGS,
  'lubricant.name': 'lubricant',
  'lubricant.batch': 'lubricant batch',
  'lubricant.nutFactor': 'nut factor',
  'lubricant.nutFactorCv': 'nut factor scatter %',
  'lubricant.nutFactorBatchCv': 'nut factor batch scatter %',
  'lubricant.frictionThread': 'thread friction',
  'lubricant.frictionBearing': 'bearing friction',
  'lubricant.evidence': 'friction evidence',
  'lubricant.source': 'friction source',
  'target.percent': 'target value',
  'target.stress': 'target value',
  'target.torque': 'target value',
  'target.load': 'target load kN',
  'target.area': 'target area',
  'target.basis': 'target basis',
  'limits.boltStressMax': 'bolt stress max',
  'limits.boltStressMin': 'bolt stress min',
  'limits.boltStressArea': 'limit area',
  'limits.flangeBoltStressMax': 'flange bolt stress max',
  'limits.source': 'limit source',
  'space.radialGap': 'radial gap',
  'space.axialGap': 'gap along the stud',
  remarks: 'remarks',
};

/**
 * One joint from its row. Columns the file does not have keep what the register holds, so that a list with a few
 * columns changes only those.
 */
export function jointFromRow(row: RowReader, unitId: string, existing: JointData | null): JointData | null {
  const candidate = {
    tag: row.raw('tag'),
    unitId,
    location: row.text('location', existing?.location),
    service: row.text('service', existing?.service),
    serviceTemperature: row.quantity('service temperature', existing?.serviceTemperature),
    flange: flange(row, existing),
    identity: identityFromRow(row, existing),
    ...beyondColumns(existing),
    flangeMaterial: row.optional('flange material', existing?.flangeMaterial),
    pressures: pressuresOf(row, existing?.pressures),
    bolting: bolting(row, existing?.bolting),
    gasket: gasketOf(row, existing?.gasket ?? null),
    lubricant: lubricant(row, existing?.lubricant ?? null),
    target: target(row, existing?.target ?? null),
    limits: limits(row, existing?.limits),
    space: {
      radialGap: row.quantity('radial gap', existing?.space.radialGap),
      axialGap: row.quantity('gap along the stud', existing?.space.axialGap),
    },
    remarks: row.text('remarks', existing?.remarks),
  };
  const record = validated(
    jointData,
    candidate,
    (path) => ({ row, heading: headingAt(path, HEADINGS) }),
    'needed',
  );
  return row.faults.length === 0 ? record : null;
}

/** What a joint list has no columns for stays as the register holds it. */
function beyondColumns(existing: JointData | null) {
  if (existing === null) return {};
  const { furtherGaskets, hot, retightening, boltSets } = existing;
  return { furtherGaskets, hot, retightening, boltSets };
}

/**
 * A size or class its standard does not have at all is a slip of the list. A pair that only the tables lack is let
 * through: its values are then not known.
 */
function checkStandardSize(row: RowReader, named: unknown, size: unknown, rating: unknown): void {
  const standard = FLANGE_STANDARDS.find((each) => each === named);
  if (standard === undefined) return;
  const sizes = flangeSizes(standard);
  const ratings = [...new Set(sizes.flatMap((each) => each.ratings))];
  if (typeof size === 'string' && size !== '' && !sizes.some((each) => each.size === plainSize(size))) {
    row.fault('size', `a size of ${standard}: ${sizes.map((each) => each.size).join(', ')}`);
  }
  if (typeof rating === 'string' && rating !== '' && !ratings.includes(plainRating(rating))) {
    row.fault('class', `a class of ${standard}: ${ratings.join(', ')}`);
  }
}

const anyFilled = (row: RowReader, headings: readonly string[]) =>
  headings.some((heading) => row.raw(heading) !== '');
const anyColumn = (row: RowReader, headings: readonly string[]) =>
  headings.some((heading) => row.has(heading));

function flange(row: RowReader, existing: JointData | null) {
  const description = row.raw('flange description');
  const named = anyFilled(row, NAMED_FLANGE);
  if (description !== '' && named) {
    row.fault(
      'flange description',
      'blank beside a flange standard, size, class or facing: a flange has one or the other',
    );
  }
  const siteRow = existing?.flange.kind === 'custom' ? existing.flange.siteRow : null;
  if (description !== '') return { kind: 'custom', description, siteRow };
  if (!named && existing !== null && !anyColumn(row, NAMED_FLANGE)) return existing.flange;
  if (!named) {
    row.fault('flange standard', 'needed, or a flange description for a bolt circle of its own');
  }
  const before = existing?.flange.kind === 'standard' ? existing.flange : null;
  const standard = row.choice('flange standard', FLANGE_STANDARDS, before?.standard);
  const size = row.text('size', before?.size);
  const rating = row.text('class', before?.rating);
  checkStandardSize(row, standard, size, rating);
  return {
    kind: 'standard',
    standard,
    size,
    rating,
    facing: row.choice('facing', FACINGS, before?.facing),
  };
}

function bolting(row: RowReader, before: JointData['bolting'] | undefined) {
  return {
    ...before,
    count: row.number('stud count', before?.count),
    thread: row.optional('thread', before?.thread),
    circle: row.quantity('bolt circle', before?.circle),
    grade: row.optional('stud grade', before?.grade),
    yieldStrength: row.quantity('yield strength', before?.yieldStrength),
    yieldOrigin: row.text('yield source', before?.yieldOrigin),
    studLength: row.quantity('stud length', before?.studLength),
    grip: row.quantity('grip', before?.grip),
    nutSeries: row.choice('nut series', NUT_SERIES, before?.nutSeries),
    nutGrade: row.optional('nut grade', before?.nutGrade),
    pressureRetaining: yesOrNo(row, 'pressure retaining', before?.pressureRetaining ?? null),
  };
}

function lubricant(row: RowReader, before: JointData['lubricant']) {
  if (!anyColumn(row, LUBRICANT)) return before;
  if (!anyFilled(row, LUBRICANT) && row.has('lubricant')) return null;
  const name = row.text('lubricant', before?.name);
  if (name === '' && !anyFilled(row, LUBRICANT)) return null;
  if (name === '') row.fault('lubricant', 'needed when a friction value is given');
  return {
    ...before,
    name,
    batch: row.text('lubricant batch', before?.batch),
    nutFactor: row.quantity('nut factor', before?.nutFactor),
    nutFactorCv: row.quantity('nut factor scatter %', before?.nutFactorCv),
    nutFactorBatchCv: row.quantity('nut factor batch scatter %', before?.nutFactorBatchCv),
    frictionThread: row.quantity('thread friction', before?.frictionThread),
    frictionBearing: row.quantity('bearing friction', before?.frictionBearing),
    // A value nobody vouches for is an assumed one, and the card says so.
    evidence: row.choice('friction evidence', EVIDENCE, before?.evidence) ?? 'assumed',
    source: row.text('friction source', before?.source),
  };
}

function target(row: RowReader, before: JointData['target']) {
  if (!anyColumn(row, TARGET)) return before;
  if (!anyFilled(row, TARGET)) return row.has('target mode') ? null : before;
  const mode = row.choice('target mode', TARGET_MODES, before?.mode);
  if (mode === null) {
    row.fault('target mode', `needed when a target is given; one of: ${TARGET_MODES.join(', ')}`);
    return null;
  }
  const basis = row.text('target basis', before?.basis);
  const area = row.choice('target area', AREAS, before && 'area' in before ? before.area : null);
  if (mode === 'bolt load') return { mode, load: boltLoad(row), basis };
  for (const heading of ['target load kN', 'target load lbf']) {
    if (row.raw(heading) !== '') row.fault(heading, `blank with target mode "${mode}"`);
  }
  if (mode === 'gasket stress' || mode === 'component limits') {
    for (const heading of ['target value', 'target area']) {
      if (row.raw(heading) !== '') row.fault(heading, `blank with target mode "${mode}"`);
    }
    return { mode, basis };
  }
  const value = (unit: Unit, held: Quantity | null) =>
    row.has('target value') ? row.quantityIn('target value', unit) : held;
  if (mode === 'torque') {
    if (row.raw('target area') !== '') row.fault('target area', 'blank with target mode "torque"');
    return { mode, torque: value(row.unit('torque'), before?.mode === mode ? before.torque : null), basis };
  }
  if (mode === 'bolt stress') {
    return {
      mode,
      stress: value(row.unit('stress'), before?.mode === mode ? before.stress : null),
      area,
      basis,
    };
  }
  return { mode, percent: value('percent', before?.mode === mode ? before.percent : null), area, basis };
}

function boltLoad(row: RowReader) {
  if (row.raw('target value') !== '') {
    row.fault(
      'target value',
      'blank with target mode "bolt load": fill "target load kN" or "target load lbf"',
    );
  }
  const inKilonewton = row.quantity('target load kN');
  const inPoundForce = row.quantity('target load lbf');
  if (inKilonewton !== null && inPoundForce !== null) {
    row.fault('target load lbf', 'blank beside "target load kN": one of the two');
  }
  return inKilonewton ?? inPoundForce;
}

function limits(row: RowReader, before: JointData['limits'] | undefined) {
  const boltStressMax = row.quantity('bolt stress max', before?.boltStressMax);
  const boltStressMin = row.quantity('bolt stress min', before?.boltStressMin);
  const area = row.choice('limit area', AREAS, before?.boltStressArea);
  if (area === null && (boltStressMax !== null || boltStressMin !== null)) {
    row.fault('limit area', 'needed when a bolt stress limit is given: tensile or root');
  }
  return {
    ...before,
    boltStressMax,
    boltStressMin,
    // Without a limit the area refers to nothing; the contract still wants one of the two words.
    boltStressArea: area ?? 'tensile',
    flangeBoltStressMax: row.quantity('flange bolt stress max', before?.flangeBoltStressMax),
    source: row.text('limit source', before?.source),
  };
}
