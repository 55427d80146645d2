import {
  keepBook,
  parseDay,
  readReadings,
  type Book,
  type BookMonth,
  type Finding,
  type Outcome,
  type PreparedTariff,
  type ReadingRow,
} from '@unitbook/engine';
import { BLANK_ROW, isBlankRow, isEvent, type Household } from '../household/household.ts';
import { metersOf } from '../household/later-meters.ts';
import { writingFor, type Writing } from '../writing/writing.ts';
import { viewAccount, type AccountView } from './account-view.ts';
import { echoRows, type Echo } from './echo-rows.ts';
import { whileTyping } from './still-typing.ts';
import { isTooEarly, withoutEchoes } from './unfinished.ts';

/** One reading as the page shows it: what was typed, how it was read and what is to be said of it. */
export interface RowView extends Echo {
  readonly index: number;
  readonly row: ReadingRow;
  readonly isBlank: boolean;
  /** The period that this reading closes; null for the first and where it cannot be billed. */
  readonly month: BookMonth | null;
}

/** Everything the page shows of a household. */
export interface BookView {
  readonly writing: Writing;
  readonly account: AccountView;
  readonly rows: readonly RowView[];
  readonly book: Book | null;
  /** The readings as the engine took them. */
  readonly typed: TypedRows;
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

/** Readings as the engine takes them, and their places on the page. */
interface TypedRows {
  readonly rows: readonly ReadingRow[];
  readonly places: readonly number[];
}

/** Whether a row tells only of a generation meter that the account has not. */
const isOfNoMeter = (row: ReadingRow): boolean => isEvent(row) && !metersOf(row).includes('grid');

/** Readings without blank rows, and without a register the account has not. */
function typedRows(household: Household): TypedRows {
  const places: number[] = [];
  const rows: ReadingRow[] = [];
  const hasGeneration = household.account.meters.generation !== undefined;
  household.readings.forEach((row, index) => {
    if (isBlankRow(row) || (!hasGeneration && isOfNoMeter(row))) return;
    places.push(index);
    rows.push(hasGeneration || (row.generation ?? '') === '' ? row : { ...row, generation: '' });
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

/** The periods of a book by the row that closes each. */
function monthsByRow(book: Book | null, { rows, places }: TypedRows): ReadonlyMap<number, BookMonth> {
  const usual = places.filter((_, at) => rows[at]?.event === undefined);
  return new Map(
    (book?.months ?? []).flatMap((month, at) => {
      const place = usual[at + 1];
      return place === undefined ? [] : [[place, month]];
    }),
  );
}

/** The row that closes the first period that was not billed. */
function blockedRow(rows: readonly RowView[]): RowView | null {
  const closing = rows.filter(({ row, isBlank }) => !isBlank && !isEvent(row)).slice(1);
  return closing.find(({ month }) => month === null) ?? null;
}

const NO_ECHO: Echo = {
  day: null,
  registers: [],
  read: { import: null, export: null, generation: null },
  shown: {},
  findings: [],
};

/**
 * Work out everything the page shows, from what was typed.
 *
 * @param input  the household, its tariff and the day it is
 */
export function viewBook(input: ViewInput): BookView {
  const household = withClosing(input.household);
  const soft = (finding: Finding): Finding => whileTyping(finding, input.typing);
  const { findings, ...rest } = viewAccount(household);
  const account: AccountView = { ...rest, findings: findings.map(soft) };
  const echoes = echoRows(household.readings, account.spans);
  const typed = typedRows(household);
  const kept = keep(input, account, typed.rows);
  const found = withoutEchoes(
    kept.findings.map((finding) => soft(placed(finding, typed.places))),
    household,
  );
  const months = monthsByRow(kept.book, typed);
  const rows = household.readings.map((row, index): RowView => {
    const echo = echoes[index] ?? NO_ECHO;
    const isBlank = isBlankRow(row);
    const told =
      account.account === null ? echo.findings.map(soft) : found.filter((finding) => isAbout(finding, index));
    const own = told.filter((finding) => !isTooEarly(finding, row));
    return { ...echo, index, row, isBlank, findings: isBlank ? [] : own, month: months.get(index) ?? null };
  });
  return {
    writing: writingFor(household.account.locale, input.tariff?.tariff.document.currency ?? 'INR'),
    account,
    rows,
    book: kept.book,
    typed,
    findings: found.filter((finding) => finding.path[0] !== 'readings' || finding.path.length === 1),
    blocked: kept.book === null ? null : blockedRow(rows),
  };
}

/** A book shows at least an opening and a closing reading, typed or not, and a closing one after every change. */
function withClosing(household: Household): Household {
  const { readings } = household;
  const usual = readings.filter((row) => !isEvent(row)).length;
  const last = readings.at(-1);
  const missing = Math.max(2 - usual, last !== undefined && isEvent(last) ? 1 : 0);
  if (missing <= 0) return household;
  return { ...household, readings: [...readings, ...Array<ReadingRow>(missing).fill(BLANK_ROW)] };
}
