import { writeFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { schemaText } from './schema-text.ts';

// Run after adding a step: node tests/migrations/write-schema.ts. The test compares, it never writes.
const database = new Database(':memory:');
await migrate(database, queryBuilder(database));
writeFileSync(new URL('../../migrations/schema.sql', import.meta.url), schemaText(database));
