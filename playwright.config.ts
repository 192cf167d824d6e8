import { defineConfig } from '@playwright/test';
import { CHROMIUM_FLAGS, installedChromium } from './tests/chromium.ts';

const program = installedChromium();

export default defineConfig({
  outputDir: 'test-results/browser',
  forbidOnly: true,
  retries: 0,
  workers: 2,
  // Ends what hangs; a machine that does other work too takes several times what a quiet one does.
  timeout: 120_000,
  expect: { timeout: 15_000 },
  use: {
    trace: 'retain-on-failure',
    viewport: { width: 1440, height: 900 },
    locale: 'en-GB',
    timezoneId: 'Europe/Berlin',
    launchOptions: { args: CHROMIUM_FLAGS, ...(program === null ? {} : { executablePath: program }) },
  },
  projects: [
    { name: 'e2e', testDir: 'tests/e2e', testMatch: '**/*.spec.ts' },
    { name: 'electron', testDir: 'tests/electron/real', testMatch: '**/*.spec.ts' },
  ],
});
