import { leastTrusted, type RowStatus } from './status.ts';
import { VDI_2230_FRICTION } from './vdi-2230-friction.ts';

export const FRICTION_CLASSES = ['A', 'B', 'C', 'D', 'E'] as const;
export type FrictionClassName = (typeof FRICTION_CLASSES)[number];

/** Range of friction for thread and bearing face, each by itself. */
export interface FrictionClass {
  readonly name: FrictionClassName;
  readonly min: number;
  /** Null where the class has no upper end. */
  readonly max: number | null;
  readonly pairs: readonly { readonly lubricant: string; readonly surface: string }[];
  /** A guide value from print: no measurement on this lubricant or these studs. */
  readonly evidence: 'published';
  readonly source: string;
  readonly sources: string;
  readonly status: RowStatus;
}

/**
 * What a friction class is called where lubricants are named.
 *
 * @param name A to E
 * @returns name to show and to keep
 * @example frictionClassName('B') // 'friction class B'
 * @source wording of this program
 */
export const frictionClassName = (name: FrictionClassName): string => `friction class ${name}`;

/**
 * Range of a friction class. A range is no value to set a torque by: the site chooses one and says why.
 *
 * @param name A to E
 * @returns range of μ for thread and bearing face at room temperature, with the lubricants and surfaces it is printed
 * for; null for another name
 * @example frictionClass('B')?.max // 0.16
 * @source VDI 2230-1, table A5, guide values (second-hand)
 */
export function frictionClass(name: string): FrictionClass | null {
  const rows = VDI_2230_FRICTION.filter(([class_]) => class_ === name.trim().toUpperCase());
  const [first] = rows;
  if (first === undefined) return null;
  const [class_, , , min, max, sources, status] = first;
  return {
    name: class_,
    min,
    max,
    pairs: rows.map(([, lubricant, surface]) => ({ lubricant, surface })),
    evidence: 'published',
    source: `VDI 2230-1, table A5, class ${class_}`,
    sources,
    status: leastTrusted(status, ...rows.map((row) => row[6])),
  };
}
