import type { JointData, JointDetail, OriginMark } from '../../../core/contract/joint.ts';
import { UNITS, type Unit } from '../../../core/units/units.ts';

/** One line of the page's data: a value, where it came from, and how far its table row can be trusted. */
export interface JointLine {
  readonly name: string;
  readonly text: string | null;
  readonly origin: OriginMark;
  readonly source: string;
  readonly status: string | null;
}

interface TypedValue {
  readonly text: string;
  readonly unit: Unit;
}

/** As typed, with its unit. */
export function asTyped(value: TypedValue | null): string | null {
  if (value === null) return null;
  return `${value.text} ${UNITS[value.unit].label}`.trim();
}

export function flangeWords(data: JointData): string {
  const { flange } = data;
  if (flange.kind === 'custom') return flange.description;
  return flange.standard === 'EN 1092-1'
    ? `DN ${flange.size} PN ${flange.rating}, ${flange.facing}`
    : `NPS ${flange.size} Class ${flange.rating}, ${flange.facing}`;
}

export function entered(name: string, text: string | null, source = 'joint data'): JointLine {
  return {
    name,
    text: text === '' ? null : text,
    origin: 'entered',
    source: text ? source : '',
    status: null,
  };
}

/** Bolting first, as resolved against the standard; then what was entered about the rest. */
export function jointLines(joint: JointDetail): JointLine[] {
  const { data } = joint;
  return [
    entered(
      'Flange',
      flangeWords(data),
      data.flange.kind === 'standard' ? data.flange.standard : 'joint data',
    ),
    ...joint.resolved,
    entered('Gasket', gasketText(data)),
    lubricantLine(data),
    entered('Target', targetText(data), data.target?.basis),
    entered('Bolt stress limit', limitText(data.limits.boltStressMax, data), data.limits.source),
    entered('Least bolt stress', limitText(data.limits.boltStressMin, data), data.limits.source),
    entered('Flange limit', asTyped(data.limits.flangeBoltStressMax), data.limits.source),
    entered('Flange rotation', asTyped(data.limits.flangeRotationMax), data.limits.source),
    entered('Service temperature', asTyped(data.serviceTemperature)),
  ];
}

function gasketText({ gasket }: JointData): string | null {
  if (gasket === null) return null;
  const thickness = asTyped(gasket.thickness);
  return thickness === null ? gasket.type : `${gasket.type}, ${thickness}`;
}

export function lubricantLine({ lubricant }: Pick<JointData, 'lubricant'>): JointLine {
  if (lubricant === null) return entered('Lubricant', null);
  const friction =
    lubricant.nutFactor !== null
      ? `K ${asTyped(lubricant.nutFactor)}`
      : lubricant.frictionThread !== null
        ? `μ ${asTyped(lubricant.frictionThread)} thread`
        : 'friction not known';
  return {
    name: 'Lubricant',
    text: `${lubricant.name}, ${friction}`,
    origin: lubricant.evidence === 'assumed' ? 'assumed' : 'entered',
    source: [lubricant.evidence, lubricant.source].filter(Boolean).join(': '),
    status: null,
  };
}

export function targetText({ target }: Pick<JointData, 'target'>): string | null {
  if (target === null) return null;
  switch (target.mode) {
    case 'percent of yield':
      return `${asTyped(target.percent)} of yield, ${target.area} area`;
    case 'bolt stress':
      return `${asTyped(target.stress)}, ${target.area} area`;
    case 'bolt load':
      return `${asTyped(target.load)} per stud`;
    case 'torque':
      return asTyped(target.torque);
    case 'gasket stress':
      return 'gasket stress, from the data sheet';
    case 'component limits':
      return 'gasket stress within component limits';
  }
}

export function limitText(value: TypedValue | null, data: Pick<JointData, 'limits'>): string | null {
  return value === null ? null : `${asTyped(value)}, ${data.limits.boltStressArea} area`;
}
