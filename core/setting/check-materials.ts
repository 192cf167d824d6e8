import type { Raised } from '../findings/finding.ts';
import { type TableUse, tableFindings } from './check-table-values.ts';
import type { CardInput } from './input.ts';
import type { StudMaterial } from './stud-material.ts';

/** Parts of the card that were computed. */
export interface ComputedParts {
  readonly stretch: boolean;
  readonly strip: boolean;
  readonly hot: boolean;
  readonly strength: boolean;
}

/**
 * Says which material values from the tables wait for a person.
 *
 * @param input input of the card
 * @param material values of stud and nut with their origin
 * @param computed parts of the card that were computed from them
 * @returns findings; none when the values were entered or sources agree on them
 * @example checkMaterials(complete, studMaterial(complete, basisOf(complete)), { stretch: true, strip: true, hot: true, strength: true }).length // 0
 * @source rule of this program
 */
export function checkMaterials(
  input: CardInput,
  material: StudMaterial,
  { stretch, strip, hot, strength }: ComputedParts,
): Raised[] {
  const uses: TableUse[] = [
    { what: 'Tensile strength', field: 'tensileStrength', known: material.tensile, rests: strip },
    // An entered tensile strength of the nut goes before its proof stress.
    {
      what: 'Proof stress of the nut',
      field: 'nutGrade',
      known: material.nutProof,
      rests: strip && material.nutTensile === null,
    },
    { what: 'Modulus', field: 'hot', known: material.modulus, rests: stretch || hot },
    { what: 'Modulus in operation', field: 'hot', known: material.modulusHot, rests: hot },
    { what: 'Expansion of the studs', field: 'hot', known: material.expansion, rests: hot },
    { what: 'Expansion of the flange', field: 'hot', known: material.flangeExpansion, rests: hot },
    { what: 'Yield strength in operation', field: 'hot', known: material.yieldHot, rests: strength },
  ];
  return tableFindings(input, uses);
}
