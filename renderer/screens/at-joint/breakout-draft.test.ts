import { expect, test } from 'vitest';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import {
  type BreakoutDraft,
  breakoutOf,
  breakoutView,
  freshBreakout,
  handedOver,
  nextToLoosen,
} from './breakout-draft.ts';

const ready: BreakoutDraft = {
  ...freshBreakout('setting'),
  crew: ['a'],
  crewKnown: true,
  tagRead: true,
  lookedOver: true,
  setBy: 'a',
  confirmed: true,
};
const broken = (bolt: number, text = '') => ({ bolt, outcome: 'turned' as const, text });

test('who, which joint, the tools and the gauge come before the first nut', () => {
  const fresh = freshBreakout('setting');
  const steps = [
    fresh,
    { ...fresh, crewKnown: true },
    { ...fresh, crewKnown: true, tagRead: true },
    { ...ready, setBy: null },
    { ...ready, confirmed: false },
    ready,
  ];
  expect(steps.map((draft) => breakoutView(draft, 1))).toEqual([
    'crew',
    'joint',
    'tools',
    'set',
    'confirm',
    'bolt',
  ]);
  expect(breakoutView(ready, null)).toBe('done');
  expect(breakoutView({ ...ready, asking: 'stuck' }, 1)).toBe('stuck');
  expect(breakoutView({ ...fresh, asking: 'stop' }, 1)).toBe('stop');
});

test('the next nut is the first of the order that nobody has loosened', () => {
  expect(nextToLoosen([1, 3, 2, 4], [broken(1), broken(2)])).toBe(3);
  expect(nextToLoosen([1, 3], [broken(1), broken(3)])).toBeNull();
});

test('another crew begins with the joint again; who was there before and what was read stays', () => {
  const handed = handedOver({ ...ready, broken: [broken(1, '310')], text: '3' });
  expect(handed).toMatchObject({
    crew: [],
    everybody: ['a'],
    crewKnown: false,
    confirmed: false,
    text: '',
    broken: [broken(1, '310')],
  });
  const issued = {
    id: 'setting',
    input: { tools: {}, method: 'hydraulic wrench', torqueTool: null, boltSet: 0 },
    card: {
      jointId: 'joint',
      kind: 'breakout',
      gauge: { number: 'G-1' },
      passes: [{ dial: { value: 180, unit: 'bar', pressure: 180e5 } }],
    },
  } as unknown as IssuedSetting;
  const record = breakoutOf(
    issued,
    { ...handed, crew: ['b', 'a'], broken: [broken(1, '310'), { bolt: 3, outcome: 'cut', text: '' }] },
    '2028-03-16T09:00:00+01:00',
  );
  expect(record.personIds).toEqual(['a', 'b']);
  expect(record.readings).toEqual([
    { bolt: 1, outcome: 'turned', dialled: { text: '310', unit: 'bar' }, torque: null },
    { bolt: 3, outcome: 'cut', dialled: null, torque: null },
  ]);
});
