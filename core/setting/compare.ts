import { findThread } from '../bolting/thread.ts';
import type { JointData } from '../contract/joint.ts';
import { resolveJoint, standardThread } from '../joint/resolve.ts';
import { showQuantity } from '../text/number.ts';

/** What an instruction sheet says about a joint; null where it says nothing. */
export interface SheetFacts {
  readonly boltCount: number | null;
  /** Thread designation as written. */
  readonly thread: string | null;
  readonly grade: string | null;
  readonly gasket: string | null;
  /** Final torque, N·m. */
  readonly torque: number | null;
}

export type SheetField = keyof SheetFacts;

/** What a sheet is held against. */
export interface Reference {
  readonly kind: 'register' | 'standard' | 'sister joint';
  /** Tag, or the standard with size and class. */
  readonly name: string;
  readonly facts: SheetFacts;
}

/** One field on which sheet and reference disagree. */
export interface SheetDifference {
  readonly field: SheetField;
  readonly against: Reference['kind'];
  readonly name: string;
  readonly sheet: string;
  readonly other: string;
  /** The difference in one sentence. */
  readonly text: string;
}

/** A field that could not be compared: no difference is known, which is not agreement. */
export interface NotCompared {
  readonly field: SheetField;
  readonly against: Reference['kind'];
  readonly name: string;
  readonly reason: string;
}

export interface SheetComparison {
  readonly differences: readonly SheetDifference[];
  readonly notCompared: readonly NotCompared[];
  /** Fields that were compared and agree. */
  readonly agreed: number;
}

const FIELDS: Readonly<Record<SheetField, string>> = {
  boltCount: 'number of bolts',
  thread: 'thread',
  grade: 'stud grade',
  gasket: 'gasket',
  torque: 'torque',
};

/**
 * Compares an instruction sheet with the register, the standard and sister joints, and names each difference.
 *
 * Equation: counts and threads equal; texts equal apart from spacing and case; |Tsheet − Tother| ≤ t·Tother.
 * @param sheet what the sheet says
 * @param references what it is held against
 * @param torqueTolerance t: relative difference of torques that counts as none, 0 to 1
 * @returns differences, what could not be compared, and how many fields agree
 * @example compareSheet({ ...standardReference(data).facts, boltCount: 8 }, [standardReference(data)],
 * 0.05).differences.length // 1
 * @source rule of this program
 */
export function compareSheet(
  sheet: SheetFacts,
  references: readonly Reference[],
  torqueTolerance: number,
): SheetComparison {
  const differences: SheetDifference[] = [];
  const notCompared: NotCompared[] = [];
  let agreed = 0;
  for (const { kind, name, facts } of references) {
    for (const field of Object.keys(FIELDS) as SheetField[]) {
      // A flange standard says nothing about grade, gasket or torque; that is no gap in anybody's data.
      if (kind === 'standard' && field !== 'boltCount' && field !== 'thread') continue;
      const reason = gap(sheet, facts, field, torqueTolerance);
      if (reason !== null) notCompared.push({ field, against: kind, name, reason });
      else if (same(sheet, facts, field, torqueTolerance)) agreed++;
      else differences.push(difference(sheet, facts, field, kind, name));
    }
  }
  return { differences, notCompared, agreed };
}

/** Why a field can't be compared, or null when it can. */
function gap(sheet: SheetFacts, facts: SheetFacts, field: SheetField, tolerance: number): string | null {
  if (missing(sheet[field])) return `the sheet does not say its ${FIELDS[field]}`;
  if (missing(facts[field])) return `${FIELDS[field]} not known there`;
  if (field === 'torque' && !(tolerance >= 0 && tolerance <= 1)) return 'no tolerance for torques is set';
  return null;
}

function missing(value: string | number | null): boolean {
  return (
    value === null || (typeof value === 'string' ? value.trim() === '' : !(value > 0 && value < Infinity))
  );
}

function same(sheet: SheetFacts, facts: SheetFacts, field: SheetField, tolerance: number): boolean {
  if (field === 'boltCount') return sheet.boltCount === facts.boltCount;
  if (field === 'torque') {
    const [own, other] = [sheet.torque ?? 0, facts.torque ?? 0];
    return Math.abs(own - other) <= tolerance * other * (1 + 1e-12);
  }
  if (field === 'thread') return sameThread(sheet.thread ?? '', facts.thread ?? '');
  return plain(sheet[field] ?? '') === plain(facts[field] ?? '');
}

/** "7/8-9 UNC" and "7/8 - 9" are one thread, 1-1/8-7 and 1-1/8-8 are not: geometry decides where the tables know both. */
function sameThread(own: string, other: string): boolean {
  const [a, b] = [findThread(own), findThread(other)];
  if (a === null || b === null) return plain(own) === plain(other);
  return a.diameter === b.diameter && a.pitch === b.pitch;
}

function plain(text: string): string {
  return text
    .toUpperCase()
    .replace(/\b(ASTM|GR(ADE)?)\b\.?/g, '')
    .replace(/[\s.-]+/g, '');
}

function difference(
  sheet: SheetFacts,
  facts: SheetFacts,
  field: SheetField,
  against: Reference['kind'],
  name: string,
): SheetDifference {
  const own = show(sheet, field);
  const other = show(facts, field);
  return {
    field,
    against,
    name,
    sheet: own,
    other,
    text: `${FIELDS[field]}: the sheet says ${own}, ${against} ${name} says ${other}`,
  };
}

function show(facts: SheetFacts, field: SheetField): string {
  return field === 'torque' && facts.torque !== null
    ? showQuantity(facts.torque, 'N.m')
    : String(facts[field]);
}

/**
 * A joint of the register as reference, blanks filled as the setting card fills them.
 *
 * @param data joint as stored
 * @param torque final torque of its last issued setting, N·m, above 0; null when none is known
 * @param kind the joint the sheet is for, or a sister of it
 * @returns reference for `compareSheet`
 * @example registerReference(data, 384).facts.boltCount // 12
 * @source register and the tables of `core/reference`
 */
export function registerReference(
  data: JointData,
  torque: number | null,
  kind: 'register' | 'sister joint' = 'register',
): Reference {
  const joint = resolveJoint(data);
  return {
    kind,
    name: data.tag,
    facts: {
      boltCount: joint.boltCount,
      thread: joint.thread?.value.designation ?? data.bolting.thread,
      grade: data.bolting.grade,
      gasket: data.gasket?.type ?? null,
      torque,
    },
  };
}

/**
 * What the flange standard says of a joint.
 *
 * @param data joint as stored
 * @returns reference for `compareSheet`; null for a joint without a row in a standard
 * @example standardReference(data)?.facts.thread // '7/8-9 UNC' for NPS 8 Class 300
 * @source flange tables of `core/reference`
 */
export function standardReference(data: JointData): Reference | null {
  const { flangeRow } = resolveJoint(data);
  if (flangeRow === null || data.flange.kind !== 'standard') return null;
  const { standard, size, rating } = data.flange;
  return {
    kind: 'standard',
    name: `${standard}, ${size}, ${rating}`,
    facts: {
      boltCount: flangeRow.bolts,
      thread: standardThread(flangeRow)?.designation ?? null,
      grade: null,
      gasket: null,
      torque: null,
    },
  };
}
