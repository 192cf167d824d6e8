import type { ToolData } from '../../../core/contract/tool.ts';
import { UNITS, type Unit } from '../../../core/units/units.ts';
import { day } from '../../app/text/time.ts';

interface TypedValue {
  readonly text: string;
  readonly unit: Unit;
}

const show = (value: TypedValue | null): string | null =>
  value && `${value.text} ${UNITS[value.unit].label}`.trim();

/** What a tool may stand and what it fits, as entered; null is "not known". */
export function toolLines({
  properties,
}: ToolData): readonly (readonly [name: string, text: string | null])[] {
  switch (properties.class) {
    case 'drive unit':
      return [
        ['Rated torque', show(properties.ratedTorque)],
        ['Rated pressure', show(properties.ratedPressure)],
        ['Family', properties.family],
        ['Head radius', show(properties.headRadius)],
      ];
    case 'cassette':
      return [
        ['Opening, across flats', show(properties.acrossFlats)],
        ['Opening above nominal', show(properties.looseness)],
        ['Rated torque', show(properties.ratedTorque)],
        ['Family', properties.family],
        ['Head radius', show(properties.headRadius)],
      ];
    case 'reducer':
      return [
        ['Outer hex, across flats', show(properties.outerAcrossFlats)],
        ['Opening, across flats', show(properties.acrossFlats)],
        ['Opening above nominal', show(properties.looseness)],
        ['Rated torque', show(properties.ratedTorque)],
      ];
    case 'pump':
      return [['Rated pressure', show(properties.ratedPressure)]];
    case 'gauge':
      return [
        ['End of scale', show(properties.scaleMax)],
        ['Marks every', show(properties.graduation)],
        ['Accuracy, of full scale', show(properties.accuracy)],
      ];
    case 'hose':
      return [
        ['Rated pressure', show(properties.ratedPressure)],
        ['Made on', properties.madeOn && day(properties.madeOn)],
      ];
  }
}
