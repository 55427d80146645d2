import {
  bookDocument,
  dayText,
  describeFinding,
  parseDay,
  type Book,
  type DayNumber,
  type Finding,
} from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import { BILL_HELP } from '../help.ts';
import type { CommandIo } from '../io.ts';
import { keepHousehold, wholeInput } from '../keep-household.ts';
import { householdNotation, localeFindings } from '../locale.ts';
import { readHouseholdFile, readThreeFiles, type HouseholdInput } from '../read/household.ts';
import { billPage } from '../render/bill-page.ts';
import { CAUTIONS } from '../render/cautions.ts';
import { dayWords } from '../render/day-words.ts';
import type { PageNotation } from '../render/notation.ts';
import { pageHead } from '../render/page-head.ts';
import { passbookLines } from '../render/passbook.ts';
import { checkBillOptions } from './bill-options.ts';
import { chooseBills, type NumberedBill } from './choose-bills.ts';
import { finish, type Command, type TypedCommand } from './command.ts';

const SUBJECT = 'unitbook bill';

function readInput(typed: TypedCommand, io: CommandIo): Promise<HouseholdInput> {
  const path = (name: string): string => typed.values.get(name) ?? '';
  const household = typed.values.get('household');
  return household === undefined
    ? readThreeFiles(io, { tariff: path('tariff'), account: path('account'), readings: path('readings') })
    : readHouseholdFile(io, household, typed.values.get('tariff'));
}

/** The readings a book was kept from, in words. */
export function readingsWords(book: Book, rows: number, words: string): string {
  const first = book.months[0]?.energy.period.from;
  const last = book.months.at(-1)?.energy.period.to;
  const days = first === undefined || last === undefined ? '' : `, ${dayWords(first)} to ${dayWords(last)}`;
  return `${String(rows)}${days} (${words})`;
}

interface Page {
  readonly book: Book;
  readonly bills: readonly NumberedBill[];
  readonly isExplained: boolean;
  readonly head: readonly string[];
  /** Whether every two readings in a row made a bill. */
  readonly isComplete: boolean;
}

function countWords(count: number): string {
  return count === 1 ? '1 period is' : `${String(count)} periods are`;
}

function pageText({ book, bills, isExplained, head, isComplete }: Page, notation: PageNotation): string {
  const pages = bills.flatMap(({ month, number }) => {
    const explanation = isExplained ? { notation, month, explained: new Set<string>() } : null;
    return ['', ...billPage(month, number, book, { notation, explanation })];
  });
  const billed = book.months.length;
  const missing = isComplete
    ? []
    : [
        '',
        `NOT COMPLETE: ${billed === 0 ? 'no period is' : `only ${countWords(billed)}`} billed; the messages say why.`,
      ];
  const passbook = passbookLines(book.months, notation);
  const kept = passbook.length === 0 ? [] : ['', ...passbook];
  return [...head, ...pages, ...kept, ...missing, '', CAUTIONS, ''].join('\n');
}

function documentOf(book: Book, findings: readonly PlacedFinding[]): string {
  const own: readonly Finding[] = findings.map(({ finding }) => finding);
  return `${JSON.stringify(bookDocument(book, own), null, 2)}\n`;
}

/** Findings with their amounts grouped as the pages are. */
function inNotation(placed: readonly PlacedFinding[], { number }: PageNotation): readonly PlacedFinding[] {
  return placed.map(({ subject, finding }) => ({
    subject,
    finding: { ...finding, ...describeFinding(finding, number) },
  }));
}

function todayOf(typed: TypedCommand, io: CommandIo): DayNumber {
  return parseDay(typed.values.get('today') ?? dayText(io.today)) ?? io.today;
}

async function runBill(typed: TypedCommand, io: CommandIo): Promise<number> {
  const locale = typed.values.get('locale');
  const problems = [...about(SUBJECT, checkBillOptions(typed)), ...localeFindings(locale, SUBJECT)];
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  const read = await readInput(typed, io);
  const input = wholeInput(read);
  if (input === null) return finish(io, { ran: false, findings: read.findings });
  const kept = keepHousehold(input, todayOf(typed, io));
  const { book } = kept;
  const { notation, findings: ofLocale } = householdNotation(locale, book, read.accountSubject);
  const findings = [...read.findings, ...ofLocale, ...kept.findings];
  const bills = chooseBills(book.months, typed.values.get('month'));
  if (bills.findings.length > 0)
    return finish(io, { ran: false, findings: [...findings, ...about(SUBJECT, bills.findings)] });
  const { readings } = input;
  const rows = readings.rows.length;
  const page: Page = {
    book,
    bills: bills.value,
    isExplained: typed.switches.has('explain'),
    head: pageHead(book, readingsWords(book, rows, readings.words), notation),
    isComplete: book.months.length === rows - 1 && readings.gaps.length === 0,
  };
  io.out(typed.switches.has('json') ? documentOf(book, findings) : pageText(page, notation));
  return finish(io, { ran: true, findings: inNotation(findings, notation) });
}

/** `unitbook bill`: the bills of a household from its readings. */
export const billCommand: Command = {
  name: 'bill',
  help: BILL_HELP,
  options: {
    tariff: 'FILE',
    account: 'FILE',
    readings: 'FILE',
    household: 'FILE',
    month: 'MONTH',
    locale: 'TAG',
    today: 'DAY',
    explain: null,
    json: null,
  },
  run: runBill,
};
