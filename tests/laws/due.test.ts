import { describe, expect, test } from 'vitest';
import { checklistData, toolRuleData } from '../../core/contract/check.ts';
import type { AnyTool } from '../../core/setting/input.ts';
import { daysTo, laterBy } from '../../core/tools/calendar.ts';
import { duesOf } from '../../core/tools/due.ts';
import type { ToolFacts, ToolRules } from '../../core/tools/facts.ts';
import { completeInput } from './complete-input.ts';

const { set } = completeInput('tightening');
const [hose] = set.hoses;
if (set.drive === null || hose === undefined) throw new Error('fixture: no drive unit or hose');
const { drive } = set;

const LIST = '018f0000-0000-7000-8000-000000000091';

const NO_RULES: ToolRules = { rules: [], checklists: [] };

const rules = (changes: object): ToolRules => ({
  rules: [
    toolRuleData.parse({
      class: 'drive unit',
      certificateDays: null,
      certificateUses: null,
      dueAt: 'exact day',
      source: 'site procedure 7, edition 2',
      ...changes,
    }),
  ],
  checklists: [],
});

const sealList = (changes: object = {}): ToolRules => ({
  rules: [],
  checklists: [
    {
      id: LIST,
      data: checklistData.parse({
        name: 'Seal inspection',
        kind: 'seal inspection',
        classes: ['drive unit'],
        questions: [{ text: 'Seals dry', answer: 'yes or no' }],
        source: 'instructions of the tool, edition 3',
        everyDays: 180,
        everyUses: 200,
        ...changes,
      }),
    },
  ],
});

const facts = (changes: Partial<ToolFacts> = {}): ToolFacts => ({
  toolId: drive.id,
  uses: { total: 40, sinceCertificate: 12 },
  checks: [],
  openCases: [],
  overload: null,
  kits: [],
  ...changes,
});

const check = (changes: Partial<ToolFacts['checks'][number]> = {}): ToolFacts['checks'][number] => ({
  id: 'a check',
  kind: 'seal inspection',
  checklistId: LIST,
  on: '2026-01-01',
  result: 'passed',
  usesSince: 20,
  ...changes,
});

const due = (
  what: string,
  on: string,
  known: { tool?: AnyTool; facts?: ToolFacts | null; rules?: ToolRules } = {},
) =>
  duesOf(known.tool ?? drive, known.facts ?? null, known.rules ?? NO_RULES, on).find(
    (each) => each.what === what,
  );

describe('certificate', () => {
  test('its own last day counts, to the day', () => {
    expect(due('Certificate', '2027-01-09')).toMatchObject({
      state: 'due soon',
      on: '2027-01-09',
      refuses: true,
    });
    expect(due('Certificate', '2027-01-10')).toMatchObject({ state: 'overdue' });
    expect(due('Certificate', '2026-12-09')?.state).toBe('in date');
    expect(due('Certificate', '2026-12-10')?.state).toBe('due soon');
  });

  test('a shorter rule of the site comes first, to the day or to the end of its month', () => {
    const exact = rules({ certificateDays: 90 });
    expect(due('Certificate', '2026-04-11', { rules: exact })).toMatchObject({
      on: '2026-04-10',
      state: 'overdue',
    });
    const month = rules({ certificateDays: 90, dueAt: 'end of month' });
    expect(due('Certificate', '2026-04-11', { rules: month })).toMatchObject({
      on: '2026-04-30',
      state: 'due soon',
    });
    // A rule longer than the certificate's own day does not draw it out.
    expect(due('Certificate', '2026-04-11', { rules: rules({ certificateDays: 400 }) })?.on).toBe(
      '2027-01-09',
    );
  });

  test('by use: the last use leaves none, and an uncounted use is not a pass', () => {
    const byUse = rules({ certificateUses: 12 });
    expect(due('Certificate', '2026-03-16', { rules: byUse, facts: facts() })).toMatchObject({
      state: 'overdue',
      usesLeft: 0,
    });
    expect(
      due('Certificate', '2026-03-16', { rules: rules({ certificateUses: 200 }), facts: facts() }),
    ).toMatchObject({ state: 'in date', usesLeft: 188 });
    expect(
      due('Certificate', '2026-03-16', { rules: rules({ certificateUses: 13 }), facts: facts() })?.state,
    ).toBe('due soon');
    expect(due('Certificate', '2026-03-16', { rules: byUse })?.state).toBe('not known');
  });

  test('none at all is overdue for a wrench, and nothing for a pump that no rule asks it of', () => {
    const bare = { ...drive, certificates: [] };
    expect(due('Certificate', '2026-03-16', { tool: bare })).toMatchObject({ state: 'overdue', on: null });
    if (set.pump === null) throw new Error('fixture: no pump');
    expect(due('Certificate', '2026-03-16', { tool: set.pump })).toBeUndefined();
    expect(
      due('Certificate', '2026-03-16', {
        tool: set.pump,
        rules: rules({ class: 'pump', certificateDays: 365 }),
      }),
    ).toMatchObject({ state: 'overdue' });
  });
});

