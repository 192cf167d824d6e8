import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checksPage } from './checks-page.ts';
import { ALL_ROWS } from './topics.ts';

const page = checksPage();

describe('page of checks', () => {
  test('is up to date; npm run docs:checks writes it', () => {
    const written = readFileSync(
      join(import.meta.dirname, '..', '..', 'docs', 'generated', 'checks.md'),
      'utf8',
    );
    expect(written).toBe(page);
  });

  test('lists every row', () => {
    for (const { what } of ALL_ROWS) expect(page).toContain(`| ${what.replaceAll('|', '\\|')} |`);
  });

  test('shows no deviation without its reason', () => {
    const explained = page.slice(page.indexOf('## Further'), page.indexOf('## Torque'));
    expect(explained).not.toContain('| half the last printed digit |');
    expect(page).not.toContain('NaN');
    expect(page).not.toContain('differs');
  });
});
