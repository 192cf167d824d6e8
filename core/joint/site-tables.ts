import type { Confirmation, PlanRow, SiteFlange, SiteGrade } from '../contract/site.ts';
import { statusText } from '../reference/status.ts';
import type { TableCell } from '../reference/table-value.ts';
import { sameName } from '../text/same-name.ts';
import type { Known } from './known.ts';

/** The site's own rows, plan and confirmations, as far as a joint and its setting rest on them. */
export interface SiteTables {
  readonly flanges: readonly SiteFlange[];
  readonly grades: readonly SiteGrade[];
  /** The plan chosen, where it is one of the site's. */
  readonly plan: SitePlan | null;
  readonly confirmations: readonly Confirmation[];
}

export type SitePlan = Extract<PlanRow, { origin: 'site' }>;

/** A register without rows of its own. */
export const NO_SITE_TABLES: SiteTables = { flanges: [], grades: [], plan: null, confirmations: [] };

/**
 * The site's flange row that a joint names.
 *
 * @param tables the site's tables
 * @param key name of the row; null for none
 * @returns the row, or null when none is named or it isn't there
 * @example siteFlange(NO_SITE_TABLES, 'Girth flange E-310') // null
 * @source rule of this program
 */
export function siteFlange({ flanges }: SiteTables, key: string | null): SiteFlange | null {
  if (key === null) return null;
  return flanges.find((row) => sameName(row.key, key)) ?? null;
}

/**
 * Strengths the site gives a grade at a stud's diameter.
 *
 * @param tables the site's tables
 * @param grade grade as the joint names it
 * @param diameter nominal diameter, m, above 0
 * @returns the range with the row's source, or null when no row covers the diameter
 * @example siteStrength(NO_SITE_TABLES, 'Site alloy 1', 0.0222) // null
 * @source rule of this program
 */
export function siteStrength({ grades }: SiteTables, grade: string, diameter: number) {
  const row = grades.find(({ key }) => sameName(key, grade));
  const band = row?.bands.find(({ over, upTo }) => diameter > over.si + 1e-9 && diameter <= upTo.si + 1e-9);
  return row === undefined || band === undefined ? null : { ...band, key: row.key, source: row.source };
}

/**
 * The newest confirmation of a table's value.
 *
 * Equation: same table, row, field and value.
 * @param tables the site's tables
 * @param cell value of a shipped table
 * @returns who confirmed it against what, or null
 * @example confirmationOf(NO_SITE_TABLES, flangeCells(findFlange('ASME B16.5', '8', '300'))[0]) // null
 * @source rule of this program
 */
export function confirmationOf({ confirmations }: SiteTables, cell: TableCell): Confirmation | null {
  return (
    confirmations.findLast(
      ({ table, key, field, value }) =>
        table === cell.table && key === cell.key && field === cell.field && value === cell.value,
    ) ?? null
  );
}

/**
 * What a person should know about a value in force, with who confirmed it.
 *
 * @param tables the site's tables
 * @param known value in force
 * @returns words, or null for entered values and rows whose sources agree
 * @example statusInForce(NO_SITE_TABLES, { value: 1, origin: 'standard', source: '', status: 'SINGLE', note: '' }) // 'one source only'
 * @source rule of this program
 */
export function statusInForce(
  tables: SiteTables,
  { status, cells = [] }: Pick<Known<unknown>, 'status' | 'cells'>,
): string | null {
  const text = status === null ? null : statusText(status);
  if (text === null || cells.length === 0) return text;
  const people = cells.map((cell) => confirmationOf(tables, cell)?.person ?? null);
  return people.includes(null) ? text : `${text}; confirmed by ${[...new Set(people)].join(', ')}`;
}
