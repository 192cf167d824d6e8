import { describe, expect, test } from 'vitest';
import { method } from '../../core/contract/setting.ts';
import { PASS_PLANS } from '../../core/sequence/plans.ts';
import { stopWords } from '../../core/sequence/stop-words.ts';
import { rulesFor } from '../../core/text/rules.ts';

const others = method.options.filter((each) => each !== 'hydraulic wrench');
const written = PASS_PLANS.flatMap(({ steps }) => steps.map(({ stopWhen }) => stopWhen));

describe('words for people at the joint follow the method', () => {
  test('a hydraulic wrench follows the shipped plans as they are written', () => {
    expect(written.map((words) => stopWords('hydraulic wrench', words))).toEqual(written);
    expect(written.some((words) => words.includes('set pressure'))).toBe(true);
  });

  test.each(others)('%s: no pressure is spoken of where none is dialled', (by) => {
    const words = [
      ...written.map((each) => stopWords(by, each)),
      ...rulesFor(by, 4 * 3600).map(({ text }) => text),
    ];
    expect(words.filter((each) => /set pressure|the pressure is never/.test(each))).toEqual([]);
    expect(stopWords(by, 'as written by the site')).toBe('as written by the site');
  });

  test('what a shipped plan adds to its stop stays', () => {
    const [checked] = written.filter((words) => words.endsWith('check the gap'));
    expect(stopWords('hand torque wrench', checked ?? '')).toMatch(/wrench shows .*; check the gap$/);
  });

  test('a tensioner has no nut to try and keeps the wait', () => {
    expect(rulesFor('tensioner', 4 * 3600).map(({ kind }) => kind)).toEqual(['stop', 'stop', 'dwell']);
    expect(written.map((words) => stopWords('tensioner', words)).join()).not.toMatch(/stroke|no nut turns/);
  });
});
