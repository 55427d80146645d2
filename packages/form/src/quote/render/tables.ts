import { html, type TemplateResult } from 'lit';
import { addQuotients, type CaseResult, type Quote, type Quotient } from '@unitbook/engine';
import { paybackWords } from '../view/answer-view.ts';
import type { QuoteWriting } from '../view/quote-writing.ts';
import { ENGLISH_CASES } from '../words/english-sentences.ts';
import { returnText } from '../words/payback-text.ts';

/** A table whose first column names its lines. */
interface Table {
  readonly id: string;
  readonly caption: string;
  readonly heads: readonly string[];
  readonly lines: readonly (readonly string[])[];
  /** The last line, below a double rule. */
  readonly sum?: readonly string[];
}

const renderCells = ([first = '', ...cells]: readonly string[]): TemplateResult =>
  html`<th scope="row">${first}</th>
    ${cells.map((cell) => html`<td>${cell}</td>`)}`;

/** A ruled table; wider than the page, it scrolls by itself. */
export function renderTable({ id, caption, heads, lines, sum }: Table): TemplateResult {
  return html`<div class="wide" role="region" aria-label=${caption} tabindex="0">
    <table class="data" id=${id}>
      <caption>
        ${caption}
      </caption>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${lines.map(
          (line) =>
            html`<tr>
              ${renderCells(line)}
            </tr>`,
        )}
        ${
          sum === undefined
            ? ''
            : html`<tr class="closed">
                ${renderCells(sum)}
              </tr>`
        }
      </tbody>
    </table>
  </div>`;
}

/** What each month is billed for; null: it is being worked out. */
export type Billed = readonly (Quotient | null)[] | null;

function billedCells(billed: Billed, writing: QuoteWriting): (at: number) => string {
  if (billed === null) return () => '…';
  return (at) => {
    const own = billed[at];
    return own == null ? '' : writing.plain(own);
  };
}

function billedSum(billed: Billed, writing: QuoteWriting): string {
  const known = (billed ?? []).filter((one) => one !== null);
  return known.length < 12 ? '' : writing.plain(addQuotients(known));
}

const MONTH_HEADS = [
  'Month',
  'Use',
  'Made',
  'Used at home',
  'Import',
  'Export',
  'Billed',
  'Bank',
  'Bill before',
  'Bill after',
  'Surplus',
];

/** The months of the first year, before and after. */
export function monthTable(quote: Quote, billed: Billed, writing: QuoteWriting): Table {
  const { months, years } = quote;
  const billedAt = billedCells(billed, writing);
  const [first] = years;
  const { units, column } = writing;
  return {
    id: 'quote-months',
    caption: `The first year, month by month; money in ${writing.sign}`,
    heads: MONTH_HEADS,
    lines: months.map((month, at) => [
      `${writing.month(month.period.from, 'long')}${month.isFilled ? ' *' : ''}`,
      units(month.use),
      units(month.generation),
      units(month.selfUse),
      units(month.imported),
      units(month.exported),
      billedAt(at),
      units(month.bank),
      column(month.before),
      column(month.after),
      column(month.surplus),
    ]),
    ...(first === undefined
      ? {}
      : {
          sum: [
            'Year',
            units(first.use),
            units(first.generation),
            units(first.selfUse),
            units(first.imported),
            units(first.exported),
            billedSum(billed, writing),
            '',
            column(first.before),
            column(first.after),
            column(first.surplus),
          ],
        }),
  };
}

/** Every year of the life. */
export function yearTable({ years }: Quote, writing: QuoteWriting): Table {
  const { units, column } = writing;
  const hasLoan = years.some(({ instalments }) => instalments > 0);
  return {
    id: 'quote-years',
    caption: `Year by year; money in ${writing.sign}`,
    heads: [
      'Year',
      'Made',
      'Bills before',
      'Bills after',
      'Surplus',
      'Saving',
      'Upkeep',
      'Net',
      ...(hasLoan ? ['Instalments'] : []),
      'Sum since the start',
    ],
    lines: years.map((year) => [
      String(year.year),
      units(year.generation),
      column(year.before),
      column(year.after),
      column(year.surplus),
      column(year.saving),
      column(year.cost),
      column(year.net),
      ...(hasLoan ? [column(year.instalments)] : []),
      column(year.cumulative),
    ]),
  };
}

function caseLine(name: string, { years, measures, grid }: Quote, all: QuoteWriting): readonly string[] {
  // A case of other rules can be in finer parts of a coin.
  const writing = all.atGrid(grid);
  return [
    name,
    writing.column(years[0]?.saving ?? 0),
    paybackWords(measures.simple, writing),
    paybackWords(measures.discounted, writing),
    writing.column(measures.lifeNet),
    writing.column(measures.netPresentValue),
    returnText(measures.rates, ENGLISH_CASES, writing.percent),
  ];
}

/** What comes of each case, the quote itself first. */
export function caseTable(quote: Quote, cases: readonly CaseResult[], writing: QuoteWriting): Table {
  return {
    id: 'quote-cases',
    caption: `What if; money in ${writing.sign}`,
    heads: [
      'Case',
      'Saving, year 1',
      'Payback',
      'Discounted',
      'Left at the end',
      'Present value',
      'Rate of return',
    ],
    lines: [
      caseLine('As quoted', quote, writing),
      ...cases.map(({ name, quote: own }) =>
        own === null ? [name, 'cannot be billed', '', '', '', '', ''] : caseLine(name, own, writing),
      ),
    ],
  };
}
