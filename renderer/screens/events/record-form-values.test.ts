import { expect, test } from 'vitest';
import { breakoutData, tighteningData } from '../../../core/contract/event.ts';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import { EMPTY_TORQUE_TOOL } from '../../components/torque-tool-form.ts';
import {
  type BreakoutForm,
  breakoutInput,
  freshCommon,
  readableAs,
  rowsFor,
  type TighteningForm,
  tighteningInput,
} from './record-form-values.ts';

const about = {
  jointId: '01990000-0000-7000-8000-000000000001',
  setting: null,
  timeZone: 'Europe/Amsterdam',
};
const common = {
  method: 'hydraulic wrench' as const,
  boltSet: '0',
  torqueTool: EMPTY_TORQUE_TOOL,
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
  const form: TighteningForm = { ...tightening, torque: { text: '', unit: 'N.m' } };
  const data = tighteningData.parse(tighteningInput(form, about));
  expect(data.happenedAt).toBe('2026-03-16T07:40:00+01:00');
  expect(data.torque).toBeNull();
  const unfilled = tighteningData.safeParse(tighteningInput({ ...form, boltsTightened: '' }, about));
  expect(unfilled.success).toBe(false);
});

const tightening: TighteningForm = {
  ...common,
  dialled: { text: '260', unit: 'bar' },
  torque: { text: '385', unit: 'N.m' },
  load: { text: '108', unit: 'kN' },
  boltsTightened: '12',
  finalPassNoTurn: false,
  batches: {
    stud: { name: 'ASTM A193 B7', number: ' H-77 ' },
    nut: { name: 'grade not known', number: ' ' },
    gasket: { name: 'spiral wound', number: '' },
    lubricant: { name: 'nickel-based anti-seize', number: 'L-1' },
  },
};

test('batches that were read go with the record, blank ones do not', () => {
  expect(tighteningData.parse(tighteningInput(tightening, about)).batches).toEqual([
    { kind: 'stud', name: 'ASTM A193 B7', number: 'H-77' },
    { kind: 'lubricant', name: 'nickel-based anti-seize', number: 'L-1' },
  ]);
});

test('a record starts with the method and the studs of the setting it follows', () => {
  const setting = {
    input: { method: 'tensioner', torqueTool: null, boltSet: 1, tools: common.tools },
  } as unknown as IssuedSetting;
  expect(freshCommon(setting, 'UTC')).toMatchObject({ method: 'tensioner', boltSet: '1' });
});

test('only what the chosen method takes is sent', () => {
  const sent = (form: Partial<TighteningForm>) =>
    tighteningData.parse(tighteningInput({ ...tightening, ...form }, about));
  const tensioned = sent({ method: 'tensioner', boltSet: '1' });
  expect(tensioned).toMatchObject({ method: 'tensioner', boltSet: 1, torque: null, dialled: null });
  expect(tensioned.load?.si).toBe(108_000);
  const tools = { ...common.tools, driveId: about.jointId };
  const byHand = sent({ method: 'hand torque wrench', tools });
  expect(byHand).toMatchObject({ dialled: null, load: null, torqueTool: null, tools: { driveId: null } });
  expect(byHand.torque?.si).toBe(385);
  expect(sent({ tools })).toMatchObject({ load: null, tools: { driveId: about.jointId } });
});

test('rows follow the number of studs and never lose what was typed', () => {
  const rows = [
    { text: '300', outcome: '' as const },
    { text: '', outcome: '' as const },
    { text: '', outcome: 'cut' as const },
    { text: '', outcome: '' as const },
  ];
  expect(rowsFor(6, rows).map(({ text, outcome }) => text || outcome)).toEqual([
    '300',
    '',
    'cut',
    '',
    '',
    '',
  ]);
  expect(rowsFor(1, rows)).toEqual(rows.slice(0, 3));
  expect(rowsFor(2)).toHaveLength(2);
});

test('what can be read follows the method', () => {
  expect(readableAs('hydraulic wrench')).toEqual(['dialled', 'torque']);
  expect(readableAs('pneumatic torque tool')).toEqual(['torque']);
  expect(readableAs('tensioner')).toEqual(['dialled']);
});
