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
} as const satisfies Record<string, Unit>;

export interface ScatterValues {
  readonly ring: Record<keyof typeof RING, Typed>;
  readonly rest: Record<keyof typeof REST, Typed>;
  readonly first: string;
  readonly second: string;
}

export const emptyValues = (first: string): ScatterValues => ({
  ring: blanks(RING),
  rest: blanks(REST),
  first,
  second: '',
});

/** What the register is asked; a second plan only where another one than the first is chosen. */
export function askedOf(
  jointId: string,
  { ring, rest, first, second }: ScatterValues,
): RequestInput<'scatter.simulate'> {
  const planIds = second === '' || second === first ? [first] : [first, second];
  return {
    jointId,
    ring: orNullEach(ring, RING),
    ...orNullEach(rest, REST),
    planIds,
  } as RequestInput<'scatter.simulate'>;
}
