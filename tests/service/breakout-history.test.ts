import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import {
  breakoutOf,
  certify,
  enterPlant,
  jointA,
  saveJoint,
  type TestPlant,
  tighteningOf,
} from './records.ts';

let started: TestService;
let plant: TestPlant;

beforeAll(async () => {
  started = startService(temporaryFolder(), '2026-03-16T12:00:00Z');
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
});
afterAll(() => started.service.close());

const newJoint = async (tag: string) => (await saveJoint(started, jointA(plant.unitId, tag))).id;
const tighten = (jointId: string, changes = {}) =>
  ask(started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, { jointId, happenedAt: '2026-02-16T09:00:00+01:00', ...changes }),
  });
const open = (jointId: string, changes = {}) =>
  ask(started, 'event.recordBreakout', { key: key(), data: breakoutOf(plant, { jointId, ...changes }) });
const historyOf = (jointId: string) => ask(started, 'breakout.history', { of: { kind: 'joint', jointId } });
const forecastOf = (jointId: string, on: string | null = null) =>
  ask(started, 'breakout.forecast', { jointId, on });

/** Every number an answer holds. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

test('before anything was opened the forecast says so, and stands on common practice', async () => {
  const forecast = await forecastOf(await newJoint('F-1'));
  expect(forecast.evidence.sufficiency).toBe('too few to say');
  expect(forecast.evidence.words).toContain('Too few to say from this plant’s own openings');
  expect(forecast.finding).toContain('By common practice alone');
  expect([forecast.boltDeviation, forecast.correlation]).toEqual([null, null]);
  expect(forecast.advice.at(-1)).toContain('Expect sudden release');
});

describe('the history of a joint', () => {
  test('holds each reading against the torque that was put on, as the joint’s chart has it', async () => {
    const jointId = await newJoint('B-1');
    await tighten(jointId);
    await open(jointId);
    const { openings, shown, total, commonRatio } = await historyOf(jointId);
    const { points } = await ask(started, 'joint.chart', { id: jointId });
    const installed = points.find(({ kind }) => kind === 'tightening')?.torque ?? Number.NaN;
    expect([shown, total, openings.length]).toEqual([1, 1, 1]);
    const [opening] = openings;
    expect(opening?.installed?.torque).toBeCloseTo(installed, 9);
    expect(opening?.readings.map(({ bolt, outcome }) => [bolt, outcome])).toEqual([
      [1, 'turned'],
      [2, 'turned'],
      [3, 'cut'],
    ]);
    expect(opening?.readings[1]?.ratio).toBeCloseTo(450 / installed, 9);
    expect(opening).toMatchObject({ turned: 2, notTurned: 1, whyNoRatio: null });
    expect(opening?.years).toBeCloseTo(28 / 365.25, 3);
    // Common practice: breakout up to about two and a half times the tightening torque.
    expect(commonRatio).toBe(2.5);
    // T_off/T_on = (K·D − P/π)/(K·D): power screw, Shigley, Mechanical Engineering Design, raising and lowering a load
    // (from memory); 7/8-9 UNC with K 0.16.
    expect(opening?.cleanRatio).toBeCloseTo(1 - 25.4 / 9 / (Math.PI * 0.16 * 22.225), 3);
  });

  test('without a tightening before it has no ratio, and says why', async () => {
    const jointId = await newJoint('B-2');
    await open(jointId);
    const { openings, finding } = await historyOf(jointId);
    expect(openings[0]).toMatchObject({ median: null, installed: null, residual: null });
    expect(openings[0]?.whyNoRatio).toBe('no tightening is recorded before it');
    expect(finding).toContain('no tightening is recorded before it');
  });

  test('opened twice after one tightening compares the first opening only', async () => {
    const jointId = await newJoint('B-3');
    await tighten(jointId);
    await open(jointId, { happenedAt: '2026-03-01T10:00:00+01:00' });
    await open(jointId, { happenedAt: '2026-03-02T10:00:00+01:00' });
    const { openings } = await historyOf(jointId);
    expect(openings.map(({ median }) => median === null)).toEqual([false, true]);
  });

  test('all readings equal, and one reading alone, give numbers and no infinity', async () => {
    const q = { text: '400', unit: 'N.m' } as const;
    const reading = (bolt: number) => ({ bolt, outcome: 'turned', torque: q, dialled: null }) as const;
    const equal = await newJoint('B-4');
    await tighten(equal);
    await open(equal, { readings: [1, 2, 3, 4].map(reading) });
    const single = await newJoint('B-5');
    await tighten(single);
    await open(single, { readings: [reading(7)] });
    for (const jointId of [equal, single]) {
      const [history, forecast] = [await historyOf(jointId), await forecastOf(jointId)];
      const [opening] = history.openings;
      expect(opening?.lowest).toBe(opening?.highest);
      expect(opening?.outlier).toBeNull();
      expect(numbersIn([history, forecast]).filter((value) => !Number.isFinite(value))).toEqual([]);
    }
  });

  test('an installed torque of zero makes no ratio, no point over nothing and no infinity', async () => {
    const jointId = await newJoint('B-ZERO');
    const zero = { text: '0', unit: 'N.m' } as const;
    const recorded = await tighten(jointId, { dialled: null, torque: zero }).then(
      () => 'kept',
      (error: Error) => error.message,
    );
    expect(recorded).toBe('kept');
    await open(jointId);
    const [history, forecast] = [await historyOf(jointId), await forecastOf(jointId)];
    const chart = await ask(started, 'joint.chart', { id: jointId });
    expect(history.openings[0]).toMatchObject({ median: null, residual: null });
    expect(history.openings[0]?.whyNoRatio).not.toBeNull();
    const numbers = numbersIn([history, forecast, chart]);
    expect(numbers.length).toBeGreaterThan(10);
    expect(numbers.filter((value) => !Number.isFinite(value))).toEqual([]);
    expect(JSON.stringify([history, forecast, chart])).not.toMatch(/NaN|Infinity/);
  });

  test('a joint never opened says so', async () => {
    const { openings, finding } = await historyOf(await newJoint('B-6'));
    expect([openings.length, finding]).toEqual([0, 'No breakout has been recorded.']);
  });

  test('a joint the register does not have is named', async () => {
    const jointId = '00000000-0000-7000-8000-00000000dead';
    const error = await askBadly(started, 'breakout.history', { of: { kind: 'joint', jointId } });
    expect(error).toMatchObject({ code: 'not_found' });
    expect(JSON.stringify(error)).toContain('of.jointId');
  });

  test('by class takes the openings of the class alone', async () => {
    const data = { ...jointA(plant.unitId, 'B-7'), service: 'boiler feed water' };
    const { id } = await saveJoint(started, data);
    await tighten(id);
    await open(id);
    const of = { kind: 'class', service: 'Boiler feed water' } as const;
    const { openings } = await ask(started, 'breakout.history', { of });
    expect(openings.map(({ jointId }) => jointId)).toEqual([id]);
    const none = await ask(started, 'breakout.history', { of: { kind: 'class', service: 'acid' } });
    expect([none.total, none.capacity]).toEqual([0, null]);
  });
});

describe('the forecast of the next opening', () => {
  test('the worst of twelve bolts takes more than one, in the joint’s own torque, and the chance grows with the ratio', async () => {
    const jointId = await newJoint('F-2');
    await tighten(jointId);
    const { ratio, torque, installed, curve } = await forecastOf(jointId, '2026-06-01');
    expect(installed?.source).toBe('tightening recorded for 2026-02-16');
    expect(ratio?.worstBolt.high).toBeGreaterThan(ratio?.oneBolt.high ?? Number.NaN);
    expect(torque?.worstBolt.high).toBeCloseTo((ratio?.worstBolt.high ?? 0) * (installed?.torque ?? 0), 6);
    const worst = curve.map(({ worstBolt }) => worstBolt);
    expect(worst).toEqual(worst.toSorted((a, b) => a - b));
    expect(curve.every(({ oneBolt, worstBolt }) => worstBolt <= oneBolt + 1e-9)).toBe(true);
  });

  test('tells the chance that the wrench at hand is too small, and the smallest set that is not', async () => {
    const jointId = await newJoint('F-3');
    await tighten(jointId);
    const { wrench, smallestSet, torque } = await ask(started, 'breakout.forecast', {
      jointId,
      on: '2026-03-20',
      tools: plant.tools,
    });
    expect(wrench?.capacity).toBeGreaterThan(0);
    expect(wrench?.tooSmall).toBeGreaterThanOrEqual(0);
    expect(wrench?.tooSmall).toBeLessThanOrEqual(1);
    expect(smallestSet === null || smallestSet.capacity >= (torque?.worstBolt.high ?? Infinity)).toBe(true);
  });

  test('without a bolt count there is none, and it is named', async () => {
    const data = jointA(plant.unitId, 'F-4');
    const { id } = await saveJoint(started, {
      ...data,
      flange: { kind: 'custom', description: 'swivel ring' },
      bolting: { ...data.bolting, count: null },
    });
    const { ratio, torque, finding } = await forecastOf(id);
    expect([ratio, torque, finding]).toEqual([null, null, 'No forecast: number of bolts not known.']);
  });

  test('a bolt set the joint does not have is named with what it has', async () => {
    const jointId = await newJoint('F-5');
    const error = await askBadly(started, 'breakout.forecast', { jointId, boltSet: 3 });
    expect(JSON.stringify(error)).toContain('boltSet');
    expect(JSON.stringify(error)).toContain('it has 0 beside its own');
  });
});
