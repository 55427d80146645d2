import { isDecimalText, MONTH_NAMES } from '@unitbook/engine';
import type { CaseRule, KnownRule } from '../document/settlement-rules.ts';
import type { QuoteWriting } from './quote-writing.ts';

type Fields = Readonly<Record<string, unknown>>;

/** A rule comes from a file, and what is wrong with it is told when it is billed: here it is only read. */
const fieldsOf = (value: unknown): Fields =>
  typeof value === 'object' && value !== null ? (value as Fields) : {};
const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** "31 March" of "03-31". */
function dayWords(monthDay: string): string {
  const [month = '', day = ''] = monthDay.split('-');
  return `${day.replace(/^0/, '')} ${MONTH_NAMES[Number.parseInt(month, 10) - 1] ?? ''}`;
}

/** When a bank or a ledger is closed. */
function closeWords(on: unknown): string {
  if (Array.isArray(on)) return `on ${on.map((day) => dayWords(textOf(day))).join(' and ')}`;
  const when = textOf(on);
  if (/^\d{2}-\d{2}$/.test(when)) return `on ${dayWords(when)}`;
  if (when === 'anniversary') return 'on each anniversary of the account';
  return when === 'chosen' ? 'on the day chosen' : 'in every period';
}

const paidWords = (rate: unknown, { money }: QuoteWriting): string => {
  const text = textOf(rate);
  return isDecimalText(text) ? `paid at ${money(text)} a unit` : 'paid';
};

function nettingWords(rule: Fields, writing: QuoteWriting): string {
  const { surplus, rate, on } = fieldsOf(rule['close']);
  const carried = rule['carry'] === undefined ? '' : '; what is left over goes to the next period';
  const left = surplus === 'paid' ? `is ${paidWords(rate, writing)}` : 'lapses';
  return `Units given are set off against units taken${carried}; ${closeWords(on)} surplus ${left}`;
}

function ledgerWords(rule: Fields, writing: QuoteWriting): string {
  const ledgers = listOf(rule['ledgers']).map((one) => {
    const { label, close, payment } = fieldsOf(one);
    const ends = fieldsOf(close);
    const paid = payment === undefined ? 'lapse' : paidWords(fieldsOf(payment)['rate'], writing);
    return close === undefined
      ? `“${textOf(label)}” carried on`
      : `“${textOf(label)}” ${paid} ${closeWords(ends['on'])}`;
  });
  return ledgers.length === 0 ? 'Units are billed as they are taken; nothing is kept' : ledgers.join('; ');
}

/** A settlement rule in a sentence: what becomes of units given, and the clause that says so. */
export function ruleWords(rule: CaseRule, writing: QuoteWriting): string {
  const words = rule['scheme'] === 'unit-netting' ? nettingWords(rule, writing) : ledgerWords(rule, writing);
  const clause = textOf(rule['clause']);
  return `${words}${clause === '' ? '' : ` (${clause})`}.`;
}

/** How a rule is called in a list to choose from. */
export function ruleName({ from, since }: KnownRule, day: (iso: string) => string): string {
  return since === '' ? `As it came with “${from}”` : `${from}: the rule from ${day(since)} on`;
}
