import type { BatchRows, PrintedColumn } from '@unitbook/engine';
import type { Layout } from './layout.ts';

/** Rows of a block in columns, used for block after block: it grows to the largest. */
export class RowTable implements BatchRows {
  count = 0;
  from = new Int32Array(0);
  to = new Int32Array(0);
  begins = new Uint8Array(0);
  /** Known columns, then those of what was brought forward. */
  units: Float64Array[] = [];
  known: readonly Float64Array[] = [];
  opening: readonly Float64Array[] = [];
  printed: PrintedColumn[] = [];
  /** Where the account of each row stands in the bytes of the block. */
  accountFrom = new Int32Array(0);
  accountTo = new Int32Array(0);
  private readonly layout: Layout;
  private room = 0;

  constructor(layout: Layout) {
    this.layout = layout;
    this.grow(1024);
  }

  /** Make room for one more row. */
  makeRoom(): void {
    if (this.count >= this.room) this.grow(this.room * 2);
  }

  private grow(room: number): void {
    const { names } = this.layout;
    const wider = <Kind extends Int32Array | Float64Array | Uint8Array>(
      made: Kind,
      before: Kind | undefined,
    ): Kind => {
      if (before !== undefined) made.set(before);
      return made;
    };
    this.from = wider(new Int32Array(room), this.from);
    this.to = wider(new Int32Array(room), this.to);
    this.begins = wider(new Uint8Array(room), this.begins);
    this.accountFrom = wider(new Int32Array(room), this.accountFrom);
    this.accountTo = wider(new Int32Array(room), this.accountTo);
    const count = names.known.length + names.opening.length;
    this.units = Array.from({ length: count }, (_, at) => wider(new Float64Array(room), this.units[at]));
    this.known = this.units.slice(0, names.known.length);
    this.opening = this.units.slice(names.known.length);
    this.printed = names.printed.map((_, at) => ({
      mantissas: wider(new Float64Array(room), this.printed[at]?.mantissas),
      places: wider(new Uint8Array(room), this.printed[at]?.places),
    }));
    this.room = room;
  }
}
