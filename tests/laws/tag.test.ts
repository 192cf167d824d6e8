import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearTags, readAlike, sisterPart, tagDistance, tagParts } from '../../core/joint/tag.ts';

const tag = fc
  .array(fc.constantFrom(...'abz019-'), { minLength: 1, maxLength: 9 })
  .map((signs) => signs.join(''));

/** The distance by its own definition, worked out without a table: the least over every first slip. */
function distanceByDefinition(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length;
  const [x, y] = [a[0], b[0]];
  const rest = distanceByDefinition(a.slice(1), b.slice(1)) + (x === y ? 0 : 1);
  const options = [rest, distanceByDefinition(a.slice(1), b) + 1, distanceByDefinition(a, b.slice(1)) + 1];
  if (a.length > 1 && b.length > 1 && x === b[1] && a[1] === y) {
    options.push(distanceByDefinition(a.slice(2), b.slice(2)) + 1);
  }
  return Math.min(...options);
}

describe('slips between two tags', () => {
  test('are counted as their definition says', () => {
    const short = fc.string({ unit: fc.constantFrom(...'ab01'), maxLength: 5 });
    fc.assert(
      fc.property(short, short, (a, b) => {
        expect(tagDistance(a, b)).toBe(distanceByDefinition(a, b));
      }),
    );
  });

  test('are as many from here to there as back, and none for one tag in two spellings', () => {
    fc.assert(
      fc.property(tag, tag, (a, b) => {
        expect(tagDistance(a, b)).toBe(tagDistance(b, a));
        expect(tagDistance(a, a.toUpperCase())).toBe(0);
      }),
    );
    expect(tagDistance('J-0412', 'J-0421')).toBe(1);
    expect(tagDistance('J-0412', 'J-412')).toBe(1);
    expect(tagDistance('J-0412', 'K-0413')).toBe(2);
  });

  test('every tag one slip away is among those looked up', () => {
    fc.assert(
      fc.property(tag, tag, (a, b) => {
        if (tagDistance(a, b) === 1) expect(nearTags(a)).toContain(b);
      }),
    );
    expect(nearTags('J-0412')).toEqual(expect.arrayContaining(['j-0421', 'j-041', 'j-04123', 'k-0412']));
  });

  test('the tag itself is not looked up', () => {
    fc.assert(
      fc.property(tag, (a) => {
        expect(nearTags(a)).not.toContain(a);
      }),
    );
  });
});

test('a tag is taken apart into letters, figures and what parts them', () => {
  expect(tagParts('HX-310 N3')).toEqual(['hx', '-', '310', ' ', 'n', '3']);
  expect(tagParts('8"-P-1001')).toEqual(['8', '"-', 'p', '-', '1001']);
});

test.each([
  ['P-1O1', 'P-101', true],
  ['FV-5B', 'FV-58', true],
  ['L-I01', 'L-101', true],
  ['P-101', 'P-101', false],
  ['P-101', 'p-101', false],
  ['P-102', 'P-101', false],
])('%s and %s read alike: %s', (a, b, expected) => {
  expect(readAlike(a, b)).toBe(expected);
  if (expected) expect(nearTags(a)).toContain(b.toLowerCase());
});

test.each([
  ['E-201A N3', 'E-201B N3', ['a', 'b']],
  ['HX-310 N3', 'HX-311 N3', ['310', '311']],
  ['P-101A', 'P-101B', ['a', 'b']],
  // The running number of joints on one line makes no sisters.
  ['J-100-001', 'J-100-002', null],
  ['E-201A N3', 'E-202B N3', null],
  ['E-201 N3', 'V-201 N3', ['e', 'v']],
  ['EX-201 N3', 'VX-201 N3', null],
  ['E-201', 'E-201 N3', null],
])('%s and %s: sister part %j', (a, b, expected) => {
  expect(sisterPart(a, b)).toEqual(expected);
});
