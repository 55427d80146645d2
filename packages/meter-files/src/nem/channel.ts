import type { MeteredQuantity, Stream } from '../stream.ts';
import { cellOf, placeOf, shown, type NemRecord, type Report } from './record.ts';
import { MOST_STREAMS_TEXT, type Streams } from './streams.ts';
import { readUnit, type NemUnit } from './unit.ts';

/** What a record 200 says of the days below it. */
export interface Channel {
  readonly stream: Stream;
  /** Of an interval: 5, 15 or 30. */
  readonly minutes: number;
  /** Decimal places by which a kWh is finer than the unit; 0 where it is no active energy. */
  readonly shift: number;
}

const LENGTHS: ReadonlyMap<string, number> = new Map([
  ['5', 5],
  ['15', 15],
  ['30', 30],
]);

/** The cells of a record 200 (their order is from memory; it matches the operator's own sample lines). */
const CELL = { point: 1, suffix: 4, meter: 6, unit: 7, minutes: 8 } as const;

/**
 * What a stream counts, by its suffix. E is energy to the customer and B energy to the grid. From memory: J, K,
 * L and Q are reactive energy, others averages, checks, sums and power, none of which is for a bill of energy.
 */
function quantityOf(suffix: string, unit: NemUnit): MeteredQuantity {
  if (unit.kind !== 'energy') return 'other';
  if (/^e/i.test(suffix)) return 'import';
  return /^b/i.test(suffix) ? 'export' : 'other';
}

function checkStream(record: NemRecord, unit: NemUnit, report: Report): void {
  const suffix = cellOf(record, CELL.suffix);
  const values = { suffix: shown(suffix), unit: shown(cellOf(record, CELL.unit)) };
  if (!/^[a-z][a-z0-9]$/i.test(suffix)) report('nem/suffix', placeOf(record, CELL.suffix), values);
  if (unit.kind === 'unknown') report('nem/unit', placeOf(record, CELL.unit), values);
  if (unit.kind === 'other' && /^[eb]/i.test(suffix))
    report('nem/suffix-unit', placeOf(record, CELL.unit), values);
}

/**
 * Read a record 200. Each suffix is a stream of its own: E1 and E2 of a metering point count apart and add up.
 *
 * @returns null where the days below it cannot be read
 */
export function readChannel(record: NemRecord, streams: Streams<Stream>, report: Report): Channel | null {
  const minutes = LENGTHS.get(cellOf(record, CELL.minutes));
  if (minutes === undefined) {
    const values = { minutes: shown(cellOf(record, CELL.minutes)) };
    report('nem/interval-length', placeOf(record, CELL.minutes), values);
    return null;
  }
  const unit = readUnit(cellOf(record, CELL.unit));
  checkStream(record, unit, report);
  const suffix = cellOf(record, CELL.suffix);
  const quantity = quantityOf(suffix, unit);
  const fields: Stream = {
    point: cellOf(record, CELL.point),
    meter: cellOf(record, CELL.meter),
    register: suffix,
    quantity,
    rate: null,
    unit: cellOf(record, CELL.unit),
  };
  const stream = streams.of(fields, '', (own) => own);
  if (stream === null)
    report('nem/too-many-streams', placeOf(record, CELL.suffix), { most: MOST_STREAMS_TEXT });
  return stream === null ? null : { stream, minutes, shift: quantity === 'other' ? 0 : unit.shift };
}
