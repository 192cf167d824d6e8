import type { SettingData, SettingInput } from '../../core/contract/setting.ts';
import type { ToolProperties } from '../../core/contract/tool.ts';
import { blank, needed, type Typed, typed } from './typed.ts';

/** A tool that is set to a torque or to a numbered step, while it is being described. */
export interface TorqueToolForm {
  /** Where the tool stands on the register. */
  toolId: string | null;
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
  toolId: null,
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

type ToolInput = NonNullable<SettingInput['torqueTool']>;

/** Null while the description has gaps; a value that can't be used is sent, so that its fault is named beside it. */
export function torqueToolInput(form: TorqueToolForm): ToolInput | null {
  const texts = [form.number, ...scaleTexts(form)];
  return texts.some((text) => text.trim() === '') ? null : asTyped(form);
}

/** Null only where nothing was typed: what is known of a tool really used isn't dropped, its gaps are named instead. */
export function recordedTool(form: TorqueToolForm): ToolInput | null {
  const texts = [form.number, form.certificate, form.validUntil, ...scaleTexts(form)];
  return texts.every((text) => text.trim() === '') ? null : asTyped(form);
}

export function torqueToolForm(tool: SettingData['torqueTool']): TorqueToolForm {
  if (tool === null) return EMPTY_TORQUE_TOOL;
  const { toolId, number, scale, certificate, validUntil } = tool;
  return {
    toolId,
    number,
    scale: {
      ...EMPTY_TORQUE_TOOL.scale,
      by: scale.by,
      ...(scale.by === 'torque'
        ? {
            least: typed(scale.least, 'N.m'),
            most: typed(scale.most, 'N.m'),
            graduation: typed(scale.graduation, 'N.m'),
          }
        : { steps: scale.steps.map(({ label, torque }) => ({ label, torque: typed(torque, 'N.m') })) }),
    },
    certificate,
    validUntil: validUntil ?? '',
  };
}

type WrenchProperties = Extract<ToolProperties, { class: 'hand torque wrench' }>;

/** The scale of a wrench of the register, as it was typed there. */
export function scaleOfWrench({ least, most, torqueGraduation }: WrenchProperties): TorqueToolForm['scale'] {
  return {
    ...EMPTY_TORQUE_TOOL.scale,
    least: typed(least, 'N.m'),
    most: typed(most, 'N.m'),
    graduation: typed(torqueGraduation, 'N.m'),
  };
}

function scaleTexts({ scale }: TorqueToolForm): string[] {
  return scale.by === 'torque'
    ? [scale.least.text, scale.most.text, scale.graduation.text]
    : scale.steps.flatMap((step) => [step.label, step.torque.text]);
}

function asTyped({ toolId, number, scale, certificate, validUntil }: TorqueToolForm): ToolInput {
  return {
    toolId,
    number,
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
    certificate,
    validUntil: validUntil === '' ? null : validUntil,
  };
}
