import { type Kysely, sql } from 'kysely';

/** Runs the statements of a step one after the other, inside the runner's transaction. */
export async function runStatements(db: Kysely<unknown>, statements: readonly string[]): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db);
}

/** Column checks shared by the steps; frozen with them. SQLite's GLOB has no repetition, hence the spelled-out digits. */
const DAY = '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]';
const TIME = '[0-2][0-9]:[0-5][0-9]';

export const uuid = (column: string) =>
  `length(${column}) = 36 and ${column} glob '????????-????-????-????-????????????'`;
export const day = (column: string) => `${column} glob '${DAY}'`;
export const moment = (column: string) => `${column} glob '${DAY}T${TIME}*'`;
export const utcMoment = (column: string) => `${column} glob '${DAY}T${TIME}:*Z'`;
export const hash = (column: string) => `length(${column}) = 64 and ${column} not glob '*[^0-9a-f]*'`;
export const json = (column: string) => `json_valid(${column})`;
export const oneOf = (column: string, values: readonly string[]) =>
  `${column} in (${values.map((value) => `'${value}'`).join(', ')})`;
/** A number between two bounds; infinities fall outside, NaN can't be stored. */
export const between = (column: string, low: number, high: number) => `${column} between ${low} and ${high}`;

/** Refuses every way of changing a recorded row: UPDATE, DELETE, and INSERT over an existing key. */
export function appendOnly(table: string, keys: readonly string[]): string[] {
  const same = keys.map((key) => `${key} = new.${key}`).join(' and ');
  const refuse = `select raise(abort, '${table} is append-only');`;
  return [
    `create trigger ${table}_no_update before update on ${table} begin ${refuse} end`,
    `create trigger ${table}_no_delete before delete on ${table} begin ${refuse} end`,
    `create trigger ${table}_no_reinsert before insert on ${table}
       when exists (select 1 from ${table} where ${same}) begin ${refuse} end`,
  ];
}
