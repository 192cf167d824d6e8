import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { CheckInput } from '../../core/contract/check.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { certify, enterPlant, type TestPlant } from './records.ts';
import {
  check,
  checklistOf,
  checkOf,
  comparisonOf,
  move,
  moveOf,
  q,
  ruleOf,
  saveChecklist,
  saveRule,
  statusOf,
  stepOf,
} from './tool-room.ts';

let started: TestService;
let plant: TestPlant;

beforeEach(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
});
afterEach(() => started.service.close());

const events = async () => (await ask(started, 'register.state', {})).events;
const refused = async (name: string, input: object) => {
  const before = await events();
  const error = await askBadly(started, name, { key: key(), ...input });
  expect(await events()).toBe(before);
  return error;
};
const refusedCheck = (data: unknown) => refused('tool.check', { data });

describe('a comparison', () => {
  test('within its limit passes and leaves the tool where it is', async () => {
    expect(await check(started, comparisonOf(plant, '380'))).toMatchObject({
      version: null,
      quarantined: false,
    });
    expect(await statusOf(started, plant.tools.driveId)).toBe('available');
  });

  test('that failed bars the tool with the same stroke and says so', async () => {
    await move(started, moveOf(plant));
    const before = await events();
    const answer = await check(started, comparisonOf(plant, '353', { result: 'failed' }));
    expect(answer.quarantined).toBe(true);
    expect(await events()).toBe(before + 2);
    expect(await statusOf(started, plant.tools.driveId)).toBe('quarantined');
  });

  test('of a tool that is barred already says that nothing more was done', async () => {
    await move(started, stepOf(plant, 'quarantine', { reason: 'dropped' }));
    const before = await events();
    const answer = await check(started, comparisonOf(plant, '353', { result: 'failed' }));
    expect(answer.quarantined).toBe(false);
    expect(await events()).toBe(before + 1);
  });

  test('sent twice under one key is recorded once', async () => {
    const input = { key: key(), data: comparisonOf(plant, '353', { result: 'failed' }) };
    const first = await ask(started, 'tool.check', input);
    const before = await events();
    expect(await ask(started, 'tool.check', input)).toEqual({ ...first, alreadyRecorded: true });
    expect(await events()).toBe(before);
  });

  // 353 N·m for 384 N·m: 353/384 − 1 = −8.07 %.
  test('can not pass beyond its limit', async () => {
    expect((await refusedCheck(comparisonOf(plant, '353'))).details).toEqual([
      {
        field: 'data.result',
        value: 'passed',
        allowed: 'failed: the largest error is -8.07 %, its limit 4 %',
      },
    ]);
  });

  const pair = { reference: q('384', 'N.m'), intended: q('384', 'N.m') };
  test.each<[string, Partial<CheckInput>, string]>([
    ['without points', { comparisons: [] }, 'data.comparisons'],
    ['without a limit', { limit: null }, 'data.limit'],
    [
      'that is no number',
      { comparisons: [{ ...pair, pressure: q('260', 'bar'), reference: q('38O', 'N.m') }] },
      'data.comparisons.0.reference',
    ],
    ['without its pressure', { comparisons: [{ pressure: null, ...pair }] }, 'data.comparisons.0.pressure'],
    [
      'of pressures on a wrench',
      { comparisons: [{ ...pair, pressure: q('260', 'bar'), intended: q('260', 'bar') }] },
      'data.comparisons.0.intended',
    ],
    [
      'with nothing',
      { comparisons: [{ ...pair, pressure: q('260', 'bar'), intended: q('0', 'N.m') }] },
      'data.comparisons.0.intended',
    ],
    ['in a visual check', { kind: 'visual' }, 'data.comparisons'],
    ['later than now', { happenedAt: '2026-03-17T09:00:00+01:00' }, 'data.happenedAt'],
    ['of no tool', { toolId: '00000000-0000-7000-8000-000000000001' }, 'data.toolId'],
    ['by nobody', { personId: '00000000-0000-7000-8000-000000000001' }, 'data.personId'],
  ])('%s is refused by name', async (_, changes, field) => {
    expect((await refusedCheck(comparisonOf(plant, '384', changes))).details).toMatchObject([{ field }]);
  });

  test('of a pump is refused: it shows nothing to compare', async () => {
    const data = comparisonOf(plant, '384', { toolId: plant.tools.pumpId ?? '' });
    expect((await refusedCheck(data)).details).toMatchObject([
      { field: 'data.kind', allowed: expect.stringContaining('a pump shows nothing') },
    ]);
  });
});

