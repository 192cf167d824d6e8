import { expect, test } from 'vitest';
import { jointStep } from '../../core/contract/life.ts';
import { stepCautions } from '../../core/text/step-cautions.ts';

const words = (step: (typeof jointStep.options)[number]) =>
  stepCautions(step)
    .map(({ text }) => text)
    .join(' ');

/** Taken at a desk; nobody can be hurt by them. */
const AT_A_DESK = [
  'assess',
  'declare in service',
  'schedule',
  'unschedule',
  'hold',
  'clear hold',
  'witness',
  'close leak watch',
];

test('every step at the joint or the plant has cautions of its own, each with its source', () => {
  const without = jointStep.options.filter((step) => stepCautions(step).length === 0);
  expect(without).toEqual(AT_A_DESK);
  for (const step of jointStep.options) {
    const cautions = stepCautions(step);
    expect(cautions.every(({ text, source }) => text.length > 20 && source.length > 5)).toBe(true);
    expect(new Set(cautions.map(({ text }) => text)).size).toBe(cautions.length);
  }
});

test('nothing here permits: release and isolation defer to the site', () => {
  expect(words('release')).toContain('This step is no permit');
  expect(words('isolate')).toContain('as the site’s procedure says');
  for (const step of jointStep.options)
    expect(words(step)).not.toMatch(/\bis allowed\b|\bmay now\b|is safe to/);
});

test('opening, testing and leaking say what hurts people there', () => {
  expect(words('release')).toContain('Two persons');
  expect(words('break')).toContain('Treat the first opening as live');
  expect(words('test')).toContain('Gas stores far more energy than liquid');
  expect(words('report leak')).toContain('Never feel for a leak');
  expect(words('relaxation pass')).toContain('Nobody tightens a joint that leaks');
});
