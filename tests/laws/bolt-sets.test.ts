import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { settingCard } from '../../core/setting/card.ts';
import { typed } from '../truth/entered.ts';
import { changed, completeInput, type InputDraft } from './complete-input.ts';

type Change = (input: InputDraft) => void;

/** Tensioned joints stand exactly at their target load: no gauge rounds it. */
const tensioned = (change: Change, boltSet = 0) =>
  settingCard(
    changed(completeInput('tightening'), (input) => {
      input.method = 'tensioner';
      input.boltSet = boltSet;
      change(input);
    }),
  );

function gasketOf({ joint: { data } }: InputDraft) {
  if (data.gasket === null) throw new Error('fixture: no gasket');
  return data.gasket;
}

const load = (kilonewton: number) => ({
  mode: 'bolt load' as const,
  load: typed(String(kilonewton), 'kN'),
  basis: 'invented',
});

/** The joint's bolts at one load, and a further set beside them. */
const sets =
  (own: readonly [count: number, kN: number], further: readonly [count: number, kN: number]): Change =>
  (input) => {
    const { data } = input.joint;
    const { bolting, limits, space } = structuredClone(data);
    data.bolting.count = own[0];
    data.target = load(own[1]);
    data.boltSets = [
      {
        name: 'inner ring',
        bolting: { ...bolting, count: further[0], nutSeries: 'ASME B18.2.2 heavy hex' },
        lubricant: null,
        target: load(further[1]),
        limits,
        space,
      },
    ];
  };

const oneSet =
  (count: number, kN: number): Change =>
  (input) => {
    input.joint.data.bolting.count = count;
    input.joint.data.target = load(kN);
  };

const aboutGasket = ({ limits }: ReturnType<typeof settingCard>) =>
  limits.filter(({ step, name }) => (step !== null && step < 8) || name.startsWith('code minimum'));

const close = (found: number | null | undefined, wanted: number | null | undefined) => {
  if (wanted === null || wanted === undefined) expect(found).toBe(wanted);
  else
    expect(Math.abs((found ?? Number.NaN) - wanted)).toBeLessThanOrEqual(
      1e-9 * Math.max(1, Math.abs(wanted)),
    );
};

