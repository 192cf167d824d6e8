import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chartFinding } from '../../core/breakout/history.ts';
import { certificateInForce, certificateStanding } from '../../core/calibration/validity.ts';
import { checkKind } from '../../core/contract/check.ts';
import type { ChartPoint } from '../../core/contract/joint.ts';
import { toolClass } from '../../core/contract/tool.ts';
import { downsample } from '../../core/series/downsample.ts';
import { recordFlags } from '../../core/setting/flags.ts';
import { cautionsAt, cautionsFor, type JointStep } from '../../core/text/cautions.ts';
import { checkCautions } from '../../core/text/check-cautions.ts';
import { describeBolting, describeFlange, describeTool } from '../../core/text/describe.ts';
import { showNumber, showQuantity } from '../../core/text/number.ts';
import { freeze, roundSignificant } from '../../core/units/round.ts';
import { typed } from '../truth/entered.ts';

function point(kind: ChartPoint['kind'], torque: number, over: Partial<ChartPoint> = {}): ChartPoint {
  return {
    eventId: '018f0000-0000-7000-8000-000000000041',
    kind,
    happenedAt: '2026-03-16T08:00:00+01:00',
    torque,
    highest: torque,
    readings: 1,
    notTurned: 0,
    refused: false,
    ...over,
  };
}

describe('rounding for frozen results', () => {
  test('twelve significant digits, at any depth, and no more change afterwards', () => {
    expect(freeze({ a: 0.1 + 0.2, b: [1 / 3, 'x', null], c: { d: 123456789012345 } })).toEqual({
      a: 0.3,
      b: [0.333333333333, 'x', null],
      c: { d: 123456789012000 },
    });
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (x) => {
        const once = roundSignificant(x, 12);
        expect(roundSignificant(once, 12)).toBe(once);
        expect(Math.abs(once - x)).toBeLessThanOrEqual(Math.abs(x) * 5.1e-12);
      }),
    );
  });
});

describe('numbers in words', () => {
  test.each([
    [5400, 'N.m', 4, '5\u2009400 N·m'],
    [0.0365125, 'in', 5, '1.4375 in'],
    [0, 'bar', 4, '0 bar'],
    [-0.004, 'mm', 2, '−4 mm'],
    [0.1, 'percent', 3, '10 %'],
    [26000000, 'bar', 4, '260 bar'],
  ] as const)('%d as %s', (si, unit, digits, text) => {
    expect(showQuantity(si, unit, digits)).toBe(text);
  });

  test('a number that is none is not known', () => {
    expect(showNumber(Number.NaN)).toBe('not known');
    expect(showNumber(Number.POSITIVE_INFINITY)).toBe('not known');
  });
});

describe('descriptions', () => {
  test.each([
    ['ASME B16.5', '8', '300', 'NPS 8 Class 300'],
    ['ASME B16.47 B', '30', '150', 'NPS 30 Class 150 series B'],
    ['EN 1092-1', '200', '16', 'PN 16 DN 200'],
  ] as const)('%s %s %s', (standard, size, rating, text) => {
    expect(describeFlange({ kind: 'standard', standard, size, rating, facing: 'raised face' })).toBe(text);
  });

  test('bolting says what is not known', () => {
    expect(describeBolting({ count: 12, thread: '7/8-9 UNC' })).toBe('12 × 7/8-9 UNC');
    expect(describeBolting({ count: null, thread: '7/8-9 UNC' })).toBe('not known × 7/8-9 UNC');
    expect(describeBolting({ count: null, thread: null })).toBe('not known');
  });

  test('tools by what they may stand', () => {
    expect(
      describeTool({
        class: 'gauge',
        scaleMax: typed('1000', 'bar'),
        graduation: typed('10', 'bar'),
        accuracy: typed('1', 'percent'),
        alsoPrinted: null,
      }),
    ).toBe('0–1000 bar, marks every 10 bar');
    expect(
      describeTool({
        class: 'cassette',
        acrossFlats: typed('1-7/16', 'in'),
        looseness: null,
        ratedTorque: null,
        family: 'F1',
        headRadius: null,
        height: null,
        bore: null,
        studRoom: null,
        openThrough: false,
        reactionArm: null,
      }),
    ).toBe('1-7/16 in opening');
  });
});

