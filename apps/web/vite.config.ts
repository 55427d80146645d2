import { defaultClientConditions, defineConfig } from 'vite';
import { contentSecurity, headers } from './content-security.ts';
import { firstLoad } from './first-load.ts';
import { offline } from './offline.ts';
import { styleSheet } from './style-sheet.ts';
import { trimTemplates } from './trim-templates.ts';

export default defineConfig({
  base: './',
  resolve: { conditions: ['@unitbook/source', ...defaultClientConditions] },
  build: {
    target: 'es2022',
    sourcemap: true,
    assetsInlineLimit: 0,
    modulePreload: false,
    // Two minifiers, one after the other: each finds what the other leaves, 600 bytes more than either alone.
    minify: 'terser',
    terserOptions: {
      module: true,
      ecma: 2020,
      safari10: false,
      compress: { passes: 3, pure_getters: true, keep_fargs: false },
    },
    rolldownOptions: {
      preserveEntrySignatures: false,
      output: {
        minify: true,
        codeSplitting: { includeDependenciesRecursively: false, groups: [{ name: firstLoad() }] },
      },
    },
  },
  // The worker that makes draws for a quote is a module, like everything else.
  worker: { format: 'es' },
  preview: { headers },
  plugins: [styleSheet(), trimTemplates(), contentSecurity(), offline()],
});
