/** The order in which a bill comes about. A folder of the engine knows only the folders before it. */
const FLOW = ['quantity', 'tariff', 'readings', 'energy', 'settlement', 'bill', 'savings', 'quote', 'audit'];
const ENGINE = '^packages/engine/src/';
const TEST = '\\.test\\.ts$';

const flowRules = FLOW.map((folder, index) => ({
  name: `engine-order-${folder}`,
  severity: 'error',
  comment: `${folder}/ may import only from itself and from: ${FLOW.slice(0, index).join(', ') || 'nothing'}`,
  from: { path: `${ENGINE}${folder}/`, pathNot: TEST },
  to: { path: ENGINE, pathNot: `${ENGINE}(${FLOW.slice(0, index + 1).join('|')})/` },
}));

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...flowRules,
    {
      name: 'engine-door',
      severity: 'error',
      comment: "enter another folder of the engine through that folder's index.ts",
      from: { path: `${ENGINE}([^/]+)/`, pathNot: TEST },
      to: { path: `${ENGINE}[^/]+/`, pathNot: [`${ENGINE}[^/]+/index\\.ts$`, `${ENGINE}$1/`] },
    },
    {
      name: 'engine-door-from-root',
      severity: 'error',
      comment: 'the files beside the folders, too, enter a folder through its index.ts',
      from: { path: `${ENGINE}[^/]+\\.ts$`, pathNot: TEST },
      to: { path: `${ENGINE}[^/]+/`, pathNot: `${ENGINE}[^/]+/index\\.ts$` },
    },
    {
      name: 'engine-known-folders',
      severity: 'error',
      comment: 'a new folder of the engine needs its place in the flow, in this file',
      from: { path: `${ENGINE}[^/]+/`, pathNot: `${ENGINE}(${FLOW.join('|')})/` },
      to: {},
    },
    {
      name: 'engine-is-pure',
      severity: 'error',
      comment: 'the engine: no builtin of node, no other package than zod, and pure-rand for seeded draws',
      from: { path: ENGINE, pathNot: TEST },
      to: { pathNot: [ENGINE, '(^|/)node_modules/(zod|pure-rand)/'] },
    },
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'packages-know-no-app',
      severity: 'error',
      from: { path: '^packages/', pathNot: TEST },
      to: { path: '^(apps|tests)/' },
    },
    {
      name: 'apps-do-not-cross',
      severity: 'error',
      from: { path: '^apps/([^/]+)/' },
      to: { path: '^(apps|tests)/', pathNot: '^apps/$1/' },
    },
    {
      name: 'no-tests-in-source',
      severity: 'error',
      from: { pathNot: ['^tests/', TEST] },
      to: { path: TEST },
    },
    {
      name: 'source-imports-dependencies-only',
      severity: 'error',
      comment: 'source imports only what its own package.json names under dependencies',
      from: { path: '^(packages|apps)/[^/]+/src/', pathNot: TEST },
      to: {
        dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown', 'npm-optional', 'npm-peer'],
        dependencyTypesNot: ['type-only'],
        // The one optional part: the command is whole without it, and says so where it is missing.
        pathNot: '^node_modules/@duckdb/node-api/',
      },
    },
    { name: 'no-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^((packages|apps)/[^/]+/dist|coverage)/' },
    tsPreCompilationDeps: true,
    combinedDependencies: false,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['@unitbook/source', 'node', 'import', 'default'],
      extensions: ['.ts', '.js', '.mjs'],
    },
  },
};
