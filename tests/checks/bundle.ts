import { isBuiltin } from 'node:module';
import { join, relative, sep } from 'node:path';
import { build, type Plugin } from 'vite';
import type { Check } from './check.ts';
import { projectFiles } from './files.ts';

/** What stands for a module of Node in a bundle for the browser. */
const LEFT_OUT = '__vite-browser-external';
const REACT = /[\\/]node_modules[\\/](react|react-dom|scheduler)[\\/]/;

/**
 * Whether core can be bundled for a browser as it stands. Layers judges core's own imports; this follows them through
 * the packages to the last module.
 */
export const checkBundle: Check = async (root) => {
  const entries = (await projectFiles(root, /\.ts$/)).filter(
    (file) => file.startsWith('core/') && !file.endsWith('.test.ts'),
  );
  if (entries.length === 0) return { looked: 0, faults: [] };
  const modules = new Map<string, readonly string[]>();
  await build({
    root,
    configFile: false,
    logLevel: 'silent',
    plugins: [collect(modules)],
    build: {
      write: false,
      minify: false,
      target: 'chrome120',
      lib: { entry: entries.map((entry) => join(root, entry)), formats: ['es'] },
    },
  });
  const faults = [...modules].flatMap(([id, importers]) => {
    const kind = kindOf(id);
    if (kind === null) return [];
    return importers.map(
      (importer) => `${place(root, importer)} brings ${kind} into core: ${place(root, id)}`,
    );
  });
  return { looked: modules.size, faults };
};

function kindOf(id: string): string | null {
  if (id.startsWith(LEFT_OUT) || isBuiltin(id)) return 'a module of Node';
  return REACT.test(id) ? 'React' : null;
}

/** Every module of the graph with the modules that import it, those dropped later as unused included. */
function collect(modules: Map<string, readonly string[]>): Plugin {
  return {
    name: 'collect-modules',
    buildEnd() {
      for (const id of this.getModuleIds()) {
        const info = this.getModuleInfo(id);
        modules.set(id, [...(info?.importers ?? []), ...(info?.dynamicImporters ?? [])]);
      }
    },
  };
}

function place(root: string, id: string): string {
  const plain = id.replace(/\0/g, '');
  return plain.startsWith(root) ? relative(root, plain).split(sep).join('/') : plain;
}
