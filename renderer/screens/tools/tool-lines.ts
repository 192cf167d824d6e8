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
        ['Reaction arm', show(properties.reactionArm)],
        ['Coupling', properties.coupling || null],
      ];
    case 'cassette':
      return headLines(properties);
    case 'square-drive head':
      return [['Square', show(properties.square)], ...headLines(properties)];
    case 'reducer':
      return [
        ['Outer hex, across flats', show(properties.outerAcrossFlats)],
        ...openingLines(properties),
        ['Rated torque', show(properties.ratedTorque)],
      ];
    case 'pump':
      return [
        ['Rated pressure', show(properties.ratedPressure)],
        ['Connections', String(properties.connections)],
        ['Coupling', properties.coupling || null],
      ];
    case 'gauge':
      return [
        ['End of scale', show(properties.scaleMax)],
        ['Marks every', show(properties.graduation)],
        ['Accuracy, of full scale', show(properties.accuracy)],
        [
          'Also on its face',
          properties.alsoPrinted === null ? 'nothing' : UNITS[properties.alsoPrinted].label,
        ],
      ];
    case 'hose':
      return [
        ['Rated pressure', show(properties.ratedPressure)],
        ['Made on', properties.madeOn && day(properties.madeOn)],
        ['First used on', properties.firstUsedOn && day(properties.firstUsedOn)],
        ['Coupling', properties.coupling || null],
      ];
    case 'coupler':
      return [
        ['Rated pressure', show(properties.ratedPressure)],
        ['Coupling', properties.coupling],
      ];
    case 'counterhold wrench':
      return [...openingLines(properties), ['Rated torque', show(properties.ratedTorque)]];
    case 'hand torque wrench':
      return [
        ['Least torque', show(properties.least)],
        ['Most torque', show(properties.most)],
        ['Marks every', show(properties.torqueGraduation)],
        ['Square', show(properties.square)],
      ];
  }
}

type Lines = readonly (readonly [name: string, text: string | null])[];
type Head = Extract<ToolData['properties'], { class: 'cassette' | 'square-drive head' }>;

const openingLines = (opening: Pick<Head, 'acrossFlats' | 'looseness'>): Lines => [
  ['Opening, across flats', show(opening.acrossFlats)],
  ['Opening above nominal', show(opening.looseness)],
];

const headLines = (head: Head): Lines => [
  ...openingLines(head),
  ['Rated torque', show(head.ratedTorque)],
  ['Family', head.family],
  ['Head radius', show(head.headRadius)],
  ['Height along the stud', show(head.height)],
  ['Hole for the stud', show(head.bore)],
  ['Room for the stud', head.openThrough ? 'open through the back' : show(head.studRoom)],
  ['Reaction arm', show(head.reactionArm)],
];
