import type { ToolClass, ToolData, ToolInput } from '../../../core/contract/tool.ts';
import { blank, needed, orNull, type Typed, textOrNull, typed } from '../../components/typed.ts';

/** Everything a tool of any class may need; only the fields of the chosen class are shown and sent. */
export interface ToolForm {
  number: string;
  serial: string;
  status: string;
  place: string;
  remarks: string;
  hired: boolean;
  hiredFrom: string;
  returnBy: string;
  weight: Typed;
  properties: {
    class: ToolClass;
    ratedTorque: Typed;
    ratedPressure: Typed;
    family: string;
    headRadius: Typed;
    acrossFlats: Typed;
    looseness: Typed;
    outerAcrossFlats: Typed;
    scaleMax: Typed;
    graduation: Typed;
    accuracy: Typed;
    madeOn: string;
    firstUsedOn: string;
    coupling: string;
    connections: string;
    alsoPrinted: string;
    height: Typed;
    bore: Typed;
    studRoom: Typed;
    openThrough: boolean;
    reactionArm: Typed;
    square: Typed;
    least: Typed;
    most: Typed;
    torqueGraduation: Typed;
  };
}

export const EMPTY_TOOL: ToolForm = {
  number: '',
  serial: '',
  status: 'available',
  place: '',
  remarks: '',
  hired: false,
  hiredFrom: '',
  returnBy: '',
  weight: blank('kg'),
  properties: {
    class: 'drive unit',
    ratedTorque: blank('N.m'),
    ratedPressure: blank('bar'),
    family: '',
    headRadius: blank('mm'),
    acrossFlats: blank('in'),
    looseness: blank('mm'),
    outerAcrossFlats: blank('in'),
    scaleMax: blank('bar'),
    graduation: blank('bar'),
    accuracy: blank('percent'),
    madeOn: '',
    firstUsedOn: '',
    coupling: '',
    connections: '1',
    alsoPrinted: '',
    height: blank('mm'),
    bore: blank('mm'),
    studRoom: blank('mm'),
    openThrough: false,
    reactionArm: blank('mm'),
    square: blank('in'),
    least: blank('N.m'),
    most: blank('N.m'),
    torqueGraduation: blank('N.m'),
  },
};

export function toolForm(data: ToolData): ToolForm {
  const known = Object.fromEntries(Object.entries(data.properties).filter(([, value]) => value !== null));
  return {
    number: data.number,
    serial: data.serial,
    status: data.status,
    place: data.place,
    remarks: data.remarks,
    hired: data.owner.kind === 'hired',
    hiredFrom: data.owner.kind === 'hired' ? data.owner.from : '',
    returnBy: data.owner.kind === 'hired' ? (data.owner.returnBy ?? '') : '',
    weight: typed(data.weight, 'kg'),
    properties: {
      ...EMPTY_TOOL.properties,
      ...known,
      connections: data.properties.class === 'pump' ? String(data.properties.connections) : '1',
    },
  };
}

export function toolInput(form: ToolForm): ToolInput {
  return {
    number: form.number,
    serial: form.serial,
    status: form.status as ToolInput['status'],
    place: form.place,
    remarks: form.remarks,
    owner: form.hired
      ? { kind: 'hired', from: form.hiredFrom, returnBy: textOrNull(form.returnBy) }
      : { kind: 'own' },
    weight: orNull(form.weight) as ToolInput['weight'],
    properties: propertiesInput(form.properties) as ToolInput['properties'],
  };
}

/** The service checks units and ranges; here only the shape of the class is put together. */
function propertiesInput(form: ToolForm['properties']) {
  const opening = { acrossFlats: needed(form.acrossFlats), looseness: orNull(form.looseness) };
  switch (form.class) {
    case 'drive unit':
      return {
        class: form.class,
        ratedTorque: needed(form.ratedTorque),
        ratedPressure: needed(form.ratedPressure),
        family: form.family,
        headRadius: orNull(form.headRadius),
        reactionArm: orNull(form.reactionArm),
        coupling: form.coupling,
      };
    case 'cassette':
      return { class: form.class, ...opening, ...headInput(form) };
    case 'square-drive head':
      return { class: form.class, square: needed(form.square), ...opening, ...headInput(form) };
    case 'reducer':
      return {
        class: form.class,
        outerAcrossFlats: needed(form.outerAcrossFlats),
        ...opening,
        ratedTorque: orNull(form.ratedTorque),
      };
    case 'pump':
      return {
        class: form.class,
        ratedPressure: needed(form.ratedPressure),
        connections: Number(form.connections),
        coupling: form.coupling,
      };
    case 'gauge':
      return {
        class: form.class,
        scaleMax: needed(form.scaleMax),
        graduation: needed(form.graduation),
        accuracy: needed(form.accuracy),
        alsoPrinted: textOrNull(form.alsoPrinted),
      };
    case 'hose':
      return {
        class: form.class,
        ratedPressure: needed(form.ratedPressure),
        madeOn: textOrNull(form.madeOn),
        firstUsedOn: textOrNull(form.firstUsedOn),
        coupling: form.coupling,
      };
    case 'coupler':
      return { class: form.class, ratedPressure: needed(form.ratedPressure), coupling: form.coupling };
    case 'counterhold wrench':
      return { class: form.class, ...opening, ratedTorque: orNull(form.ratedTorque) };
    case 'hand torque wrench':
      return {
        class: form.class,
        least: needed(form.least),
        most: needed(form.most),
        torqueGraduation: needed(form.torqueGraduation),
        square: orNull(form.square),
      };
  }
}

function headInput(form: ToolForm['properties']) {
  return {
    ratedTorque: orNull(form.ratedTorque),
    family: form.family,
    headRadius: orNull(form.headRadius),
    height: orNull(form.height),
    bore: orNull(form.bore),
    studRoom: orNull(form.studRoom),
    openThrough: form.openThrough,
    reactionArm: orNull(form.reactionArm),
  };
}
