import type { JobScope } from '../contract/campaign.ts';
import type { MaterialKind, MaterialRow } from '../contract/materials.ts';

/** What one job's joint is made of; null is not known. */
export interface JobNeeds {
  readonly jobId: string;
  readonly number: string;
  readonly tag: string;
  readonly scope: JobScope;
  readonly bolts: number | null;
  readonly stud: string | null;
  readonly nut: string | null;
  readonly gasket: string | null;
  readonly lubricant: string | null;
  /** Studs that are expected cut or stuck at the opening; null where it can't be said. */
  readonly seized: number | null;
}

/** A flange stud has a nut at each end. */
const NUTS_A_STUD = 2;
const ORDER: readonly MaterialKind[] = ['gasket', 'stud', 'nut', 'lubricant'];

/**
 * Materials of a list of jobs, put together: a new gasket for each joint that is closed, spare studs and nuts for those
 * expected seized where a joint is opened.
 *
 * Equation: spare studs of a kind = ⌈Σ expected seized⌉ over its jobs; nuts 2 a stud.
 * @param jobs jobs with what is known of their joints
 * @returns rows by kind and name, pieces and spares whole, at least 0
 * @example materialRows([]) // []
 * @source gasket not used again: ASME PCC-1 (from memory); expected seized studs: `seizedStuds`
 */
export function materialRows(jobs: readonly JobNeeds[]): MaterialRow[] {
  const rows = new Map<
    string,
    { kind: MaterialKind; what: string; pieces: number; spare: number; jobs: string[] }
  >();
  const add = (kind: MaterialKind, what: string | null, pieces: number, spare: number, number: string) => {
    if (what === null || pieces === 0) return;
    const key = `${kind} ${what.toLowerCase()}`;
    const row = rows.get(key) ?? { kind, what, pieces: 0, spare: 0, jobs: [] };
    row.pieces += pieces;
    row.spare += spare;
    row.jobs.push(number);
    rows.set(key, row);
  };
  for (const { number, scope, bolts, stud, nut, gasket, lubricant, seized } of jobs) {
    const closes = scope !== 'break';
    const spare = scope === 'make' ? 0 : (seized ?? 0);
    const count = bolts ?? 0;
    if (closes) add('gasket', gasket, 1, 0, number);
    add('stud', stud, count, spare, number);
    add('nut', nut, count * NUTS_A_STUD, spare, number);
    if (closes) add('lubricant', lubricant, count, 0, number);
  }
  return [...rows.values()]
    .map((row) => ({ ...row, spare: wholeStuds(row.spare) * (row.kind === 'nut' ? NUTS_A_STUD : 1) }))
    .sort(
      (a, b) =>
        ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind) ||
        a.what.localeCompare(b.what, 'en', { numeric: true }),
    );
}

/** A sum that rounding left just above a whole number is that number. */
const ROUNDING = 1e-9;
const wholeStuds = (expected: number) => Math.max(0, Math.ceil(expected - ROUNDING));

const many = (count: number, noun: string) => `${count} ${noun}${count === 1 ? '' : 's'}`;

/**
 * What is not known of a job's joint that its materials hang on.
 *
 * @param job job with what is known of its joint
 * @returns words, one for each thing that is missing
 * @example materialGaps({ jobId: '', number: '', tag: '', scope: 'make', bolts: 8, stud: 'M20', nut: 'hex', gasket: 'flat', lubricant: 'oil', seized: null }) // []
 * @source rule of this program
 */
export function materialGaps({ scope, bolts, stud, nut, gasket, lubricant, seized }: JobNeeds): string[] {
  const closes = scope !== 'break';
  return [
    ...(bolts === null ? ['number of bolts: count them'] : []),
    ...(stud === null ? ['thread or grade of the studs: read them off a stud'] : []),
    ...(nut === null ? ['nuts: measure across flats'] : []),
    ...(closes && gasket === null ? ['gasket: type and size from the data sheet'] : []),
    ...(closes && lubricant === null ? ['lubricant: name it in the joint’s data'] : []),
    ...(scope !== 'make' && seized === null ? ['studs that may seize: too few openings on record'] : []),
  ];
}

/**
 * The list in one sentence.
 *
 * @param rows materials
 * @param jobs number of jobs, whole, at least 0
 * @param withGaps of these jobs, those of which something is not known, whole, at least 0
 * @returns a sentence
 * @example materialsFinding([], 0, 0) // 'No job is on the list yet.'
 * @source rule of this program
 */
export function materialsFinding(rows: readonly MaterialRow[], jobs: number, withGaps: number): string {
  if (jobs === 0) return 'No job is on the list yet.';
  const of = (kind: MaterialKind) => rows.filter((row) => row.kind === kind);
  const pieces = (kind: MaterialKind) => of(kind).reduce((sum, row) => sum + row.pieces, 0);
  const spare = of('stud').reduce((sum, row) => sum + row.spare, 0);
  return [
    `${many(jobs, 'job')}: ${many(pieces('gasket'), 'new gasket')} of ${many(of('gasket').length, 'kind')}, ${many(pieces('stud'), 'stud')} of ${many(of('stud').length, 'kind')} with ${spare} spare.`,
    ...(withGaps === 0 ? [] : [`Of ${withGaps} something is not known, and is not in the list.`]),
  ].join(' ');
}
