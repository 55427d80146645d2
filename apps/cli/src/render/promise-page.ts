import {
  monthAfter,
  parseDay,
  type CausePart,
  type DayNumber,
  type GenerationBand,
  type PromisedPeriod,
  type PromiseCause,
  type PromiseReport,
  type Quote,
  type TariffDocument,
} from '@unitbook/engine';
import { CAUTIONS } from './cautions.ts';
import { dayWords, monthWords, periodWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { quoteWriter, type QuoteWriter } from './quote-writer.ts';
import { renderTable, type Column } from './table.ts';
import { tariffHead } from './tariff-head.ts';
import { PAGE_WIDTH, wrap } from './text.ts';

/** What a page about a promise shows. */
export interface PromisePage {
  readonly quote: Quote;
  readonly report: PromiseReport;
  readonly tariff: TariffDocument;
  /** What the readings are, in words. */
  readonly source: string;
}

const right = (...heading: readonly string[]): Column => ({ heading, side: 'right' });

/** "+1,132.00": what a cause adds, with its sign. */
const signed = (text: string): string => (/^[-−]/.test(text) || /^0(\.0+)?$/.test(text) ? text : `+${text}`);

const CAUSES: Readonly<Record<PromiseCause, string>> = {
  use: 'Use',
  generation: 'Generation',
  'self-use': 'Used at home',
  tariff: 'Charges of the tariff',
  scheme: 'Rules of the settlement',
};

/** What a cause is counted in, where it is units. */
const UNITS: Partial<Record<PromiseCause, 'use' | 'generation' | 'selfUse'>> = {
  use: 'use',
  generation: 'generation',
  'self-use': 'selfUse',
};

function causeRow(
  { cause, bill, saving }: CausePart,
  { promised, actual }: PromiseReport,
  { units, money }: QuoteWriter,
): readonly string[] {
  const key = UNITS[cause];
  const counted =
    key === undefined
      ? ['', '', '']
      : [units(promised[key]), units(actual[key]), signed(units(actual[key] - promised[key]))];
  return [CAUSES[cause], ...counted, signed(money(bill)), signed(money(saving))];
}

/** What has to be known of own use: when it was, and what of it is lost. */
function ownUseLines(
  { lost }: PromiseReport,
  { timeBlocks, measures = {} }: TariffDocument,
  { units }: QuoteWriter,
): readonly string[] {
  const hasWindows = Object.values(measures).some(({ window }) => window !== undefined);
  const timed =
    timeBlocks === undefined && !hasWindows
      ? []
      : wrap(
          'What was used at home has in it when units were used: those quoted lie in the day as the profile has them.',
          PAGE_WIDTH,
        );
  if (lost === null) return timed;
  const words =
    `Meters count what a battery loses as used at home: of what was quoted ${units(lost.promised)} units, and of what came ` +
    `about ${units(lost.actual)}, reckoned as in the quote, as no meter tells it. Bills without the plant do not have them.`;
  return [...timed, ...wrap(words, PAGE_WIDTH)];
}

/** The difference split among its causes, and its sum. */
function causeLines(report: PromiseReport, tariff: TariffDocument, writer: QuoteWriter): readonly string[] {
  const { promised, actual, parts } = report;
  const { money } = writer;
  const columns: readonly Column[] = [
    { heading: ['Cause, in this order'], side: 'left' },
    right('Units', 'quoted'),
    right('Units', 'came'),
    right('Differ', 'by'),
    right('On the', 'bills'),
    right('On the', 'saving'),
  ];
  const foot = [
    [
      'Together',
      '',
      '',
      '',
      signed(money(actual.after - promised.after)),
      signed(money(actual.saving - promised.saving)),
    ],
  ];
  const words =
    'Each row is what the bills change when this cause is put to what came, those above it already so. Another order ' +
    'would give other parts; the sum is always the same.';
  return [
    ...renderTable(columns, { body: parts.map((part) => causeRow(part, report, writer)), foot }),
    ...wrap(words, PAGE_WIDTH),
    ...ownUseLines(report, tariff, writer),
  ];
}

function periodLines(periods: readonly PromisedPeriod[], { units, money }: QuoteWriter): readonly string[] {
  const columns: readonly Column[] = [
    { heading: ['Period'], side: 'left' },
    right('Used', 'quoted'),
    right('came'),
    right('Made', 'quoted'),
    right('came'),
    right('Bill', 'quoted'),
    right('came'),
    right('Saved', 'quoted'),
    right('came'),
  ];
  const body = periods.map(({ period, promised, actual }) => [
    periodWords(period),
    ...[promised.use, actual.use, promised.generation, actual.generation].map(units),
    ...[promised.after, actual.after, promised.saving, actual.saving].map(money),
  ]);
  return renderTable(columns, { body });
}

const VERDICTS: Readonly<Record<GenerationBand['verdict'], string>> = {
  within: 'within what weather does to a promise',
  below: 'less than weather explains: look at the plant',
  above: 'more than weather explains: check the readings, and whether modules were added',
};

function generationLines(
  { ratio, low, high, verdict }: GenerationBand,
  { percent }: QuoteWriter,
): readonly string[] {
  return wrap(
    `Generation: ${percent(ratio)} of the quote, ${VERDICTS[verdict]} (${percent(low)} to ${percent(high)} in 8 of 10 cases).`,
    PAGE_WIDTH,
  );
}

/** "4.6 years, in Nov 2029" */
function timeWords(value: number | null, start: DayNumber, { years }: QuoteWriter): string {
  if (value === null) return years(value);
  const { year, month } = monthAfter(start, value);
  return `${years(value)} (${monthWords(month)} ${String(year)})`;
}

/** Whether the promise was kept, in words. */
function answerLines(
  { promised, actual, generation, payback }: PromiseReport,
  start: DayNumber,
  writer: QuoteWriter,
): readonly string[] {
  const { money } = writer;
  const time = (value: number | null): string => timeWords(value, start, writer);
  const difference = actual.saving - promised.saving;
  const kept = difference >= 0 ? 'The promise was kept' : 'Less was saved than promised';
  const how =
    difference === 0 ? 'as quoted' : `${money(Math.abs(difference))} ${difference > 0 ? 'more' : 'less'}`;
  return [
    ...wrap(
      `${kept}: solar saved ${money(actual.saving)}, and the quote said ${money(promised.saving)} (${how}).`,
      PAGE_WIDTH,
    ),
    ...wrap(
      `Bills with the plant came to ${money(actual.after)}, quoted were ${money(promised.after)}; without it they would have been ${money(actual.before)}.`,
      PAGE_WIDTH,
    ),
    ...generationLines(generation, writer),
    ...wrap(
      `Payback: quoted ${time(payback.promised)}; with what came so far ${time(payback.restAsQuoted)}; if all goes on as so far ${time(payback.ifItGoesOn)}.`,
      PAGE_WIDTH,
    ),
  ];
}

/** Whether a promise was kept: the answer first, then why, then period by period. */
export function promisePage(
  { quote, report, tariff, source }: PromisePage,
  notation: PageNotation,
): readonly string[] {
  const writer = quoteWriter({ ...quote, grid: report.grid }, notation);
  const { offer, plant } = quote.input.document;
  const entries: readonly (readonly [string, string])[] = [
    ['Quote', `of ${dayWords(parseDay(offer.date) ?? quote.input.start)}`],
    ['Plant', `${writer.number(plant.kWp)} kWp`],
    ['Readings', source],
  ];
  return [
    ...tariffHead(tariff, 'A promise and what came', entries),
    '',
    'THE ANSWER',
    ...answerLines(report, quote.input.start, writer),
    '',
    'WHY IT DIFFERS',
    ...causeLines(report, tariff, writer),
    '',
    'PERIOD BY PERIOD',
    ...periodLines(report.periods, writer),
    ...wrap('Bills are those with the plant, before surplus they pay out.', PAGE_WIDTH),
    '',
    CAUTIONS,
  ];
}
