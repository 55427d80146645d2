import { wholeToDecimal, type Finding } from '@unitbook/engine';
import {
  streamText,
  tableReader,
  VALUE_QUALITIES,
  type FileClock,
  type IntervalChunk,
  type RegisterValue,
  type Stream,
  type TableLayout,
} from '@unitbook/meter-files';
import type { Writing } from '../writing/writing.ts';
import { plainDecimal } from './exact.ts';
import { intervalMoment, readingMoment } from './moments.ts';
import { streamWords } from './words.ts';

/** The first rows of a table as they would be read. */
export interface Preview {
  /** What each column of values counts. */
  readonly columns: readonly { readonly name: string; readonly words: string }[];
  readonly rows: readonly {
    readonly moment: string;
    /** In the grouping of the reader, with what is to be said of them; '' for none. */
    readonly values: readonly string[];
  }[];
  readonly clock: FileClock;
  /** About the head of the file. */
  readonly findings: readonly Finding[];
}

const MOST_ROWS = 5;
const LAST_LINE = /[^\r\n]*$/;

/** The head of a file without its last line, which may be cut off; a head of few lines is whole. */
function wholeLines(head: string): string {
  const cut = head.replace(LAST_LINE, '');
  return cut === '' ? head : cut;
}

/** Values of streams by moment. */
class Rows {
  readonly streams: Stream[] = [];
  private readonly rows = new Map<
    number,
    { readonly moment: string; readonly values: Map<Stream, string> }
  >();

  /** @param place  tells the order of moments */
  put(stream: Stream, place: number, moment: () => string, value: string): void {
    if (!this.streams.includes(stream)) this.streams.push(stream);
    const row = this.rows.get(place) ?? { moment: moment(), values: new Map<Stream, string>() };
    this.rows.set(place, row);
    row.values.set(stream, value);
  }

  first(count: number): Preview['rows'] {
    const places = [...this.rows.keys()].sort((a, b) => a - b).slice(0, count);
    return places.flatMap((place) => {
      const row = this.rows.get(place);
      if (row === undefined) return [];
      return [{ moment: row.moment, values: this.streams.map((stream) => row.values.get(stream) ?? '') }];
    });
  }
}

const told = (text: string, quality: string): string =>
  quality === 'actual' ? text : text === '' ? quality : `${text}, ${quality}`;

function takeChunk(chunk: IntervalChunk, rows: Rows, writing: Writing): void {
  const { stream, start, minutes, places, values, qualities } = chunk;
  values.forEach((value, at) => {
    const begin = start + at * minutes;
    const moment = (): string => intervalMoment(begin, begin + minutes, writing);
    const text = Number.isNaN(value) ? '' : writing.number(plainDecimal(wholeToDecimal(value, places)));
    rows.put(stream, begin, moment, told(text, VALUE_QUALITIES[qualities?.[at] ?? 0] ?? ''));
  });
}

function takeReading(reading: RegisterValue, rows: Rows, writing: Writing): void {
  const { stream, day, minute, value, quality } = reading;
  const text = quality === 'missing' ? '' : writing.number(plainDecimal(value));
  rows.put(
    stream,
    day * 1440 + (minute ?? 0),
    () => readingMoment(day, minute, writing),
    told(text, quality),
  );
}

/**
 * Read the head of a table by a layout, to show what would come of it.
 *
 * @param layout  sound, and taken for confirmed
 * @param head    the first characters of the file
 */
export function previewOf(layout: TableLayout, head: string, writing: Writing): Preview {
  const rows = new Rows();
  const findings: Finding[] = [];
  const reader = tableReader(layout, {
    intervals: (chunk) => {
      takeChunk(chunk, rows, writing);
    },
    register: (reading) => {
      takeReading(reading, rows, writing);
    },
    finding: (finding) => findings.push(finding),
  });
  reader.write(wholeLines(head));
  reader.end();
  const columns = rows.streams.map((stream) => ({ name: streamText(stream), words: streamWords(stream) }));
  return { columns, rows: rows.first(MOST_ROWS), clock: reader.clock, findings };
}

/** The first lines of a file as they stand there. */
export function firstLines(head: string, count: number): readonly string[] {
  return head.split(/\r\n?|\n/, count);
}