test('a leak test keeps what the pressure fell by; it can not fall by more than was held', async () => {
  const leak = {
    pressure: q('700', 'bar'),
    minutes: 5,
    fallAdvance: q('6', 'bar'),
    fallRetract: q('0', 'bar'),
  };
  await check(started, checkOf(plant, { kind: 'leak test', leak }));
  const more = { ...leak, fallRetract: q('701', 'bar') };
  expect((await refusedCheck(checkOf(plant, { kind: 'leak test', leak: more }))).details).toMatchObject([
    { field: 'data.leak.fallRetract', value: '701 bar' },
  ]);
  expect((await refusedCheck(checkOf(plant, { leak }))).details).toMatchObject([{ field: 'data.leak' }]);
});

describe('a check by a list', () => {
  const followed = async (answers: CheckInput['answers'], changes: Partial<CheckInput> = {}) => {
    const { id } = await saveChecklist(started, checklistOf());
    return checkOf(plant, { checklist: { id, version: 1 }, answers, ...changes });
  };

  test('with every answer as it should be passes', async () => {
    expect(await check(started, await followed([true, 12]))).toMatchObject({ quarantined: false });
  });

  test.each([
    ['a question without an answer', [true, null], 'data.answers.1'],
    ['a no', [false, 12], 'data.answers.0'],
    ['a number below its range', [true, 7], 'data.answers.1'],
    ['a number above its range', [true, 17], 'data.answers.1'],
    ['a number for yes or no', [1, 12], 'data.answers.0'],
    ['too few answers', [true], 'data.answers'],
  ])('does not pass with %s', async (_, answers, field) => {
    expect((await refusedCheck(await followed(answers))).details).toMatchObject([{ field }]);
  });

  test('that failed keeps what was not answered, but no answer of the wrong kind', async () => {
    expect((await refusedCheck(await followed([true, true], { result: 'failed' }))).details).toMatchObject([
      { field: 'data.answers.1' },
    ]);
  });

  test('that failed bars the tool', async () => {
    expect(await check(started, await followed([false, null], { result: 'failed' }))).toMatchObject({
      quarantined: true,
    });
  });

  test('keeps to the list’s kind, class and versions', async () => {
    const data = await followed([true, 12]);
    const list = data.checklist ?? { id: '', version: 1 };
    expect((await refusedCheck({ ...data, kind: 'visual' })).details).toMatchObject([{ field: 'data.kind' }]);
    expect((await refusedCheck({ ...data, toolId: plant.tools.pumpId })).details).toMatchObject([
      { field: 'data.checklist.id', value: 'Seals and ratchet' },
    ]);
    expect((await refusedCheck({ ...data, checklist: { ...list, version: 2 } })).details).toMatchObject([
      { field: 'data.checklist.version', value: '2' },
    ]);
    expect((await refusedCheck({ ...data, checklist: null })).details).toMatchObject([
      { field: 'data.answers' },
    ]);
  });

  test('may follow the version that was in force when it was done', async () => {
    const data = await followed([true, 12]);
    const { id } = data.checklist ?? { id: '' };
    const shorter = checklistOf({ questions: [{ text: 'In one piece?', answer: 'yes or no' }] });
    await ask(started, 'checklist.save', { key: key(), id, version: 1, data: shorter });
    await check(started, data);
    await check(started, { ...data, checklist: { id, version: 2 }, answers: [true] });
    const wrong = { ...data, checklist: { id, version: 2 } };
    expect((await refusedCheck(wrong)).details).toMatchObject([{ field: 'data.answers' }]);
  });
});

