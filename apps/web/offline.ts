import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import type { Plugin, ResolvedConfig } from 'vite';

/** File names are relative to the worker's own address, so the page works at `/` and in a folder alike. */
const worker = (version: string, files: readonly string[]): string => `'use strict';
const CACHE = 'unitbook-${version}';
const FILES = ${JSON.stringify(files)};
self.addEventListener('install', (e) => {
  e.waitUntil(
    caches
      .open(CACHE)
      .then((c) => c.addAll(FILES.map((u) => new Request(u, { cache: 'reload' }))))
      .then(() => self.skipWaiting()),
  );
});
self.addEventListener('activate', (e) => {
  const isOld = (k) => k.startsWith('unitbook-') && k !== CACHE;
  e.waitUntil(
    caches
      .keys()
      .then((ks) => Promise.all(ks.filter(isOld).map((k) => caches.delete(k))))
      .then(() => self.clients.claim()),
  );
});
self.addEventListener('fetch', (e) => {
  if (e.request.method !== 'GET' || new URL(e.request.url).origin !== self.location.origin) return;
  const key = e.request.mode === 'navigate' ? './' : e.request;
  e.respondWith(
    caches
      .open(CACHE)
      .then((c) => c.match(key, { ignoreVary: true }))
      .then((r) => r ?? fetch(e.request)),
  );
});
`;

function emittedFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !entry.name.endsWith('.map') && entry.name !== 'sw.js')
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** Writes dist/sw.js: keeps every emitted file for offline use; the version is the hash of their contents. */
export function offline(): Plugin {
  let config: ResolvedConfig;
  return {
    name: 'unitbook-offline',
    apply: 'build',
    configResolved(resolved) {
      config = resolved;
    },
    closeBundle() {
      // A folder named from the root of the disk stays that.
      const out = resolve(config.root, config.build.outDir);
      const files = emittedFiles(out);
      const hash = createHash('sha256');
      for (const file of files) hash.update(readFileSync(file));
      const urls = files
        .map((file) => `./${relative(out, file).split(sep).join('/')}`)
        .map((url) => (url === './index.html' ? './' : url));
      writeFileSync(join(out, 'sw.js'), worker(hash.digest('hex').slice(0, 16), urls));
    },
  };
}
