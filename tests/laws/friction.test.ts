import { describe, expect, test } from 'vitest';
import type { FrictionReading } from '../../core/contract/friction.ts';
import { frictionGroups } from '../../core/friction/groups.ts';
import { measuredNutFactor } from '../../core/friction/measured.ts';
import { frictionFinding } from '../../core/friction/words.ts';
import { randomOf } from '../calibration/plants.ts';

const reading = (event: number, bolt: number, nutFactor: number, more = {}): FrictionReading => ({
  eventId: `e${event}`,
  jointId: `j${event % 3}`,
  tag: `J-${event % 3}`,
  happenedAt: new Date(Date.UTC(2020, event, 1)).toISOString(),
  bolt,
  torque: 380,
  load: 100_000,
  nutFactor,
  assumed: 0.16,
  lubricant: 'paste',
  batch: 'B-1',
  size: '7/8-9 UNC',
  material: 'ASTM A193 B7',
  studUses: 1,
  method: 'ultrasonic',
  ...more,
});

/** Tightenings of four bolts with a known truth. */
function invented(seed: number, events: number, mean: number, between: number, within: number) {
  const random = randomOf(seed);
  return Array.from({ length: events }, (_, event) => {
    const level = mean + between * random.normal();
    return [1, 2, 3, 4].map((bolt) => reading(event, bolt, level + within * random.normal()));
  }).flat();
}

describe('groups of measured nut factors', () => {
  test('do not depend on the order of the readings', () => {
    const readings = invented(3, 8, 0.16, 0.01, 0.012);
    expect(frictionGroups(readings.toReversed(), 'lubricant')[0]?.mean).toBeCloseTo(
      frictionGroups(readings, 'lubricant')[0]?.mean ?? Number.NaN,
      12,
    );
  });

  test('hold a bolt of the next tightening nine times of ten', () => {
    let inside = 0;
    const plants = 400;
    for (let seed = 1; seed <= plants; seed += 1) {
      const known = invented(seed, 9, 0.16, 0.012, 0.014);
      const last = known.filter(({ eventId }) => eventId === 'e8');
      const [group] = frictionGroups(
        known.filter(({ eventId }) => eventId !== 'e8'),
        'lubricant',
      );
      const next = last[0]?.nutFactor ?? Number.NaN;
      if (next >= (group?.nextBolt?.low ?? Number.NaN) && next <= (group?.nextBolt?.high ?? Number.NaN))
        inside += 1;
    }
    expect(inside / plants).toBeGreaterThan(0.86);
    expect(inside / plants).toBeLessThan(0.95);
  });

  test('say that an assumed nut factor is contradicted, and what load was there instead', () => {
    const [group] = frictionGroups(invented(5, 10, 0.2, 0.004, 0.01), 'lubricant');
    expect(group?.loadShare?.middle).toBeCloseTo(0.16 / (group?.mean ?? 0), 12);
    expect(group?.words).toContain('outside the interval of the mean');
    expect(frictionFinding(group === undefined ? [] : [group], [])).toContain('contradicted for paste');
  });

  test('find a nut factor that rises, and none that stands still', () => {
    const rising = Array.from({ length: 10 }, (_, event) => reading(event * 6, 1, 0.15 + 0.003 * event));
    const [group] = frictionGroups(rising, 'lubricant');
    expect(group?.trend?.low).toBeGreaterThan(0);
    expect(group?.words).toContain('Rising by');
    const [steady] = frictionGroups(invented(9, 12, 0.16, 0.004, 0.004), 'lubricant');
    expect(steady?.trend === null || (steady?.trend?.low ?? 1) < 0).toBe(true);
  });

  test.each([
    ['one event', [reading(1, 1, 0.16)]],
    ['two events', [reading(1, 1, 0.16), reading(2, 1, 0.17)]],
    ['one event of several bolts', [reading(1, 1, 0.16), reading(1, 2, 0.17)]],
    ['all equal', [1, 2, 3, 4, 5, 6].map((event) => reading(event, 1, 0.16))],
    [
      'all at one moment',
      [1, 2, 3, 4, 5, 6].map((event) =>
        reading(event, 1, 0.15 + event / 100, { happenedAt: '2026-01-01T00:00:00Z' }),
      ),
    ],
  ])('of %s say what can’t be said, with no number that is none', (_, readings) => {
    const [group] = frictionGroups(readings, 'lubricant');
    const numbers = JSON.stringify(group, (_key, value) =>
      typeof value === 'number' && !Number.isFinite(value) ? 'not finite' : value,
    );
    expect(numbers).not.toContain('not finite');
    expect(group?.words).not.toMatch(/NaN|Infinity/);
    if (new Set(readings.map(({ eventId }) => eventId)).size < 3) {
      expect(group?.words).toContain('Too few to say');
      expect([group?.meanInterval, group?.nextBolt, group?.trend]).toEqual([null, null, null]);
    }
    if (new Set(readings.map(({ happenedAt }) => happenedAt)).size === 1) expect(group?.trend).toBeNull();
  });

  test('a torque, load or diameter of zero gives none', () => {
    expect(measuredNutFactor(0, 1e5, 0.02)).toBeNull();
    expect(measuredNutFactor(300, 0, 0.02)).toBeNull();
    expect(measuredNutFactor(300, 1e5, 0)).toBeNull();
  });
});
