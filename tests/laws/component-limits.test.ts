import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ComponentData, checkBoltStress } from '../../core/joint/component-checks.ts';
import { type ComponentSelection, selectBoltStress } from '../../core/joint/component-limits.ts';
import { gasketStressAt } from '../../core/joint/gasket-target.ts';

const stress = fc.double({ min: 1e6, max: 1e9, noNaN: true });
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null, freq: 5 });

const joint: fc.Arbitrary<ComponentData> = fc.record({
  boltCount: fc.integer({ min: 4, max: 100 }),
  boltRootArea: fc.double({ min: 1e-5, max: 1e-2, noNaN: true }),
  gasketArea: fc.double({ min: 1e-4, max: 1, noNaN: true }),
  gasketInside: orNull(fc.double({ min: 0.02, max: 3, noNaN: true })),
  gasketTarget: stress,
  gasketSeating: orNull(stress),
  gasketOperating: orNull(stress),
  gasketMax: orNull(stress),
  boltStressMax: orNull(stress),
  boltStressMin: orNull(stress),
  flangeStressMax: orNull(stress),
  flangeRotation: orNull(fc.double({ min: 1e-4, max: 0.05, noNaN: true })),
  gasketRotation: orNull(fc.double({ min: 1e-4, max: 0.05, noNaN: true })),
  cases: fc.constant([
    { name: 'design' as const, pressure: 5e6, retained: 0.7 },
    { name: 'operating' as const, pressure: 3e6, retained: 0.7 },
    { name: 'test' as const, pressure: 7.7e6, retained: 1 },
  ]),
});

function chosen(selection: ComponentSelection): number {
  if (selection.selected === null) throw new Error('nothing selected');
  return selection.selected;
}

const conflicting = ({ boltStressMin: least, boltStressMax, flangeStressMax }: ComponentData) =>
  least !== null &&
  ((boltStressMax !== null && least > boltStressMax) ||
    (flangeStressMax !== null && least > flangeStressMax));

describe('component limits', () => {
  test('the selected stress never exceeds a known limit and never lies below the least one', () => {
    fc.assert(
      fc.property(
        joint.filter((data) => !conflicting(data)),
        (data) => {
          const selected = chosen(selectBoltStress(data));
          expect(selected).toBeLessThanOrEqual(data.boltStressMax ?? Infinity);
          expect(selected).toBeLessThanOrEqual(data.flangeStressMax ?? Infinity);
          expect(selected).toBeGreaterThanOrEqual(data.boltStressMin ?? 0);
        },
      ),
      { numRuns: 2000 },
    );
  });

  test('limits in conflict are refused with both named, and nothing is selected', () => {
    fc.assert(
      fc.property(joint.filter(conflicting), (data) => {
        const { selected, conflicts, checks } = selectBoltStress(data);
        expect(selected).toBeNull();
        expect(checks).toEqual([]);
        expect(conflicts.length).toBeGreaterThan(0);
        for (const { lowerValue, upperValue } of conflicts) expect(lowerValue).toBeGreaterThan(upperValue);
      }),
      { numRuns: 500 },
    );
  });

  test('the governing limit is the one whose value was selected', () => {
    fc.assert(
      fc.property(
        joint.filter((data) => !conflicting(data)),
        (data) => {
          const { selected, governing, asked } = selectBoltStress(data);
          const value = {
            'gasket target': asked,
            'largest bolt stress': data.boltStressMax,
            'least bolt stress': data.boltStressMin,
            'largest bolt stress by the flange': data.flangeStressMax,
          };
          expect(governing === null ? null : value[governing]).toBe(selected);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('gasket target not reached exactly when the selection lies below what it asks for', () => {
    fc.assert(
      fc.property(
        joint.filter((data) => !conflicting(data)),
        (data) => {
          const selection = selectBoltStress(data);
          expect(selection.targetReached).toBe(chosen(selection) >= (selection.asked ?? 0) * (1 - 1e-12));
        },
      ),
      { numRuns: 500 },
    );
  });

  test('a check without its data is not known and names what to get', () => {
    fc.assert(
      fc.property(joint, stress, (data, selected) => {
        for (const check of checkBoltStress(selected, data)) {
          expect(check.state === 'not known').toBe(check.limit === null);
          expect(check.state === 'not known').toBe(check.missing.length > 0);
        }
        for (const wrong of [null, Number.NaN, -1, Number.POSITIVE_INFINITY]) {
          for (const { state, value, missing } of checkBoltStress(wrong, data)) {
            expect([state, missing[0]?.symbol]).toEqual(['not known', 'σb']);
            expect(Number.isNaN(value)).toBe(false);
          }
        }
      }),
      { numRuns: 500 },
    );
  });

  test('more bolt stress never turns a least limit from met to not met, nor a largest one back', () => {
    fc.assert(
      fc.property(joint, stress, fc.double({ min: 1, max: 3, noNaN: true }), (data, lower, factor) => {
        const above = checkBoltStress(lower * factor, data);
        checkBoltStress(lower, data).forEach((check, index) => {
          if (check.side === 'at least' && check.state === 'met') expect(above[index]?.state).toBe('met');
          if (check.side === 'at most' && check.state === 'not met')
            expect(above[index]?.state).toBe('not met');
        });
      }),
      { numRuns: 500 },
    );
  });

  test('at the limit of the operating check the gasket keeps its stress under pressure', () => {
    fc.assert(
      fc.property(
        joint.filter((data) => data.gasketInside !== null && data.gasketOperating !== null),
        (data) => {
          const atLimit = checkBoltStress(1, data).find((check) => check.case === 'test')?.limit ?? null;
          // The test case retains everything: its limit is the stress that leaves exactly Sg,minO.
          const left = gasketStressAt(data, atLimit, 7.7e6, data.gasketInside).value;
          if (left === null) expect(atLimit).toBeGreaterThan(5e9);
          else expect(left / (data.gasketOperating ?? 0)).toBeCloseTo(1, 6);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('a limit that cannot be right is named and blocks the selection', () => {
    const data: ComponentData = {
      boltCount: 12,
      boltRootArea: 270e-6,
      gasketArea: 0.012,
      gasketInside: 0.23,
      gasketTarget: 100e6,
      gasketSeating: null,
      gasketOperating: null,
      gasketMax: null,
      boltStressMax: Number.NaN,
      boltStressMin: -5,
      flangeStressMax: null,
      flangeRotation: null,
      gasketRotation: null,
      cases: [],
    };
    const { selected, missing } = selectBoltStress(data);
    expect(selected).toBeNull();
    expect(missing.map(({ symbol, reason, given }) => `${symbol} ${reason} ${given}`)).toEqual([
      'Sb,max out of range NaN',
      'Sb,min out of range -5',
    ]);
  });
});
