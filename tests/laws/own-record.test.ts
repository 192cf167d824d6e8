import { expect, test } from 'vitest';
import { type DatedOpening, ownCoverage, serviceTrends } from '../../core/breakout/own-record.ts';
import { randomOf, simulatePlant } from '../calibration/plants.ts';

const dated = (openings: readonly Omit<DatedOpening, 'at'>[]): DatedOpening[] =>
  openings.map((opening, index) => ({
    ...opening,
    at: new Date(Date.UTC(2020, 0, 1 + index)).toISOString(),
  }));

test('on invented plants about nine of ten openings lie inside their interval, and the counts add up', () => {
  const all = [1, 2, 3, 4, 5].map((seed) => ownCoverage(dated(simulatePlant(seed).past)));
  let inside = 0;
  let openings = 0;
  for (const coverage of all) {
    expect(coverage.inside + coverage.below + coverage.above).toBe(coverage.openings);
    expect(coverage.width).toBeGreaterThan(1);
    inside += coverage.inside;
    openings += coverage.openings;
  }
  expect(openings).toBeGreaterThan(400);
  expect(inside / openings).toBeGreaterThan(0.85);
  expect(inside / openings).toBeLessThan(0.96);
});

test('too few openings say nothing, and say so', () => {
  const { past } = simulatePlant(1);
  for (const count of [0, 1, 5, 12]) {
    const coverage = ownCoverage(dated(past.slice(0, count)));
    expect(coverage.share).toBeNull();
    expect(coverage.finding).toContain('Too few to say');
  }
});

const series = (service: string, slope: number, count: number) => {
  const random = randomOf(7);
  return Array.from({ length: count }, (_, index) => ({
    joint: `${service} ${index % 4}`,
    traits: { service, band: 'not known', lubricant: null, years: null } as const,
    ratios: [Math.exp(0.1 + 0.05 * random.normal() + slope * Math.max(0, index - 14))],
    studs: 1,
    seized: 0,
  }));
};

test('a service that takes more at every opening is found, with when it began; steady and thin ones are not', () => {
  const openings = dated([
    ...series('amine', 0.1, 30),
    ...series('steam', 0, 30),
    ...series('water', 0.1, 5),
  ]);
  const [first, second, third] = serviceTrends(openings);
  expect(first).toMatchObject({ service: 'amine', state: 'rising', openings: 30, joints: 4 });
  expect(first?.words).toContain('harder to open');
  expect(openings.findIndex(({ at }) => at === first?.since)).toBeGreaterThan(9);
  expect((first?.after ?? 0) > (first?.before ?? 0)).toBe(true);
  expect(second).toMatchObject({ service: 'steam', state: 'steady', since: null, after: null });
  expect(third).toMatchObject({ service: 'water', state: 'too few to say', since: null });
});

test('openings that are all equal are steady, without a number that is none', () => {
  const equal = dated(series('amine', 0, 12).map((opening) => ({ ...opening, ratios: [1.1] })));
  const [trend] = serviceTrends(equal);
  expect(trend).toMatchObject({ state: 'steady', before: 1.1 });
  expect(ownCoverage(equal).finding).not.toContain('NaN');
});
