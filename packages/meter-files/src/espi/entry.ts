import type { Blocks } from './blocks.ts';
import type { Header } from './directory.ts';
import type { Position } from './elements.ts';
import type { Fields } from './fields.ts';
import type { ReadingType } from './reading-type.ts';

/** The namespace of Atom, in which a feed has its entries and links. */
export const ATOM = 'http://www.w3.org/2005/Atom';
/** The namespace of ESPI, in which the content of entries is. */
export const ESPI = 'http://naesb.org/espi';

/** What entries describe. It is told when an entry has ended, for its links may come last. */
export interface EntryEvents {
  readonly usagePoint: (header: Header) => void;
  readonly meterReading: (header: Header) => void;
  readonly readingType: (header: Header, type: ReadingType) => void;
  readonly localTime: (at: Position, fields: Fields) => void;
  readonly blocks: Blocks;
}

/** An Atom entry as far as it has been read. */
export interface Entry {
  readonly at: Position;
  id: string;
  title: string;
  readonly links: { self: string; up: string; readonly related: string[] };
  hasUsagePoint: boolean;
  hasMeterReading: boolean;
  type: ReadingType | null;
}
