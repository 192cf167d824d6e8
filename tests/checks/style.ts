import type { Check } from './check.ts';
import { projectFiles } from './files.ts';
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
  const looked = report.summary.changed + report.summary.unchanged;
  const sources = await projectFiles(root, /\.(tsx?|mjs|css)$/);
  const faults = report.diagnostics
    .filter(({ severity }) => severity === 'error' || severity === 'warning' || severity === 'fatal')
    .map(
      ({ location, category, message }) =>
        `${location.path}:${location.start?.line ?? 1} ${message} (${category})`,
    );
  // A wrong list of files in the settings would leave most of the project unseen and find no fault in it.
  if (looked < sources.length)
    faults.push(`Only ${looked} of ${sources.length} source files were looked at.`);
  return { looked: sources.length === 0 ? 0 : looked, faults };
};
