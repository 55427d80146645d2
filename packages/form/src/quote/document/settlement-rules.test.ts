import type { TariffDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { blankQuote } from './blank-quote.ts';
import { knownRule, ownRules, rulesOf } from './settlement-rules.ts';

const netting = { scheme: 'unit-netting', clause: 'r. 1', close: { on: '03-31', surplus: 'lapses' } };
const selling = { scheme: 'ledgers', clause: 'r. 2' };
const tariff = {
  id: 'north',
  name: 'Invented north',
  settlements: [
    { from: '2021-04-01', through: '2024-03-31', ...netting },
    { from: '2024-04-01', ...selling },
  ],
} as unknown as TariffDocument;

const quoteWith = (...settlements: readonly (Record<string, unknown> | undefined)[]) => ({
  ...blankQuote('en-IN', ''),
  policies: settlements.map((settlement, at) => ({
    name: `case ${String(at)}`,
    from: '2',
    ...(settlement === undefined ? {} : { settlement }),
  })),
});

it('lists the rules of a tariff without their days, the one in force first', () => {
  expect(rulesOf(tariff)).toEqual([
    { key: 'north 1', rule: selling, from: 'Invented north', since: '2024-04-01' },
    { key: 'north 0', rule: netting, from: 'Invented north', since: '2021-04-01' },
  ]);
});

it('lists the rules that came with a quote, each once, named by the first case that has it', () => {
  const { close, clause, scheme } = netting;
  const own = ownRules(quoteWith(undefined, netting, selling, { close, clause, scheme }));
  expect(own.map(({ key, from }) => [key, from])).toEqual([
    ['own 1', 'case 1'],
    ['own 2', 'case 2'],
  ]);
  expect(ownRules(blankQuote('en-IN', ''))).toEqual([]);
});

it('knows a rule whatever the order of its fields, and not one that differs', () => {
  const { close, clause, scheme } = netting;
  expect(knownRule({ close, clause, scheme }, rulesOf(tariff))?.key).toBe('north 0');
  expect(knownRule({ ...netting, clause: 'r. 3' }, rulesOf(tariff))).toBe(null);
});
