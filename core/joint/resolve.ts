import { findNut, type Nut } from '../bolting/nut.ts';
import { findThread, studThread, type Thread } from '../bolting/thread.ts';
import type { JointData, ResolvedValue } from '../contract/joint.ts';
import type { SiteFlange } from '../contract/site.ts';
import { ringJoint } from '../reference/faces.ts';
import { type FlangeRow, findFlange } from '../reference/flanges.ts';
import { ringOfFlange } from '../reference/gaskets.ts';
import { oncePer } from '../reference/once-per.ts';
import { type RowStatus, statusText } from '../reference/status.ts';
import { findStrength, yieldPa } from '../reference/strengths.ts';
import { faceCells, flangeCells, nutCells, strengthCells } from '../reference/table-cells.ts';
import type { TableCell } from '../reference/table-value.ts';
import { describeFlange } from '../text/describe.ts';
import { showQuantity } from '../text/number.ts';
import { standardGrip, standardHubGap } from './facing.ts';
import { fromTable, gasketLines } from './gasket-values.ts';
import type { Known } from './known.ts';
import { NO_SITE_TABLES, type SiteTables, siteFlange, siteStrength, statusInForce } from './site-tables.ts';

/** The joint with its blanks filled from the standards; null is "not known". */
export interface ResolvedJoint {
  /** The same as texts for a reader, which no calculation looks at. */
  readonly values: () => readonly ResolvedValue[];
  readonly boltCount: number | null;
  readonly flangeRow: FlangeRow | null;
  readonly count: Known<number> | null;
  readonly thread: Known<Thread> | null;
  readonly circle: Known<number> | null;
  readonly yieldStrength: Known<number> | null;
  readonly nut: Known<Nut> | null;
  readonly studLength: Known<number> | null;
  readonly grip: Known<number> | null;
  readonly radialGap: Known<number> | null;
  /** Ring number, for ring-joint facing. */
  readonly ring: Known<string> | null;
}

/**
 * Fills the blanks of a joint from its flange standard and the tables; what was entered stays in force.
 *
 * @param data joint as stored
 * @param site the site's own rows and what its people confirmed
 * @returns every value with its origin, source and the trust of its table row
 * @example resolveJoint(data).boltCount // 12 for NPS 8 Class 300
 * @source the tables of `core/reference`
 */
export function resolveJoint(data: JointData, site: SiteTables = NO_SITE_TABLES): ResolvedJoint {
  const flangeRow = standardRow(data);
  const own = siteFlange(site, data.flange.kind === 'custom' ? data.flange.siteRow : null);
  const count = resolveCount(data, flangeRow, own);
  const thread = resolveThread(data, flangeRow, own);
  const circle = resolveCircle(data, flangeRow, own);
  const yieldStrength = resolveYield(data, thread?.value ?? null, site);
  const nut = resolveNut(data, thread?.value ?? null);
  const studLength = resolveStudLength(data, flangeRow, own);
  const grip = resolveGrip(data, flangeRow, own);
  const radialGap = resolveRadialGap(data, circle);
  const ring = resolveRing(data, flangeRow);
  const joint = {
    boltCount: count?.value ?? null,
    flangeRow,
    count,
    thread,
    circle,
    yieldStrength,
    nut,
    studLength,
    grip,
    radialGap,
    ring,
  };
  return { ...joint, values: () => valuesOf(joint, data, site) };
}

function valuesOf(joint: Omit<ResolvedJoint, 'values'>, data: JointData, site: SiteTables): ResolvedValue[] {
  const { count, thread, circle, yieldStrength, nut, studLength, grip, radialGap, ring } = joint;
  return [
    row(
      site,
      'Studs',
      count,
      (value) => String(value),
      (value) => value,
    ),
    row(
      site,
      'Thread',
      thread,
      (value) => value.designation,
      (value) => value.diameter,
    ),
    row(site, 'Bolt circle', circle, length, (value) => value),
    gradeRow(data),
    row(
      site,
      'Yield strength',
      yieldStrength,
      (value) => showQuantity(value, 'MPa'),
      (value) => value,
    ),
    row(site, 'Nut', nut, nutText, (value) => value.acrossFlats),
    row(site, 'Stud length', studLength, length, (value) => value),
    row(site, 'Grip length', grip, length, (value) => value),
    row(site, 'Gap to hub or pipe', radialGap, length, (value) => value),
    row(
      site,
      'Free distance along the stud',
      fromEntered(data.space.axialGap ?? null),
      length,
      (value) => value,
    ),
    ...ringRows(site, data, ring),
    ...gasketLines(data, site),
  ];
}

/**
 * Table row of a standard flange.
 *
 * @param data joint, of which the flange counts
 * @returns the row; null for custom joints and sizes the table doesn't have
 * @example standardRow(data)?.bolts // 12
 * @source the tables of `core/reference`
 */
