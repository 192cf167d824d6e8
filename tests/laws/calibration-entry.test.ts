import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type EnteredCertificate,
  type EntryDoubtKind,
  entryDoubts,
} from '../../core/calibration/entry-check.ts';
import type { TorquePoint } from '../../core/calibration/line.ts';
import { toSI, type Unit } from '../../core/units/units.ts';
import { anyNumber, real } from './calibration-arbitraries.ts';

const point = (bar: number, torque: number, direction: 'up' | 'down' = 'up'): TorquePoint => ({
  pressure: bar * 1e5,
  torque,
  direction,
});

const UP = [point(100, 1500), point(200, 3000), point(400, 6000), point(690, 10350)];
const DOWN = [point(400, 6020, 'down'), point(200, 3020, 'down'), point(100, 1510, 'down')];
const RATING = { torque: 10350, pressure: 690e5 };

const entered = (change: Partial<EnteredCertificate> = {}): EnteredCertificate => ({
  points: [...UP, ...DOWN],
  calibratedOn: '2026-01-10',
  today: '2026-02-01',
  torqueUnit: 'N.m',
  rating: RATING,
  ...change,
});

const kinds = (certificate: EnteredCertificate): EntryDoubtKind[] =>
  entryDoubts(certificate).map(({ kind }) => kind);

describe('points as entered', () => {
  test('a certificate in order raises no doubt', () => {
    expect(entryDoubts(entered())).toEqual([]);
    expect(entryDoubts(entered({ rating: null }))).toEqual([]);
    expect(entryDoubts(entered({ calibratedOn: '2026-02-01' }))).toEqual([]);
    const twice = [...UP, ...DOWN, ...UP, ...DOWN].map((one) => ({ ...one }));
    expect(kinds(entered({ points: twice }))).toEqual([]);
  });

  test('two pressures refuse, whatever the number of points', () => {
    const [doubt] = entryDoubts(
      entered({ points: [point(100, 1500), point(100, 1500), point(200, 3000)], rating: null }),
    );
    expect(doubt).toMatchObject({ kind: 'too few pressures', refuses: true, value: 2, allowed: 3 });
    expect(kinds(entered({ points: [] }))).toEqual(['too few pressures']);
  });

  test('a line that falls or stays level refuses', () => {
    const falling = UP.map((one, i) => ({ ...one, torque: 9000 - 1000 * i }));
    expect(entryDoubts(entered({ points: falling }))[0]).toMatchObject({
      kind: 'no rising line',
      refuses: true,
    });
    expect(kinds(entered({ points: UP.map((one) => ({ ...one, torque: 5000 })), rating: null }))).toContain(
      'no rising line',
    );
  });

  test('a date after today refuses and names today', () => {
    expect(entryDoubts(entered({ calibratedOn: '2026-02-02' }))[0]).toMatchObject({
      kind: 'dated in the future',
      refuses: true,
      value: '2026-02-02',
      allowed: '2026-02-01',
    });
  });

  test('points out of order within a direction ask, and name the point', () => {
    const [first, second, ...rest] = UP;
    if (first === undefined || second === undefined) throw new Error('no points');
    const [doubt, ...others] = entryDoubts(entered({ points: [second, first, ...rest] }));
    expect(doubt).toMatchObject({
      kind: 'points out of order',
      refuses: false,
      point: 1,
      value: 1e7,
      allowed: 2e7,
    });
    expect(others).toEqual([]);
    expect(kinds(entered({ points: [...UP, ...[...DOWN].reverse()] }))).toEqual([
      'points out of order',
      'points out of order',
    ]);
  });

  test('equal pressures with different torques ask; repeats that agree, and the other direction, do not', () => {
    const [, second] = UP;
    if (second === undefined) throw new Error('no point');
    const repeated = [...UP.slice(0, 2), { ...second, torque: 3100 }, ...UP.slice(2)];
    const [doubt] = entryDoubts(entered({ points: repeated }));
    expect(doubt).toMatchObject({
      kind: 'equal pressures',
      refuses: false,
      point: 2,
      value: 3100,
      allowed: 3000,
    });
    expect(entryDoubts(entered({ points: [...UP.slice(0, 2), second, ...UP.slice(2)] }))).toEqual([]);
  });

  test.each([
    ['N.m', 1 / toSI(1, 'lbf.ft'), 'lbf·ft'],
    ['lbf.ft', toSI(1, 'lbf.ft'), 'N·m'],
    ['N.m', 1 / 9.80665, 'kgf·m'],
    ['N.m', 1 / toSI(1, 'lbf.in'), 'lbf·in'],
    ['lbf.ft', toSI(1, 'lbf.ft') / toSI(1, 'lbf.in'), 'lbf·in'],
    ['lbf.ft', toSI(1, 'lbf.ft') / 9.80665, 'kgf·m'],
  ] as readonly (readonly [Unit, number, string])[])(
    'entered in %s, off by %d: likely in %s',
    (torqueUnit, factor, likely) => {
      const wrong = [...UP, ...DOWN].map((one) => ({ ...one, torque: one.torque * factor }));
      const [doubt, ...others] = entryDoubts(entered({ points: wrong, torqueUnit }));
      expect(doubt).toMatchObject({ kind: 'torque in another unit', refuses: false, likely });
      expect(Number(doubt?.value) / factor).toBeCloseTo(1, 2);
      expect(others).toEqual([]);
    },
  );

  test('a line that starts above zero is compared at the rated pressure, not by its slope', () => {
    const factor = 1 / toSI(1, 'lbf.ft');
    const points = [100, 300, 500, 690].map((bar) => point(bar, factor * (3000 + (7350 * bar) / 690)));
    expect(entryDoubts(entered({ points }))[0]).toMatchObject({
      kind: 'torque in another unit',
      likely: 'lbf·ft',
    });
  });

  test('a tool that gives up to 20 % more or less than its rating is not taken for another unit', () => {
    fc.assert(
      fc.property(real(0.8, 1.25), (factor) => {
        const points = UP.map((one) => ({ ...one, torque: one.torque * factor }));
        expect(entryDoubts(entered({ points }))).toEqual([]);
      }),
    );
  });

  test('what is no number refuses before anything else is said of it', () => {
    const doubts = entryDoubts(entered({ points: [...UP, point(Number.NaN, 5), point(300, -1)] }));
    expect(doubts.map(({ kind, point: at }) => [kind, at])).toEqual([
      ['not a number', 4],
      ['not a number', 5],
    ]);
  });

  test('refusals come first, and nothing that is entered is thrown at', () => {
    const points = fc.array(
      fc.record({
        pressure: anyNumber,
        torque: anyNumber,
        direction: fc.constantFrom('up' as const, 'down' as const),
      }),
      { maxLength: 8 },
    );
    const rating = fc.option(fc.record({ torque: anyNumber, pressure: anyNumber }), { nil: null });
    fc.assert(
      fc.property(points, rating, fc.string(), (list, rated, date) => {
        const found = entryDoubts(entered({ points: list, rating: rated, calibratedOn: date }));
        const refusals = found.map(({ refuses }) => refuses);
        expect(refusals).toEqual([...refusals].sort((a, b) => Number(b) - Number(a)));
        for (const { point: at } of found) expect(at === null || (at >= 0 && at < list.length)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
