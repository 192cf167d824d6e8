import { identityOf, retainsPressure } from '../joint/identity.ts';
import { describeFlange } from '../text/describe.ts';
import { showEntered, showQuantity } from '../text/number.ts';
import type { Entered } from '../units/entered.ts';
import { answered, countOf, listed, shown, words } from './answers.ts';
import type { RecordField } from './field-names.ts';
import type { FIELDS_OF_JOINT } from './fields-of-joint.ts';
import type { AssemblyRecord } from './record.ts';

/** What the record says of a field, in words; null is not known. */
export type Known<F extends RecordField> = Readonly<Record<F, (record: AssemblyRecord) => string | null>>;

export const KNOWN_OF_JOINT: Known<keyof typeof FIELDS_OF_JOINT> = {
  'joint tag': ({ joint }) => words(joint.tag),
  'tag serials': ({ steps }) => listed(steps['make up']?.tagSerials ?? null),
  'plant unit': ({ unitName }) => words(unitName),
  system: ({ joint }) => words(identityOf(joint).system),
  'line or equipment': ({ joint }) => words(identityOf(joint).line),
  'drawing and revision': ({ joint }) => {
    const { drawing, revision } = identityOf(joint);
    return drawing === '' || revision === '' ? null : `${drawing} rev. ${revision}`;
  },
  landmark: ({ joint }) => {
    const { landmark, direction, distance } = identityOf(joint);
    if (landmark === '') return null;
    return [landmark, distance && showEntered(distance), direction].filter(Boolean).join(', ');
  },
  'side of valve': ({ joint }) => {
    const { valve, valveSide } = identityOf(joint);
    return valve === '' || valveSide === null ? null : `${valveSide} of ${valve}`;
  },
  neighbours: ({ joint }) => listed(identityOf(joint).neighbours),
  'confusable joints': ({ joint }) => listed(identityOf(joint).confusableWith?.map(({ tag }) => tag) ?? null),
  photo: ({ joint }) => (identityOf(joint).photo === null ? null : 'kept with the joint'),
  'joint type': ({ joint }) => identityOf(joint).type,
  'test pack': ({ joint, steps }) => words(steps.test?.pack ?? '') ?? words(identityOf(joint).testPack),
  'isolation boundary': ({ joint, steps }) =>
    words(steps.isolate?.boundary ?? '') ?? words(identityOf(joint).isolationBoundary),

  criticality: ({ criticality }) => criticality,
  'basis of the class': ({ steps }) => words(steps.assess?.basis ?? ''),
  'inspection level': ({ steps }) => words(steps.assess?.inspectionLevel ?? ''),
  // No leak on the register is no answer: the joint may be older than the register.
  'leak history': ({ steps, leaks }) =>
    leaks > 0 ? countOf(leaks, 'leak') : answered(steps.assess?.hasLeaked, 'has leaked', 'no leak known'),

  flange: ({ joint: { flange } }) =>
    flange.kind === 'standard' ? `${describeFlange(flange)}, ${flange.facing}` : flange.description,
  'bolt count': ({ resolved }) => (resolved.boltCount === null ? null : String(resolved.boltCount)),
  thread: ({ resolved }) => resolved.thread?.value.designation ?? null,
  'stud length': ({ resolved }) => millimetres(resolved.studLength?.value),
  'nut series': ({ resolved }) => resolved.nut?.value.series ?? null,
  'grip length': ({ resolved }) => millimetres(resolved.grip?.value),
  washers: ({ steps }) => stated(steps['make up']?.washers),
  'room for the tool': ({ resolved }) => millimetres(resolved.radialGap?.value),
  'pressure-retaining bolts': ({ joint }) => {
    const sets = [joint.bolting, ...joint.boltSets.map(({ bolting }) => bolting)].map(retainsPressure);
    if (sets.includes(null)) return null;
    return sets.map((retains) => (retains === true ? 'yes' : 'no')).join(', ');
  },
  'numbering mark': ({ joint }) => words(identityOf(joint).numberingMark),

  'bolt grade': ({ joint, steps }) => words(steps['make up']?.studs.gradeSeen ?? '') ?? joint.bolting.grade,
  'nut grade': ({ joint, steps }) =>
    words(steps['make up']?.studs.nutGradeSeen ?? '') ?? joint.bolting.nutGrade,
  'stud condition': ({ steps }) => stated(steps['make up']?.studs.condition),
  'stud use count': ({ steps }) => {
    const count = steps['make up']?.studs.useCount ?? null;
    return count === null ? null : countOf(count, 'use');
  },
  'stud batch': (record) => words(record.steps['make up']?.studs.batch ?? '') ?? batchOf(record, 'stud'),
  'stud certificate': ({ steps }) => words(steps['make up']?.studs.certificate ?? ''),
  'stud coating': ({ steps }) => words(steps['make up']?.studs.coating ?? ''),
  'flange material': ({ joint }) => joint.flangeMaterial,
  'gasket type': ({ joint }) => words(joint.gasket?.type ?? ''),
  // The joint's own batch is of the gasket it was entered with, which the break took out.
  'gasket batch': (record) => words(record.steps['make up']?.gasket.batch ?? '') ?? batchOf(record, 'gasket'),
  'gasket stress limits': ({ joint: { gasket } }) => {
    if (gasket === null) return null;
    const { seatingStress, operatingStress, stressMax } = gasket;
    return seatingStress && operatingStress && stressMax
      ? [seatingStress, operatingStress, stressMax].map(showEntered).join(', ')
      : null;
  },

  fluid: ({ joint }) => words(joint.service),
  'fluid hazard': ({ steps }) => listed(steps.assess?.fluidHazards ?? null),
  'pressure and temperature': ({ joint: { pressures } }) => {
    const { design, operating } = pressures;
    const values = [design.pressure, design.temperature, operating.pressure, operating.temperature];
    const known = values.filter((value): value is Entered => value !== null);
    return known.length < values.length ? null : known.map(showEntered).join(', ');
  },
  'bolt temperature': ({ joint, steps }) =>
    shown(joint.hot.boltTemperature) ?? shown(steps['relaxation pass']?.boltTemperature ?? null),
  vibration: ({ steps }) => answered(steps.assess?.vibration, 'yes', 'no'),
  insulated: ({ steps }) => answered(steps.assess?.insulated, 'yes', 'no'),

  'target load and stress': ({ setting }) => {
    const { targetLoad = null, stressTensile = null } = setting?.card ?? {};
    if (targetLoad === null || stressTensile === null) return null;
    return `${showQuantity(targetLoad, 'kN')}, ${showQuantity(stressTensile, 'MPa')} on the tensile area`;
  },
  'basis of the target': ({ joint }) => words(joint.target?.basis ?? ''),
  'stress limits': ({ joint: { limits } }) => shown(limits.boltStressMax),
  friction: ({ joint: { lubricant } }) => {
    if (lubricant === null || lubricant.source === '') return null;
    const { nutFactor, frictionThread, frictionBearing, evidence, source } = lubricant;
    const of = `${evidence}: ${source}`;
    if (nutFactor !== null) return `K ${showEntered(nutFactor)}, ${of}`;
    if (frictionThread === null || frictionBearing === null) return null;
    return `μ ${showEntered(frictionThread)} and ${showEntered(frictionBearing)}, ${of}`;
  },
  'target torque': ({ setting }) => {
    const torque = setting?.card.targetTorque ?? null;
    return torque === null ? null : showQuantity(torque, 'N.m');
  },
  'pass plan': ({ setting }) => words(setting?.card.planName ?? ''),
  'retightening rule': ({ joint }) => words(joint.retightening.procedure),
};

const millimetres = (si: number | undefined) => (si === undefined ? null : showQuantity(si, 'mm'));
const stated = (value: string | undefined) => (value === undefined || value === 'not known' ? null : value);

function batchOf({ tightening }: AssemblyRecord, kind: 'stud' | 'gasket'): string | null {
  const named = tightening?.data.batches.filter((batch) => batch.kind === kind) ?? [];
  return named.length === 0 ? null : named.map(({ number }) => number).join(', ');
}
