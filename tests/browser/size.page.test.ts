import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';

const folder = fileURLToPath(new URL('../../apps/web/dist/assets', import.meta.url));

function gzipBytes(ending: string): number {
  const files = readdirSync(folder).filter((name) => name.endsWith(ending));
  expect(files).not.toEqual([]);
  return files.reduce(
    (sum, name) => sum + gzipSync(readFileSync(`${folder}/${name}`), { level: 9 }).length,
    0,
  );
}

/** The goal of 60,000 is missed, for reasons that the decision about the weight of the page gives; no further. */
const MOST = 92_000;

it('ships no more JavaScript than was decided, every chunk counted', () => {
  const bytes = gzipBytes('.js');
  console.log(JSON.stringify({ gzipJavaScriptBytes: bytes, gzipStyleBytes: gzipBytes('.css') }));
  expect(bytes).toBeLessThanOrEqual(MOST);
});
