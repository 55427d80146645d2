import {
  durationText,
  minuteText,
  momentText,
  streamText,
  VALUE_QUALITIES,
  type MeterFileSummary,
  type MeteredQuantity,
  type RegisterSummary,
  type Stream,
  type StreamSummary,
} from '@unitbook/meter-files';
import type { CodeCount } from '../message-stream.ts';
import type { PageNotation } from './notation.ts';
import { renderTable, type Column } from './table.ts';
import { atLeft, PAGE_WIDTH, plainText, wrap, wrapIndented } from './text.ts';

const LABEL_WIDTH = 11;

const QUANTITY_WORDS: Readonly<Record<MeteredQuantity, string>> = {
  import: 'import: units taken from the grid',
  export: 'export: units given to the grid',
  generation: 'generation: units the plant made',
  net: 'net energy: import less export',
  other: 'no active energy; no bill of units needs it',
};

/** How a summary writes numbers and minutes. */
export interface SummaryStyle {
  readonly notation: PageNotation;
  /** The minute to show for a minute of the file. */
  readonly toShown: (minute: number) => number;
}

function row(label: string, text: string): readonly string[] {
  const [first = '', ...others] = wrap(plainText(text), PAGE_WIDTH - 2 - LABEL_WIDTH);
  return [
    `  ${atLeft(label, LABEL_WIDTH)}${first}`,
    ...others.map((line) => `${' '.repeat(2 + LABEL_WIDTH)}${line}`),
  ];
}

function countsRow({ quantity, rate, unit }: Stream): readonly string[] {
  const rated = rate === null ? '' : `, rate ${rate}`;
  const [what = '', ...more] = QUANTITY_WORDS[quantity].split(':');
  const inUnit = unit === '' ? 'the file names no unit' : `in ${unit} in the file`;
  return row('Counts', `${what}${rated}${more.length === 0 ? '' : `:${more.join(':')}`}; ${inUnit}`);
}

/** What a total is counted in: units, which are kWh, or as the file has it. */
const unitOf = ({ quantity, unit }: Stream): string => (quantity === 'other' ? unit : 'kWh');

function valueRow({ lengths, qualities }: StreamSummary, { number }: PageNotation): readonly string[] {
  const each = lengths.map(({ minutes, count }) => `${number(String(count))} of ${String(minutes)} min`);
  const kinds = VALUE_QUALITIES.filter((quality) => qualities[quality] > 0).map(
    (quality) => `${number(String(qualities[quality]))} ${quality}`,
  );
  return row('Values', `${each.join(', ')}; ${kinds.join(', ')}`);
}

function gapRow(
  { coverage: { gaps } }: StreamSummary,
  { notation, toShown }: SummaryStyle,
): readonly string[] {
  const [first] = gaps;
  if (first === undefined) return row('Gaps', 'none');
  const longest = gaps.reduce((one, gap) => (gap.to - gap.from > one.to - one.from ? gap : one), first);
  const all = gaps.reduce((sum, { from, to }) => sum + to - from, 0);
  const from = minuteText(toShown(longest.from));
  const count = notation.number(String(gaps.length));
  return row(
    'Gaps',
    gaps.length === 1
      ? `1, of ${durationText(all)} from ${from} on`
      : `${count}, ${durationText(all)} in all; the longest ${durationText(longest.to - longest.from)} from ${from} on`,
  );
}

function streamLines(summary: StreamSummary, style: SummaryStyle): readonly string[] {
  const { stream, total, first, end } = summary;
  const { notation, toShown } = style;
  const span = `${minuteText(toShown(first))} to ${minuteText(toShown(end))}`;
  return [
    ...wrapIndented(plainText(streamText(stream)), '', PAGE_WIDTH, '  '),
    ...countsRow(stream),
    ...valueRow(summary, notation),
    ...row('Total', `${notation.number(total)} ${unitOf(stream)}`),
    ...row('Time', span),
    ...gapRow(summary, style),
  ];
}

function registerLines(summary: RegisterSummary, { notation }: SummaryStyle): readonly string[] {
  const { stream, count, first, last, advance } = summary;
  const unit = unitOf(stream);
  const reading = (one: RegisterSummary['first']): string =>
    `${notation.number(one.value)} ${unit} on ${momentText(one)}${one.quality === 'actual' ? '' : `, ${one.quality}`}`;
  const head = [...wrapIndented(plainText(streamText(stream)), '', PAGE_WIDTH, '  '), ...countsRow(stream)];
  if (count === 1) return [...head, ...row('Reading', reading(first))];
  return [
    ...head,
    ...row('Readings', notation.number(String(count))),
    ...row('First', reading(first)),
    ...row('Last', reading(last)),
    ...row(
      'Advance',
      advance === null
        ? 'not worked out: the last reading is below the first'
        : `${notation.number(advance)} ${unit}`,
    ),
  ];
}

function messageLines(counts: readonly CodeCount[], { number }: PageNotation): readonly string[] {
  if (counts.length === 0) return ['None.'];
  const columns: readonly Column[] = [
    { heading: ['Code'], side: 'left' },
    { heading: ['Kind'], side: 'left' },
    { heading: ['Count'], side: 'right' },
    { heading: ['Lines'], side: 'left' },
  ];
  const lines = ({ first, last }: CodeCount): string => {
    if (first === null || last === null) return '';
    return first === last ? number(String(first)) : `${number(String(first))} to ${number(String(last))}`;
  };
  const body = counts.map((one) => [one.code, one.severity, number(String(one.count)), lines(one)]);
  return renderTable(columns, { body });
}

const section = (title: string, blocks: readonly (readonly string[])[]): readonly string[] =>
  blocks.length === 0
    ? []
    : ['', title, ...blocks.flatMap((block, index) => (index === 0 ? block : ['', ...block]))];

/**
 * What a meter file holds, stream by stream.
 *
 * @param counts  of the messages
 */
export function meterSummary(
  { streams, registers }: MeterFileSummary,
  counts: readonly CodeCount[],
  style: SummaryStyle,
): readonly string[] {
  return [
    ...section(
      'INTERVALS',
      streams.map((one) => streamLines(one, style)),
    ),
    ...section(
      'REGISTERS',
      registers.map((one) => registerLines(one, style)),
    ),
    '',
    'MESSAGES',
    ...messageLines(counts, style.notation),
  ];
}

/** How many values and readings were good. */
export function goodWords({ streams, registers }: MeterFileSummary, { number }: PageNotation): string {
  const values = streams.reduce((sum, { count, qualities }) => sum + count - qualities.missing, 0);
  const readings = registers.reduce((sum, { count }) => sum + count, 0);
  const word = (count: number, one: string, many: string): string =>
    `${number(String(count))} ${count === 1 ? one : many}`;
  const told = [
    values === 0 ? '' : word(values, 'interval value', 'interval values'),
    readings === 0 ? '' : word(readings, 'reading of a register', 'readings of registers'),
  ].filter((text) => text !== '');
  return told.length === 0 ? 'nothing' : told.join(' and ');
}
