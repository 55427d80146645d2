import type { FlyerClaim, FlyerLine } from '@unitbook/engine';
import type { QuoteWriter } from './quote-writer.ts';
import { renderTable, type Column } from './table.ts';
import { PAGE_WIDTH, wrap } from './text.ts';

/** What the claims of a flyer are, in words. */
const CLAIMS: Readonly<Record<FlyerClaim, string>> = {
  claimedSize: 'Plant, kWp',
  claimedSaving: 'Saving of a year',
  claimedPayback: 'Payback in years',
  claimedGeneration: 'Units made in a year',
  claimedRate: 'A unit is worth',
  price: 'Price',
  subsidy: 'Subsidy',
  netPrice: 'Price less subsidy',
  monthlyBillAfter: 'Bill of a month after',
  escalation: 'Rates rise, % a year',
};

function moreBy(difference: string | null, { number }: QuoteWriter): string {
  if (difference === null) return '–';
  if (/^-?0(\.0+)?$/.test(difference)) return 'the same';
  return `${difference.startsWith('-') ? '' : '+'}${number(difference)}`;
}

function cells({ claim, claimed, ours, difference }: FlyerLine, writer: QuoteWriter): readonly string[] {
  const { number } = writer;
  return [CLAIMS[claim], number(claimed), ours === null ? 'none' : number(ours), moreBy(difference, writer)];
}

/** The claims of a flyer, each beside the same of the quote. */
export function flyerRows(lines: readonly FlyerLine[], writer: QuoteWriter): readonly string[] {
  if (lines.length === 0) return ['It claims nothing in figures.'];
  const columns: readonly Column[] = [
    { heading: ['Claim'], side: 'left' },
    { heading: ['Flyer'], side: 'right' },
    { heading: ['This quote'], side: 'right' },
    { heading: ['Flyer says', 'more by'], side: 'right' },
  ];
  const words =
    'A difference alone proves nothing: what to ask about it stands among the messages. By this quote, in year 1.';
  return [
    ...renderTable(columns, { body: lines.map((line) => cells(line, writer)) }),
    ...wrap(words, PAGE_WIDTH),
  ];
}
