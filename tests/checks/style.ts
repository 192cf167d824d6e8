import type { Check } from './check.ts';
import { jsonOutput, runPackage } from './program.ts';

interface Report {
  readonly summary: { readonly changed: number; readonly unchanged: number };
  readonly diagnostics: readonly {
    readonly severity: string;
    readonly message: string;
    readonly category: string;
    readonly location: { readonly path: string; readonly start?: { readonly line: number } };
  }[];
}

/** Format and lint: every error and warning counts. */
export const checkStyle: Check = async (root) => {
  const output = await runPackage(root, '@biomejs/biome/bin/biome', [
    'ci',
    '--reporter=json',
    '--max-diagnostics=none',
    '--no-errors-on-unmatched',
  ]);
  const report = jsonOutput<Report>(output);
  return {
    looked: report.summary.changed + report.summary.unchanged,
    faults: report.diagnostics
      .filter(({ severity }) => severity === 'error' || severity === 'warning' || severity === 'fatal')
      .map(
        ({ location, category, message }) =>
          `${location.path}:${location.start?.line ?? 1} ${message} (${category})`,
      ),
  };
};
