import { type GasketData, gasketKind } from '../../../core/contract/gasket.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import { CASE_COLUMNS, CASE_SOURCE, GASKET_QUANTITIES, GASKET_TEXTS } from './gasket-columns.ts';
import type { RowReader } from './row.ts';
import type { HeadingOfPath } from './validate.ts';

/** Paths of gasket and pressure cases in the contract's shape, with their headings. */
export const GASKET_HEADINGS: HeadingOfPath = {
  'gasket.type': 'gasket',
  'gasket.thickness': 'gasket thickness',
  'gasket.kind': 'gasket kind',
  'gasket.codeType': 'gasket code type',
  'gasket.batch': 'gasket batch',
  'gasket.source': 'gasket source',
  'pressures.source': CASE_SOURCE.heading,
  ...Object.fromEntries(GASKET_QUANTITIES.map(({ field, column }) => [`gasket.${field}`, column.heading])),
  ...Object.fromEntries(
    CASE_COLUMNS.flatMap(({ name, pressure, temperature }) => [
      [`pressures.${name}.pressure`, pressure.heading],
      [`pressures.${name}.temperature`, temperature.heading],
    ]),
  ),
};

const BESIDE_TYPE = [
  'gasket thickness',
  ...GASKET_TEXTS.map(({ heading }) => heading),
  ...GASKET_QUANTITIES.map(({ column }) => column.heading),
];

/** The gasket of a row; null where the row names none and gives nothing about one. */
export function gasketOf(row: RowReader, before: GasketData | null) {
  const type = row.text('gasket', before?.type);
  const given = BESIDE_TYPE.find((heading) => row.raw(heading) !== '');
  if (type === '' && given === undefined) return null;
  if (type === '') row.fault('gasket', `needed when "${given}" is given`);
  return {
    ...before,
    type,
    thickness: row.quantity('gasket thickness', before?.thickness),
    kind: row.choice('gasket kind', gasketKind.options, before?.kind),
    codeType: row.optional('gasket code type', before?.codeType),
    batch: row.text('gasket batch', before?.batch),
    source: row.text('gasket source', before?.source),
    ...Object.fromEntries(
      GASKET_QUANTITIES.map(({ field, column }) => [field, row.quantity(column.heading, before?.[field])]),
    ),
  };
}

export function pressuresOf(row: RowReader, before: JointData['pressures'] | undefined) {
  const cases = CASE_COLUMNS.map(({ name, pressure, temperature }) => [
    name,
    {
      pressure: row.quantity(pressure.heading, before?.[name].pressure),
      temperature: row.quantity(temperature.heading, before?.[name].temperature),
    },
  ]);
  return { ...Object.fromEntries(cases), source: row.text(CASE_SOURCE.heading, before?.source) };
}
