import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { quoteWriting } from './quote-writing.ts';
import { ruleName, ruleWords } from './settlement-words.ts';

const writing = quoteWriting(writingFor('en-IN', 'INR'), { locale: 'en-IN', grid: 100 });
const words = (rule: Readonly<Record<string, unknown>>): string => ruleWords(rule, writing);

it('says how units are netted, and what becomes of what is left', () => {
  expect(
    words({
      scheme: 'unit-netting',
      clause: 'r. 1',
      carry: { clause: 'r. 2' },
      close: { on: '03-31', surplus: 'paid', rate: '2.60' },
    }),
  ).toBe(
    'Units given are set off against units taken; what is left over goes to the next period; on 31 March surplus is paid at ₹2.60 a unit (r. 1).',
  );
  expect(words({ scheme: 'unit-netting', close: { on: 'every-period', surplus: 'lapses' } })).toBe(
    'Units given are set off against units taken; in every period surplus lapses.',
  );
});

it('says what ledgers are paid, and when they close', () => {
  const close = (on: unknown): Readonly<Record<string, unknown>> => ({ label: 'Bank', close: { on } });
  const ledgers = [
    { ...close('every-period'), label: 'Sold', payment: { rate: '3.10' } },
    close(['03-31', '09-30']),
    close('anniversary'),
    close('chosen'),
    { label: 'Kept' },
    { ...close('every-period'), payment: {} },
  ];
  expect(words({ scheme: 'ledgers', clause: 'r. 7', ledgers })).toBe(
    '“Sold” paid at ₹3.10 a unit in every period; “Bank” lapse on 31 March and 30 September; ' +
      '“Bank” lapse on each anniversary of the account; “Bank” lapse on the day chosen; “Kept” carried on; ' +
      '“Bank” paid in every period (r. 7).',
  );
  expect(words({ scheme: 'ledgers' })).toBe('Units are billed as they are taken; nothing is kept.');
});

it('takes a rule that is none as it comes: what is wrong with it is told when it is billed', () => {
  expect(words({ scheme: 7, ledgers: 'x' })).toBe('Units are billed as they are taken; nothing is kept.');
});

it('calls a rule by its tariff and its day, or by the case that it came with', () => {
  const rule = { scheme: 'ledgers' };
  expect(ruleName({ key: '', rule, from: 'D-1', since: '2021-04-01' }, (iso) => `<${iso}>`)).toBe(
    'D-1: the rule from <2021-04-01> on',
  );
  expect(ruleName({ key: '', rule, from: 'Net billing', since: '' }, String)).toBe(
    'As it came with “Net billing”',
  );
});
