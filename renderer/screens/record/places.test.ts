import { expect, test } from 'vitest';
import { placeOf } from './places.ts';

test('a field of the joint leads to that field of its form', () => {
  expect(placeOf({ at: 'joint', field: 'identity.landmark' }, 'j1')).toEqual({
    words: 'on the joint',
    href: '/joints/j1/edit/identity.landmark',
  });
});

test('what comes with a record of work leads to that record, what comes with a step says which', () => {
  expect(placeOf({ at: 'breakout' }, 'j1').href).toBe('/joints/j1/record/breakout');
  expect(placeOf({ at: 'tightening' }, 'j1').href).toBe('/joints/j1/record/tightening');
  expect(placeOf({ at: 'step', step: 'make up' }, 'j1')).toEqual({
    words: 'with the step “make up”',
    href: '/joints/j1/step/make-up',
  });
});
