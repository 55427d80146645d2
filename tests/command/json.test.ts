import { expect, it } from 'vitest';
import type { BookDocument } from '@unitbook/engine';
import { run } from '../../apps/cli/src/run.ts';
import { sessionIo } from './session-io.ts';

const HOUSEHOLD = 'tariffs-examples/households/demo.json';

/** Printed once: it is long. */
let printedBook: Promise<string> | undefined;

function printBook(): Promise<string> {
  printedBook ??= printOnce();
  return printedBook;
}

async function printOnce(): Promise<string> {
  const { io, printed } = sessionIo(new Map(), '');
  expect(await run(['bill', '--household', HOUSEHOLD, '--json'], io)).toBe(0);
  expect(printed.err).toBe('');
  return printed.out;
}

it('prints the whole book, every number as exact text', async () => {
  const text = await printBook();
  const book = JSON.parse(text) as BookDocument;
  expect(book.months.length).toBe(12);
  const may = book.months[1];
  expect(may?.bill.lines.map(({ label, value }) => [label, value])).toEqual([
    ['Fixed charge', '180'],
    ['Energy charge', '72'],
    ['Shortfall to the minimum charge', '0'],
    ['Fuel surcharge', '9.6'],
    ['Electricity tax', '4.32'],
    ['Subsidy', '-36'],
  ]);
  expect([may?.bill.sum, may?.bill.payable.value]).toEqual(['229.92', '230']);
  expect(may?.bill.roundingDifference?.value).toBe('0.08');
  expect(may?.passbook).toMatchObject({ opening: '58', setOff: '274', billed: '24', closing: '0' });
  expect(book.paymentsDue).toEqual([{ units: '417', rate: '2.60', clause: 'NMR-2021 r. 7.3' }]);
  expect(book.findings).toEqual([]);
});

it('has no number outside quotation marks but places in files', async () => {
  const numbers: unknown[] = [];
  JSON.parse(await printBook(), (_, value: unknown) => {
    if (typeof value === 'number') numbers.push(value);
    return value;
  });
  expect(numbers).toEqual([]);
});

it('tells a derivation with its own bill only, so that it grows with the months and not faster', async () => {
  expect((await printBook()).length).toBeLessThan(12 * 400_000);
});

it('holds findings with their place in the file', async () => {
  const files = new Map([
    [
      'r.csv',
      {
        bytes: Buffer.from(
          'date,import,export,generation\n2025-05-01,4342.1,2935.8,7318.0\n2025-06-01,=1+1,3151.0,7689.7\n',
        ),
      },
    ],
    [
      'a.json',
      {
        bytes: Buffer.from(
          JSON.stringify({
            format: 'unitbook-account-1',
            id: 'A',
            sanctionedLoad: '3',
            plantCapacity: '3.3',
            openingCredit: '0',
            meters: {
              grid: {
                serial: 'B',
                multiplyingFactor: '1',
                import: { digits: '5', decimals: '1' },
                export: { digits: '5', decimals: '1' },
              },
              generation: { serial: 'C', multiplyingFactor: '1', generation: { digits: '5', decimals: '1' } },
            },
          }),
        ),
      },
    ],
  ]);
  const { io, printed } = sessionIo(files, '');
  const words = [
    '--tariff',
    'tariffs-examples/tarumira/taresco-domestic/tariff.json',
    '--account',
    'a.json',
    '--readings',
    'r.csv',
  ];
  expect(await run(['bill', ...words, '--json'], io)).toBe(1);
  const book = JSON.parse(printed.out) as BookDocument;
  expect(book.months).toEqual([]);
  expect(book.findings.map(({ code, position }) => [code, position])).toEqual([
    ['reading/formula', { line: 3, column: 12 }],
  ]);
});
