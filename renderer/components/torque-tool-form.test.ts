import { expect, test } from 'vitest';
import { torqueTool } from '../../core/contract/setting.ts';
import {
  EMPTY_TORQUE_TOOL,
  recordedTool,
  type TorqueToolForm,
  torqueToolForm,
  torqueToolInput,
} from './torque-tool-form.ts';

const torque = (text: string) => ({ text, unit: 'N.m' as const });

test('a tool with gaps in its description is none yet', () => {
  expect(torqueToolInput({ ...EMPTY_TORQUE_TOOL, number: 'H-1' })).toBeNull();
});

test('a scale by torque is sent as typed', () => {
  const form: TorqueToolForm = {
    ...EMPTY_TORQUE_TOOL,
    number: 'H-1',
    scale: {
      ...EMPTY_TORQUE_TOOL.scale,
      least: torque('60'),
      most: torque('300'),
      graduation: torque('2.5'),
    },
  };
  const tool = torqueTool.parse(torqueToolInput(form));
  expect(tool.scale).toMatchObject({ by: 'torque', graduation: { text: '2.5', si: 2.5 } });
  expect(tool.validUntil).toBeNull();
});

test('numbered steps are sent with what each gives, and a bad number is left for the service to refuse', () => {
  const form: TorqueToolForm = {
    ...EMPTY_TORQUE_TOOL,
    number: 'B-1',
    scale: { ...EMPTY_TORQUE_TOOL.scale, by: 'step', steps: [{ label: '4', torque: torque('120') }] },
  };
  expect(torqueTool.parse(torqueToolInput(form)).scale).toMatchObject({
    by: 'step',
    steps: [{ label: '4' }],
  });
  const bad = { ...form, scale: { ...form.scale, steps: [{ label: '4', torque: torque('12,5') }] } };
  expect(torqueTool.safeParse(torqueToolInput(bad)).success).toBe(false);
});

test('a record drops a tool only where nothing was typed', () => {
  expect(recordedTool(EMPTY_TORQUE_TOOL)).toBeNull();
  const half = recordedTool({ ...EMPTY_TORQUE_TOOL, certificate: 'C-9' });
  expect(half).toMatchObject({ number: '', certificate: 'C-9' });
  const faults = torqueTool.safeParse(half).error?.issues.map(({ path }) => path.join('.'));
  expect(faults).toEqual(['number', 'scale.least', 'scale.most', 'scale.graduation']);
});

test.each([
  { by: 'torque' as const, least: torque('60'), most: torque('300'), graduation: torque('2.5') },
  { by: 'step' as const, steps: [{ label: '4', torque: torque('120') }] },
])('a stored tool set by $by comes back as it was typed', (scale) => {
  const stored = torqueTool.parse({ number: 'T-1', scale, certificate: 'C-9', validUntil: '2026-12-31' });
  expect(torqueTool.parse(torqueToolInput(torqueToolForm(stored)))).toEqual(stored);
});
