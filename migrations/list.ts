import type { Migration } from 'kysely/migration';
import * as createRegister from './20261125T1700_create_register.ts';
import * as createPlant from './20261125T1710_create_plant.ts';
import * as createTools from './20261125T1720_create_tools.ts';
import * as createRecords from './20261125T1730_create_records.ts';

/** Every step in order. A step is frozen once it has landed; a name is never used again. */
export const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '20261125T1700_create_register': createRegister,
  '20261125T1710_create_plant': createPlant,
  '20261125T1720_create_tools': createTools,
  '20261125T1730_create_records': createRecords,
};

/** Number of the schema the program writes: how many steps it knows. Stored as the file's user_version. */
export const SCHEMA_NUMBER = Object.keys(MIGRATIONS).length;
