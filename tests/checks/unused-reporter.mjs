import { relative } from 'node:path';

/** Prints what the unused-code check needs: how many files were looked at, and every finding as one line. */
export default function report({ issues, counters, configurationHints, cwd }) {
  const faults = [];
  for (const [kind, byFile] of Object.entries(issues)) {
    if (kind === '_files') continue;
    for (const found of Object.values(byFile)) {
      for (const issue of Object.values(found)) {
        faults.push(
          `${relative(cwd, issue.filePath)}${issue.line ? `:${issue.line}` : ''} unused or unlisted (${kind}): ${issue.symbol}`,
        );
      }
    }
  }
  for (const hint of configurationHints) faults.push(`knip.json: ${hint.type} ${hint.identifier}`);
  process.stdout.write(JSON.stringify({ looked: counters.processed, faults }));
}
