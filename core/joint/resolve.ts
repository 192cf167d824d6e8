import { findNut, type Nut } from '../bolting/nut.ts';
import { findThread, studThread, type Thread } from '../bolting/thread.ts';
import type { JointData, OriginMark, ResolvedValue } from '../contract/joint.ts';
import { type FlangeRow, findFlange } from '../reference/flanges.ts';
import { type RowStatus, statusText } from '../reference/status.ts';
import { findStrength, yieldPa } from '../reference/strengths.ts';
import { describeFlange } from '../text/describe.ts';
import { showQuantity } from '../text/number.ts';

/** A value in force, with where it came from. */
export interface Known<T> {
  readonly value: T;
  readonly origin: OriginMark;
  readonly source: string;
  /** Trust of the table row behind it; null for entered values. */
  readonly status: RowStatus | null;
  readonly note: string;
}

/** The joint with its blanks filled from the standards; null is "not known". */
export interface ResolvedJoint {
  readonly values: readonly ResolvedValue[];
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
}

/**
 * Fills the blanks of a joint from its flange standard and the tables; what was entered stays in force.
 *
 * @param data joint as stored
 * @returns every value with its origin, source and the trust of its table row
 * @example resolveJoint(data).boltCount // 12 for NPS 8 Class 300
 * @source the tables of `core/reference`
 */
export function resolveJoint(data: JointData): ResolvedJoint {
  const flangeRow = standardRow(data);
  const count = resolveCount(data, flangeRow);
  const thread = resolveThread(data, flangeRow);
  const circle = resolveCircle(data, flangeRow);
  const yieldStrength = resolveYield(data, thread?.value ?? null);
  const nut = resolveNut(data, thread?.value ?? null);
  const studLength = resolveStudLength(data, flangeRow);
  const grip = resolveGrip(data, flangeRow);
  const radialGap = fromEntered(data.space.radialGap);
  return {
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
    values: [
      row(
        'Studs',
        count,
        (value) => String(value),
        (value) => value,
      ),
      row(
        'Thread',
        thread,
        (value) => value.designation,
        (value) => value.diameter,
      ),
      row('Bolt circle', circle, length, (value) => value),
      gradeRow(data),
      row(
        'Yield strength',
        yieldStrength,
        (value) => showQuantity(value, 'MPa'),
        (value) => value,
      ),
      row('Nut', nut, nutText, (value) => value.acrossFlats),
      row('Stud length', studLength, length, (value) => value),
      row('Grip length', grip, length, (value) => value),
      row('Gap to hub or pipe', radialGap, length, (value) => value),
    ],
  };
}

/** Table row of a standard flange, or null for custom joints and sizes the table doesn't have. */
export function standardRow(data: Pick<JointData, 'flange'>): FlangeRow | null {
  if (data.flange.kind !== 'standard') return null;
  return findFlange(data.flange.standard, data.flange.size, data.flange.rating);
}

/** Thread the standard gives a flange, or null. */
export function standardThread(flangeRow: FlangeRow | null): Thread | null {
  if (flangeRow === null) return null;
  if (flangeRow.metricThread !== null) return findThread(flangeRow.metricThread);
  return flangeRow.studIn === null ? null : studThread(flangeRow.studIn);
}

function resolveCount(data: JointData, flangeRow: FlangeRow | null): Known<number> | null {
  if (data.bolting.count !== null) return entered(data.bolting.count);
  return flangeRow === null || flangeRow.bolts === null ? null : fromRow(flangeRow.bolts, flangeRow);
}

function resolveThread(data: JointData, flangeRow: FlangeRow | null): Known<Thread> | null {
  if (data.bolting.thread !== null) {
    const thread = findThread(data.bolting.thread);
    return thread === null ? null : { ...entered(thread), source: `joint data; geometry: ${thread.source}` };
  }
  const thread = standardThread(flangeRow);
  return thread === null || flangeRow === null ? null : fromRow(thread, flangeRow);
}

function resolveCircle(data: JointData, flangeRow: FlangeRow | null): Known<number> | null {
  const own = fromEntered(data.bolting.circle);
  if (own !== null) return own;
  return flangeRow === null || flangeRow.boltCircle === null
    ? null
    : fromRow(flangeRow.boltCircle, flangeRow);
}

