import { fromTable } from '../joint/gasket-values.ts';
import type { Known } from '../joint/known.ts';
import { nutProofStress } from '../reference/nut-proof.ts';
import { statusText } from '../reference/status.ts';
import { findStrength } from '../reference/strengths.ts';
import { strengthCells } from '../reference/table-cells.ts';
import { expansionAt, modulusAt, yieldAt } from '../reference/temperature.ts';
import { toSI } from '../units/units.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';

/** Material of stud and nut as the checks of stretch, strip and heat need it; null is not known. */
export interface StudMaterial {
  readonly modulus: Known<number> | null;
  readonly modulusHot: Known<number> | null;
  readonly expansion: Known<number> | null;
  readonly flangeExpansion: Known<number> | null;
  readonly yieldHot: Known<number> | null;
  readonly tensile: Known<number> | null;
  readonly nutTensile: Known<number> | null;
  readonly nutProof: Known<number> | null;
}

/** Temperature the tables are read at while none is entered for the assembly, °C; steel hardly changes about it. */
const ROOM = 20;

/**
 * Modulus, expansion and strength of the stud; what was entered stays in force, blanks are filled from the tables where
 * they have the grade.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns values with their origin, SI; null where neither knows them
 * @example studMaterial(complete, basisOf(complete)).modulus?.value // 204e9 Pa
 * @source tables of `core/reference`; joint data
 */
export function studMaterial({ joint: { data } }: Pick<CardInput, 'joint'>, { joint }: Basis): StudMaterial {
  const { hot, bolting } = data;
  const source = hot.source || 'joint data';
  const { grade } = bolting;
  const thread = joint.thread?.value ?? null;
  const at = hot.boltTemperature?.si ?? null;
  const ofGrade = (read: (grade: string) => ReturnType<typeof modulusAt>) =>
    grade === null ? null : fromTable(read(grade));
  const ofGradeHot = (read: (grade: string, at: number) => ReturnType<typeof modulusAt>) =>
    at === null ? null : ofGrade((name) => read(name, at));
  const flangeAt = hot.flangeTemperature?.si ?? null;
  return {
    modulus:
      entered(hot.boltModulus, source) ??
      ofGrade((name) => modulusAt(name, hot.assemblyTemperature?.si ?? ROOM)),
    modulusHot: entered(hot.boltModulusHot, source) ?? ofGradeHot(modulusAt),
    expansion: entered(hot.boltExpansion, source) ?? ofGradeHot(expansionAt),
    flangeExpansion:
      entered(hot.flangeExpansion, source) ??
      (flangeAt === null || data.flangeMaterial === null
        ? null
        : fromTable(expansionAt(data.flangeMaterial, flangeAt))),
    yieldHot:
      entered(hot.boltYieldHot, source) ??
      (thread === null ? null : ofGradeHot((name, hotAt) => yieldAt(name, hotAt, thread.diameter))),
    tensile: entered(bolting.tensileStrength, 'joint data') ?? tableTensile(grade, joint),
    nutTensile: entered(bolting.nutTensileStrength, 'joint data'),
    nutProof:
      bolting.nutGrade === null || thread === null || joint.nut === null
        ? null
        : fromTable(nutProofStress(bolting.nutGrade, thread, joint.nut.value.series)),
  };
}

function entered(value: { readonly si: number } | null, source: string): Known<number> | null {
  return value === null ? null : { value: value.si, origin: 'entered', source, status: null, note: '' };
}

function tableTensile(grade: string | null, { thread }: Basis['joint']): Known<number> | null {
  if (grade === null || thread === null) return null;
  const row = findStrength(grade, thread.value);
  if (row === null) return null;
  return {
    value: toSI(row.tensile[0], row.tensile[1]),
    origin: 'standard',
    source: `${row.grade}, ${row.source}: ${row.tensile[0]} ${row.tensile[1]}`,
    status: row.status,
    note: row.note,
    cells:
      statusText(row.status) === null
        ? undefined
        : strengthCells(row).filter(({ field }) => field === 'tensile'),
  };
}