describe('a check that is being entered', () => {
  const draft = { on: '2026-03-16', checklist: null, answers: [], limit: q('4', 'percent') };
  const at = (reference: string | null) => ({
    pressure: q('260', 'bar'),
    intended: q('384', 'N.m'),
    reference: reference === null ? null : q(reference, 'N.m'),
  });
  const assess = (data: object) =>
    ask(started, 'check.assess', {
      data: { ...draft, toolId: plant.tools.driveId ?? '', comparisons: [], ...data },
    });

  test('says how far each comparison is off, whether it keeps the limit, and what is still open', async () => {
    // 353/384 − 1 = −8.07 %; 380/384 − 1 = −1.04 %.
    const { comparisons, against } = await assess({ comparisons: [at('353'), at('380'), at(null)] });
    expect(comparisons.map(({ error }) => error && Number(error.toFixed(4)))).toEqual([
      -0.0807,
      -0.0104,
      null,
    ]);
    expect(comparisons.map(({ withinLimit }) => withinLimit)).toEqual([false, true, null]);
    expect(against).toEqual(['comparison 1: error −8.07 %, limit ± 4 %']);
    const open = await assess({ limit: null, comparisons: [at('353')] });
    expect(open).toMatchObject({ comparisons: [{ withinLimit: null }], against: [] });
  });

  test('reads what a wrench should give off the line of the certificate in force on that day', async () => {
    const before = await assess({ comparisons: [at('380')] });
    expect(before).toMatchObject({ certificate: null, comparisons: [{ byCertificate: null }] });
    await certify(started, plant);
    const { certificate, comparisons } = await assess({ comparisons: [at('380')] });
    expect(certificate).toBe('C-1');
    // Worked joint A: T = −5.73 + 1.4996 p, so 384.2 N·m at 260 bar.
    expect(comparisons[0]?.byCertificate).toBeCloseTo(384.2, 1);
    expect(await assess({ on: '2025-12-31', comparisons: [at('380')] })).toMatchObject({ certificate: null });
  });

  test('names the questions that keep it from passing, and records nothing', async () => {
    const { id } = await saveChecklist(started, checklistOf());
    const before = await events();
    const { against } = await assess({ checklist: { id, version: 1 }, answers: [false, null] });
    expect(against).toEqual([
      'yes to "Advances and retracts fully?", or the check has not passed',
      'an answer to "Strokes to a full turn", or the check has not passed',
    ]);
    expect(await events()).toBe(before);
  });
});

describe('a measured question', () => {
  const pressed = (unit: 'psi' | null) =>
    checklistOf({
      name: `Relief valve ${unit}`,
      questions: [{ text: 'Opens at', answer: 'pressure', least: 6e7, most: 7e7, unit }],
    });

  test.each([
    // 7.5e7 Pa is 750 bar; over 6894.757 Pa it is 10 878 psi (NIST SP 811, Appendix B).
    [null, '750 bar', 'at least 600 bar and at most 700 bar'],
    ['psi' as const, '10\u2009877.8 psi', 'at least 8\u2009702.26 psi and at most 10\u2009152.6 psi'],
  ])('asked in %s is answered for in that unit', async (unit, value, allowed) => {
    const { id } = await saveChecklist(started, pressed(unit));
    const error = await refusedCheck(checkOf(plant, { checklist: { id, version: 1 }, answers: [7.5e7] }));
    expect(error.details).toMatchObject([{ value, allowed: expect.stringContaining(allowed) }]);
  });

  test('bears a unit of what it asks for', async () => {
    const data = checklistOf({ questions: [{ text: 'Opens at', answer: 'pressure', unit: 'N.m' }] });
    expect((await refused('checklist.save', { id: null, version: null, data })).details).toMatchObject([
      { field: 'data.questions.0.unit' },
    ]);
  });
});

