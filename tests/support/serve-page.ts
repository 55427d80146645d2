import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';

const root = fileURLToPath(new URL('../../apps/web', import.meta.url));
const vite = fileURLToPath(new URL('../../node_modules/vite/bin/vite.js', import.meta.url));

/** Build the page from its sources and serve it, with its headers, to all page tests. */
export default async function servePage(project: TestProject): Promise<() => Promise<void>> {
  // A process of its own: within a test run NODE_ENV is `test`, and the build would not be the one shipped.
  execFileSync(process.execPath, [vite, 'build', root, '--logLevel', 'warn'], {
    stdio: 'inherit',
    env: { ...process.env, NODE_ENV: 'production' },
  });
  const server = await preview({ root, preview: { host: '127.0.0.1', port: 0, open: false } });
  const url = server.resolvedUrls?.local[0];
  if (url === undefined) throw new Error('The preview server has no address.');
  project.provide('pageUrl', url);
  return () => server.close();
}
