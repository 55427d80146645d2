import { CAUSES, minorUnitDigits } from '@unitbook/engine';
import { orderBreaks } from './account-order.ts';
import { sumText } from './exact-sum.ts';
import type { Count, Tally } from './tally.ts';

/** A count, with its sum as text: printed less right. */
interface TextCount {
  readonly bills: number;
  readonly accounts: number;
  readonly sum: string;
}

/** What a check of a table came to. */
export interface BatchSummary {
  readonly format: 'unitbook-batch-summary-1';
  readonly tariff: string;
  readonly supplier: string;
  readonly currency: string;
  readonly rows: number;
  readonly accounts: number;
  /** How often an account stands below one that comes after it. */
  readonly outOfOrder: number;
  readonly verdicts: Readonly<Record<string, TextCount>>;
  readonly favour: Readonly<Record<string, TextCount>>;
  /** By how much: the most of each band. */
  readonly amounts: Readonly<Record<string, TextCount>>;
  readonly explained: Readonly<Record<string, TextCount>>;
  readonly causes: readonly (TextCount & {
    readonly cause: string;
    readonly name: string;
    /** Whether it befell so many accounts of the utility that it is no chance. */
    readonly isSystemic: boolean;
  })[];
  readonly codes: Readonly<Record<string, TextCount>>;
}

/** A mistake made on so many accounts is made by the system, not by a person. */
const SYSTEMIC_FROM = 10;

const textCount = ({ bills, accounts, sum }: Count): TextCount => ({ bills, accounts, sum: sumText(sum) });

const textCounts = (counts: Tally['verdicts']): Record<string, TextCount> =>
  Object.fromEntries(
    Object.entries(counts)
      .sort(([one], [other]) => (one < other ? -1 : 1))
      .map(([key, count]) => [key, textCount(count)]),
  );

const VERDICTS = ['right', 'right-but-surprising', 'follows', 'wrong', 'cannot-tell', 'unreadable'];
const BANDS = ['1', '10', '100', '1000', '10000', 'more'];

const ordered = (counts: Tally['verdicts'], keys: readonly string[]): Record<string, TextCount> =>
  Object.fromEntries(
    keys.flatMap((key) => (counts[key] === undefined ? [] : [[key, textCount(counts[key])] as const])),
  );

/** The summary of what rows came to. */
export function summaryOf(
  tally: Tally,
  { id, supplier, currency }: { readonly id: string; readonly supplier: string; readonly currency: string },
): BatchSummary {
  const causes = Object.entries(tally.causes)
    .map(([cause, count]) => ({
      cause,
      name: CAUSES.find((one) => one.id === cause)?.name ?? cause,
      ...textCount(count),
      isSystemic: count.accounts >= SYSTEMIC_FROM,
    }))
    .sort((one, other) => other.bills - one.bills || (one.cause < other.cause ? -1 : 1));
  return {
    format: 'unitbook-batch-summary-1',
    tariff: id,
    supplier,
    currency,
    rows: tally.rows,
    accounts: tally.accounts,
    outOfOrder: orderBreaks(tally.order),
    verdicts: ordered(tally.verdicts, VERDICTS),
    favour: ordered(tally.favour, ['utility', 'household']),
    amounts: ordered(tally.amounts, BANDS),
    explained: ordered(tally.explained, ['one', 'several', 'none']),
    causes,
    codes: textCounts(tally.codes),
  };
}

const VERDICT_WORDS: Readonly<Record<string, string>> = {
  right: 'right',
  'right-but-surprising': 'right, though surprising',
  follows: 'follow from a wrong bill before',
  wrong: 'wrong',
  'cannot-tell': 'cannot be told',
  unreadable: 'rows that cannot be read',
};
const EXPLAINED_WORDS: Readonly<Record<string, string>> = {
  one: 'explained, one way',
  several: 'explained, several ways',
  none: 'not explained',
};

/** A sum with all its coins: "229.7" as "229.70". A fraction without an end stays as it is. */
function withCoins(sum: string, currency: string): string {
  const places = minorUnitDigits(currency) ?? 2;
  const [whole = '', decimals = ''] = sum.split('.');
  if (sum.includes('/') || decimals.length >= places) return sum;
  return `${whole}.${decimals.padEnd(places, '0')}`;
}

function line(words: string, { bills, sum }: TextCount, currency: string): string {
  const money = sum === '0' ? '' : `  ${currency} ${withCoins(sum, currency)}`;
  return `  ${words.padEnd(40)}${String(bills).padStart(12)}${money}`;
}

const section = (title: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : ['', title, ...lines];

function causeLines({ causes, currency, supplier }: BatchSummary): readonly string[] {
  return causes.flatMap((one) => [
    line(one.name, one, currency),
    ...(one.isSystemic
      ? [
          `    systemic: ${String(one.accounts)} accounts of ${supplier}, ${currency} ${withCoins(one.sum, currency)} in all`,
        ]
      : []),
  ]);
}

/** Accounts in no order: whether one of them stands in two places is not seen. */
const orderLines = (outOfOrder: number): readonly string[] =>
  outOfOrder === 0
    ? []
    : [
        `Accounts are in no order: ${outOfOrder === 1 ? 'one stands' : `${String(outOfOrder)} stand`} below a later one.`,
        'An account in two places counts as two, and its credit begins anew. Sort by account and from.',
      ];

/** The summary as a page of text; sums are printed less right. */
export function summaryPage(summary: BatchSummary): readonly string[] {
  const { rows, accounts, outOfOrder, verdicts, favour, amounts, explained, codes, currency, tariff } =
    summary;
  const counted = (counts: Readonly<Record<string, TextCount>>, words: (key: string) => string) =>
    Object.entries(counts).map(([key, count]) => line(words(key), count, currency));
  return [
    `${String(rows)} rows of ${String(accounts)} accounts, checked by ${tariff}`,
    ...orderLines(outOfOrder),
    ...section(
      'Bills',
      counted(verdicts, (key) => VERDICT_WORDS[key] ?? key),
    ),
    ...section(
      'In whose favour',
      counted(favour, (key) => `the ${key}`),
    ),
    ...section(
      'By how much',
      counted(amounts, (key) => (key === 'more' ? 'more' : `up to ${currency} ${key}`)),
    ),
    ...section(
      'Wrong bills',
      counted(explained, (key) => EXPLAINED_WORDS[key] ?? key),
    ),
    ...section('Causes, and their part of the difference', causeLines(summary)),
    ...section(
      'Why bills cannot be told or read',
      counted(codes, (key) => key),
    ),
  ];
}
