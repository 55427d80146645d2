import type { DayNumber } from '@unitbook/engine';
import { espiReader } from '../espi/index.ts';
import { nem12Reader, nem13Reader } from '../nem/index.ts';
import { registerListReader, telegramReader } from '../obis/index.ts';
import type { MeterReader, MeterSink } from '../stream.ts';
import { tableReader, type TableLayout } from '../table/index.ts';
import type { MeterFileKind } from './kind.ts';

/** A kind of file that is read piece by piece. */
export type StreamedKind = Exclude<MeterFileKind, 'own-register-list'>;

/** What a reader has to be told besides the file. */
export interface OpenOptions {
  /** The day of readings in a file that does not give one. */
  readonly day?: DayNumber;
  /** What the columns of a table are. */
  readonly layout?: TableLayout;
}

/**
 * Make the reader of a kind of file.
 *
 * @param kind     as `meterFileKind` tells it
 * @param sink     where it puts what it reads
 * @param options  the day of a list without days; the layout of a table
 * @throws RangeError  for a table without a layout, or one that is not confirmed
 */
export function openMeterFile(kind: StreamedKind, sink: MeterSink, options: OpenOptions = {}): MeterReader {
  const { day, layout } = options;
  const onDay = day === undefined ? {} : { day };
  switch (kind) {
    case 'nem12':
      return nem12Reader(sink);
    case 'nem13':
      return nem13Reader(sink);
    case 'espi':
      return espiReader(sink);
    case 'telegram':
      return telegramReader(sink, onDay);
    case 'register-list':
      return registerListReader(sink, onDay);
    case 'table':
      if (layout === undefined) throw new RangeError('a table needs a layout');
      return tableReader(layout, sink);
  }
}
