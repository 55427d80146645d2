// Prints the demo year, then serves the built page: `node apps/web/start.mjs [--no-serve] [arguments of demo]`.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';

const command = fileURLToPath(new URL('../cli/dist/unitbook.js', import.meta.url));
const root = fileURLToPath(new URL('.', import.meta.url));

const given = process.argv.slice(2);
const passed = given.filter((argument) => argument !== '--no-serve');
const isServed = given.length === passed.length && process.stdout.isTTY;

const demo = spawnSync(process.execPath, [command, 'demo', ...passed], { stdio: 'inherit' });
if (demo.error) throw demo.error;
process.exitCode = demo.status ?? 1;

if (isServed && process.exitCode === 0) {
  const server = await preview({ root, preview: { host: '127.0.0.1', port: 4173, open: false } });
  console.log(`\nThe page is at ${server.resolvedUrls?.local[0] ?? 'no address'} (Ctrl+C ends).`);
}
