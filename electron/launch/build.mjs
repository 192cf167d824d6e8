import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const projectFolder = join(import.meta.dirname, '..', '..');
const outFolder = join(projectFolder, 'dist', 'electron');
const entry = (/** @type {string} */ path) => join(projectFolder, 'electron', path);

/** Programs of the Node side. Packages with a binding, and Electron's own module, stay outside. */
const programs = {
  main: entry('main.ts'),
  utility: entry('launch/utility.ts'),
  open: entry('launch/open.ts'),
  serve: entry('launch/serve.ts'),
};

/** Everything a build is made from. */
const SOURCES = [
  'core',
  'electron',
  'migrations',
  'renderer',
  'seed',
  'package.json',
  'package-lock.json',
  'vite.config.ts',
];

/** @returns {boolean} whether a source is newer than what was built from it */
export function isStale() {
  let built;
  try {
    built = Math.min(
      statSync(join(outFolder, 'preload.cjs')).mtimeMs,
      statSync(join(projectFolder, 'dist', 'renderer', 'index.html')).mtimeMs,
    );
  } catch {
    return true;
  }
  return SOURCES.some((source) => newest(join(projectFolder, source)) > built);
}

/**
 * @param {string} path
 * @returns {number} time of the last change in the folder; a folder's own time shows files taken away
 */
function newest(path) {
  const state = statSync(path);
  if (!state.isDirectory()) return state.mtimeMs;
  return readdirSync(path).reduce(
    (latest, name) => Math.max(latest, newest(join(path, name))),
    state.mtimeMs,
  );
}

/** Builds the Node side first and the window last, so that a build cut short still counts as stale. */
export async function buildAll() {
  const nodeSide = {
    configFile: /** @type {const} */ (false),
    root: projectFolder,
    publicDir: /** @type {const} */ (false),
    logLevel: /** @type {const} */ ('warn'),
  };
  await build({
    ...nodeSide,
    ssr: { noExternal: true, external: ['better-sqlite3', 'electron'] },
    build: {
      ssr: true,
      outDir: outFolder,
      emptyOutDir: true,
      target: 'node22',
      minify: false,
      rolldownOptions: {
        input: programs,
        output: { entryFileNames: '[name].js', chunkFileNames: 'part-[hash].js' },
      },
    },
  });
  // A sandboxed preload script is one CommonJS file that may require nothing but electron.
  await build({
    ...nodeSide,
    ssr: { noExternal: true, external: ['electron'] },
    build: {
      ssr: true,
      outDir: outFolder,
      emptyOutDir: false,
      target: 'chrome140',
      minify: false,
      rolldownOptions: {
        input: { preload: entry('preload.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  });
  await build({ configFile: join(projectFolder, 'vite.config.ts'), logLevel: 'warn' });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  if (process.argv.includes('--if-stale') && !isStale()) process.exit(0);
  const start = performance.now();
  await buildAll();
  process.stdout.write(`Built in ${((performance.now() - start) / 1000).toFixed(1)} s.\n`);
}
