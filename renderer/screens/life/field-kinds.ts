import type { QuantityKind, Unit } from '../../../core/units/units.ts';

interface Named {
  /** Path within the evidence: "gasket.condition". */
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
}

/** One field of a step's evidence, by how it is entered. A field left blank is not known. */
export type EvidenceField = Named &
  (
    | { readonly kind: 'text' | 'long' | 'date' | 'moment' | 'person' | 'whole' }
    | { readonly kind: 'answer' }
    /** With a blank it may be left open; without one its first value says that it is not known. */
    | { readonly kind: 'choice'; readonly options: readonly string[]; readonly blank?: string }
    | { readonly kind: 'quantity'; readonly quantity: QuantityKind; readonly unit: Unit }
    /** Bolts, or words, separated by commas; "none" says that somebody looked and there was none. */
    | { readonly kind: 'bolts' | 'lines' }
    | { readonly kind: 'ticks'; readonly options: readonly string[]; readonly none: string }
    | {
        readonly kind: 'list';
        readonly row: string;
        readonly fields: readonly EvidenceField[];
        /** Rows that stand there from the start. */
        readonly start?: number;
        /** Words for a list that was looked into and is empty; left out where an empty list says nothing. */
        readonly none?: string;
      }
  );

export interface EvidenceGroup {
  readonly legend: string;
  readonly fields: readonly EvidenceField[];
  /** Most records leave it empty. */
  readonly folded?: boolean;
}
