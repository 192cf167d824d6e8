import { otherToolSetting, type ToolKind, type ToolScale, type ToolSetting } from '../bolting/other-tools.ts';
import type { SettingCard, TorqueTool } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import type { Outcome } from '../findings/outcome.ts';
import { atSettings, raise } from '../findings/raise.ts';
import type { PassSetting } from '../sequence/passes.ts';
import { showQuantity } from '../text/number.ts';
import { type Basis, loadOf } from './basis.ts';
import type { CardInput } from './input.ts';

/** Setting of a whole job or of one pass on a tool without pressure. */
export interface PlainSetting {
  readonly view: SettingCard['toolSetting'];
  readonly load: number | null;
  readonly findings: readonly Raised[];
}

/**
 * Largest torque on the scale of the tool entered.
 *
 * Equation: Tmost as entered for the tool.
 * @param input input of the card
 * @returns N·m, or null for other methods and when it is not known
 * @example scaleEnd(input) // null
 * @source scale as entered
 */
export function scaleEnd({ torqueTool, method }: CardInput): number | null {
  if (torqueTool === null || toolKind(method) === null) return null;
  const { scale } = torqueTool;
  return scale.by === 'torque' ? scale.most.si : Math.max(...scale.steps.map(({ torque }) => torque.si));
}

/**
 * What to set for the target on a hand, battery or pneumatic tool, or the load of a tensioned joint.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param limits torques never to be exceeded, N·m, above 0
 * @returns setting with findings; nothing set where data are missing
 * @example plainSetting({ ...input, method: 'hand torque wrench' }, basis, []).findings.length > 0 // true
 * @source otherToolSetting, tensionedLoad
 */
export function plainSetting(input: CardInput, basis: Basis, limits: readonly number[]): PlainSetting {
  const kind = toolKind(input.method);
  if (kind === null) return { view: null, load: basis.targetLoad, findings: [tension(input)] };
  const { torqueTool } = input;
  if (torqueTool === null) {
    return { view: null, load: basis.targetLoad, findings: [notEntered(input)] };
  }
  const certificate = checkCertificate(input, torqueTool);
  if (basis.targetTorque === null) return { view: null, load: basis.targetLoad, findings: certificate };
  const setting = settingFor(kind, torqueTool, basis.targetTorque, limits);
  if (setting.value === null) {
    return {
      view: null,
      load: basis.targetLoad,
      findings: [
        ...certificate,
        unsuitable(input, torqueTool, setting.missing.map(({ remedy }) => remedy).join('; ')),
      ],
    };
  }
  const { torque, deviation, basis: how } = setting.value;
  return {
    view: {
      tool: torqueTool.number,
      kind: input.method,
      text: setText(setting.value, torqueTool),
      torque,
      deviation,
      basis: how,
    },
    load: loadOf(basis, torque),
    findings: certificate,
  };
}

/**
 * What to set in one pass on a tool without pressure; what lies off its scale is left open.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param fraction of the target, 1, above 0 to 1
 * @param limits torques never to be exceeded, N·m, above 0
 * @returns setting, torque in N·m and load in N; null where not known
 * @example plainPass({ ...input, method: 'hand torque wrench' }, basis, 0.3, []).dial // null
 * @source otherToolSetting, tensionedLoad
 */
export function plainPass(
  input: CardInput,
  basis: Basis,
  fraction: number,
  limits: readonly number[],
): PassSetting {
  const kind = toolKind(input.method);
  const { targetTorque, targetLoad } = basis;
  if (kind === null) {
    return { dial: null, set: null, torque: null, load: targetLoad === null ? null : fraction * targetLoad };
  }
  const setting =
    input.torqueTool === null || targetTorque === null
      ? null
      : settingFor(kind, input.torqueTool, fraction * targetTorque, limits).value;
  if (setting === null || input.torqueTool === null)
    return { dial: null, set: null, torque: null, load: null };
  return {
    dial: null,
    set: setText(setting, input.torqueTool),
    torque: setting.torque,
    load: loadOf(basis, setting.torque),
  };
}

/**
 * What to set on a tool without pressure for a torque that is not to be exceeded.
 *
 * @param input input of the card
 * @param torque N·m, above 0
 * @returns mark or step, or null for other methods and off the scale
 * @example setBelow({ ...input, method: 'hand torque wrench' }, 100) // null while no tool is entered
 * @source otherToolSetting
 */
