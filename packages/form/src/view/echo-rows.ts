import {
  readingText,
  readRegisterText,
  readTypedDay,
  rowText,
  spanBefore,
  spanOn,
  type DayNumber,
  type Finding,
  type MeterSpan,
  type ReadingRow,
  type Register,
  type RegisterId,
} from '@unitbook/engine';
import { isEvent } from '../household/household.ts';
import { metersOf } from '../household/later-meters.ts';
import { registerPath } from '../household/registers.ts';

/** A register that a row is typed for. */
export interface RowRegister {
  readonly register: Register;
  /** Whether it can be left out: the total, where rates are read. */
  readonly isOptional: boolean;
}

/** Texts as read, by the key of the register. */
type ReadTexts = Readonly<Record<RegisterId, string | null>> &
  Readonly<Record<string, string | null | undefined>>;

/** A row as it is read by itself. */
export interface Echo {
  readonly day: DayNumber | null;
  readonly registers: readonly RowRegister[];
  /** Plain decimal texts; null where nothing could be read. */
  readonly read: ReadTexts;
  /** The same in thousandths. */
  readonly shown: Readonly<Record<string, number>>;
  readonly findings: readonly Finding[];
}

/** The registers of all meters: rates before the total that they make. */
function allOf({ counted, totals }: MeterSpan): readonly RowRegister[] {
  return [totals.import, totals.export, totals.generation].flatMap((total) => {
    if (total === null) return [];
    const own = counted
      .filter(({ id }) => id === total.id)
      .map((register) => ({ register, isOptional: false }));
    const isByRates = own.some(({ register }) => register.rate !== null);
    return isByRates ? [...own, { register: total, isOptional: true }] : own;
  });
}

/** What rows are read with, one after the other. */
class Reader {
  private readonly spans: readonly MeterSpan[];
  private readonly all = new Map<MeterSpan, readonly RowRegister[]>();
  private readonly before: Record<string, number | undefined> = {};
  private last: DayNumber | null = null;

  constructor(spans: readonly MeterSpan[]) {
    this.spans = spans;
  }

  /** The registers that a row is read by: those of the meters of its day, and in an event of one meter only. */
  private registersOf(row: ReadingRow, day: DayNumber | null): readonly RowRegister[] {
    const [first] = this.spans;
    if (first === undefined) return [];
    const on = row.event === 'final' ? spanBefore : spanOn;
    const span = day === null ? first : on(this.spans, day);
    const all = this.all.get(span) ?? allOf(span);
    this.all.set(span, all);
    if (!isEvent(row)) return all;
    const meters = metersOf(row);
    return all.filter(
      ({ register, isOptional }) =>
        !isOptional && meters.includes(register.id === 'generation' ? 'generation' : 'grid'),
    );
  }

  echo(row: ReadingRow, index: number): Echo {
    const day = readTypedDay(row.date)?.day ?? null;
    this.last = day ?? this.last;
    const registers = this.registersOf(row, this.last);
    const read: Record<string, string | null> = { import: null, export: null, generation: null };
    const shown: Record<string, number> = {};
    const findings: Finding[] = [];
    for (const { register, isOptional } of registers) {
      const { key } = register;
      const text = rowText(row, key);
      if (isOptional && text.trim() === '') continue;
      // Another meter begins anywhere: what the one before showed says nothing of a comma.
      const before = row.event === 'first' ? null : (this.before[key] ?? null);
      const path = ['readings', index, ...registerPath(register)];
      const { value, findings: own } = readRegisterText(text, { register, before, path });
      findings.push(...own);
      if (value === null) continue;
      read[key] = readingText(value);
      shown[key] = value;
      this.before[key] = value;
    }
    return { day, registers, read: read as ReadTexts, shown, findings };
  }
}

/** Each row as it is read by itself, in order, since the reading before decides on unclear commas. */
export function echoRows(rows: readonly ReadingRow[], spans: readonly MeterSpan[]): readonly Echo[] {
  const reader = new Reader(spans);
  return rows.map((row, index) => reader.echo(row, index));
}
