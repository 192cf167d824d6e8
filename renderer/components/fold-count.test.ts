import { expect, test } from 'vitest';
import { filledIn } from './fold-count.ts';

const form = {
  gasket: {
    type: 'spiral wound',
    factorM: { text: '3', unit: 'one' },
    stressY: { text: ' ', unit: 'MPa' },
    source: '',
  },
  boltSets: [{ name: 'inner', lubricant: { evidence: 'assumed' } }],
  hot: { source: 'data sheet' },
};

test('only what a person entered counts, not units or choices that always stand', () => {
  expect(filledIn(form, ['gasket.'])).toBe(2);
  expect(filledIn(form, ['gasket.'], ['gasket.type'])).toBe(1);
  expect(filledIn(form, ['gasket.factorM', 'gasket.stressY'])).toBe(1);
  expect(filledIn(form, ['boltSets'])).toBe(1);
  expect(filledIn(form, ['hot'])).toBe(1);
  expect(filledIn(form, ['pressures'])).toBe(0);
});
