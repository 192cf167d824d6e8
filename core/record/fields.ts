import type { Criticality } from '../contract/assembly.ts';
import type { Field } from './field.ts';
import { RECORD_FIELDS, type RecordField } from './field-names.ts';
import { FIELDS_OF_JOINT } from './fields-of-joint.ts';
import { FIELDS_OF_WORK } from './fields-of-work.ts';

/** Each field with its group, why it is asked, where it is entered, and from which class on it is required. */
export const FIELDS: Readonly<Record<RecordField, Field>> = { ...FIELDS_OF_JOINT, ...FIELDS_OF_WORK };

/** Classes from the least demanding to the most. */
const CLASSES: readonly Criticality[] = ['mild', 'intermediate', 'critical'];

/**
 * Fields a class requires by default; a site's own rule may require others.
 *
 * @param criticality class of the joint
 * @returns names in the order of the record
 * @example requiredFields('mild').includes('gasket new') // true
 * @source the minimum of a critical record: ASME PCC-1 (from memory); the rest: rule of this program
 */
export function requiredFields(criticality: Criticality): RecordField[] {
  const reached = CLASSES.indexOf(criticality);
  return RECORD_FIELDS.filter((name) => {
    const { from } = FIELDS[name];
    return from !== null && CLASSES.indexOf(from) <= reached;
  });
}
