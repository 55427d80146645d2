import {
  countOfRates,
  printedSizes,
  savingOfAddedUnits,
  wholeToDecimal,
  type CaseResult,
  type Quote,
  type SizePoint,
  type Sizes,
} from '@unitbook/engine';
import { crossed, crossedAt, markMeans } from './quote-crossed.ts';
import { quoteWriter, type QuoteWriter } from './quote-writer.ts';
import { renderTable, type Column } from './table.ts';
import { PAGE_WIDTH, plainText, wrap } from './text.ts';

const NAME_WIDTH = 20;

const right = (...heading: readonly string[]): Column => ({ heading, side: 'right' });

function rateText({ measures }: Quote, { percent }: QuoteWriter): string {
  const count = countOfRates(measures.rates);
  return count === 'one' ? measures.rates.rates.map(percent).join('') : count;
}

function caseCells(quote: Quote | null, all: QuoteWriter): readonly string[] {
  if (quote === null) return ['NOT BILLED', '', '', '', '', ''];
  const { measures, years } = quote;
  // A case of other rules can be in finer parts of a coin.
  const writer = quoteWriter(quote, all.notation);
  return [
    writer.money(years[0]?.saving ?? 0),
    crossed(measures.simple, writer),
    crossed(measures.discounted, writer),
    writer.money(measures.lifeNet),
    writer.money(measures.netPresentValue),
    rateText(quote, writer),
  ];
}

/** The rows of a name and its cells: a name on several lines has the cells behind its last. */
function namedRows(name: string, cells: readonly string[]): readonly (readonly string[])[] {
  const lines = wrap(plainText(name), NAME_WIDTH);
  return lines.map((line, at) => [at === 0 ? line : `  ${line}`, ...(at === lines.length - 1 ? cells : [])]);
}

/** The quote and its cases, side by side. */
export function quoteCases(
  quote: Quote,
  cases: readonly CaseResult[],
  writer: QuoteWriter,
): readonly string[] {
  const columns: readonly Column[] = [
    { heading: ['What if'], side: 'left' },
    right('Saving', 'year 1'),
    right('Pay-', 'back'),
    right('Dis-', 'counted'),
    right('Net of', 'the life'),
    right('Value', 'now'),
    right('Return'),
  ];
  const body = [
    ...namedRows('As quoted', caseCells(quote, writer)),
    ...cases.flatMap((one) => namedRows(one.name, caseCells(one.quote, writer))),
  ];
  const hasPolicy = (quote.input.document.policies ?? []).length > 0;
  const words =
    `Each case bills the whole life anew. Paybacks in years; "never": not within the life.${markMeans(body)} ` +
    `"All bad together": rates do not rise, 10 % less is made${hasPolicy ? ', and the first of the other rules comes' : ''}.`;
  return [...renderTable(columns, { body }), ...wrap(words, PAGE_WIDTH)];
}

function sizeNote({ watts }: SizePoint, quoted: number, mark: SizePoint | null): string {
  const notes = [
    ...(watts === quoted ? ['as quoted'] : []),
    ...(mark !== null && watts >= mark.watts ? ['only surplus'] : []),
  ];
  return notes.join(', ');
}

function markWords({ onlySurplusFrom: mark }: Sizes, kWp: (watts: number) => string): string {
  return mark === null
    ? 'Each of these sizes still lowers the bills of the first year further than the one before.'
    : `A plant of ${kWp(mark.watts)} kWp lowers the bills no further than the size before it: ` +
        'from there on each unit more earns only what surplus is paid.';
}

/** Plants of other sizes, and what their added units earn. */
export function quoteSizeRows(quote: Quote, sizes: Sizes, writer: QuoteWriter): readonly string[] {
  const { points, onlySurplusFrom } = sizes;
  const kWp = (watts: number): string => writer.number(wholeToDecimal(watts, 3).replace(/\.?0+$/, ''));
  const columns: readonly Column[] = [
    right('kWp'),
    right('Made'),
    right('Saving', 'year 1'),
    right('Added', 'unit'),
    right('Net', 'price'),
    right('Pay-', 'back'),
    right('Value', 'now'),
    { heading: [''], side: 'left' },
  ];
  const shown = printedSizes(points, quote.input.watts);
  const body = shown.map((point, at) => {
    const added = savingOfAddedUnits(shown, at, quote.grid);
    return [
      kWp(point.watts),
      writer.units(point.generation),
      writer.money(point.saving),
      added === null ? '–' : writer.quotient(added),
      writer.money(point.netPrice),
      crossedAt(point, writer),
      writer.money(point.netPresentValue),
      sizeNote(point, quote.input.watts, onlySurplusFrom),
    ];
  });
  const words =
    `Added unit: what each unit saves that a size makes more than the one above it. ${markWords(sizes, kWp)} ` +
    'Generation, price and upkeep go by size; items with a fixed price stay, and so does a subsidy of one amount, up to the price. ' +
    `Every fourth of ${String(points.length)} sizes is shown: --csv sizes has them all.${markMeans(body)}`;
  return [...renderTable(columns, { body }), ...wrap(words, PAGE_WIDTH)];
}