function resolveYield(data: JointData, thread: Thread | null): Known<number> | null {
  const own = fromEntered(data.bolting.yieldStrength);
  if (own !== null) {
    const origin = data.bolting.yieldOrigin;
    return { ...own, source: origin === '' ? own.source : origin };
  }
  if (data.bolting.grade === null || thread === null) return null;
  const strength = findStrength(data.bolting.grade, thread);
  if (strength === null) return null;
  return {
    value: yieldPa(strength),
    origin: 'standard',
    source: `${strength.grade}, ${strength.source}: ${strength.yield[0]} ${strength.yield[1]}`,
    status: strength.status,
    note: strength.note,
  };
}

function resolveNut(data: JointData, thread: Thread | null): Known<Nut> | null {
  if (thread === null) return null;
  const { nutSeries } = data.bolting;
  if (nutSeries !== null) {
    const nut = findNut(nutSeries, thread);
    return nut === null
      ? null
      : { value: nut, origin: 'entered', source: nut.source, status: nut.status, note: '' };
  }
  // ASME flange standards call for heavy hex nuts; the European one leaves the nut to the bolting standard.
  if (data.flange.kind !== 'standard' || data.flange.standard === 'EN 1092-1') return null;
  const nut = findNut('ASME B18.2.2 heavy hex', thread);
  if (nut === null) return null;
  const source = `${data.flange.standard} calls for heavy hex; ${nut.source}`;
  return { value: nut, origin: 'standard', source, status: nut.status, note: '' };
}

function resolveStudLength(data: JointData, flangeRow: FlangeRow | null): Known<number> | null {
  const own = fromEntered(data.bolting.studLength);
  if (own !== null) return own;
  // The tables' lengths are for raised faces; other facings need another length.
  if (flangeRow === null || flangeRow.studLength === null) return null;
  if (data.flange.kind !== 'standard' || data.flange.facing !== 'raised face') return null;
  return fromRow(flangeRow.studLength, flangeRow);
}

/** Raised face of ASME flanges, m: class 150 and 300, and 400 up (metric tables). */
const RAISED_FACE = { low: 0.002, high: 0.007 } as const;

function resolveGrip(data: JointData, flangeRow: FlangeRow | null): Known<number> | null {
  const own = fromEntered(data.bolting.grip);
  if (own !== null) return own;
  const gasket = data.gasket?.thickness ?? null;
  if (flangeRow === null || flangeRow.thickness === null || gasket === null) return null;
  if (data.flange.kind !== 'standard' || data.flange.facing !== 'raised face') return null;
  const face = Number(flangeRow.rating) <= 300 ? RAISED_FACE.low : RAISED_FACE.high;
  return {
    value: 2 * (flangeRow.thickness + face) + gasket.si,
    origin: 'calculated',
    source: `two like flanges of ${flangeRow.standard} with raised faces, and the gasket’s thickness`,
    status: flangeRow.status,
    note: flangeRow.note,
  };
}

function entered<T>(value: T): Known<T> {
  return { value, origin: 'entered', source: 'joint data', status: null, note: '' };
}

function fromEntered(value: { readonly si: number } | null): Known<number> | null {
  return value === null ? null : entered(value.si);
}

function fromRow<T>(value: T, flangeRow: FlangeRow): Known<T> {
  const name = describeFlange({
    kind: 'standard',
    standard: flangeRow.standard,
    size: flangeRow.size,
    rating: flangeRow.rating,
    facing: 'other',
  });
  return {
    value,
    origin: 'standard',
    source: `${flangeRow.standard}, ${name}`,
    status: flangeRow.status,
    note: flangeRow.note,
  };
}

function row<T>(
  name: string,
  known: Known<T> | null,
  text: (value: T) => string,
  si: (value: T) => number,
): ResolvedValue {
  if (known === null) return { name, text: null, si: null, origin: 'entered', source: '', status: null };
  return {
    name,
    text: text(known.value),
    si: si(known.value),
    origin: known.origin,
    source: known.source,
    status: known.status === null ? null : statusText(known.status),
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
