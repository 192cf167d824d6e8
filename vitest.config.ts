import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    environment: 'node',
    include: ['{core,electron,renderer,migrations,seed}/**/*.test.{ts,tsx}', 'tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', 'dist/**', 'tests/e2e/**', 'tests/faults/**'],
    setupFiles: ['tests/seeds.ts'],
    allowOnly: false,
    passWithNoTests: false,
    // Checks, browser and service tests start programs of their own; two cores run them slowly.
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
