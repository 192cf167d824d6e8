import { expect, test } from 'vitest';
import { caseInput, emptyCase } from './case-form-values.ts';

const form = {
  ...emptyCase('a tool', 'certificate:a certificate', '2026-03-16T08:00'),
  personId: 'a person',
};

test('evidence chosen from the list is what the case rests on', () => {
  const sent = caseInput(form, 'Europe/Berlin');
  expect(sent.basis).toEqual({ kind: 'certificate', certificateId: 'a certificate' });
  expect(sent.happenedAt).toBe('2026-03-16T08:00:00+01:00');
});

test('an error in percent is sent as a share, and none as not known', () => {
  const stated = { ...form, evidence: 'statement', text: 'seen' };
  const basis = (text: string) =>
    caseInput({ ...stated, error: { text, unit: 'percent' } }, 'UTC').basis as { error: number | null };
  expect(basis('-8').error).toBeCloseTo(-0.08, 12);
  expect(basis('').error).toBeNull();
});

test('an error that is no number is sent as typed, never as not known', () => {
  const typed = { ...form, evidence: 'statement', error: { text: '8,0', unit: 'percent' as const } };
  expect(caseInput(typed, 'UTC').basis).toMatchObject({ error: '8,0' });
});

test('a batch rests on a statement and bars no tool', () => {
  const sent = caseInput({ ...form, about: 'batch', batchId: 'a batch' }, 'UTC');
  expect(sent).toMatchObject({
    subject: { kind: 'batch', batchId: 'a batch' },
    basis: { kind: 'statement' },
    quarantine: false,
  });
});
