import type { Completeness, FieldStanding } from '../contract/record.ts';
import { identityOf } from '../joint/identity.ts';
import { ORIGINS, type Place } from './field.ts';
import { RECORD_FIELDS, type RecordField } from './field-names.ts';
import { FIELDS, requiredFields } from './fields.ts';
import { KNOWN_OF_JOINT } from './known-of-joint.ts';
import { KNOWN_OF_WORK } from './known-of-work.ts';
import type { AssemblyRecord } from './record.ts';

const KNOWN = { ...KNOWN_OF_JOINT, ...KNOWN_OF_WORK };

/**
 * Holds a record against what the class of its joint requires, field by field. What is not known is missing; what
 * does not apply counts as answered when its reason is given and the field is one that can be put aside.
 *
 * Equation: score = answered / required.
 * @param record everything the register holds of one assembly
 * @param required fields required; null for the default of the class
 * @returns each field with its state, why it is asked and where it is entered, and the counts
 * @example completeness(emptyRecord(data, joint), null).heldAgainst // 'critical'
 * @source the minimum of a critical record: ASME PCC-1 (from memory); the rest: rule of this program
 */
export function completeness(record: AssemblyRecord, required: readonly RecordField[] | null): Completeness {
  const heldAgainst = record.criticality ?? 'critical';
  const wanted = new Set(required ?? requiredFields(heldAgainst));
  const reasons = putAside(record);
  const fields = RECORD_FIELDS.map((name) => standing(name, record, wanted.has(name), reasons));
  const asked = fields.filter((each) => each.required);
  return {
    class: record.criticality,
    heldAgainst,
    required: asked.length,
    answered: asked.filter(({ state }) => state !== 'missing').length,
    fields,
  };
}

function standing(
  name: RecordField,
  record: AssemblyRecord,
  required: boolean,
  reasons: ReadonlyMap<RecordField, string>,
): FieldStanding {
  const { group, why, origins, place, minimum, always } = FIELDS[name];
  const known = KNOWN[name](record);
  const reason = always ? null : (reasons.get(name) ?? null);
  return {
    field: name,
    group,
    state: known !== null ? 'known' : reason !== null ? 'not applicable' : 'missing',
    required,
    minimum,
    shown: known ?? reason,
    why,
    origins: origins.map((origin) => ORIGINS[origin]),
    place: placeOf(place),
  };
}

/** Reasons given with the joint and with any step of this assembly. */
function putAside({ joint, steps }: AssemblyRecord): Map<RecordField, string> {
  const given = [
    ...(identityOf(joint).notApplicable ?? []),
    ...Object.values(steps).flatMap((step) => step?.notApplicable ?? []),
  ];
  return new Map([...firstAssembly(steps), ...given.map(({ field, reason }) => [field, reason] as const)]);
}

/** A joint put together for the first time was not broken before. */
function firstAssembly({ assess, break: broken }: AssemblyRecord['steps']): [RecordField, string][] {
  if (assess?.firstAssembly !== 'yes' || broken !== null) return [];
  return RECORD_FIELDS.filter((name) => FIELDS[name].group === 'G').map((name) => [name, 'first assembly']);
}

function placeOf(place: Place): FieldStanding['place'] {
  if (place.startsWith('joint:')) return { at: 'joint', field: place.slice('joint:'.length) };
  if (place.startsWith('step:')) return { at: 'step', step: place.slice('step:'.length) };
  return { at: place as Exclude<Place, `joint:${string}` | `step:${string}`> };
}