describe('the sentence under the chart', () => {
  test('nothing recorded', () => {
    expect(chartFinding([])).toBe('No torque has been recorded for this joint.');
  });

  test('tightened, not yet broken out', () => {
    expect(chartFinding([point('tightening', 384)])).toBe(
      'Tightened to 384 N·m; no breakout has been recorded yet.',
    );
  });

  test('breakout against the tightening before it, not the one after', () => {
    const points = [
      point('tightening', 400),
      point('breakout', 520, { highest: 720, readings: 12, notTurned: 1 }),
      point('tightening', 390),
    ];
    expect(chartFinding(points)).toBe(
      'The last breakout took 1.30 × the installed torque in the median of 12 readings and at least 1.80 × for the worst. One stud was cut or would not turn.',
    );
  });

  test('breakout without a tightening before it can’t be compared', () => {
    expect(chartFinding([point('breakout', 520)])).toContain('is not known');
  });
});

describe('downsampling', () => {
  const series = Array.from({ length: 5000 }, (_, index) =>
    point('breakout', 300 + 50 * Math.sin(index / 40), index === 1234 ? { notTurned: 2 } : {}),
  );

  test('keeps first, last, extremes, studs that did not turn, and the order', () => {
    const kept = downsample(series, 100);
    expect(kept.length).toBeLessThanOrEqual(203);
    expect([kept[0], kept.at(-1)]).toEqual([series[0], series.at(-1)]);
    expect(kept).toContain(series[1234]);
    const torques = (points: ChartPoint[]) => points.map((one) => one.torque);
    expect(Math.max(...torques(kept))).toBe(Math.max(...torques(series)));
    expect(Math.min(...torques(kept))).toBe(Math.min(...torques(series)));
    expect(kept.map((one) => series.indexOf(one))).toEqual(
      [...kept.map((one) => series.indexOf(one))].sort((a, b) => a - b),
    );
  });

  test('never drops what was recorded against a refusal, however much of it there is', () => {
    const against = series.map((one, index) => (index % 7 === 3 ? { ...one, refused: true } : one));
    const kept = downsample(against, 20);
    expect(kept.filter((one) => one.refused)).toEqual(against.filter((one) => one.refused));
    expect(kept.length).toBeLessThan(against.length / 5);
  });

  test('none, one, and all alike', () => {
    expect(downsample([], 100)).toEqual([]);
    expect(downsample(series.slice(0, 1), 0)).toEqual(series.slice(0, 1));
    const flat = series.map((one) => ({ ...one, torque: 400, highest: 400 }));
    const kept = downsample(flat, 100);
    expect(kept.length).toBeGreaterThanOrEqual(100);
    expect(kept.length).toBeLessThanOrEqual(202);
    expect(new Set(kept.map(({ torque }) => torque))).toEqual(new Set([400]));
  });

  test('a value that is no number hides no extreme beside it', () => {
    const torn = series.map((one, index) =>
      index % 10 === 0 ? { ...one, torque: Number.NaN, highest: Number.NaN } : one,
    );
    const known = (points: ChartPoint[]) => points.map(({ torque }) => torque).filter(Number.isFinite);
    const kept = downsample(torn, 50);
    expect(Math.max(...known(kept))).toBe(Math.max(...known(torn)));
    expect(Math.min(...known(kept))).toBe(Math.min(...known(torn)));
  });

  test('leaves short series alone', () => {
    expect(downsample(series.slice(0, 150), 100)).toEqual(series.slice(0, 150));
  });
});

describe('certificates on a date', () => {
  const certificate = (calibratedOn: string, validUntil: string) => ({ data: { calibratedOn, validUntil } });
  const old = certificate('2024-01-10', '2026-06-30');
  const recent = certificate('2025-02-10', '2026-02-09');

  test.each([
    ['2024-01-09', 'later'],
    ['2024-01-10', 'in force'],
    ['2026-02-09', 'in force'],
    ['2026-02-10', 'lapsed'],
  ] as const)('on %s: %s', (day, state) => {
    expect(certificateStanding([old, recent], day).state).toBe(state);
  });

  test('the newest calibration counts, even where an older one would run longer', () => {
    expect(certificateInForce([recent, old], '2026-01-01')).toBe(recent);
    expect(certificateInForce([old, recent], '2026-03-01')).toBeNull();
    expect(certificateInForce([], '2026-03-01')).toBeNull();
  });
});

