import type { Raised } from '../findings/finding.ts';
import { atJoint, raise } from '../findings/raise.ts';
import type { JointGasket } from '../joint/gaskets.ts';
import type { Known } from '../joint/known.ts';
import { confirmationOf } from '../joint/site-tables.ts';
import { isDisputed, needsConfirmation, type RowStatus, statusText } from '../reference/status.ts';
import type { TableCell } from '../reference/table-value.ts';
import type { Basis } from './basis.ts';
import { headOf } from './check-fit.ts';
import type { CardInput } from './input.ts';
import { loadOfSets } from './set-shares.ts';

/** A value of a table as a card meets it. */
export interface TableUse {
  /** What a person calls the table or the value. */
  readonly what: string;
  /** Field of the joint that overrides it. */
  readonly field: string;
  readonly known: Known<unknown> | null;
  /** Whether a number of this card was computed from it. */
  readonly rests: boolean;
}

/**
 * Says which values of the tables wait for a person: those with one source only, and of rows that sources leave open. A
 * card that rests on one is not issued until somebody has confirmed it, or entered the joint’s own.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns refusals, notes on values the card has no use for or that are confirmed; none when sources agree on all
 * @example checkTableValues(complete, basisOf(complete)).length // 0
 * @source rule of this program
 */
export function checkTableValues(input: CardInput, basis: Basis): Raised[] {
  const { count, thread, circle, yieldStrength, nut, studLength, grip, radialGap, ring } = basis.joint;
  const tightened = input.kind === 'tightening';
  const turned = headOf(input) !== null;
  const spans = tightened && grip !== null && nut !== null;
  const uses: TableUse[] = [];
  const look = (what: string, field: string, known: Known<unknown> | null, rests: boolean) => {
    if (isDoubtful(known)) uses.push({ what, field, known, rests });
  };
  look('Flange table', 'count', count, true);
  look('Flange table', 'thread', thread, true);
  look('Flange table', 'circle', circle, turned);
  look('Yield strength', 'grade', yieldStrength, true);
  look('Nut', 'nutSeries', nut, true);
  look('Flange table', 'studLength', studLength, spans);
  look('Grip length', 'grip', grip, tightened);
  look('Hub', 'radialGap', radialGap, turned);
  look('Ring of the flange', 'gasket', ring, tightened && ringIsUsed(basis));
  for (const gasket of basis.gaskets) lookAtGasket(input, basis, gasket, look);
  return tableFindings(input, uses);
}

type Look = (what: string, field: string, known: Known<unknown> | null, rests: boolean) => void;

/** The ring’s number leads to its dimensions, unless those were entered. */
function ringIsUsed({ gaskets }: Basis): boolean {
  const values = gaskets[0]?.values;
  return values?.pitchDiameter?.origin === 'standard' || values?.ringWidth?.origin === 'standard';
}

function lookAtGasket(
  input: CardInput,
  { others }: Basis,
  { values, area, data }: JointGasket,
  look: Look,
): void {
  const { pressures } = input.joint.data;
  const looked = input.kind === 'tightening' && loadOfSets(others) !== null;
  const pressed =
    looked && [pressures.design, pressures.operating, pressures.test].some((one) => one.pressure !== null);
  const floor =
    looked &&
    data.kind !== null &&
    pressures.design.pressure !== null &&
    values.factorM !== null &&
    values.stressY !== null;
  const loaded = looked && area.value !== null;
  look('Gasket', 'gasket', values.contactInside, loaded || pressed);
  look('Gasket', 'gasket', values.contactOutside, loaded || floor);
  look('Gasket', 'gasket', values.pitchDiameter, pressed);
  look('Gasket', 'gasket', values.ringWidth, floor);
  look('Gasket', 'gasket', values.factorM, floor);
  look('Gasket', 'gasket', values.stressY, floor);
}

function isDoubtful(known: Known<unknown> | null): boolean {
  return known !== null && known.status !== null && statusText(known.status) !== null;
}

interface DoubtfulUse extends TableUse {
  readonly known: Known<unknown>;
  /** What of it no other value has named yet. */
  readonly cells: readonly TableCell[];
  readonly status: RowStatus;
  readonly text: string;
}

/**
 * What stands against values of the tables.
 *
 * @param input input of the card
 * @param uses values, each with whether the card rests on it
 * @returns findings; none for values that were entered or on which sources agree
 * @example tableFindings(complete, []).length // 0
 * @source rule of this program
 */
