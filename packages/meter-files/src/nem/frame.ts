import type { MeterReader, MeterSink } from '../stream.ts';
import { lineSplitter } from './lines.ts';
import { cellOf, cutLine, reporter, shown, type NemRecord, type Report } from './record.ts';

/** Market time: UTC and 10 hours, all year. */
const MARKET_OFFSET = 600;

/** What one of the two formats does with its records. */
export interface NemFormat {
  readonly version: 'NEM12' | 'NEM13';
  /** By what stands at the beginning of the record; '100' and '900' are told of the header and the end. */
  readonly records: Readonly<Record<string, (record: NemRecord) => void>>;
  /** The file has ended. */
  readonly end: () => void;
}

/** What both formats have in common: the header, the end, and the order of the two. */
function frameReader(format: NemFormat, report: Report) {
  const { version, records } = format;
  const known = new Map(Object.entries(records));
  let hasBegun = false;
  let hasHeader = false;
  let hasEnded = false;
  let isToldAfterEnd = false;
  let last = 1;

  const header = (record: NemRecord): void => {
    if (hasHeader) report('nem/second-header', { line: record.line, column: 1 });
    hasHeader = true;
    const found = cellOf(record, 1);
    if (found.toUpperCase() === version) return;
    // The version stands behind "100,"; the cell may not be there.
    const column = record.cells.length > 1 ? record.text.indexOf(',') + 2 : 1;
    report('nem/version', { line: record.line, column }, { found: shown(found), version });
  };

  const order = (record: NemRecord, indicator: string): void => {
    const place = { line: record.line, column: 1 };
    const values = { indicator: shown(indicator), version };
    if (!hasBegun && indicator !== '100') report('nem/no-header', place, values);
    if (hasEnded && !isToldAfterEnd) {
      isToldAfterEnd = true;
      report('nem/after-end', place, values);
    }
    hasBegun = true;
    last = record.line;
  };

  const read = (record: NemRecord): void => {
    const indicator = cellOf(record, 0);
    order(record, indicator);
    if (indicator === '100') header(record);
    if (indicator === '900') hasEnded = true;
    const take = known.get(indicator);
    if (take !== undefined) take(record);
    else {
      const values = { indicator: shown(indicator), version, known: [...known.keys()].join(', ') };
      report('nem/unknown-record', { line: record.line, column: 1 }, values);
    }
  };

  const end = (): void => {
    format.end();
    if (!hasBegun) report('nem/empty', { line: 1, column: 1 }, { version });
    else if (!hasEnded) report('nem/no-end', { line: last, column: 1 });
  };
  return { read, end };
}

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');

/**
 * A reader of one of the two formats: cuts pieces into lines and lines into records, and hands each on.
 *
 * Blank lines are left out, and so are lines of nothing but commas, which spreadsheets write.
 */
export function nemReader(sink: MeterSink, format: NemFormat): MeterReader {
  const report = reporter(sink.finding);
  const frame = frameReader(format, report);
  const lines = lineSplitter({
    tooLong: (line) => {
      report('nem/line-too-long', { line, column: 1 });
    },
    line: (text, line) => {
      if (text === '') return;
      const cells = cutLine(text);
      if (cells === null) report('nem/quotation-mark', { line, column: text.indexOf('"') + 1 });
      else if (!isBlank(cells)) frame.read({ line, text, cells });
    },
  });
  const end = (): void => {
    lines.end();
    frame.end();
  };
  return { clock: { offset: MARKET_OFFSET }, write: lines.write, end };
}
