import type { SiteRowData, SiteRowInput, SiteRowKind } from '../../../core/contract/site.ts';
import type { QuantityKind, Unit } from '../../../core/units/units.ts';
import { blank, needed, orNull, type Typed, textOrNull, typed } from '../../components/typed.ts';

/** One typed value of a row: its name in the contract, its words, and the unit it opens with. */
export interface RowValue {
  readonly name: string;
  readonly label: string;
  readonly quantity: QuantityKind;
  readonly unit: Unit;
}

export const GASKET_VALUES: readonly RowValue[] = [
  { name: 'thickness', label: 'Thickness', quantity: 'length', unit: 'mm' },
  { name: 'factorM', label: 'Gasket factor m', quantity: 'ratio', unit: 'one' },
  { name: 'stressY', label: 'Seating stress y', quantity: 'stress', unit: 'MPa' },
  { name: 'seatingStress', label: 'Least stress to seat it', quantity: 'stress', unit: 'MPa' },
  { name: 'operatingStress', label: 'Least stress in operation', quantity: 'stress', unit: 'MPa' },
  { name: 'targetStress', label: 'Target stress', quantity: 'stress', unit: 'MPa' },
  { name: 'stressMax', label: 'Highest stress', quantity: 'stress', unit: 'MPa' },
  { name: 'retainedOperating', label: 'Stress left in operation', quantity: 'ratio', unit: 'percent' },
  { name: 'rotationMax', label: 'Highest flange rotation', quantity: 'angle', unit: 'deg' },
];

export const LUBRICANT_VALUES: readonly RowValue[] = [
  { name: 'nutFactor', label: 'Nut factor K', quantity: 'ratio', unit: 'one' },
  { name: 'nutFactorCv', label: 'Scatter of K', quantity: 'ratio', unit: 'percent' },
  { name: 'nutFactorBatchCv', label: 'Scatter of K from batch to batch', quantity: 'ratio', unit: 'percent' },
  { name: 'frictionThread', label: 'Friction in the thread', quantity: 'ratio', unit: 'one' },
  { name: 'frictionBearing', label: 'Friction under the nut', quantity: 'ratio', unit: 'one' },
];

const VALUES = [...GASKET_VALUES, ...LUBRICANT_VALUES];

interface BandForm {
  over: Typed;
  upTo: Typed;
  yieldStrength: Typed;
  tensileStrength: Typed;
}

/** Everything a row of any kind may need; only the fields of its kind are shown and sent. */
export interface SiteRowForm {
  key: string;
  source: string;
  retired: boolean;
  count: string;
  thread: string;
  circle: Typed;
  studLength: Typed;
  grip: Typed;
  bands: BandForm[];
  values: Record<string, Typed>;
  evidence: string;
}

export const blankBand = (): BandForm => ({
  over: { text: '0', unit: 'mm' },
  upTo: blank('mm'),
  yieldStrength: blank('MPa'),
  tensileStrength: blank('MPa'),
});

export function emptyRow(): SiteRowForm {
  return {
    key: '',
    source: '',
    retired: false,
    count: '',
    thread: '',
    circle: blank('mm'),
    studLength: blank('mm'),
    grip: blank('mm'),
    bands: [blankBand()],
    values: Object.fromEntries(VALUES.map(({ name, unit }) => [name, blank(unit)])),
    evidence: 'measured',
  };
}

export function siteRowForm(row: SiteRowData): SiteRowForm {
  const form = { ...emptyRow(), key: row.key, source: row.source, retired: row.retired };
  switch (row.kind) {
    case 'flange':
      return {
        ...form,
        count: row.count === null ? '' : String(row.count),
        thread: row.thread ?? '',
        circle: typed(row.circle, 'mm'),
        studLength: typed(row.studLength, 'mm'),
        grip: typed(row.grip, 'mm'),
      };
    case 'stud grade':
      return {
        ...form,
        bands: row.bands.map((band) => ({
          over: typed(band.over, 'mm'),
          upTo: typed(band.upTo, 'mm'),
          yieldStrength: typed(band.yieldStrength, 'MPa'),
          tensileStrength: typed(band.tensileStrength, 'MPa'),
        })),
      };
    case 'gasket':
      return { ...form, values: { ...form.values, ...typedValues(row.values, GASKET_VALUES) } };
    case 'lubricant':
      return {
        ...form,
        values: { ...form.values, ...typedValues(row.values, LUBRICANT_VALUES) },
        evidence: row.values.evidence,
      };
  }
}

/** The service checks names, units and ranges; what the form doesn't show is kept from the stored row. */
export function siteRowInput(kind: SiteRowKind, form: SiteRowForm, stored: SiteRowData | null): SiteRowInput {
  const common = { key: form.key, source: form.source, retired: form.retired };
  switch (kind) {
    case 'flange':
      return {
        kind,
        ...common,
        count: form.count.trim() === '' ? null : Number(form.count),
        thread: textOrNull(form.thread),
        circle: orNull(form.circle),
        studLength: orNull(form.studLength),
        grip: orNull(form.grip),
      } as SiteRowInput;
    case 'stud grade':
      return {
        kind,
        ...common,
        bands: form.bands.map((band) => ({
          over: needed(band.over),
          upTo: needed(band.upTo),
          yieldStrength: needed(band.yieldStrength),
          tensileStrength: orNull(band.tensileStrength),
        })),
      } as SiteRowInput;
    case 'gasket': {
      const kept = stored?.kind === kind ? stored.values : {};
      return { kind, ...common, values: { ...kept, ...valuesOf(form, GASKET_VALUES) } } as SiteRowInput;
    }
    case 'lubricant': {
      const kept = stored?.kind === kind ? stored.values : {};
      const values = { ...kept, ...valuesOf(form, LUBRICANT_VALUES), evidence: form.evidence };
      return { kind, ...common, values } as SiteRowInput;
    }
  }
}

function typedValues(values: object, names: readonly RowValue[]): Record<string, Typed> {
  const stored = values as Readonly<Record<string, Typed | null>>;
  return Object.fromEntries(names.map(({ name, unit }) => [name, typed(stored[name], unit)]));
}

function valuesOf({ values }: SiteRowForm, names: readonly RowValue[]): Record<string, Typed | null> {
  return Object.fromEntries(names.map(({ name, unit }) => [name, orNull(values[name] ?? blank(unit))]));
}
