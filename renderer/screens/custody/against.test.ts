import { expect, test } from 'vitest';
import type { KitRow } from '../../../core/contract/custody.ts';
import { type AtDesk, against } from './against.ts';

const tool: AtDesk = { id: 'w', data: { status: 'available' }, due: [], cases: [] };
const kit = (id: string, from: string, to: string, closed = false): KitRow => ({
  id,
  version: 1,
  data: { name: `Kit ${id}`, reference: '', jointIds: [], from, to, toolIds: ['w'], remarks: '', closed },
  tools: [],
  joints: [],
  clashes: [],
});
const issue = { step: 'issue', kitId: null, on: '2026-03-16' } as const;

test('nothing stands against a tool that is at hand, free and in date', () => {
  expect(against(tool, [], issue)).toEqual([]);
});

test('a step that does not follow from the status is barred, with the reason', () => {
  const [first] = against({ ...tool, data: { status: 'quarantined' } }, [], issue);
  expect(first?.bars).toBe(true);
  expect(first?.text).toContain('quarantined');
});

test('on the days of a kit the tool goes out with that kit only', () => {
  const mine = kit('a', '2026-03-16', '2026-03-18');
  expect(against(tool, [mine], issue)).toMatchObject([{ bars: true }]);
  expect(against(tool, [mine], { ...issue, kitId: 'a' })).toEqual([]);
});

test('a kit of later days is told and bars nothing; a past or closed one is not told', () => {
  expect(against(tool, [kit('a', '2026-03-17', '2026-03-18')], issue)).toMatchObject([
    { bars: false, text: expect.stringContaining('Kit a') },
  ]);
  expect(against(tool, [kit('a', '2026-03-01', '2026-03-15')], issue)).toEqual([]);
  expect(against(tool, [kit('a', '2026-03-16', '2026-03-18', true)], issue)).toEqual([]);
});

test('what is due and an open case are told when the tool goes out, and not when it comes back', () => {
  const due: AtDesk['due'][number] = {
    toolId: 'w',
    number: 'W-03',
    class: 'drive unit',
    status: 'available',
    what: 'Certificate',
    state: 'overdue',
    on: '2026-03-01',
    usesLeft: null,
    reason: '',
    neededFor: null,
  };
  const doubtful: AtDesk = { ...tool, due: [due], cases: [{ number: 'C-1', state: 'open' }] };
  expect(against(doubtful, [], issue).map(({ text }) => text)).toEqual([
    'Case C-1 is open on it.',
    'Certificate, was due 1 Mar 2026',
  ]);
  expect(against({ ...doubtful, data: { status: 'issued' } }, [], { ...issue, step: 'return' })).toEqual([]);
});

test('a tool with an open case stays in quarantine', () => {
  const barred: AtDesk = {
    ...tool,
    data: { status: 'quarantined' },
    cases: [{ number: 'C-1', state: 'open' }],
  };
  const release = { ...issue, step: 'release from quarantine' } as const;
  expect(against(barred, [], release)).toMatchObject([
    { bars: true, text: 'Case C-1 is open. Close it first.' },
  ]);
  expect(against({ ...barred, cases: [{ number: 'C-1', state: 'closed' }] }, [], release)).toEqual([]);
});

test('what is not known is told like something that is due', () => {
  const unknown: AtDesk = {
    ...tool,
    due: [
      {
        toolId: 'w',
        number: 'W-03',
        class: 'drive unit',
        status: 'available',
        what: 'Certificate',
        state: 'not known',
        on: null,
        usesLeft: null,
        reason: '',
        neededFor: null,
      },
    ],
  };
  expect(against(unknown, [], issue)).toMatchObject([{ due: 'not known', text: 'Certificate' }]);
});
