import type { SettingInput } from '../../../core/contract/setting.ts';
import { blank, needed, type Typed } from '../../components/typed.ts';

/** A tool that is set to a torque or to a numbered step, while it is being described. */
export interface TorqueToolForm {
  number: string;
  scale: {
    by: 'torque' | 'step';
    least: Typed;
    most: Typed;
    graduation: Typed;
    steps: { label: string; torque: Typed }[];
  };
  certificate: string;
  validUntil: string;
}

export const EMPTY_STEP = { label: '', torque: blank('N.m') };

export const EMPTY_TORQUE_TOOL: TorqueToolForm = {
  number: '',
  scale: {
    by: 'torque',
    least: blank('N.m'),
    most: blank('N.m'),
    graduation: blank('N.m'),
    steps: [EMPTY_STEP],
  },
  certificate: '',
  validUntil: '',
};

/** Null while the description has gaps; a value that can't be used is sent, so that its fault is named beside it. */
export function torqueToolInput(form: TorqueToolForm): NonNullable<SettingInput['torqueTool']> | null {
  const { scale } = form;
  const texts =
    scale.by === 'torque'
      ? [scale.least.text, scale.most.text, scale.graduation.text]
      : scale.steps.flatMap((step) => [step.label, step.torque.text]);
  if (form.number.trim() === '' || texts.some((text) => text.trim() === '')) return null;
  return {
    number: form.number,
    scale:
      scale.by === 'torque'
        ? {
            by: 'torque',
            least: needed(scale.least),
            most: needed(scale.most),
            graduation: needed(scale.graduation),
          }
        : {
            by: 'step',
            steps: scale.steps.map(({ label, torque }) => ({ label, torque: needed(torque) })),
          },
    certificate: form.certificate,
    validUntil: form.validUntil === '' ? null : form.validUntil,
  };
}
