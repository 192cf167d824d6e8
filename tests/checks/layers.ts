import type { ICruiseResult } from 'dependency-cruiser';
import type { Check } from './check.ts';
import { projectFiles } from './files.ts';
import { jsonOutput, runPackage } from './program.ts';

const LAYERS = ['core', 'electron', 'renderer', 'migrations', 'seed'];

/** Who imports whom, by the rules of .dependency-cruiser.mjs. */
export const checkLayers: Check = async (root) => {
  const files = await projectFiles(root, /\.(tsx?|mjs)$/);
  const present = LAYERS.filter((layer) => files.some((file) => file.startsWith(`${layer}/`)));
  if (present.length === 0) return { looked: 0, faults: [] };
  const output = await runPackage(root, 'dependency-cruiser/bin/dependency-cruiser.mjs', [
    '--config',
    '.dependency-cruiser.mjs',
    '--output-type',
    'json',
    ...present,
  ]);
  const { summary, modules } = jsonOutput<ICruiseResult>(output);
  const reasons = new Map(summary.ruleSetUsed?.forbidden?.map(({ name, comment }) => [name, comment]) ?? []);
  const own = modules.filter(({ source }) => LAYERS.some((layer) => source.startsWith(`${layer}/`)));

  // A compiler that the tool can't use makes it see no modules and find no faults.
  const unseen = LAYERS.filter((layer) => !own.some(({ source }) => source.startsWith(`${layer}/`)));
  return {
    looked: own.length,
    faults: [
      ...summary.violations.map(
        ({ from, to, rule }) => `${from} → ${to}: ${reasons.get(rule.name) ?? rule.name}`,
      ),
      ...unseen.map((layer) => `${layer}/: no module was seen, so nothing is known about its imports.`),
    ],
  };
};
