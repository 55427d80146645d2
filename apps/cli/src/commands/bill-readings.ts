import { dayText, parseDay, type Book, type DayNumber, type Notation } from '@unitbook/engine';
import type { PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { keepHousehold, wholeInput, type KeepInput } from '../keep-household.ts';
import { readColumnsFile } from '../read/columns-file.ts';
import { readHouseholdFile, readThreeFiles, type HouseholdInput } from '../read/household.ts';
import { dayWords } from '../render/day-words.ts';
import type { TypedCommand } from './command.ts';
import { typedDay, wantedDays } from './shared-options.ts';

/** A book and what its page says of where it comes from. */
export interface KeptBillsValue {
  readonly book: Book;
  readonly accountSubject: string;
  /** What the bills are made of: a label, and words that write numbers as the page does. */
  readonly source: readonly [label: string, words: (number: Notation['number']) => string];
  /** Whether every period that there is could be billed. */
  readonly isComplete: boolean;
  /** What is missing in a period, in words, by its first day. */
  readonly doubts: ReadonlyMap<DayNumber, string>;
  /** What the book was kept of; null where that were no readings. */
  readonly readings: KeepInput | null;
}

/** Bills, or null where none could be made; with findings. */
export interface KeptBills {
  readonly value: KeptBillsValue | null;
  readonly findings: readonly PlacedFinding[];
}

/** The readings a book was kept from, in words. */
export function readingsWords(book: Book, rows: number, words: string): string {
  const first = book.months[0]?.energy.period.from;
  const last = book.months.at(-1)?.energy.period.to;
  const days = first === undefined || last === undefined ? '' : `, ${dayWords(first)} to ${dayWords(last)}`;
  return `${String(rows)}${days} (${words})`;
}

async function readInput(typed: TypedCommand, io: CommandIo): Promise<HouseholdInput> {
  const path = (name: string): string => typed.values.get(name) ?? '';
  const household = typed.values.get('household');
  if (household !== undefined) return readHouseholdFile(io, household, typed.values.get('tariff'));
  const paths = { tariff: path('tariff'), account: path('account'), readings: path('readings') };
  const columns = await readColumnsFile(io, typed.values.get('columns'));
  if (columns.isBroken) return { ...NOTHING, findings: columns.findings };
  const options = { layout: columns.layout, day: typedDay(typed), on: wantedDays(typed) };
  return readThreeFiles(io, paths, options);
}

const NOTHING: HouseholdInput = {
  tariff: null,
  account: null,
  readings: null,
  plant: null,
  tariffSubject: '',
  accountSubject: '',
  findings: [],
};

function todayOf(typed: TypedCommand, io: CommandIo): DayNumber {
  return parseDay(typed.values.get('today') ?? dayText(io.today)) ?? io.today;
}

/** `unitbook bill`: bills of meter readings. */
export async function billsOfReadings(typed: TypedCommand, io: CommandIo): Promise<KeptBills> {
  const read = await readInput(typed, io);
  const input = wholeInput(read);
  if (input === null) return { value: null, findings: read.findings };
  const { book, findings } = keepHousehold(input, todayOf(typed, io));
  const { rows, words, gaps } = input.readings;
  // Readings of a meter that is changed stand within a period.
  const usual = rows.filter(({ event }) => event === undefined).length;
  return {
    value: {
      book,
      accountSubject: read.accountSubject,
      source: ['Readings', () => readingsWords(book, rows.length, words)],
      isComplete: book.months.length === usual - 1 && gaps.length === 0,
      doubts: new Map(),
      readings: input,
    },
    findings: [...read.findings, ...findings],
  };
}
