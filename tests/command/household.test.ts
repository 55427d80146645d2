import { readFileSync } from 'node:fs';
import { readHousehold } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.ts';
import { sessionIo } from './session-io.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../tariffs-examples/${name}`, import.meta.url), 'utf8');

const HOUSEHOLD = example('households/demo.json');
const TARIFF = example('tarumira/taresco-domestic/tariff.json');
const NAMED = '"tariff": "tarumira-domestic"';
const EMBEDDED = HOUSEHOLD.replace(NAMED, `"tariff": ${TARIFF.trim()}`);

/** Line and column of a piece of text that stands once in a file. */
function placeOf(text: string, piece: string): { line: number; column: number } {
  const before = text.slice(0, text.indexOf(piece)).split('\n');
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
}

async function print(files: Readonly<Record<string, string>>, ...words: string[]) {
  const held = new Map(Object.entries(files).map(([name, text]) => [name, { bytes: Buffer.from(text) }]));
  const { io, printed } = sessionIo(held, '');
  const status = await run(['bill', ...words], io);
  return { status, ...printed };
}

describe('a household file', () => {
  it('can name an example tariff, hold the tariff, or be read with another', async () => {
    const files = { 'named.json': HOUSEHOLD, 'whole.json': EMBEDDED, 'tariff.json': TARIFF };
    const pages = await Promise.all([
      print(files, '--household', 'named.json', '--month', '2'),
      print(files, '--household', 'whole.json', '--month', '2'),
      print(files, '--household', 'named.json', '--tariff', 'tariff.json', '--month', '2'),
    ]);
    for (const { status, out, err } of pages) {
      expect([status, err]).toEqual([0, '']);
      expect(out).toMatch(/^ {2}Sum of the lines +229\.92$/m);
    }
  });

  it('has a slip of its tariff told where it stands in the file', () => {
    const text = EMBEDDED.replace('"rate": "4.80"', '"rate": 4.80');
    const { value, findings } = readHousehold(text);
    expect(value.tariff).toBeNull();
    expect(findings.map(({ code, position }) => [code, position])).toEqual([
      ['document/number-not-text', placeOf(text, '4.80 }')],
    ]);
  });

  it('has slips of its account and readings told there, too', () => {
    const text = HOUSEHOLD.replace('"sanctionedLoad": "3"', '"sanctionedLoad": "0"').replace(
      '"4120.6"',
      '4120.6',
    );
    const { findings } = readHousehold(text);
    expect(findings.map(({ code, position }) => [code, position])).toEqual([
      ['account/not-above-zero', placeOf(text, '"0",\n    "plantCapacity"')],
      ['document/number-not-text', placeOf(text, '4120.6')],
    ]);
  });

  it.each([
    ['"tariff": 7', 'document/wrong-value'],
    ['"tariff": []', 'document/wrong-value'],
    ['"tarif": "x"', 'document/missing-key'],
  ])('with %s is not read', (part, code) => {
    const { value, findings } = readHousehold(HOUSEHOLD.replace(NAMED, part));
    expect(value.readings).toBeNull();
    expect(findings.map((finding) => finding.code)).toContain(code);
  });
});

describe('rows behind one that cannot be read', () => {
  it('are checked but not billed, and no period spans the gap', async () => {
    const account = JSON.stringify((JSON.parse(HOUSEHOLD) as { account: unknown }).account);
    const readings = [
      'date,import,export,generation',
      '2025-04-01,4120.6,2655.2,6890.4',
      '2025-05-01,4342.1,2935.8,7318.0',
      '2025-06-01;4640.3;3151.0;7689.7',
      '2025-07-01,4926.5,3341.4,8007.2',
      '2025-08-01,5200.8,3491.1,x',
    ].join('\n');
    const files = { 'a.json': account, 't.json': TARIFF, 'r.csv': readings };
    const { status, out, err } = await print(
      files,
      '--tariff',
      't.json',
      '--account',
      'a.json',
      '--readings',
      'r.csv',
    );
    expect(status).toBe(1);
    expect(out.match(/^BILL/gm)?.length).toBe(1);
    expect(err.split('\n').map((line) => /^r\.csv:\d+:\d+|\[.*\]$/g[Symbol.match](line))).toEqual([
      ['r.csv:4:1', '[readings-file/mixed-separators]'],
      ['r.csv:6:26', '[reading/not-a-number]'],
      null,
    ]);
  });
});
