import { expect, it } from 'vitest';
import { sessionIo } from './session-io.ts';
import { DEMO_TARIFF } from '../support/demo.ts';
import { run } from '../../apps/cli/src/run.ts';
import { readTariffFile } from '../../apps/cli/src/read/tariff-file.ts';

const BASE = DEMO_TARIFF.replace('"id": "tarumira-domestic"', '"id": "base"');
const extending = (id: string): string =>
  JSON.stringify({ format: 'unitbook-tariff-1', extends: id, id: 'own', name: 'Own' });

const files = (texts: Readonly<Record<string, string>>) =>
  new Map(Object.entries(texts).map(([name, text]) => [name, { bytes: Buffer.from(text) }]));

async function read(path: string, texts: Readonly<Record<string, string>>, input = '') {
  const { value, wasRead, findings } = await readTariffFile(sessionIo(files(texts), input).io, path);
  const told = findings.map(({ subject, finding }) => `${subject} ${finding.code}`);
  return { name: value?.document.name, wasRead, told };
}

it.each(['a/own/base.json', 'a/own/../base.json', 'a/own/base/tariff.json', 'a/own/../base/tariff.json'])(
  'finds the document that another extends in %s',
  async (place) => {
    const texts = { 'a/own/tariff.json': extending('base'), [place]: BASE };
    expect(await read('a/own/tariff.json', texts)).toEqual({ name: 'Own', wasRead: true, told: [] });
  },
);

it('finds it from standard input and from a file without a folder', async () => {
  const texts = { 'own.json': extending('base'), 'base.json': BASE };
  expect(await read('own.json', texts)).toMatchObject({ name: 'Own' });
  expect(await read('-', texts, extending('base'))).toMatchObject({ name: 'Own' });
});

it('finds it among the examples', async () => {
  expect(await read('x/own.json', { 'x/own.json': extending('tarumira-shop') })).toMatchObject({
    name: 'Own',
  });
});

it('looks beside each of them for the next', async () => {
  const middle = extending('base').replace('"own"', '"middle"');
  const texts = { 'own.json': extending('middle'), 'middle/tariff.json': middle, 'middle/base.json': BASE };
  expect(await read('own.json', texts)).toEqual({ name: 'Own', wasRead: true, told: [] });
});

it('looks nowhere else', async () => {
  const texts = { 'own.json': extending('base'), '../x/base/tariff.json': BASE, 'x/base.json': BASE };
  expect(await read('own.json', texts)).toEqual({
    name: undefined,
    wasRead: true,
    told: ['own.json tariff/extends-unknown'],
  });
});

it('comes to an end where documents extend each other', async () => {
  const other = extending('own').replace('"id":"own"', '"id":"base"');
  expect((await read('own.json', { 'own.json': extending('base'), 'base.json': other })).told).toEqual([
    'own.json tariff/extends-itself',
  ]);
});

it('says of a file beside it that it is no tariff', async () => {
  const texts = { 'own.json': extending('base'), 'base.json': '{"format":"unitbook-account-1"}' };
  expect((await read('own.json', texts)).told).toEqual(['base.json command/other-document']);
});

it('serves unitbook tariff and unitbook bill', async () => {
  const account = JSON.stringify({
    format: 'unitbook-account-1',
    id: 'A',
    sanctionedLoad: '4',
    plantCapacity: '5',
    openingCredit: '0',
    meters: {
      grid: {
        serial: 'P',
        multiplyingFactor: '1',
        import: { digits: '5', decimals: '1' },
        export: { digits: '5', decimals: '1' },
      },
    },
  });
  const { io, printed } = sessionIo(
    files({
      'own.json': extending('tarumira-domestic'),
      'account.json': account,
      'readings.csv': 'date,import,export\n2025-04-01,100.0,50.0\n2025-05-01,300.0,60.0\n',
    }),
    '',
  );
  expect(await run(['tariff', 'own.json'], io)).toBe(0);
  expect(printed.out).toContain('own.json  no problem found: Own; TO-2023 from 2023-04-01');
  const words = ['bill', '--tariff', 'own.json', '--account', 'account.json', '--readings', 'readings.csv'];
  await run(words, io);
  expect(printed.out).toContain('Own');
  expect(printed.out).toContain('Energy charge');
});
