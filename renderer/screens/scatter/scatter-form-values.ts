import type { RequestInput } from '../../../core/contract/requests.ts';
import type { Unit } from '../../../core/units/units.ts';
import { blanks, orNullEach, type Typed } from '../../components/typed.ts';

/** Fields of the model that may be blank, each in the unit it is usually given in. */
const RING = { width: 'mm', thickness: 'mm', modulus: 'MPa', radius: 'mm' } as const satisfies Record<
  string,
  Unit
>;
const REST = {
  gasketStiffness: 'MPa',
  gasketRadius: 'mm',
  gasketWidth: 'mm',
  boltRadius: 'mm',
  boltStiffness: 'kN/mm',
  target: 'kN',
  limit: 'kN',
  scatter: 'percent',
  tolerance: 'percent',
} as const satisfies Record<string, Unit>;

export interface ScatterValues {
  readonly ring: Record<keyof typeof RING, Typed>;
  readonly rest: Record<keyof typeof REST, Typed>;
  readonly first: string;
  readonly second: string;
  /** Trips around the circle in which it is to end even; blank does not look for loads to set. */
  readonly trips: string;
  readonly sensitivity: boolean;
  /** Loads measured while the first plan was followed: one a line, "pass bolt load in kN". */
  readonly measured: string;
}

/** Gasket stiffnesses the answer is tried with, as multiples of the one that is entered. */
const FACTORS = [0.25, 0.5, 1, 2, 4];

export const emptyValues = (first: string): ScatterValues => ({
  ring: blanks(RING),
  rest: blanks(REST),
  first,
  second: '',
  trips: '',
  sensitivity: false,
  measured: '',
});

/** What the register is asked; a second plan only where another one than the first is chosen. */
export function askedOf(
  jointId: string,
  { ring, rest, first, second, trips, sensitivity, measured }: ScatterValues,
): RequestInput<'scatter.simulate'> {
  const planIds = second === '' || second === first ? [first] : [first, second];
  return {
    jointId,
    ring: orNullEach(ring, RING),
    ...orNullEach(rest, REST),
    planIds,
    even: trips.trim() === '' ? null : { trips: Number(trips) },
    sensitivity: sensitivity ? FACTORS : [],
    measured: measuredOf(measured),
  } as RequestInput<'scatter.simulate'>;
}

interface MeasuredLine {
  readonly pass: number;
  readonly bolt: number;
  readonly load: string;
}

const LINE = /^(\d{1,2})[\s,;]+(\d{1,3})[\s,;]+(\d+(?:\.\d+)?)$/;

const linesOf = (text: string): readonly { readonly line: string; readonly read: MeasuredLine | null }[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map((line) => {
      const [, pass, bolt, load] = LINE.exec(line) ?? [];
      if (pass === undefined || bolt === undefined || load === undefined) return { line, read: null };
      return { line, read: { pass: Number(pass), bolt: Number(bolt), load } };
    });

/** The first line that can't be read, with what is allowed; null where all can. */
export function measuredFault(text: string): string | null {
  const wrong = linesOf(text).find(({ read }) => read === null);
  return wrong === undefined
    ? null
    : `"${wrong.line}": a line is pass, bolt and load in kN, as "3 1 104.5", with a point as the decimal sign`;
}

/** Measured loads by the pass they were measured after. */
function measuredOf(text: string) {
  const read = linesOf(text).flatMap((line) => (line.read === null ? [] : [line.read]));
  return [...Map.groupBy(read, ({ pass }) => pass)].map(([afterPass, lines]) => ({
    afterPass,
    loads: lines.map(({ bolt, load }) => ({ bolt, load: { text: load, unit: 'kN' as const } })),
  }));
}
