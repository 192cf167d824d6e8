import { expect, test } from 'vitest';
import { torqueTool } from '../../../core/contract/setting.ts';
import { EMPTY_TORQUE_TOOL, type TorqueToolForm, torqueToolInput } from './torque-tool-form.ts';

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
