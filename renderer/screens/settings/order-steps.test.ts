import { expect, test } from 'vitest';
import type { SettingCard } from '../../../core/contract/setting.ts';
import { passSteps } from '../../../core/sequence/pass-steps.ts';
import { boltWords } from '../../../core/text/bolts.ts';
import { back, forward, type Place } from './order-steps.ts';

const steps = [
  [1, 3, 2, 4],
  [1, 2, 3, 4],
];

test('forward visits every bolt of every pass once and stays at the last', () => {
  const walked: number[] = [];
  let place: Place = { pass: 0, step: 0 };
  for (let count = 0; count < 8; count++) {
    walked.push(steps[place.pass]?.[place.step] ?? 0);
    place = forward(place, steps);
  }
  expect(walked).toEqual([1, 3, 2, 4, 1, 2, 3, 4]);
  expect(forward(place, steps)).toEqual({ pass: 1, step: 3 });
});

test('back undoes forward', () => {
  let place: Place = { pass: 0, step: 0 };
  const places = [place];
  for (let count = 0; count < 7; count++) {
    place = forward(place, steps);
    places.push(place);
  }
  for (const expected of places.slice(0, -1).reverse()) {
    place = back(place, steps);
    expect(place).toEqual(expected);
  }
  expect(back(place, steps)).toEqual({ pass: 0, step: 0 });
});

type Pass = SettingCard['passes'][number];
const pass = (order: Pass['order'], tools: Pass['tools'] = 1, groups: number[][] | null = null): Pass => ({
  name: order,
  order,
  tools,
  groups,
  set: null,
  fraction: 1,
  dial: null,
  torque: null,
  load: null,
  stopWhen: '',
});
const one = {
  boltCount: 4,
  order: {
    groups: [
      [1, 3],
      [2, 4],
    ],
    origin: 'own rule' as const,
    source: '',
  },
  passes: [pass('by hand'), pass('star'), pass('circular')],
  toolOrder: null,
};

test('one tool follows the star, then the circle', () => {
  expect(passSteps(one)).toEqual([
    [[1], [3], [2], [4]],
    [[1], [3], [2], [4]],
    [[1], [2], [3], [4]],
  ]);
});

test('several tools turn together in the star passes only, and one may wait', () => {
  const toolOrder = {
    tools: 2,
    steps: [
      [1, 3],
      [2, null],
    ],
    exact: false,
    source: '',
  };
  const passes = [pass('by hand'), pass('star', 2), pass('circular')];
  const [byHand, star, circular] = passSteps({ ...one, passes, toolOrder });
  expect(byHand).toEqual([[1], [3], [2], [4]]);
  expect(star).toEqual([
    [1, 3],
    [2, null],
  ]);
  expect(circular).toHaveLength(4);
  expect(boltWords([1, 3])).toBe('bolts 1 and 3');
  expect(boltWords([2, null])).toBe('bolt 2');
});

test('groups of neighbours are turned group by group, and an order that is not known has no steps', () => {
  const passes = [
    pass('groups', 1, [
      [1, 2],
      [3, 4],
    ]),
    pass('groups'),
  ];
  expect(passSteps({ ...one, passes })).toEqual([[[1], [2], [3], [4]], []]);
});
