// Runs one TypeScript file: `node tests/support/run.mjs tests/bench/some.ts [arguments]`.
// Bundled first, from the sources of our packages, so that it runs at the speed of a built program.
import { basename, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build, defaultServerConditions } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const [, , entry] = process.argv;
if (!entry) throw new Error('Name the TypeScript file to run.');
const outDir = join(root, 'node_modules/.cache/unitbook');
const entryFileNames = `${basename(entry, '.ts')}.mjs`;

await build({
  root,
  configFile: false,
  logLevel: 'warn',
  build: {
    ssr: entry,
    outDir,
    emptyOutDir: false,
    target: 'node20',
    minify: false,
    rolldownOptions: { output: { entryFileNames } },
  },
  ssr: {
    noExternal: [/^@unitbook\//],
    resolve: { conditions: ['@unitbook/source', ...defaultServerConditions] },
  },
});
process.argv.splice(1, 2, entry);
await import(pathToFileURL(join(outDir, entryFileNames)).href);