export function standardRow(data: Pick<JointData, 'flange'>): FlangeRow | null {
  if (data.flange.kind !== 'standard') return null;
  return findFlange(data.flange.standard, data.flange.size, data.flange.rating);
}

/**
 * Thread the standard gives a flange.
 *
 * @param flangeRow row of a standard flange; null for none
 * @returns thread of its studs; null without a row and where sources leave the size open
 * @example standardThread(findFlange('ASME B16.5', '8', '300'))?.designation // '7/8-9 UNC'
 * @source ASME B16.5, ASME B16.47, EN 1092-1 (second-hand); coarse to 1 inch, eight threads above
 */
export function standardThread(flangeRow: FlangeRow | null): Thread | null {
  if (flangeRow === null) return null;
  if (flangeRow.metricThread !== null) return findThread(flangeRow.metricThread);
  return flangeRow.studIn === null ? null : studThread(flangeRow.studIn);
}

type Own = SiteFlange | null;

function resolveCount(data: JointData, flangeRow: FlangeRow | null, own: Own): Known<number> | null {
  if (data.bolting.count !== null) return entered(data.bolting.count);
  if (own !== null) return fromOwn(own.count, own);
  return flangeRow === null || flangeRow.bolts === null ? null : fromRow(flangeRow.bolts, flangeRow, 'count');
}

function resolveThread(data: JointData, flangeRow: FlangeRow | null, own: Own): Known<Thread> | null {
  if (data.bolting.thread !== null) {
    const thread = findThread(data.bolting.thread);
    return thread === null ? null : { ...entered(thread), source: `joint data; geometry: ${thread.source}` };
  }
  if (own !== null) return fromOwn(own.thread === null ? null : findThread(own.thread), own);
  const thread = standardThread(flangeRow);
  return thread === null || flangeRow === null ? null : fromRow(thread, flangeRow, 'thread');
}

function resolveCircle(data: JointData, flangeRow: FlangeRow | null, own: Own): Known<number> | null {
  const typed = fromEntered(data.bolting.circle);
  if (typed !== null) return typed;
  if (own !== null) return fromOwn(own.circle?.si ?? null, own);
  return flangeRow === null || flangeRow.boltCircle === null
    ? null
    : fromRow(flangeRow.boltCircle, flangeRow, 'circle');
}

function resolveYield(data: JointData, thread: Thread | null, site: SiteTables): Known<number> | null {
  const typed = fromEntered(data.bolting.yieldStrength);
  if (typed !== null) {
    const origin = data.bolting.yieldOrigin;
    return { ...typed, source: origin === '' ? typed.source : origin };
  }
  if (data.bolting.grade === null || thread === null) return null;
  const strength = findStrength(data.bolting.grade, thread);
  if (strength === null) {
    const siteBand = siteStrength(site, data.bolting.grade, thread.diameter);
    if (siteBand === null) return null;
    const source = `${siteBand.key}, site table: ${siteBand.source}`;
    return { ...entered(siteBand.yieldStrength.si), source };
  }
  return {
    value: yieldPa(strength),
    origin: 'standard',
    source: `${strength.grade}, ${strength.source}: ${strength.yield[0]} ${strength.yield[1]}`,
    status: strength.status,
    note: strength.note,
    cells: doubtful(strength.status, () => strengthCells(strength), 'yield'),
  };
}

function resolveNut(data: JointData, thread: Thread | null): Known<Nut> | null {
  if (thread === null) return null;
  const { nutSeries } = data.bolting;
  if (nutSeries !== null) {
    const nut = findNut(nutSeries, thread);
    return nut === null
      ? null
      : {
          value: nut,
          origin: 'entered',
          source: nut.source,
          status: nut.status,
          note: '',
          cells: doubtful(nut.status, () => nutCells(nut, thread), 'acrossFlats'),
        };
  }
  // ASME flange standards call for heavy hex nuts; the European one leaves the nut to the bolting standard.
  if (data.flange.kind !== 'standard' || data.flange.standard === 'EN 1092-1') return null;
  const nut = findNut('ASME B18.2.2 heavy hex', thread);
  if (nut === null) return null;
  const source = `${data.flange.standard} calls for heavy hex; ${nut.source}`;
  const cells = doubtful(nut.status, () => nutCells(nut, thread), 'acrossFlats');
  return { value: nut, origin: 'standard', source, status: nut.status, note: '', cells };
}

