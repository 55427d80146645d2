import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.ts';
import { sessionIo } from './session-io.ts';

const TARIFF = 'tariffs-examples/tarumira/taresco-domestic/tariff.json';
const QUOTE = 'tariffs-examples/quotes/rooftop-4-kilowatt.json';

/** The demo tariff with twice the fixed charge: 12 × 4 kW × 60.00 = 2,880.00 more in a year. */
const DEAR = readFileSync(TARIFF, 'utf8')
  .replaceAll('"rate": "60.00"', '"rate": "120.00"')
  .replace('"name": "Tarumira D-1', '"name": "Tarumira D-2');

it('unitbook quote --against prints the quote under other tariffs, and what cannot be billed', async () => {
  const files = new Map([
    ['dear.json', { bytes: Buffer.from(DEAR) }],
    ['odd.json', { bytes: Buffer.from('{') }],
  ]);
  const words = ['quote', '--quote', QUOTE, '--tariff', TARIFF, '--draws', '0'];
  const { io, printed } = sessionIo(files, '');
  expect(await run([...words, '--against', 'dear.json'], io)).toBe(0);
  const table = printed.out.slice(printed.out.indexOf('OTHER TARIFFS'));
  expect(table).toMatch(/net-metered +38,931\.60 +3,336\.72 +36,673\.88 +4\.6 years/);
  expect(table).toMatch(/net-metered +41,811\.60 +6,216\.72 +36,673\.88 +4\.6 years/);
  const broken = sessionIo(files, '');
  expect(await run([...words, '--against', 'odd.json'], broken.io)).toBe(2);
  expect(broken.printed.err).toContain('odd.json:1:');
});
