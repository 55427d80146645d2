import { readFileSync } from 'node:fs';
import { readCheck } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { checkDocument, readCheckFile } from './check-file.ts';

const path = '../../../../../tariffs-examples/checks/two-bills.json';
const text = readFileSync(new URL(path, import.meta.url), 'utf8');

const opened = (source: string) => {
  const file = readCheckFile(source);
  if (file.kind !== 'check') throw new Error(file.reason);
  return file.check;
};

it('opens what it wrote, and the engine reads it whole', () => {
  const check = opened(text);
  if (check.ground === null) throw new Error('a file brings its own account');
  const written = JSON.stringify(
    checkDocument(
      check,
      check.bills.map(({ bill }) => bill),
      check.ground,
    ),
  );
  expect(readCheck(written).findings).toEqual([]);
  expect(opened(written)).toEqual(check);
});

it('orders the bills of a file by their days', () => {
  const document = JSON.parse(text) as { bills: unknown[] };
  const check = opened(JSON.stringify({ ...document, bills: [...document.bills].reverse() }));
  expect(check.bills.map(({ bill }) => bill.from)).toEqual(['2025-04-01', '2025-05-01']);
});

it('opens numbers that are half typed', () => {
  const check = opened(text.replace('"546"', '"54 6"'));
  expect(check.bills[1]?.bill.payable).toBe('54 6');
});

it.each([
  ['a bill without days', text.replace('"from": "2025-04-01",', ''), 'document/wrong-value'],
  ['a number that is no text', text.replace('"180.00"', '180.00'), 'document/number-not-text'],
  ['a key that nobody looks at', text.replace('"sum"', '"summe"'), 'document/unknown-key'],
  ['no account', text.replace('"account"', '"akount"'), 'document/wrong-value'],
])('refuses %s', (_, source, code) => {
  const file = readCheckFile(source);
  expect(file.kind === 'refused' ? file.findings.map((finding) => finding.code) : []).toContain(code);
});

it('says what another text is', () => {
  const reason = (source: string): string => {
    const file = readCheckFile(source);
    return file.kind === 'refused' ? file.reason : '';
  };
  expect(reason('{')).toContain('not JSON');
  expect(reason('[]')).toContain('"format": "unitbook-check-1"');
  expect(reason('{"format":"unitbook-quote-2"}')).toContain('“unitbook-quote-2”');
});
