import { expect, test } from 'vitest';
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
