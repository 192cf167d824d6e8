import { defineConfig } from 'vitest/config';

/** Long fault tests: `npm run test:long`. */
export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/faults/**/*.test.ts'],
    setupFiles: ['tests/seeds.ts'],
    allowOnly: false,
    passWithNoTests: false,
    testTimeout: 290_000,
    hookTimeout: 60_000,
  },
});
