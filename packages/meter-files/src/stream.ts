import type { DayNumber, Finding } from '@unitbook/engine';

/** What a register or a channel of a meter counts. `net` is import less export, `other` no active energy. */
export const METERED_QUANTITIES = ['import', 'export', 'generation', 'net', 'other'] as const;

/** What a register or a channel of a meter counts. */
export type MeteredQuantity = (typeof METERED_QUANTITIES)[number];

/** How a value came about. The place in this list stands for it in columns of bytes. */
export const VALUE_QUALITIES = ['actual', 'estimated', 'substituted', 'edited', 'missing'] as const;

/** How a value came about. */
export type ValueQuality = (typeof VALUE_QUALITIES)[number];

/** One register or channel of a meter, as a file names it. One object stands for it in the whole file. */
export interface Stream {
  /** The metering point: what the file calls the connection; '' where it does not say. */
  readonly point: string;
  /** The serial number of the meter; '' where the file does not say. */
  readonly meter: string;
  /** The register or channel in the words of the file: "E1", "1-0:1.8.1", "import_kwh". */
  readonly register: string;
  readonly quantity: MeteredQuantity;
  /** Which rate a register of several counts, as the file numbers it; null for the total. */
  readonly rate: string | null;
  /** The unit in the file. Values are handed on in kWh; of another quantity (reactive energy) as they are. */
  readonly unit: string;
}

/** Intervals of one stream that follow each other without a gap. */
export interface IntervalChunk {
  readonly stream: Stream;
  /** The minute at which the first begins, since 1970-01-01 00:00 on the clock of the file (see `FileClock`). */
  readonly start: number;
  /** How long each is. */
  readonly minutes: number;
  /** Decimal places of a kWh: a value of 12345 with 3 places is 12.345 kWh. */
  readonly places: number;
  /** Whole numbers of 10^-places kWh; NaN where the file has no value. The reader may use the array again. */
  readonly values: Float64Array;
  /** Indexes into VALUE_QUALITIES, one for each value; null where all are actual. May be used again, too. */
  readonly qualities: Uint8Array | null;
  /** The line of the file on which the first value stands, from 1. */
  readonly line: number;
}

/** One reading of a register. */
export interface RegisterValue {
  readonly stream: Stream;
  /** The local day on which it was read. */
  readonly day: DayNumber;
  /** The minute of that day; null where the file gives the day alone. */
  readonly minute: number | null;
  /** What the register showed, as decimal text in kWh, digits kept as they stand in the file. */
  readonly value: string;
  readonly quality: ValueQuality;
  readonly line: number;
}

/** The clock by which a file gives the time: UTC, or UTC and a fixed number of minutes, or none that it names. */
export interface FileClock {
  /** Minutes east of UTC of the minutes in chunks; null where the file does not say (they are local). */
  readonly offset: number | null;
}

/** Where a reader puts what it reads, as it reads. */
export interface MeterSink {
  readonly intervals: (chunk: IntervalChunk) => void;
  readonly register: (value: RegisterValue) => void;
  readonly finding: (finding: Finding) => void;
}

/** Reads a meter file piece by piece; what it holds at any time does not grow with the file. */
export interface MeterReader {
  /** The clock of the chunks, once the first is handed on. */
  readonly clock: FileClock;
  /** Read on. A piece can end anywhere, in the middle of a number or of a line end. */
  readonly write: (text: string) => void;
  /** The file has ended. */
  readonly end: () => void;
}