describe('a gasket that two bolt sets load', () => {
  test('feels the same however its bolts are shared out between the sets', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 23 }), fc.integer({ min: 20, max: 250 }), (own, kN) => {
        const whole = tensioned(oneSet(24, kN));
        const split = tensioned(sets([own, kN], [24 - own, kN]));
        close(split.gaskets[0]?.stress, whole.gaskets[0]?.stress);
        split.gaskets[0]?.cases.forEach((one, index) => {
          close(one.stressLeft, whole.gaskets[0]?.cases[index]?.stressLeft);
        });
        const [rows, wanted] = [aboutGasket(split), aboutGasket(whole)];
        expect(rows).toHaveLength(wanted.length);
        expect(rows.length).toBeGreaterThanOrEqual(6);
        rows.forEach((row, index) => {
          const other = wanted[index];
          if (other?.limit === undefined || other.limit === null || other.value === null)
            throw new Error('no row');
          // What the other bolts leave to these: nb·σ(limit) − (nb − own)·σ, for the own ones.
          close(row.limit, Math.max(0, (24 * other.limit - (24 - own) * other.value) / own));
          if (Math.abs(other.limit / other.value - 1) > 1e-9) expect(row.state).toBe(other.state);
        });
        const parts = (card: typeof whole) => card.findings.some(({ code }) => code === 'joint_parts');
        expect(parts(split)).toBe(parts(whole));
      }),
      { numRuns: 60 },
    );
  });

  test('carries the sum of both: nb·F over the sets, divided by its area', () => {
    const card = tensioned(sets([12, 90], [8, 60]));
    const [gasket] = card.gaskets;
    // 12 × 90 kN + 8 × 60 kN = 1560 kN on π/4 × (263.7² − 233.4²) mm² = 11 829 mm².
    expect((gasket?.stress ?? 0) / 1e6).toBeCloseTo(
      1_560_000 / ((Math.PI / 4) * (263.7 ** 2 - 233.4 ** 2)),
      6,
    );
    expect(card.findings.filter(({ code }) => code === 'check_not_made')).toEqual([]);
  });

  test('is the same seen from either set', () => {
    const both = sets([12, 90], [8, 60]);
    const [one, other] = [tensioned(both), tensioned(both, 1)];
    expect(other.boltSet?.name).toBe('inner ring');
    close(other.gaskets[0]?.stress, one.gaskets[0]?.stress);
    const states = (card: typeof one) =>
      aboutGasket(card).map(({ name, case: at, state }) => [name, at, state]);
    expect(states(other)).toEqual(states(one));
  });

  test('is the same seen from either set where the flange standard fills its dimensions', () => {
    const both: Change = (input) => {
      sets([12, 90], [8, 60])(input);
      Object.assign(gasketOf(input), { contactInside: null, contactOutside: null });
    };
    const [one, other] = [tensioned(both), tensioned(both, 1)];
    expect(one.gaskets[0]?.stress).toBeGreaterThan(0);
    close(other.gaskets[0]?.stress, one.gaskets[0]?.stress);
  });

  test('is refused above its ceiling though neither set alone would reach it', () => {
    const high = (change: Change) =>
      tensioned(change).findings.filter(({ code }) => code === 'gasket_stress_high');
    // 200 MPa on 11 829 mm² are 2366 kN.
    expect(high(oneSet(12, 110))).toEqual([]);
    expect(high(oneSet(12, 100))).toEqual([]);
    expect(high(sets([12, 110], [12, 100])).map(({ severity }) => severity)).toEqual(['refusal']);
    expect(high(sets([12, 110], [8, 100]))).toEqual([]);
  });

  test('lists each set’s share', () => {
    const found = tensioned(sets([12, 90], [8, 60])).workings.find(({ title }) =>
      title.startsWith('Load of all bolt sets'),
    );
    const shares = found?.inputs.map(({ name, si }) => [name, si]);
    expect(shares).toEqual([
      ['number of studs', 12],
      ['load per stud', 90_000],
      ['number of studs, inner ring', 8],
      ['load per stud, inner ring', 60_000],
      ['load of the other sets', 480_000],
    ]);
    expect(found?.result.si).toBe(1_560_000);
  });

  test('has no probability of its own: what the other set holds is not drawn', () => {
    const simulated = (change: Change) =>
      settingCard(
        changed(completeInput('tightening'), (input) => {
          input.withUncertainty = true;
          change(input);
        }),
      ).uncertainty?.simulation?.probabilities.map(({ limit }) => limit) ?? [];
    const ofGasket = (limits: readonly string[]) => limits.filter((name) => name.startsWith('gasket'));
    expect(ofGasket(simulated(oneSet(12, 107)))).not.toEqual([]);
    expect(ofGasket(simulated(sets([12, 107], [8, 60])))).toEqual([]);
    expect(simulated(sets([12, 107], [8, 60]))).not.toEqual([]);
  });
});

describe('a set whose load is not known', () => {
  const set = (input: InputDraft) => {
    const [further] = input.joint.data.boltSets;
    if (further === undefined) throw new Error('fixture: no set');
    return further;
  };

  test.each([
    [
      'no target',
      (input: InputDraft) => {
        set(input).target = null;
      },
      'Load of the set “inner ring”: enter its target',
    ],
    [
      'a target that starts from the gasket',
      (input: InputDraft) => {
        set(input).target = { mode: 'gasket stress', basis: 'invented' };
      },
      'Load of the set “inner ring”: give it a bolt stress, load or torque as target',
    ],
    [
      'no count',
      (input: InputDraft) => {
        set(input).bolting.count = null;
      },
      'Number of studs of the set “inner ring”: count them',
    ],
  ])('is named: %s', (_, without, words) => {
    const card = tensioned((input) => {
      sets([12, 90], [8, 60])(input);
      without(input);
    });
    const notMade = card.findings.filter(({ code }) => code === 'check_not_made');
    expect(notMade.map(({ title, remedy, detail }) => `${title} ${detail} ${remedy}`).join()).toContain(
      words,
    );
    expect(card.gaskets).toEqual([]);
    expect(aboutGasket(card)).toEqual([]);
  });
});
