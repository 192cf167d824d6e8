import { expect, test } from 'vitest';
import {
  freshTightening,
  liveStanding,
  type PassInHand,
  passInHand,
  type TighteningDraft,
  viewOf,
  withDone,
  withLeftOut,
  withoutLast,
  withReading,
  withTriedAgain,
} from './tightening-draft.ts';

const PLAN = [
  { name: 'Snug', steps: [[1], [3], [2], [4]] },
  {
    name: 'Full',
    steps: [
      [1, 3],
      [2, 4],
    ],
  },
];
const recorded = (pass: number) => ({
  pass,
  round: 1,
  boltsDone: [1, 2, 3, 4],
  leftOut: [],
  goRoundAgain: false,
});
const ready: TighteningDraft = {
  ...freshTightening('run', 'setting'),
  crew: ['a'],
  crewKnown: true,
  tagRead: true,
  lookedOver: true,
};
const inPass: PassInHand = { ...passInHand({ pass: 2, round: 1 }), setBy: 'a', startedAt: 'now' };

function view(changes: Partial<TighteningDraft>, stints = [recorded(1)], waiting = false) {
  const draft = { ...ready, ...changes };
  const live = liveStanding(PLAN, stints, draft.pass);
  return viewOf(draft, { live, waiting, byHand: (draft.pass?.pass ?? live.pass) === 1 });
}

test('who, which joint and the look over the tools come before the first number', () => {
  const fresh = freshTightening('run', 'setting');
  expect(view(fresh)).toBe('crew');
  expect(view({ ...fresh, crewKnown: true })).toBe('joint');
  expect(view({ ...fresh, crewKnown: true, tagRead: true })).toBe('tools');
  expect(view({})).toBe('set');
});

test('a pass by hand has nothing to set; a dialled one is set, then confirmed, then turned', () => {
  expect(view({}, [])).toBe('bolt');
  expect(view({ pass: { ...inPass, setBy: null, startedAt: null } })).toBe('set');
  expect(view({ pass: { ...inPass, startedAt: null } })).toBe('confirm');
  expect(view({ pass: inPass })).toBe('bolt');
});

test('a wait stands before its pass until it is over or cut short', () => {
  expect(view({}, [recorded(1)], true)).toBe('wait');
  expect(view({ waitCutShort: true }, [recorded(1)], true)).toBe('set');
});

test('a pass with every bolt gone through is done, also where one was left out', () => {
  const three = withDone(withDone(inPass, [1, 3], 'done'), [2], 'done');
  expect(view({ pass: three })).toBe('bolt');
  expect(view({ pass: withDone(three, [4], 'done') })).toBe('pass done');
  expect(view({ pass: withLeftOut(three, 4, 'cut') })).toBe('pass done');
  expect(view({}, [recorded(1), recorded(2)])).toBe('run done');
});

test('what is asked stands before the bolt; a stop stands before everything', () => {
  expect(view({ pass: inPass, asking: 'reading' })).toBe('reading');
  expect(view({ pass: inPass, asking: 'stop', crewKnown: false })).toBe('stop');
});

test('a record that contradicts the plan is shown as such', () => {
  const twice = [recorded(1), recorded(2)];
  expect(view({ pass: withDone(inPass, [1], 'done') }, twice)).toBe('unclear');
});

test('undo takes back the whole step of several tools, with what was read on it', () => {
  const [, full] = PLAN;
  const read = withReading(withDone(inPass, [1, 3], 'done'), 3, '170');
  expect(withoutLast(withDone(read, [2, 4], 'stood'), full?.steps ?? [])).toEqual(read);
  expect(withoutLast(read, full?.steps ?? [])).toEqual(inPass);
  expect(withoutLast(inPass, full?.steps ?? [])).toBe(inPass);
});

test('a reading typed before the bolt is done stays with it, and an emptied one goes', () => {
  const read = withReading(inPass, 1, '168');
  expect(withDone(read, [1], 'turned').readings).toEqual([{ bolt: 1, outcome: 'turned', text: '168' }]);
  expect(withReading(read, 1, '').readings).toEqual([]);
  expect(withDone(inPass, [1], 'done').readings).toEqual([]);
});

test('a bolt left out is noted with why, and is in again when it is tried again', () => {
  const left = withLeftOut(inPass, 2, 'would not turn');
  expect(left).toMatchObject({ leftOut: [2], readings: [{ bolt: 2, outcome: 'would not turn', text: '' }] });
  expect(withTriedAgain(left, 2)).toEqual(inPass);
});
