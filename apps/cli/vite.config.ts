import { defaultServerConditions, defineConfig } from 'vite';

/** The command as one file, with no dependency left to install but the one that is optional. */
export default defineConfig({
  build: {
    ssr: 'src/unitbook.ts',
    outDir: 'dist',
    target: 'node20',
    minify: false,
    rolldownOptions: { output: { entryFileNames: 'unitbook.js' } },
  },
  // An optional part stays outside: it is a program for each machine.
  ssr: {
    noExternal: true,
    external: ['@duckdb/node-api'],
    resolve: { conditions: ['@unitbook/source', ...defaultServerConditions] },
  },
});