export function setBelow({ method, torqueTool }: CardInput, torque: number): string | null {
  const kind = toolKind(method);
  if (kind === null || torqueTool === null) return null;
  const setting = settingFor(kind, torqueTool, torque, [torque]).value;
  return setting === null ? null : setText(setting, torqueTool);
}

/**
 * What stands against loosening with a method that has no pressure.
 *
 * @param input input of the card
 * @returns findings; none for the hydraulic wrench
 * @example checkLoosening(input).length // 0
 * @source common practice
 */
export function checkLoosening(input: CardInput): Raised[] {
  const { method, torqueTool } = input;
  if (method === 'hydraulic wrench') return [];
  if (method === 'tensioner') return [tension(input)];
  if (torqueTool === null) return [notEntered(input)];
  const certificate = checkCertificate(input, torqueTool);
  return method === 'hand torque wrench'
    ? [...certificate, unsuitable(input, torqueTool, LOOSENING)]
    : certificate;
}

const LOOSENING = 'a torque wrench is not made for loosening nuts (common practice)';

function toolKind(method: CardInput['method']): ToolKind | null {
  return method === 'hydraulic wrench' || method === 'tensioner' ? null : method;
}

function settingFor(
  kind: ToolKind,
  tool: TorqueTool,
  torque: number,
  limits: readonly number[],
): Outcome<ToolSetting> {
  // A limit that the wanted torque already breaks is said by the checks; here it would only hide the setting.
  const kept = limits.filter((limit) => torque <= limit * (1 + 1e-12));
  return otherToolSetting(kind, scaleOf(tool), torque, kept.length === 0 ? null : Math.min(...kept));
}

function scaleOf({ scale }: TorqueTool): ToolScale {
  if (scale.by === 'step') {
    return { by: 'step', steps: scale.steps.map(({ label, torque }) => ({ label, torque: torque.si })) };
  }
  return { by: 'torque', least: scale.least.si, most: scale.most.si, graduation: scale.graduation.si };
}

function setText({ set }: ToolSetting, { scale }: TorqueTool): string {
  if (set.by === 'step') return `step ${set.label}`;
  return showQuantity(set.torque, scale.by === 'torque' ? scale.graduation.unit : 'N.m');
}

function about(input: CardInput) {
  return { subject: input.torqueTool?.number ?? input.method, place: atSettings('torqueTool') };
}

function notEntered(input: CardInput): Raised {
  return raise('torque_tool_unknown', () => ({ method: input.method }), {
    ...about(input),
    severity: 'refusal',
    source: 'the setting as chosen',
  });
}

function tension(input: CardInput): Raised {
  return raise('tension_has_no_torque', () => ({}), {
    ...about(input),
    // The pressure that loosens a tensioned stud comes from the tensioner's own procedure.
    severity: input.kind === 'breakout' ? 'refusal' : 'note',
    source: 'the setting as chosen',
  });
}

function unsuitable(input: CardInput, tool: TorqueTool, reason: string): Raised {
  return raise('torque_tool_unsuitable', () => ({ tool: `${input.method} ${tool.number}`, reason }), {
    ...about(input),
    severity: 'refusal',
    source: 'scale of the tool',
  });
}

function checkCertificate(input: CardInput, { number, certificate, validUntil }: TorqueTool): Raised[] {
  const { startsOn, endsOn } = input;
  const stands = { ...about(input), source: 'certificate as entered' };
  if (certificate === '' || validUntil === null) {
    return [
      raise('certificate_missing', () => ({ part: `${input.method} ${number}`, reason: 'none' }), {
        ...stands,
        severity: 'refusal',
      }),
    ];
  }
  if (validUntil < startsOn) {
    return [
      raise('certificate_lapsed', () => ({ certificate, validUntil, startsOn }), {
        ...stands,
        severity: 'refusal',
        value: validUntil,
        limit: startsOn,
      }),
    ];
  }
  if (validUntil >= endsOn) return [];
  return [
    raise('certificate_lapses_during_job', () => ({ certificate, validUntil, endsOn }), {
      ...stands,
      severity: 'warning',
      value: validUntil,
      limit: endsOn,
    }),
  ];
}
