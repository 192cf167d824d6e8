import { expect, test } from 'vitest';
import type { LeakRow } from '../../../core/contract/leak-log.ts';
import { cyclesInput, emptyCycles } from './cycles-form-values.ts';
import { causesNow, causeWords, clockWords, closedWords, cycleWords, positionWords } from './leak-words.ts';
import { START_TERMS, termsInput } from './verify-terms.ts';

const LEAK: LeakRow = {
  id: 'l1',
  origin: 'report',
  jointId: 'j1',
  tag: 'J-1',
  unitName: 'Unit 100',
  happenedAt: '2026-03-16T07:00:00+01:00',
  phase: 'in service',
  clock: 4,
  seenFrom: 'pump side',
  nearBolts: [3, 4],
  boltCount: 12,
  medium: 'condensate',
  rate: null,
  firstCauses: [{ cause: 'load lost', level: 'inferred', why: '' }],
  foundCauses: null,
  action: 'drip tray',
  by: 'A. Person',
  closed: null,
  openFor: 3 * 86_400,
  repeated: false,
};

test('the position says hour, side and bolts; an hour without its side says so', () => {
  expect(positionWords(LEAK)).toBe('4 o’clock, seen from pump side, bolts 3, 4');
  expect(positionWords({ ...LEAK, seenFrom: '', nearBolts: null })).toBe('4 o’clock, side not stated');
  expect(positionWords({ ...LEAK, clock: null, seenFrom: '', nearBolts: [] })).toBe('');
});

test('a cause is never said without how it is known, and what was found later counts', () => {
  expect(causesNow(LEAK).map(causeWords)).toEqual(['load lost (inferred)']);
  const found = [{ cause: 'wrong gasket', level: 'seen', why: 'marking' }] as const;
  expect(causesNow({ ...LEAK, foundCauses: [...found] }).map(causeWords)).toEqual([
    'wrong gasket (seen: marking)',
  ]);
});

test('the repair clock runs until it is closed', () => {
  expect(clockWords(LEAK)).toBe('open 3 days');
  const closed = { eventId: 'e', happenedAt: '2026-03-17T07:00:00+01:00', how: 'soap', done: 'new gasket' };
  expect(clockWords({ ...LEAK, closed, openFor: 86_400 })).toBe('closed after 24 hours');
  expect(closedWords({ ...LEAK, closed })).toBe('new gasket; soap');
});

test('cycles say how much of the time was counted, and what can not be told apart', () => {
  expect(cycleWords({ cycles: 4, partly: 0, covered: 1 })).toBe('4 cycles in all of the time since then');
  expect(cycleWords({ cycles: 1, partly: 3, covered: 0.254 })).toBe(
    '1 cycle in 25 % of the time since then, and of 3 cycles counted across the make-up an unknown part',
  );
});

test('what is no number goes on as it was typed, to be refused by name', () => {
  expect(termsInput({ ...START_TERMS, effect: '0,5', cyclesLimit: ' ' }, 1, 50)).toMatchObject({
    effect: '0,5',
    days: 365,
    cyclesLimit: null,
  });
  const form = { ...emptyCycles('j1', '2026-03-16T07:42'), cycles: 'four', supersedes: '' };
  expect(cyclesInput(form, 'Europe/Berlin')).toMatchObject({
    supersedes: null,
    data: { cycles: 'four', jointIds: ['j1'], happenedAt: '2026-03-16T07:42:00+01:00' },
  });
});
