import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { calibration, calibrationPage } from './page.ts';

/** Writes the page of forecasts against what then happened: npm run docs:forecast. */
const page = join(import.meta.dirname, '..', '..', 'docs', 'generated', 'forecast.md');
mkdirSync(dirname(page), { recursive: true });
writeFileSync(page, calibrationPage(calibration()));
process.stdout.write('docs/generated/forecast.md\n');
