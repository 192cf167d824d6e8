import type { Check, CheckResult } from './check.ts';
import { jsonOutput, runPackage } from './program.ts';

/** Files, exports and packages that nothing uses, and packages that are used but not listed. */
export const checkUnused: Check = async (root) =>
  jsonOutput<CheckResult>(
    await runPackage(root, 'knip/bin/knip.js', [
      '--no-progress',
      '--reporter',
      './tests/checks/unused-reporter.mjs',
    ]),
  );