describe('checks', () => {
  test('a list counts days and uses, whichever comes first', () => {
    const known = { rules: sealList(), facts: facts({ checks: [check()] }) };
    expect(due('Seal inspection', '2026-06-30', known)).toMatchObject({
      state: 'due soon',
      on: '2026-06-30',
      usesLeft: 180,
    });
    expect(due('Seal inspection', '2026-07-01', known)?.state).toBe('overdue');
    const used = { rules: sealList(), facts: facts({ checks: [check({ usesSince: 200 })] }) };
    expect(due('Seal inspection', '2026-01-02', used)?.state).toBe('overdue');
    expect(
      due('Seal inspection', '2026-01-02', {
        rules: sealList({ everyDays: null }),
        facts: facts({ checks: [check()] }),
      }),
    ).toMatchObject({ on: null, usesLeft: 180, state: 'in date' });
  });

  test('a check nobody recorded is not known; it refuses only where the site says so', () => {
    expect(due('Seal inspection', '2026-01-02', { rules: sealList(), facts: facts() })).toMatchObject({
      state: 'not known',
      refuses: false,
    });
    expect(due('Seal inspection', '2026-01-02', { rules: sealList({ overdue: 'refuse' }) })?.refuses).toBe(
      true,
    );
  });

  test('a retired list, one of another class and one that counts nothing ask nothing', () => {
    for (const changes of [{ retired: true }, { classes: ['pump'] }, { everyDays: null, everyUses: null }]) {
      expect(due('Seal inspection', '2026-01-02', { rules: sealList(changes) })).toBeUndefined();
    }
  });

  test('a failed check stands until one of its kind passes; a comparison until a calibration', () => {
    const failed = { rules: sealList(), facts: facts({ checks: [check({ result: 'failed' })] }) };
    expect(due('Seal inspection', '2026-01-02', failed)).toMatchObject({ state: 'overdue', refuses: true });
    const compared = (on: string) =>
      facts({ checks: [check({ kind: 'comparison', checklistId: null, result: 'failed', on })] });
    expect(due('Comparison', '2026-03-16', { facts: compared('2026-02-01') })?.state).toBe('overdue');
    expect(due('Comparison', '2026-03-16', { facts: compared('2026-01-09') })).toBeUndefined();
    const leak = facts({
      checks: [check({ kind: 'leak test', checklistId: null, result: 'failed', on: '2026-01-01' })],
    });
    expect(due('Leak test', '2026-03-16', { facts: leak })?.refuses).toBe(true);
  });
});

describe('hose, overload and hire', () => {
  const hoseRule = (changes: object) => rules({ class: 'hose', ...changes });

  test('without a rule of the site the common six years warn; a rule of the site refuses', () => {
    expect(due('Hose, age', '2031-01-02', { tool: hose })).toMatchObject({
      state: 'overdue',
      on: '2031-01-01',
      refuses: false,
    });
    const own = { tool: hose, rules: hoseRule({ hoseAgeMonths: 12 }) };
    expect(due('Hose, age', '2026-01-02', own)).toMatchObject({
      state: 'overdue',
      on: '2026-01-01',
      refuses: true,
    });
  });

  test('time in use and test begin on the day that is known, and are not known without it', () => {
    const known = {
      tool: hose,
      rules: hoseRule({ hoseUseMonths: 36, hoseTestMonths: 12, hoseTestFactor: 1.5 }),
    };
    expect(due('Hose, time in use', '2026-01-02', known)?.state).toBe('not known');
    const what = 'Hose, pressure test at 1.5 times the rating';
    expect(due(what, '2026-01-02', known)?.state).toBe('not known');
    const tests = facts({
      checks: [
        check({ kind: 'pressure test', checklistId: null, on: '2025-06-30' }),
        check({ kind: 'pressure test', checklistId: null, on: '2024-06-30' }),
      ],
    });
    expect(due(what, '2026-01-02', { ...known, facts: tests })).toMatchObject({
      on: '2026-06-30',
      state: 'in date',
    });
  });

  test('an overload stands until the register says otherwise', () => {
    const overload = { eventId: 'an event', on: '2026-02-02', text: 'dialled 720 bar, rated 690 bar' };
    expect(due('Overload', '2026-03-16', { facts: facts({ overload }) })).toMatchObject({
      state: 'overdue',
      refuses: true,
    });
    expect(due('Overload', '2026-03-16', { facts: facts() })).toBeUndefined();
  });

  test('a hired tool goes back; without a day that is not known', () => {
    const hired = (returnBy: string | null): AnyTool => ({
      ...drive,
      data: { ...drive.data, owner: { kind: 'hired', from: 'invented hire', returnBy } },
    });
    expect(due('Return to the hirer', '2026-03-16', { tool: hired('2026-03-15') })?.state).toBe('overdue');
    expect(due('Return to the hirer', '2026-03-16', { tool: hired(null) })?.state).toBe('not known');
    expect(due('Return to the hirer', '2026-03-16')).toBeUndefined();
  });
});

test('months end on a day they have', () => {
  expect(laterBy('2024-02-29', { months: 12 })).toBe('2025-02-28');
  expect(laterBy('2026-01-15', { months: 1 }, 'end of month')).toBe('2026-02-28');
  expect(daysTo('2026-12-31', '2027-01-01')).toBe(1);
});
