import { existsSync, readdirSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';

const projectFolder = join(import.meta.dirname, '..', '..');
const distFolder = join(projectFolder, 'dist');
const entry = (/** @type {string} */ path) => join(projectFolder, 'electron', path);

/** Programs of the Node side. Packages with a binding, and Electron's own module, stay outside. */
const programs = {
  main: entry('main.ts'),
  utility: entry('launch/utility.ts'),
  open: entry('launch/open.ts'),
  serve: entry('launch/serve.ts'),
  'history-worker': entry('service/history/worker.ts'),
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

/** Carries the time at which the build began, so that a source saved while it ran counts as newer. */
const stamp = join(distFolder, 'built');

/** @returns {boolean} whether a source is newer than what was built from it */
function isStale() {
  if (!existsSync(stamp)) return true;
  const built = statSync(stamp).mtimeMs;
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

/** Builds beside the old one and takes its place when all of it is there: a failed build leaves what worked. */
async function buildAll() {
  const start = new Date();
  const draft = join(distFolder, `draft-${process.pid}`);
  try {
    await buildInto(draft);
    for (const side of ['electron', 'renderer']) {
      rmSync(join(distFolder, side), { recursive: true, force: true });
      renameSync(join(draft, side), join(distFolder, side));
    }
    writeFileSync(stamp, '');
    utimesSync(stamp, start, start);
  } finally {
    rmSync(draft, { recursive: true, force: true });
  }
}

/** @param {string} draft */
async function buildInto(draft) {
  const outFolder = join(draft, 'electron');
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
  await build({
    configFile: join(projectFolder, 'vite.config.ts'),
    logLevel: 'warn',
    build: { outDir: join(draft, 'renderer') },
  });
}

if (!process.argv.includes('--if-stale') || isStale()) {
  const start = performance.now();
  await buildAll();
  process.stdout.write(`Built in ${((performance.now() - start) / 1000).toFixed(1)} s.\n`);
}
