import type { ToolClass, ToolData, ToolInput } from '../../../core/contract/tool.ts';
import { blank, needed, orNull, type Typed, textOrNull } from '../../components/typed.ts';

/** Everything a tool of any class may need; only the fields of the chosen class are shown and sent. */
export interface ToolForm {
  number: string;
  serial: string;
  status: string;
  place: string;
  remarks: string;
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
  };
}

export const EMPTY_TOOL: ToolForm = {
  number: '',
  serial: '',
  status: 'available',
  place: '',
  remarks: '',
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
    properties: { ...EMPTY_TOOL.properties, ...known },
  };
}

export function toolInput(form: ToolForm): ToolInput {
  return {
    number: form.number,
    serial: form.serial,
    status: form.status as ToolInput['status'],
    place: form.place,
    remarks: form.remarks,
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
      };
    case 'cassette':
      return {
        class: form.class,
        ...opening,
        ratedTorque: orNull(form.ratedTorque),
        family: form.family,
        headRadius: orNull(form.headRadius),
      };
    case 'reducer':
      return {
        class: form.class,
        outerAcrossFlats: needed(form.outerAcrossFlats),
        ...opening,
        ratedTorque: orNull(form.ratedTorque),
      };
    case 'pump':
      return { class: form.class, ratedPressure: needed(form.ratedPressure) };
    case 'gauge':
      return {
        class: form.class,
        scaleMax: needed(form.scaleMax),
        graduation: needed(form.graduation),
        accuracy: needed(form.accuracy),
      };
    case 'hose':
      return {
        class: form.class,
        ratedPressure: needed(form.ratedPressure),
        madeOn: textOrNull(form.madeOn),
      };
  }
}
