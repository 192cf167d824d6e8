import type { DemoConfirmation, DemoJoint } from './types.ts';

/** Joints on rows of the tables that one source prints. Somebody confirmed the rows of the first four. */
export const CONFIRMED = ['J-500-903', 'J-500-904', 'J-800-901', 'J-800-902'] as const;
export const UNCONFIRMED = ['J-800-903', 'J-800-904', 'J-200-903'] as const;

/** What the invented integrity engineer is said to have compared; no document was seen by anybody. */
export const CONFIRMATIONS: readonly DemoConfirmation[] = [
  {
    table: 'ASTM A320/A320M',
    key: 'ASTM A320 L7M | inch | over 0 to 63.5 mm',
    values: [
      { field: 'yield', value: '80 ksi' },
      { field: 'tensile', value: '100 ksi' },
    ],
    person: 'Mei Fairlock',
    sourceSeen: 'invented demo data',
  },
  {
    table: 'EN 1092-1',
    key: '700 | 10',
    values: [
      { field: 'count', value: '24' },
      { field: 'thread', value: 'M27' },
      { field: 'circle', value: '840 mm' },
    ],
    person: 'Mei Fairlock',
    sourceSeen: 'invented demo data',
  },
];

/** The joints, made from an ordinary joint of the plant. */
export function oneSourceJoints(ordinary: DemoJoint): DemoJoint[] {
  const sour = (tag: string, place: string): DemoJoint => ({
    ...ordinary,
    tag,
    unit: 'Unit 500 Amine treating',
    location: place,
    service: 'rich amine',
    serviceTemperature: { text: '58', unit: 'degC' },
    flange: asme('6', '300'),
    bolting: { ...ordinary.bolting, grade: 'ASTM A320 L7M' },
    remarks: 'Invented demo data.',
  });
  const header = (tag: string, place: string, size: string): DemoJoint => ({
    ...ordinary,
    tag,
    unit: 'Unit 800 Cooling water',
    location: place,
    service: 'cooling water',
    serviceTemperature: { text: '24', unit: 'degC' },
    flange: { kind: 'standard', standard: 'EN 1092-1', size, rating: '10', facing: 'raised face' },
    bolting: { ...ordinary.bolting, grade: 'ISO 898-1 8.8', nutSeries: 'ISO 4032' },
    gasket: { type: 'fibre sheet', thickness: { text: '3', unit: 'mm' } },
    remarks: 'Invented demo data.',
  });
  const [sourInlet, sourOutlet, supply, back] = CONFIRMED;
  const [largeSupply, largeReturn, strong] = UNCONFIRMED;
  return [
    sour(sourInlet, 'absorber C-501, rich amine outlet, elevation +2 m'),
    sour(sourOutlet, 'flash drum D-501, inlet, elevation +6 m'),
    header(supply, 'header W-80, supply branch, elevation +1 m', '700'),
    header(back, 'header W-80, return branch, elevation +1 m', '700'),
    header(largeSupply, 'cooling tower CT-1, supply main, elevation +2 m', '800'),
    header(largeReturn, 'cooling tower CT-1, return main, elevation +8 m', '800'),
    {
      ...ordinary,
      tag: strong,
      unit: 'Unit 200 Hydrotreater',
      location: 'compressor K-201, discharge, elevation +3 m',
      service: 'hydrogen recycle',
      serviceTemperature: { text: '95', unit: 'degC' },
      flange: asme('8', '900'),
      bolting: { ...ordinary.bolting, grade: 'ASTM A540 B24 class 4' },
      remarks: 'Invented demo data.',
    },
  ];
}

function asme(size: string, rating: string): DemoJoint['flange'] {
  return { kind: 'standard', standard: 'ASME B16.5', size, rating, facing: 'raised face' };
}