export function tableFindings(input: CardInput, uses: readonly TableUse[]): Raised[] {
  if (!uses.some(({ known }) => isDoubtful(known))) return [];
  // One table row fills several values: it is named once, with all of them.
  const rows = Map.groupBy(doubtfulOnes(uses), ({ known }) => known.source);
  return [...rows.values()].flatMap((sameRow) => {
    const [first] = sameRow;
    if (first === undefined) return [];
    const isOpen = (cell: TableCell) => confirmationOf(input.site, cell) === null;
    const open = sameRow.filter(({ cells }) => cells.length === 0 || cells.some(isOpen));
    if (open.length === 0) return [confirmed(input, first, sameRow)];
    const waiting = open.filter(({ rests, status }) => rests && needsConfirmation(status));
    const cells = (waiting.length > 0 ? waiting : open).flatMap((one) => one.cells);
    // A length can be made of two rows of two tables: each is confirmed by itself.
    const parts = Map.groupBy(cells.filter(isOpen), ({ table, key }) => `${table}|${key}`);
    const asked = parts.size === 0 ? [[]] : [...parts.values()];
    return asked.map((part) => unconfirmed(input, waiting[0] ?? first, waiting.length > 0, part));
  });
}

/** A cell that several values were made of is asked for once, by one that the card rests on where there is one. */
function doubtfulOnes(uses: readonly TableUse[]): DoubtfulUse[] {
  const named: TableCell[] = [];
  const found: DoubtfulUse[] = [];
  for (const resting of [true, false]) {
    for (const use of uses) {
      if (use.rests !== resting) continue;
      const { what, field, known, rests } = use;
      const status = known?.status ?? null;
      const text = status === null ? null : statusText(status);
      if (known === null || status === null || text === null) continue;
      if (!(needsConfirmation(status) || isDisputed(status))) continue;
      const { cells = [] } = known;
      const fresh = cells.filter((cell) => !named.some((other) => sameCell(cell, other)));
      named.push(...fresh);
      if (fresh.length > 0 || cells.length === 0)
        found.push({ what, field, known, rests, status, text, cells: fresh });
    }
  }
  return found;
}

function sameCell(a: TableCell, b: TableCell): boolean {
  return a.key === b.key && a.field === b.field && a.table === b.table;
}

function about(input: CardInput, { field, known, text }: DoubtfulUse) {
  const { id, data } = input.joint;
  return { subject: data.tag, place: atJoint(id, field), source: known.source, value: text };
}

function unconfirmed(
  input: CardInput,
  use: DoubtfulUse,
  waits: boolean,
  cells: readonly TableCell[],
): Raised {
  const { what, known, text, rests } = use;
  const values = distinct(cells.map(({ name, value }) => `${name} ${value}`));
  return raise(
    'table_value_unconfirmed',
    () => ({ what, source: known.source, status: text, note: known.note, values, waits, rests }),
    { ...about(input, use), severity: waits ? 'refusal' : 'note', ...confirmable(cells) },
  );
}

function confirmed(input: CardInput, use: DoubtfulUse, sameRow: readonly DoubtfulUse[]): Raised {
  const { what, known, text } = use;
  const by = sameRow.flatMap((one) => confirmedBy(input, one.cells));
  return raise(
    'table_value_confirmed',
    () => ({ what, source: known.source, status: text, by: distinct(by) }),
    { ...about(input, use), severity: 'note' },
  );
}

/** "Number of studs 12: Greta Example, 2026-03-16, own copy of the standard" */
function confirmedBy(input: CardInput, cells: readonly TableCell[]): string[] {
  return cells.flatMap((cell) => {
    const found = confirmationOf(input.site, cell);
    if (found === null) return [];
    return [`${cell.name} ${cell.value}: ${found.person}, ${found.at.slice(0, 10)}, ${found.sourceSeen}`];
  });
}

function confirmable(cells: readonly TableCell[]) {
  const [first] = cells;
  if (first === undefined) return {};
  const values = new Map(cells.map(({ field, value }) => [field, value]));
  const listed = [...values].map(([field, value]) => ({ field, value }));
  return { confirm: { table: first.table, key: first.key, values: listed } };
}

function distinct(texts: readonly string[]): string[] {
  return [...new Set(texts)];
}
