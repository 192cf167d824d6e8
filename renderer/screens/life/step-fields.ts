import type { JointStep } from '../../../core/contract/life.ts';
import { RECORD_FIELDS } from '../../../core/record/field-names.ts';
import { FIELDS } from '../../../core/record/fields.ts';
import type { EvidenceGroup } from './field-kinds.ts';
import { CLOSING_FIELDS } from './fields-closing.ts';
import { OPENING_FIELDS } from './fields-opening.ts';

/** What may be said with every step. */
const COMMON: EvidenceGroup = {
  legend: 'For whoever comes next',
  folded: true,
  fields: [
    { kind: 'long', name: 'problems', label: 'What went otherwise, and how it was met' },
    { kind: 'long', name: 'advice', label: 'What the next crew should know' },
    { kind: 'text', name: 'references', label: 'References', hint: 'Deviations, management of change' },
  ],
};

/** Everything a step asks for, in the order it is filled in. */
export function fieldsOf(step: JointStep): readonly EvidenceGroup[] {
  const own = OPENING_FIELDS[step] ?? CLOSING_FIELDS[step] ?? [];
  return [...own, ...putAside(step), COMMON];
}

/** Fields of the record that are entered with this step and may be said not to apply, each with its reason. */
function putAside(step: JointStep): EvidenceGroup[] {
  const names = RECORD_FIELDS.filter((name) => FIELDS[name].place === `step:${step}` && !FIELDS[name].always);
  if (names.length === 0) return [];
  return [
    {
      legend: 'Does not apply here',
      folded: true,
      fields: [
        {
          kind: 'list',
          name: 'notApplicable',
          label: 'What does not apply',
          row: 'field',
          fields: [
            { kind: 'choice', name: 'field', label: 'Field', options: names },
            { kind: 'text', name: 'reason', label: 'Why it does not apply' },
          ],
        },
      ],
    },
  ];
}