describe('checklists', () => {
  test('are listed by name, retired ones too, and edited by version', async () => {
    const { id } = await saveChecklist(started, checklistOf());
    await saveChecklist(started, checklistOf({ name: 'Hose, by eye', kind: 'visual', classes: ['hose'] }));
    const edit = { key: key(), id, version: 1, data: checklistOf({ retired: true }) };
    expect(await ask(started, 'checklist.save', edit)).toMatchObject({ version: 2 });
    const { rows, total } = await ask(started, 'checklist.list', {});
    expect(total).toBe(2);
    expect(rows.map(({ data }) => [data.name, data.retired])).toEqual([
      ['Hose, by eye', false],
      ['Seals and ratchet', true],
    ]);
    expect((await refused('checklist.save', { ...edit, key: key() })).code).toBe('conflict');
  });

  test('bear a name once, keep their kind and name each class once', async () => {
    const { id } = await saveChecklist(started, checklistOf());
    const fresh = { id: null, version: null };
    expect(
      await refused('checklist.save', { ...fresh, data: checklistOf({ name: 'SEALS and ratchet' }) }),
    ).toMatchObject({ code: 'duplicate', details: [{ field: 'data.name' }] });
    expect(
      (await refused('checklist.save', { id, version: 1, data: checklistOf({ kind: 'visual' }) })).details,
    ).toMatchObject([{ field: 'data.kind' }]);
    const twice = checklistOf({ name: 'x', classes: ['hose', 'hose'] });
    expect((await refused('checklist.save', { ...fresh, data: twice })).details).toMatchObject([
      { field: 'data.classes' },
    ]);
  });

  test('that change nothing make no event', async () => {
    const { id } = await saveChecklist(started, checklistOf());
    const before = await events();
    await ask(started, 'checklist.save', { key: key(), id, version: 1, data: checklistOf() });
    expect(await events()).toBe(before);
  });
});

describe('rules for tools', () => {
  test('are one for each class, edited by version', async () => {
    const { id } = await saveRule(started, ruleOf());
    const edit = { key: key(), id, version: 1, data: ruleOf({ certificateDays: 180 }) };
    expect(await ask(started, 'toolRule.save', edit)).toMatchObject({ version: 2 });
    const { rows } = await ask(started, 'toolRule.list', {});
    expect(rows.map(({ data }) => [data.class, data.certificateDays])).toEqual([['drive unit', 180]]);
    expect((await refused('toolRule.save', { ...edit, key: key() })).code).toBe('conflict');
    const again = { id: null, version: null, data: ruleOf() };
    expect(await refused('toolRule.save', again)).toMatchObject({
      code: 'duplicate',
      details: [{ field: 'data.class', value: 'drive unit' }],
    });
  });

  test.each([
    ['a hose rule for a wrench', ruleOf({ hoseAgeMonths: 72 }), 'data.hoseAgeMonths'],
    [
      'a test factor without its months',
      ruleOf({ class: 'hose', hoseTestFactor: 1.5 }),
      'data.hoseTestMonths',
    ],
    [
      'agreement of lines for a gauge',
      ruleOf({ class: 'gauge', lineAgreement: q('3', 'percent') }),
      'data.lineAgreement',
    ],
    ['no source', ruleOf({ source: ' ' }), 'data.source'],
  ])('%s is refused by name', async (_, data, field) => {
    const input = { id: null, version: null, data };
    expect((await refused('toolRule.save', input)).details).toMatchObject([{ field }]);
  });

  test('stay with their class', async () => {
    const { id } = await saveRule(started, ruleOf());
    const input = { id, version: 1, data: ruleOf({ class: 'gauge' }) };
    expect((await refused('toolRule.save', input)).details).toMatchObject([{ field: 'data.class' }]);
  });
});
