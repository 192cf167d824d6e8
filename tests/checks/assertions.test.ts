import { describe, expect, it } from 'vitest';
import { checkAssertions } from './assertions.ts';
import { passed } from './check.ts';
import { CLEAN, plant } from './plant.ts';

const inTest = (text: string) => plant({ 'tests/planted.test.ts': text });
// Put together here, so that this file itself holds no test that is left out.
const call = (...names: string[]) => names.join('.');

describe('tests left out or empty', () => {
  it('passes tests that assert, by themselves or through a function of theirs', async () => {
    const result = await checkAssertions(
      plant({
        ...CLEAN,
        'tests/more.test.ts': [
          'function near(a) { expect(a).toBeCloseTo(1); }',
          'const both = (a) => { near(a); };',
          "it('a', () => { near(1); });",
          "it.each([1])('b', (x) => { both(x); });",
          "test('c', async () => { await fc.assert(property); });",
          "it('d', () => { expectRefused(answer); });",
          "it('a word such as skip or only is no fault', () => { expect('it.only').toBe('it.only'); });",
        ].join('\n'),
      }),
    );
    expect(result).toEqual({ looked: 6, faults: [] });
  });

  it.each([
    call('it', 'skip'),
    call('it', 'only'),
    call('test', 'todo'),
    call('test', 'fixme'),
    call('test', 'describe', 'only'),
    call('describe', 'skip'),
    call('it', 'fails'),
    call('it', 'concurrent', 'skip'),
    `${call('it', 'skip', 'each')}([1])`,
    `${call('it', 'skipIf')}(true)`,
    call('xit'),
    call('fdescribe'),
  ])('finds %s', async (words) => {
    const result = await checkAssertions(inTest(`${words}('a', () => { expect(1).toBe(1); });`));
    expect(result.faults.join('\n')).toMatch(/^tests\/planted\.test\.ts:1 .*a test is run or it is deleted/);
    expect(passed(result)).toBe(false);
  });

  it('finds one left out from inside', async () => {
    const text = `test('a', async () => { ${call('test', 'skip')}(true, 'later'); expect(1).toBe(1); });`;
    expect((await checkAssertions(inTest(text))).faults).toHaveLength(1);
  });

  it.each([
    "it('a', () => { work(); });",
    "it('a', () => {});",
    "it.each([1])('a', (x) => { work(x); });",
    "test('a', async ({ page }) => { await page.click('b'); });",
    "describe('d', () => { it('a', () => { // expect(1)\n }); });",
  ])('finds a test without an assertion: %s', async (text) => {
    expect((await checkAssertions(inTest(text))).faults).toEqual([
      expect.stringMatching(/this test asserts nothing/),
    ]);
  });

  it('fails when there is no test', async () => {
    const result = await checkAssertions(plant({ 'core/area.ts': 'export {};\n' }));
    expect(result).toEqual({ looked: 0, faults: [] });
    expect(passed(result)).toBe(false);
  });
});
