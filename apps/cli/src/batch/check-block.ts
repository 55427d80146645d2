import {
  batchChecker,
  columnNames,
  dayText,
  type BatchChecker,
  type CheckedBill,
  type CheckOptions,
  type DayNumber,
  type Finding,
  type Tariff,
} from '@unitbook/engine';
import { orderOfBlock } from './account-order.ts';
import { billLine, rightLine, unreadLine } from './finding-record.ts';
import { readLayout, type Layout } from './layout.ts';
import { RowScanner } from './scan-rows.ts';
import { Tallying, type Tally } from './tally.ts';

/** What blocks are checked with. */
export interface BlockTerms {
  readonly tariff: Tariff;
  readonly otherTariffs: readonly Tariff[];
  /** What all accounts have in common. */
  readonly account: { readonly since?: string; readonly settlementDay?: string };
  readonly options: CheckOptions;
  /** Whether bills that are right get a line, too. */
  readonly isEvery: boolean;
  readonly header: readonly string[];
}

/** A block of whole rows, whole accounts. */
export interface Block {
  readonly bytes: Uint8Array;
  readonly from: number;
  readonly to: number;
  /** Line of the table on which it begins, from 1. */
  readonly line: number;
}

/** Rows that were made of something else: how they stood there, and what was wrong with them already, by line. */
export interface MadeRows {
  readonly findings: ReadonlyMap<number, Finding>;
  readonly raw: (line: number) => Uint8Array;
}

/** What a block came to. */
export interface CheckedBlock {
  /** Lines of findings. */
  readonly findings: string;
  /** Rows that cannot be used, as they stand. */
  readonly side: Uint8Array;
  readonly tally: Tally;
}

const NOTHING = new Uint8Array(0);

/** Checks blocks of rows, one after the other. */
export class BlockChecker {
  private readonly scanner: RowScanner;
  private readonly checker: BatchChecker;
  private readonly isEvery: boolean;

  /** @throws RangeError for a header that {@link readLayout} finds something about */
  constructor(terms: BlockTerms) {
    const { value } = readLayout(terms.header, columnNames(terms.tariff));
    if (value === null) throw new RangeError(`a header that cannot be used: ${terms.header.join(', ')}`);
    const layout: Layout = value;
    this.scanner = new RowScanner(layout);
    this.isEvery = terms.isEvery;
    const { tariff, otherTariffs, account, options } = terms;
    this.checker = batchChecker({ tariff, otherTariffs, names: layout.names, account, options });
  }

  /** Check a block. */
  check(block: Block, made: MadeRows | null = null): CheckedBlock {
    const { scanner } = this;
    scanner.scan(block.bytes, block.from, block.to);
    const telling = new Telling(block, scanner, { isEvery: this.isEvery, made });
    const right = this.checker.check(scanner.table, (row, checked) => {
      telling.bill(row, checked);
    });
    const { findings, tally } = telling.end(right);
    tally.order = orderOfBlock(scanner, block.bytes);
    return { findings, tally, side: this.side(block, made) };
  }

  private side({ bytes }: Block, made: MadeRows | null): Uint8Array {
    const { unread } = this.scanner;
    if (unread.length === 0) return NOTHING;
    return Buffer.concat(unread.map(({ from, to, line }) => made?.raw(line) ?? bytes.subarray(from, to)));
  }
}

/** Tells of a block, row by row, in the order of its rows. */
class Telling {
  private readonly counted = new Tallying();
  private readonly parts: string[] = [];
  private readonly block: Block;
  private readonly scanner: RowScanner;
  private readonly terms: { readonly isEvery: boolean; readonly made: MadeRows | null };
  /** Rows that were told of, and rows that cannot be used. */
  private row = 0;
  private unread = 0;

  constructor(block: Block, scanner: RowScanner, terms: Telling['terms']) {
    this.block = block;
    this.scanner = scanner;
    this.terms = terms;
  }

  /** Rows up to one that was looked at: those that cannot be used, and those that are right. */
  private upTo(end: number): void {
    const { scanner, counted } = this;
    const { begins } = scanner.table;
    for (; this.row < end; this.row += 1) {
      if (this.unread < scanner.unread.length) this.unreadUpTo(this.row);
      if (begins[this.row] === 1) counted.begin();
      if (this.terms.isEvery) this.parts.push(this.rightLine(this.row));
    }
  }

  private unreadUpTo(row: number): void {
    const { scanner, block, terms } = this;
    for (; (scanner.unread[this.unread]?.after ?? Infinity) <= row; this.unread += 1) {
      const own = scanner.unread[this.unread] as (typeof scanner.unread)[number];
      const finding = terms.made?.findings.get(own.line) ?? own.finding;
      this.counted.unreadable(finding.code);
      this.parts.push(unreadLine(block.line + own.line, finding));
    }
  }

  /** A bill that was looked at. */
  bill(row: number, checked: CheckedBill): void {
    const { scanner, counted } = this;
    this.upTo(row);
    this.unreadUpTo(row);
    if (scanner.table.begins[row] === 1) counted.begin();
    counted.bill(checked);
    if (checked.verdict !== 'right')
      this.parts.push(billLine({ account: scanner.accountText(row), checked }));
    else if (this.terms.isEvery) this.parts.push(this.rightLine(row));
    this.row = row + 1;
  }

  /** Everything behind the last bill that was looked at. */
  end(right: number): Pick<CheckedBlock, 'findings' | 'tally'> {
    this.upTo(this.scanner.table.count);
    this.unreadUpTo(this.scanner.table.count);
    this.counted.right(right);
    return { findings: this.parts.join(''), tally: this.counted.tally };
  }

  private rightLine(row: number): string {
    const { table } = this.scanner;
    const [from, to] = [table.from[row] as DayNumber, table.to[row] as DayNumber];
    return rightLine(this.scanner.accountText(row), dayText(from), dayText(to));
  }
}
