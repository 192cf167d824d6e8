import { expect, test } from 'vitest';
import {
  type ChecklistRow,
  checkData,
  checklistData,
  checkDraft as draftSchema,
} from '../../../core/contract/check.ts';
import { type ToolData, toolData } from '../../../core/contract/tool.ts';
import {
  type CheckForm,
  checkDraft,
  checkFaults,
  checkInput,
  emptyCheck,
  listsFor,
  sentPlace,
} from './check-form-values.ts';

const ID = '018f0000-0000-7000-8000-000000000001';
const NOW = '2026-03-16T08:00';
const bar = (text: string) => ({ text, unit: 'bar' as const });

const tool = (properties: object): ToolData =>
  toolData.parse({ number: 'T-1', serial: '', status: 'available', place: '', remarks: '', properties });
const drive = tool({
  class: 'drive unit',
  ratedTorque: { text: '2000', unit: 'N.m' },
  ratedPressure: { text: '10000', unit: 'psi' },
  family: 'F1',
  headRadius: null,
});
const gauge = tool({
  class: 'gauge',
  scaleMax: bar('1000'),
  graduation: bar('10'),
  accuracy: { text: '1', unit: 'percent' },
});

const list: ChecklistRow = {
  id: ID,
  version: 2,
  data: checklistData.parse({
    name: 'Relief valve',
    kind: 'function',
    classes: ['drive unit'],
    questions: [
      { text: 'Whole?', answer: 'yes or no' },
      { text: 'Opens at', answer: 'pressure', unit: 'bar' },
      { text: 'Strokes', answer: 'number' },
    ],
    source: 'page 4',
    everyDays: null,
    everyUses: null,
  }),
};

const form = (of: ToolData, changes: Partial<CheckForm> = {}): CheckForm => ({
  ...emptyCheck(of, [list], NOW),
  listId: ID,
  personId: ID,
  result: 'passed',
  ...changes,
});
const typed = (...texts: string[]) => ({ [ID]: texts.map((text) => ({ text, unit: 'bar' as const })) });

test('answers are sent in the order of the questions, an open one as not looked at', () => {
  const input = checkInput(
    form(drive, { answers: typed('no', '650', '12.5') }),
    ID,
    drive,
    list,
    'Europe/Berlin',
  );
  expect(checkData.parse(input)).toMatchObject({
    kind: 'function',
    checklist: { id: ID, version: 2 },
    happenedAt: '2026-03-16T08:00:00+01:00',
    answers: [false, 65_000_000, 12.5],
    comparisons: [],
    leak: null,
  });
  const open = checkInput(form(drive), ID, drive, list, 'Europe/Berlin');
  expect(open.answers).toEqual([null, null, null]);
});

test('an answer that is no number is sent as typed and refused at its question, never dropped', () => {
  const input = checkInput(
    form(drive, { answers: typed('yes', '6,5', '') }),
    ID,
    drive,
    list,
    'Europe/Berlin',
  );
  const issues = checkData.safeParse(input).error?.issues ?? [];
  expect(issues.map(({ path }) => path.join('.'))).toEqual(['answers.1']);
  const draft = draftSchema.parse(
    checkDraft(form(drive, { answers: typed('yes', '6,5', '') }), ID, drive, list, '2026-03-16'),
  );
  expect(draft.answers).toEqual([true, null, null]);
});

test('a gauge is compared at what it shows; a half-typed row keeps its gap', () => {
  const compared = form(gauge, {
    listId: 'none',
    kind: 'comparison',
    referenceUnit: 'psi',
    rows: [
      { pressure: '', intended: '', reference: '' },
      { pressure: '', intended: '200', reference: '2900' },
      { pressure: '', intended: '400', reference: '' },
    ],
  });
  const { comparisons } = checkInput(compared, ID, gauge, null, 'Europe/Berlin');
  expect(comparisons).toEqual([
    { pressure: bar('200'), intended: bar('200'), reference: { text: '2900', unit: 'psi' } },
    { pressure: bar('400'), intended: bar('400'), reference: { text: '', unit: 'psi' } },
  ]);
  expect(draftSchema.parse(checkDraft(compared, ID, gauge, null, '2026-03-16')).comparisons[1]).toMatchObject(
    {
      intended: { text: '400' },
      reference: null,
    },
  );
  expect([0, 1, 2].map((at) => sentPlace(compared.rows, at))).toEqual([null, 0, 1]);
});

test('a leak is sent as soon as anything of it was typed', () => {
  const leak = { ...form(drive).leak, minutes: '5' };
  const input = checkInput(form(drive, { listId: 'none', kind: 'leak test', leak }), ID, drive, null, 'UTC');
  expect(input.leak).toMatchObject({ pressure: { text: '', unit: 'psi' }, minutes: 5, fallAdvance: null });
  const visual = checkInput(form(drive, { listId: 'none', kind: 'visual', leak }), ID, drive, null, 'UTC');
  expect(visual.leak).toBeNull();
});

test('only lists in use for the class are offered', () => {
  const retired = { ...list, data: { ...list.data, retired: true } };
  expect(listsFor([list, retired], drive)).toEqual([list]);
  expect(listsFor([list], gauge)).toEqual([]);
});

test('faults stand at the rows of the form, and a unit that is missing is told once', () => {
  const rows = [
    { pressure: '', intended: '', reference: '' },
    { pressure: '', intended: '1', reference: 'x' },
    { pressure: '', intended: '2', reference: '2' },
  ];
  const fault = (field: string) => ({ field, value: 'x', allowed: 'a number' });
  const faults = checkFaults(
    [
      fault('data.comparisons.0.reference'),
      fault('data.comparisons.0.intended.unit'),
      fault('data.comparisons.1.intended.unit'),
      fault('data.result'),
    ],
    rows,
  );
  expect(faults.map(({ field }) => field)).toEqual([
    'data.comparisons.1.reference',
    'data.intendedUnit',
    'data.result',
  ]);
});