describe('flags of a record', () => {
  test('none where a setting was issued and every stud done', () => {
    expect(
      recordFlags({ assessed: { findings: [] }, settingIssued: true, boltsDone: 12, boltCount: 12 }),
    ).toEqual([]);
  });

  test('unfinished, without a setting, and every refusal', () => {
    const refusal = {
      code: 'certificate_lapsed',
      severity: 'refusal',
      subject: 'D-04',
      value: null,
      limit: null,
      unit: null,
      source: '',
      words: () => ({ title: 'Certificate lapsed', detail: '', remedy: '' }),
      place: { screen: 'tool', id: null, field: null },
      confirm: null,
    } as const;
    const warning = {
      ...refusal,
      severity: 'warning',
      words: () => ({ title: 'a warning', detail: '', remedy: '' }),
    } as const;
    expect(
      recordFlags({
        assessed: { findings: [refusal, warning] },
        settingIssued: false,
        boltsDone: 10,
        boltCount: 12,
      }),
    ).toEqual([
      'recorded without an issued setting',
      'unfinished: 10 of 12 studs',
      'refusal: Certificate lapsed',
    ]);
  });

  test('a joint whose studs were never counted can’t be called finished', () => {
    expect(recordFlags({ assessed: null, settingIssued: true, boltsDone: 8, boltCount: null })).toEqual([
      'stud count of the joint not known',
    ]);
  });
});

test.each(['tightening', 'breakout'] as const)('cautions for %s name their source', (kind) => {
  const cautions = cautionsFor(kind);
  expect(cautions.length).toBeGreaterThan(10);
  expect(cautions.every(({ text, source }) => text.length > 20 && source.length > 5)).toBe(true);
});

test('heat, stored load and sudden release are cautions of breakout alone', () => {
  const tightening = cautionsFor('tightening').map(({ text }) => text);
  const breakout = cautionsFor('breakout').map(({ text }) => text);
  const own = breakout.filter((text) => !tightening.includes(text));
  expect(own.some((text) => text.includes('permit'))).toBe(true);
  expect(own.some((text) => text.includes('pipe load'))).toBe(true);
});

describe('cautions at the bench', () => {
  const says = (kind: Parameters<typeof checkCautions>[0], toolClass: Parameters<typeof checkCautions>[1]) =>
    checkCautions(kind, toolClass)
      .map(({ text }) => text)
      .join(' ');

  test('every check begins by deferring to the tool’s own instructions, and each caution names its source', () => {
    for (const kind of checkKind.options) {
      for (const each of toolClass.options) {
        const cautions = checkCautions(kind, each);
        expect(cautions[0]?.text).toContain('tool’s own instructions');
        expect(cautions.every(({ text, source }) => text !== '' && source !== '')).toBe(true);
        expect(new Set(cautions.map(({ text }) => text)).size).toBe(cautions.length);
      }
    }
  });

  test('work under pressure, an opened tool and a pulled wrench have each their own', () => {
    for (const kind of ['leak test', 'pressure test', 'comparison'] as const) {
      expect(says(kind, 'drive unit')).toContain('Never feel for a leak');
    }
    expect(says('leak test', 'drive unit')).not.toContain('Springs');
    expect(says('pressure test', 'hose')).toContain('above the working pressure');
    expect(says('seal inspection', 'drive unit')).toContain('gauge stands at zero');
    expect(says('seal inspection', 'drive unit')).not.toContain('Never feel for a leak');
    expect(says('comparison', 'drive unit')).toContain('reaction member');
    expect(says('comparison', 'hand torque wrench')).toContain('pull steadily');
    expect(says('comparison', 'hand torque wrench')).not.toContain('hoses');
  });
});

const STEPS: readonly JointStep[] = ['joint', 'tools', 'setting', 'bolt', 'stuck', 'stop'];

test.each(['tightening', 'breakout'] as const)(
  'at the joint every caution of the %s card stands before one decision, and each decision has one',
  (kind) => {
    const said = STEPS.map((step) => cautionsAt(kind, step).map(({ text }) => text));
    expect(said.filter((texts) => texts.length === 0)).toEqual([]);
    const all = said.flat();
    expect(new Set(all).size).toBe(all.length);
    for (const { text } of cautionsFor(kind)) expect(all).toContain(text);
    expect(
      cautionsAt(kind, 'bolt')
        .map(({ text }) => text)
        .join(' '),
    ).toContain('hands');
  },
);
