import {
  keepBook,
  parseDay,
  readingText,
  readReadings,
  readRegisterText,
  readTypedDay,
  type Book,
  type BookMonth,
  type DayNumber,
  type Finding,
  type Outcome,
  type PreparedTariff,
  type ReadingRow,
  type RegisterId,
} from '@unitbook/engine';
import { BLANK_ROW, isBlankRow, type Household } from '../household/household.ts';
import { writingFor, type Writing } from '../writing/writing.ts';
import { registersTyped, viewAccount, type AccountView } from './account-view.ts';
import { whileTyping } from './still-typing.ts';

/** One reading as the page shows it: what was typed, how it was read and what is to be said of it. */
export interface RowView {
  readonly index: number;
  readonly row: ReadingRow;
  readonly isBlank: boolean;
  readonly day: DayNumber | null;
  /** Plain decimal texts as read; null where nothing could be read. */
  readonly read: Readonly<Record<RegisterId, string | null>>;
  readonly findings: readonly Finding[];
  /** The period that this reading closes; null for the first and where it cannot be billed. */
  readonly month: BookMonth | null;
}

/** Everything the page shows of a household. */
export interface BookView {
  readonly writing: Writing;
  readonly account: AccountView;
  readonly rows: readonly RowView[];
  readonly book: Book | null;
  /** Findings about no row. */
  readonly findings: readonly Finding[];
  /** The first reading that closes no period although it should: it and all later ones wait. */
  readonly blocked: RowView | null;
}

/** What a view is made of. */
export interface ViewInput {
  readonly household: Household;
  /** null while no tariff is open. */
  readonly tariff: PreparedTariff | null;
  /** ISO date, or '' where the page does not know it. */
  readonly today: string;
  /** The id of the input that is being typed in. */
  readonly typing?: string;
}

type Echo = Pick<RowView, 'day' | 'read'> & { readonly findings: readonly Finding[] };

/** Each row as it is read by itself, in order, since the reading before decides on unclear commas. */
function echoRows({ account, readings }: Household): readonly Echo[] {
  const registers = registersTyped(account);
  const before: Partial<Record<RegisterId, number>> = {};
  return readings.map((row, index) => {
    const read: Record<RegisterId, string | null> = { import: null, export: null, generation: null };
    const findings: Finding[] = [];
    for (const register of registers) {
      const path = ['readings', index, register.id];
      const context = { register, before: before[register.id] ?? null, path };
      const text = readRegisterText(row[register.id] ?? '', context);
      if (text.value !== null) {
        read[register.id] = readingText(text.value);
        before[register.id] = text.value;
      }
      findings.push(...text.findings);
    }
    return { day: readTypedDay(row.date)?.day ?? null, read, findings };
  });
}

/** Readings as the engine takes them: without blank rows, and without a register the account has not. */
function typedRows(household: Household): { rows: ReadingRow[]; places: number[] } {
  const places: number[] = [];
  const rows: ReadingRow[] = [];
  const hasGeneration = household.account.meters.generation !== undefined;
  household.readings.forEach((row, index) => {
    if (isBlankRow(row)) return;
    places.push(index);
    rows.push(hasGeneration ? row : { ...row, generation: '' });
  });
  return { rows, places };
}

interface Kept {
  readonly book: Book | null;
  readonly findings: readonly Finding[];
}

function keep({ tariff, today }: ViewInput, { account }: AccountView, rows: readonly ReadingRow[]): Kept {
  if (account === null) return { book: null, findings: [] };
  const day = parseDay(today);
  const options = day === null ? {} : { today: day };
  if (tariff === null) return { book: null, findings: readReadings(rows, account, options).findings };
  const kept: Outcome<Book> = keepBook({ account, tariff, readings: rows }, options);
  return { book: kept.value, findings: kept.findings };
}

/** A finding of the engine at the place of the row on the page. */
function placed(finding: Finding, places: readonly number[]): Finding {
  const [list, index, ...rest] = finding.path;
  if (list !== 'readings' || typeof index !== 'number') return finding;
  return { ...finding, path: [list, places[index] ?? index, ...rest] };
}

const isAbout = (finding: Finding, index: number): boolean =>
  finding.path[0] === 'readings' && finding.path[1] === index;

/**
 * Work out everything the page shows, from what was typed.
 *
 * @param input  the household, its tariff and the day it is
 */
export function viewBook(input: ViewInput): BookView {
  const household = withTwoRows(input.household);
  const soft = (finding: Finding): Finding => whileTyping(finding, input.typing);
  const { findings, ...rest } = viewAccount(household);
  const account: AccountView = { ...rest, findings: findings.map(soft) };
  const echoes = echoRows(household);
  const { rows: typed, places } = typedRows(household);
  const kept = keep(input, account, typed);
  const found = kept.findings.map((finding) => soft(placed(finding, places)));
  const months = kept.book?.months ?? [];
  const rows = household.readings.map((row, index): RowView => {
    const echo = echoes[index] ?? {
      day: null,
      read: { import: null, export: null, generation: null },
      findings: [],
    };
    const isBlank = isBlankRow(row);
    const own =
      account.account === null ? echo.findings.map(soft) : found.filter((finding) => isAbout(finding, index));
    const at = places.indexOf(index);
    const month = at > 0 ? (months[at - 1] ?? null) : null;
    return { index, row, isBlank, day: echo.day, read: echo.read, findings: isBlank ? [] : own, month };
  });
  const currency = input.tariff?.tariff.document.currency ?? 'INR';
  return {
    writing: writingFor(household.account.locale, currency),
    account,
    rows,
    book: kept.book,
    findings: found.filter((finding) => finding.path[0] !== 'readings' || finding.path.length === 1),
    blocked: kept.book === null ? null : (rows[places[months.length + 1] ?? -1] ?? null),
  };
}

/** A book shows at least an opening and a closing reading, typed or not. */
function withTwoRows(household: Household): Household {
  const missing = Math.max(0, 2 - household.readings.length);
  if (missing === 0) return household;
  return { ...household, readings: [...household.readings, ...Array<ReadingRow>(missing).fill(BLANK_ROW)] };
}
