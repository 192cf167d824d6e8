import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COMMON_STAIRCASE, type IntervalResult, suggestInterval } from '../../core/calibration/interval.ts';
import { intervalWords } from '../../core/text/interval-words.ts';
import { known } from '../truth/known.ts';
import { anyNumber, anyOrNull, expectSound, real } from './calibration-arbitraries.ts';

describe('suggested interval', () => {
  const bounds = { least: 3, most: 24 };
  const inside: IntervalResult = { verdict: 'accept', share: 0.4 };
  const close: IntervalResult = { verdict: 'accept', share: 0.9 };
  const unsure: IntervalResult = { verdict: 'conditional', share: 0.95 };
  const outside: IntervalResult = { verdict: 'reject', share: 1.3 };

  test.each([
    [[], 12, 'no results'],
    [[inside], 12, 'run too short'],
    [[inside, inside], 15, 'well inside'],
    [[outside, inside, inside], 15, 'well inside'],
    [[inside, inside, close], 12, 'near the limit'],
    [[inside, inside, unsure], 12, 'limit not shown to be kept'],
    [[inside, inside, outside], 6, 'outside the limit'],
    [[inside, inside, { verdict: 'accept', share: 1.3 }], 6, 'outside the limit'],
  ] as const)('%j gives %d months: %s', (results, months, reason) => {
    const found = known(suggestInterval(12, results, COMMON_STAIRCASE, bounds));
    expect(found.suggested).toBe(months);
    expect(found.reason).toBe(reason);
  });

  test('is held between the site’s bounds and says which', () => {
    const results = fc.array(
      fc.record({
        verdict: fc.constantFrom('accept' as const, 'conditional' as const, 'reject' as const),
        share: real(0, 2),
      }),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), results, (present, list) => {
        const found = known(suggestInterval(present, list, COMMON_STAIRCASE, bounds));
        expect(found.suggested).toBeGreaterThanOrEqual(bounds.least);
        expect(found.suggested).toBeLessThanOrEqual(bounds.most);
        const { wellInside, near: between, outside: out } = found.counts;
        expect(wellInside + between + out).toBe(list.length);
        if (list.at(-1)?.verdict === 'reject')
          expect(found.suggested).toBeLessThanOrEqual(Math.max(3, present));
        expect(intervalWords(found, 'months')).toContain('month');
      }),
    );
    expect(known(suggestInterval(22, [inside, inside], COMMON_STAIRCASE, bounds)).bound).toBe('most');
    expect(known(suggestInterval(4, [outside], COMMON_STAIRCASE, bounds)).bound).toBe('least');
  });

  test('words say what changes, why, and what bounds it', () => {
    const words = (present: number, results: readonly IntervalResult[]) =>
      intervalWords(known(suggestInterval(present, results, COMMON_STAIRCASE, bounds)), 'months');
    expect(words(12, [inside, inside])).toBe(
      'Extend from 12 months to 15 months. The last 2 as-found results each used at most 80 % of the limit.',
    );
    expect(words(12, [outside])).toBe(
      'Shorten from 12 months to 6 months. The last as-found error was 130 % of the limit.',
    );
    expect(words(22, [inside, inside])).toContain('The site allows at most 24 months.');
    expect(words(12, [])).toBe('Keep 12 months. No as-found result since this interval was set.');
    expect(words(12, [unsure])).toContain('together reach the limit');
    expect(words(3, [inside, inside])).toContain('less than one whole unit more');
    const uses = known(suggestInterval(1000, [inside, inside], COMMON_STAIRCASE, { least: 1, most: 5000 }));
    expect(intervalWords(uses, 'uses')).toContain('1\u2009250 uses');
  });

  test('no interval in force, or bounds the wrong way round, are gaps', () => {
    expect(suggestInterval(null, [], COMMON_STAIRCASE, bounds).missing[0]?.reason).toBe('missing');
    expect(suggestInterval(12, [], COMMON_STAIRCASE, { least: 24, most: 3 }).value).toBeNull();
  });
});

test('whatever is given, the answer is finite or says what is missing', () => {
  const verdict = fc.constantFrom('accept' as const, 'conditional' as const, 'reject' as const);
  const anyShares = fc.array(fc.record({ verdict, share: anyNumber }), { maxLength: 3 });
  fc.assert(
    fc.property(anyOrNull, anyShares, anyNumber, anyNumber, anyNumber, (present, shares, a, b, c) => {
      const rule = { share: a, extend: b, shorten: c, run: a };
      expectSound(suggestInterval(present, shares, rule, { least: b, most: c }));
      expectSound(suggestInterval(present, shares, COMMON_STAIRCASE, { least: 1, most: 24 }));
    }),
    { numRuns: 1000 },
  );
});
