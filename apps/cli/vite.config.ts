import { defaultServerConditions, defineConfig } from 'vite';

/** The command as one file with no dependency left to install. */
export default defineConfig({
  build: {
    ssr: 'src/unitbook.ts',
    outDir: 'dist',
    target: 'node20',
    minify: false,
    rolldownOptions: { output: { entryFileNames: 'unitbook.js' } },
  },
  ssr: { noExternal: true, resolve: { conditions: ['@unitbook/source', ...defaultServerConditions] } },
});
