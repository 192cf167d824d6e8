import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { checksPage } from './checks-page.ts';

/** Writes the page of checks: npm run docs:checks. */
const page = join(import.meta.dirname, '..', '..', 'docs', 'generated', 'checks.md');
mkdirSync(dirname(page), { recursive: true });
writeFileSync(page, checksPage());
process.stdout.write('docs/generated/checks.md\n');
