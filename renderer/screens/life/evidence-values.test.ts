import { describe, expect, test } from 'vitest';
import { jointStep, stepData } from '../../../core/contract/life.ts';
import { emptyEvidence, evidenceInput, type FormEvidence } from './evidence-values.ts';
import type { EvidenceField, EvidenceGroup } from './field-kinds.ts';
import { fieldsOf } from './step-fields.ts';

const ZONE = 'Europe/Berlin';
const PERSON = '00000000-0000-4000-8000-000000000001';

const stepWith = (step: string, evidence: unknown) => ({
  step,
  jointId: PERSON,
  by: PERSON,
  happenedAt: '2026-03-16T07:00:00+01:00',
  evidence,
});

/** Something sound in every field of a form. */
function filled(fields: readonly EvidenceField[]): Record<string, unknown> {
  const form: Record<string, unknown> = {};
  for (const field of fields) {
    const names = field.name.split('.');
    const last = names.pop() ?? '';
    let place = form;
    for (const name of names) {
      place[name] ??= {};
      place = place[name] as Record<string, unknown>;
    }
    place[last] = sound(field);
  }
  return form;
}

function sound(field: EvidenceField): unknown {
  switch (field.kind) {
    case 'answer':
      return 'yes';
    case 'choice':
      return field.options.at(-1);
    case 'quantity':
      return { text: '2', unit: field.unit };
    case 'ticks':
      return { ticked: [field.options[0]] };
    case 'list':
      return { rows: [filled(field.fields)], none: false };
    case 'date':
      return '2026-03-16';
    case 'moment':
      return '2026-03-16T07:00';
    case 'person':
      return PERSON;
    case 'whole':
      return '3';
    case 'bolts':
      return '1, 7';
    default:
      return 'words';
  }
}

describe.each(jointStep.options)('%s', (step) => {
  const groups = fieldsOf(step);

  test('an empty form says nothing that is not known, and the contract takes it', () => {
    const evidence = evidenceInput(emptyEvidence(groups), groups, ZONE);
    const parsed = stepData.safeParse(stepWith(step, evidence));
    expect(parsed.error?.issues).toBeUndefined();
    expect(JSON.stringify(evidence)).not.toMatch(/"yes"|"no"|\d/);
  });

  test('a form with everything in it is taken, and nothing of it is lost', () => {
    const fields = groups.flatMap((group) => group.fields);
    const evidence = evidenceInput(filled(fields) as FormEvidence, groups, ZONE);
    const parsed = stepData.safeParse(stepWith(step, evidence));
    expect(parsed.error?.issues).toBeUndefined();
    const kept = JSON.parse(JSON.stringify(parsed.data?.evidence)) as Record<string, unknown>;
    for (const { name } of fields) {
      const value = name
        .split('.')
        .reduce<unknown>((inner, part) => (inner as Record<string, unknown>)[part], kept);
      expect(value, name).not.toBeNull();
      expect(value, name).not.toEqual([]);
      expect(value, name).not.toBe('');
    }
  });

  test('every field has a name and a label of its own', () => {
    const fields = groups.flatMap((group) => group.fields);
    expect(new Set(fields.map(({ name }) => name)).size).toBe(fields.length);
    expect(new Set(fields.map(({ label }) => label)).size).toBe(fields.length);
  });
});

describe('what is typed', () => {
  const group = (field: EvidenceField): EvidenceGroup[] => [{ legend: '', fields: [field] }];
  const sent = (field: EvidenceField, value: unknown) =>
    evidenceInput({ [field.name]: value } as FormEvidence, group(field), ZONE)[field.name];
  const bolts: EvidenceField = { kind: 'bolts', name: 'a', label: 'A' };

  test('nothing is not known, “none” is looked at and none', () => {
    expect(sent(bolts, '')).toBeUndefined();
    expect(sent(bolts, 'None')).toEqual([]);
    expect(sent(bolts, '3, 12')).toEqual([3, 12]);
    expect(sent(bolts, '3, x')).toEqual([3, 'x']);
  });

  test('a list is empty only where somebody says so', () => {
    const list: EvidenceField = {
      kind: 'list',
      name: 'a',
      label: 'A',
      row: 'row',
      none: 'none',
      fields: [{ kind: 'answer', name: 'b', label: 'B' }],
    };
    expect(sent(list, { rows: [{ b: 'not known' }], none: false })).toBeUndefined();
    expect(sent(list, { rows: [], none: true })).toEqual([]);
    expect(sent(list, { rows: [{ b: 'yes' }], none: true })).toEqual([{ b: 'yes' }]);
  });

  test('ticks of “none” say that it was looked into', () => {
    const ticks: EvidenceField = { kind: 'ticks', name: 'a', label: 'A', options: ['x'], none: 'none' };
    expect(sent(ticks, { ticked: [] })).toBeUndefined();
    expect(sent(ticks, { ticked: ['none'] })).toEqual([]);
    expect(sent(ticks, { ticked: ['x'] })).toEqual(['x']);
  });
});
