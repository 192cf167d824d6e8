import { expect, test } from 'vitest';
import { breakoutData, tighteningData } from '../../../core/contract/event.ts';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import {
  type BreakoutForm,
  breakoutInput,
  type TighteningForm,
  tighteningInput,
} from './record-form-values.ts';

const about = {
  jointId: '01990000-0000-7000-8000-000000000001',
  setting: null,
  timeZone: 'Europe/Amsterdam',
};
const common = {
  happenedAt: '2026-03-16T07:40',
  personIds: ['01990000-0000-7000-8000-000000000002'],
  tools: { driveId: null, cassetteId: null, reducerIds: [], pumpId: null, gaugeId: null, hoseIds: [] },
  remarks: '',
};

test('a breakout sends the studs that were worked on, each under its own number', () => {
  const form: BreakoutForm = {
    ...common,
    readAs: 'dialled',
    unit: 'bar',
    readings: [
      { text: '310', outcome: '' },
      { text: '', outcome: '' },
      { text: '', outcome: 'cut' },
      { text: '400', outcome: 'would not turn' },
    ],
  };
  const { readings } = breakoutData.parse(breakoutInput(form, about));
  expect(readings.map((reading) => [reading.bolt, reading.outcome, reading.dialled?.text ?? null])).toEqual([
    [1, 'turned', '310'],
    [3, 'cut', null],
    [4, 'would not turn', '400'],
  ]);
});

test('a tightening keeps the time of the site and refuses an unfilled number of studs', () => {
  const form: TighteningForm = {
    ...common,
    dialled: { text: '260', unit: 'bar' },
    torque: { text: '', unit: 'N.m' },
    load: { text: '', unit: 'kN' },
    boltsTightened: '12',
    finalPassNoTurn: true,
  };
  const data = tighteningData.parse(tighteningInput(form, about));
  expect(data.happenedAt).toBe('2026-03-16T07:40:00+01:00');
  expect(data.torque).toBeNull();
  const unfilled = tighteningData.safeParse(tighteningInput({ ...form, boltsTightened: '' }, about));
  expect(unfilled.success).toBe(false);
});

test('a record says the method and the studs of the setting it followed', () => {
  const setting = {
    id: '01990000-0000-7000-8000-000000000003',
    input: { method: 'tensioner', torqueTool: null, boltSet: 1 },
  } as unknown as IssuedSetting;
  const form: TighteningForm = {
    ...common,
    dialled: { text: '', unit: 'bar' },
    torque: { text: '', unit: 'N.m' },
    load: { text: '108', unit: 'kN' },
    boltsTightened: '12',
    finalPassNoTurn: false,
  };
  const data = tighteningData.parse(tighteningInput(form, { ...about, setting }));
  expect(data).toMatchObject({ settingId: setting.id, method: 'tensioner', torqueTool: null, boltSet: 1 });
  expect(data.load?.si).toBe(108_000);
});
