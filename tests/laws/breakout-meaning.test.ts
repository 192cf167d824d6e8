import { describe, expect, test } from 'vitest';
import { unifiedThread } from '../../core/bolting/thread.ts';
import { looseningTorque, torqueByNutFactor, torqueSplit, wholeTorque } from '../../core/bolting/torque.ts';
import { cleanRatio, meaningOf, nearWidth } from '../../core/breakout/clean.ts';
import { driftOf } from '../../core/breakout/drift.ts';
import { readingOutliers } from '../../core/breakout/outliers.ts';
import { pairLoad, residualBetween } from '../../core/breakout/residual.ts';

const THREAD = unifiedThread(0.875, 9);
const FRICTION = { thread: 0.12, bearing: 0.12, bearingDiameter: 0.0306 };

describe('clean value', () => {
  test('is the loosening torque over the tightening one, whatever the load', () => {
    for (const load of [1e4, 1e5]) {
      const on = torqueByNutFactor(0.16, load, THREAD.diameter);
      expect(cleanRatio(THREAD.pitch, 0.16, THREAD.diameter)).toBeCloseTo(
        looseningTorque(on, load, THREAD.pitch) / on,
        12,
      );
    }
    expect(cleanRatio(0.003, 0.03, 0.02)).toBe(0);
  });

  test('a ratio is below, near or above it, and not known without it', () => {
    const near = nearWidth(0.1);
    expect(meaningOf(0.5, 0.75, near).standing).toBe('below the clean value');
    expect(meaningOf(0.75, 0.75, near).standing).toBe('near it');
    expect(meaningOf(1.2, 0.75, near).standing).toBe('above it');
    for (const [ratio, clean] of [
      [null, 0.7],
      [1, null],
      [0, 0.7],
      [1, 0],
    ] as const) {
      expect(meaningOf(ratio, clean, near).standing).toBe('not known');
    }
    expect(nearWidth(null)).toBe(nearWidth(0.1));
    expect(meaningOf(0.75, 0.75, near).meaning).toContain('no sign either way');
  });
});

describe('load that was left', () => {
  test('the interval holds the installed load when the joint comes off clean', () => {
    const load = 1e5;
    const on = wholeTorque(torqueSplit(load, THREAD, 0.0306, 0.12, 0.12));
    const off = looseningTorque(on, load, THREAD.pitch);
    const found = residualBetween(off, THREAD, FRICTION, nearWidth(0.1), 2).value;
    expect(found?.low).toBeLessThan(load);
    expect(found?.high).toBeGreaterThan(load);
    expect((found?.high ?? 0) / (found?.low ?? 1)).toBeGreaterThan(2);
  });

  test('is wider the harder the like ever came off, and has no value where friction would not hold', () => {
    const width = (high: number) => {
      const found = residualBetween(300, THREAD, FRICTION, 0.17, high).value;
      return (found?.high ?? 0) / (found?.low ?? 1);
    };
    expect(width(3)).toBeGreaterThan(width(1.5));
    const slippery = { thread: 0.01, bearing: 0.01, bearingDiameter: 0.0306 };
    expect(residualBetween(300, THREAD, slippery, 0.17, 2).value).toBeNull();
    expect(residualBetween(0, THREAD, FRICTION, 0.17, 2).missing[0]?.symbol).toBe('Toff');
  });

  test('a pair of torques taken at once gives it back', () => {
    const load = 1e5;
    const on = wholeTorque(torqueSplit(load, THREAD, 0.0306, 0.12, 0.12));
    expect(pairLoad(on, looseningTorque(on, load, THREAD.pitch), THREAD.pitch, 0.02).value?.load).toBeCloseTo(
      load,
      5,
    );
    expect(pairLoad(300, 300, THREAD.pitch, 0.02).value).toBeNull();
  });
});

describe('readings that stand apart', () => {
  test('are named with the way they stand', () => {
    const [high] = readingOutliers([1, 1.02, 0.98, 1.01, null, 0.99, 2]);
    expect(high?.index).toBe(6);
    expect(high?.reason).toContain('galled');
    const [low] = readingOutliers([1, 1.02, 0.98, 1.01, 0.99, 0.4]);
    expect(low?.reason).toContain('lost load');
  });

  test('are none among few, among equal ones, or where one step of the scale is all', () => {
    expect(readingOutliers([1, 1, 1, 9])).toEqual([]);
    expect(readingOutliers([1, 1, 1, 1, 1, 1])).toEqual([]);
    expect(readingOutliers([1, 1, 1, 1, 1, 1.04])).toEqual([]);
    expect(readingOutliers([1, 1, 1, 1, 1, 1.5]).length).toBe(1);
    expect(readingOutliers([null, null])).toEqual([]);
  });
});

describe('move over time', () => {
  test('is seen upwards and downwards, and not in a series that only scatters', () => {
    const quiet = [0, 0.1, -0.1, 0.05, 0, -0.05, 0.1, 0, -0.08, 0.02];
    const up = driftOf([...quiet, 0.5, 0.6, 0.5, 0.7]);
    expect(up.state).toBe('rising');
    expect(up.since).toBe(10);
    expect(driftOf([...quiet, -0.5, -0.6, -0.5, -0.7]).state).toBe('falling');
    expect(driftOf(quiet).state).toBe('steady');
  });

  test('is not told of few or equal values', () => {
    expect(driftOf([0, 5, 9]).state).toBe('too few to say');
    expect(driftOf(Array.from({ length: 12 }, () => 1)).state).toBe('steady');
  });
});
