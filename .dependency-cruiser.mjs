/**
 * Who may import whom. Each layer has one rule that names everything it may use; whatever else it imports is a
 * fault. The comment is what a person reads who breaks the rule. Test files may import anything, wherever they lie.
 */
const packages = (...names) => `node_modules/(${names.join('|')})/`;

const layer = ({ name, from, allowed, node = false, comment }) => ({
  name,
  severity: 'error',
  comment,
  from: { path: from, pathNot: '\\.test\\.tsx?$' },
  to: { pathNot: allowed, ...(node ? { dependencyTypesNot: ['core'] } : {}) },
});

export default {
  forbidden: [
    layer({
      name: 'core-is-pure',
      from: '^core/',
      allowed: ['^core/', packages('zod', 'canonicalize', 'temporal-polyfill', 'pure-rand', '@stdlib/[^/]+')],
      comment:
        'core may import core, zod, canonicalize, temporal-polyfill, pure-rand and @stdlib; hash, clock and random source are arguments.',
    }),
    layer({
      name: 'migrations-know-only-kysely',
      from: '^migrations/',
      allowed: ['^migrations/', packages('kysely')],
      comment: 'migrations may import migrations and kysely.',
    }),
    layer({
      name: 'seed-is-data',
      from: '^seed/',
      allowed: ['^seed/', '^core/'],
      comment: 'seed may import seed and core.',
    }),
    layer({
      name: 'window-asks-the-contract',
      from: '^renderer/',
      allowed: [
        '^renderer/',
        '^core/',
        packages(
          'react',
          'react-dom',
          'recharts',
          'wouter',
          'react-hook-form',
          '@tanstack/react-query',
          '@fontsource-variable/source-sans-3',
          'zod',
          'temporal-polyfill',
          'uqr',
          'uuid',
          'vite/client',
        ),
      ],
      comment:
        'renderer may import renderer, core, react and its UI packages; data comes by requests, never from electron/.',
    }),
    layer({
      name: 'service-owns-the-register',
      from: '^electron/service/',
      allowed: [
        '^electron/service/',
        '^core/',
        '^migrations/',
        '^seed/',
        packages(
          'kysely',
          'better-sqlite3',
          '@types/better-sqlite3',
          'csv-parse',
          'temporal-polyfill',
          'uuid',
          'zod',
        ),
      ],
      node: true,
      comment:
        'electron/service may import itself, core, migrations, seed, node:*, kysely, better-sqlite3, csv-parse, temporal-polyfill, uuid and zod.',
    }),
    layer({
      name: 'transport-carries',
      from: '^electron/transport/',
      allowed: ['^electron/transport/', '^electron/service/', '^core/contract/'],
      node: true,
      comment:
        'electron/transport may import itself, electron/service, core/contract and node:*; never electron.',
    }),
    layer({
      name: 'launch-starts',
      from: '^electron/launch/',
      allowed: [
        '^electron/launch/',
        '^electron/transport/',
        '^electron/service/',
        '^core/contract/',
        // The build program alone; what it builds never sees it.
        packages('vite'),
      ],
      node: true,
      comment:
        'electron/launch may import itself, electron/transport, electron/service, core/contract, node:* and vite; never electron.',
    }),
    layer({
      name: 'shell-holds-no-data',
      from: '^electron/main\\.ts$',
      allowed: [
        '^core/contract/(names|message|errors)\\.ts$',
        '^electron/transport/page\\.ts$',
        '^electron/launch/folder\\.ts$',
        packages('electron'),
      ],
      node: true,
      comment:
        'electron/main.ts may import electron, node:*, the names and messages of core/contract, transport/page.ts and launch/folder.ts; no service, no SQL.',
    }),
    layer({
      name: 'preload-is-a-list-of-names',
      from: '^electron/preload\\.ts$',
      allowed: ['^core/contract/(names|message|errors)\\.ts$', packages('electron')],
      comment: 'electron/preload.ts may import electron and the names and messages of core/contract.',
    }),
    {
      name: 'no-cycles',
      severity: 'error',
      comment: 'Modules may not import each other in a circle; move what both need into a third.',
      from: {},
      to: { circular: true },
    },
    {
      name: 'resolvable',
      severity: 'error',
      comment: 'This import leads nowhere, so no rule can judge it.',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    combinedDependencies: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.d.ts', '.css', '.json'],
    },
  },
};
