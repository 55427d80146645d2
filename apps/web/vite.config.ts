import { defaultClientConditions, defineConfig } from 'vite';
import { contentSecurity, headers } from './content-security.ts';
import { offline } from './offline.ts';
import { trimTemplates } from './trim-templates.ts';

export default defineConfig({
  base: './',
  resolve: { conditions: ['@unitbook/source', ...defaultClientConditions] },
  build: { target: 'es2022', sourcemap: true, assetsInlineLimit: 0, modulePreload: false },
  preview: { headers },
  plugins: [trimTemplates(), contentSecurity(), offline()],
});