function resolveStudLength(data: JointData, flangeRow: FlangeRow | null, own: Own): Known<number> | null {
  const typed = fromEntered(data.bolting.studLength);
  if (typed !== null) return typed;
  if (own !== null) return fromOwn(own.studLength?.si ?? null, own);
  if (data.flange.kind !== 'standard' || flangeRow === null) return null;
  if (data.flange.facing === 'raised face') {
    return flangeRow.studLength === null ? null : fromRow(flangeRow.studLength, flangeRow, 'studLength');
  }
  // Other facings need another length, which only the ring joints of ASME B16.5 have a table for.
  if (data.flange.facing !== 'ring joint' || flangeRow.standard !== 'ASME B16.5') return null;
  const found = ringJoint(flangeRow.size, flangeRow.rating)?.studLength ?? null;
  return fromTable(found);
}

function resolveGrip(data: JointData, flangeRow: FlangeRow | null, own: Own): Known<number> | null {
  const typed = fromEntered(data.bolting.grip);
  if (typed !== null) return typed;
  if (own !== null) return fromOwn(own.grip?.si ?? null, own);
  if (flangeRow === null || data.flange.kind !== 'standard') return null;
  const found = standardGrip(data.flange, flangeRow, data.gasket?.thickness?.si ?? null);
  return found === null ? null : { ...found, origin: 'calculated' };
}

function resolveRadialGap(data: JointData, circle: Known<number> | null): Known<number> | null {
  const typed = fromEntered(data.space.radialGap);
  if (typed !== null) return typed;
  if (data.flange.kind !== 'standard') return null;
  const found = standardHubGap(data.flange, circle);
  if (found === null) return null;
  return { ...found, origin: 'calculated' };
}

function resolveRing({ flange }: JointData, flangeRow: FlangeRow | null): Known<string> | null {
  if (flange.kind !== 'standard' || flange.facing !== 'ring joint') return null;
  if (flangeRow === null || flangeRow.standard !== 'ASME B16.5') return null;
  const found = ringOfFlange(flangeRow.size, flangeRow.rating);
  if (found === null) return null;
  const { number, source, status, note } = found;
  const cells = doubtful(status, () => faceCells(flangeRow), 'ring');
  return { value: number, origin: 'standard', source, status, note, cells };
}

function ringRows(site: SiteTables, { flange }: JointData, ring: Known<string> | null): ResolvedValue[] {
  if (flange.kind !== 'standard' || flange.facing !== 'ring joint') return [];
  return [
    row(
      site,
      'Ring',
      ring,
      (value) => value,
      () => null,
    ),
  ];
}

function entered<T>(value: T): Known<T> {
  return { value, origin: 'entered', source: 'joint data', status: null, note: '' };
}

function fromEntered(value: { readonly si: number } | null): Known<number> | null {
  return value === null ? null : entered(value.si);
}

/** A site's row stands like a value a person entered, with the row's own source. */
function fromOwn<T>(value: T | null, own: SiteFlange): Known<T> | null {
  return value === null ? null : { ...entered(value), source: `${own.key}, site table: ${own.source}` };
}

function fromRow<T>(value: T, flangeRow: FlangeRow, field: string): Known<T> {
  return {
    value,
    origin: 'standard',
    source: rowSource(flangeRow),
    status: flangeRow.status,
    note: flangeRow.note,
    cells: doubtful(flangeRow.status, () => cellsOfRow(flangeRow), field),
  };
}

const cellsOfRow = oncePer(flangeCells);

const rowSource = oncePer(({ standard, size, rating }: FlangeRow) => {
  return `${standard}, ${describeFlange({ kind: 'standard', standard, size, rating, facing: 'other' })}`;
});

/** Cells are spelled out only where there is something to confirm: most rows have two sources that agree. */
function doubtful(
  status: RowStatus,
  cells: () => readonly TableCell[],
  field: string,
): readonly TableCell[] | undefined {
  return statusText(status) === null ? undefined : cells().filter((cell) => cell.field === field);
}

function row<T>(
  site: SiteTables,
  name: string,
  known: Known<T> | null,
  text: (value: T) => string,
  si: (value: T) => number | null,
): ResolvedValue {
  if (known === null) return { name, text: null, si: null, origin: 'entered', source: '', status: null };
  return {
    name,
    text: text(known.value),
    si: si(known.value),
    origin: known.origin,
    source: known.source,
    status: statusInForce(site, known),
  };
}

function gradeRow(data: JointData): ResolvedValue {
  const { grade } = data.bolting;
  const source = grade === null ? '' : 'joint data';
  return { name: 'Stud grade', text: grade, si: null, origin: 'entered', source, status: null };
}

function nutText(nut: Nut): string {
  const inch = nut.series === 'ASME B18.2.2 heavy hex';
  return `${nut.series}, ${showQuantity(nut.acrossFlats, inch ? 'in' : 'mm', 5)} across flats`;
}

function length(value: number): string {
  return showQuantity(value, 'mm', 5);
}
