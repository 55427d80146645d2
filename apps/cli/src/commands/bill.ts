import { bookDocument, estimateCosts, type Finding } from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import { BILL_HELP } from '../help.ts';
import type { CommandIo } from '../io.ts';
import type { KeepInput } from '../keep-household.ts';
import { householdNotation, localeFindings } from '../locale.ts';
import { billPage } from '../render/bill-page.ts';
import { CAUTIONS } from '../render/cautions.ts';
import { estimateLines } from '../render/estimates.ts';
import { inNotation } from '../render/in-notation.ts';
import type { PageNotation } from '../render/notation.ts';
import { pageHead } from '../render/page-head.ts';
import { passbookLines } from '../render/passbook.ts';
import { billsOfIntervals } from './bill-intervals.ts';
import { checkBillOptions } from './bill-options.ts';
import { billsOfReadings, type KeptBillsValue } from './bill-readings.ts';
import { chooseBills, type NumberedBill } from './choose-bills.ts';
import { finish, type Command, type TypedCommand } from './command.ts';

const SUBJECT = 'unitbook bill';

interface Page {
  readonly kept: KeptBillsValue;
  readonly bills: readonly NumberedBill[];
  readonly isExplained: boolean;
  /** What the estimates cost is told of these; null where nobody asks. */
  readonly estimatesOf: KeepInput | null;
}

function countWords(count: number): string {
  return count === 1 ? '1 period is' : `${String(count)} periods are`;
}

function notComplete({ book, isComplete }: KeptBillsValue): readonly string[] {
  if (isComplete) return [];
  const billed = book.months.length;
  const words = billed === 0 ? 'no period is' : `only ${countWords(billed)}`;
  return ['', `NOT COMPLETE: ${words} billed; the messages say why.`];
}

/** What estimates cost, where that is asked; rows behind a gap are in no bill. */
function estimateSection(of: KeepInput | null, notation: PageNotation): readonly string[] {
  if (of === null) return [];
  const { tariff, account, readings } = of;
  const rows = readings.rows.slice(0, readings.gaps[0]);
  const { value } = estimateCosts({ tariff, account, readings: rows });
  return ['', ...estimateLines(value, { notation, currency: tariff.document.currency })];
}

function pageText({ kept, bills, isExplained, estimatesOf }: Page, notation: PageNotation): string {
  const { book, source, doubts } = kept;
  const [label, words] = source;
  const pages = bills.flatMap(({ month, number }) => {
    const explanation = isExplained ? { notation, month, explained: new Set<string>() } : null;
    return ['', ...billPage(month, number, { ...book, doubts }, { notation, explanation })];
  });
  const passbook = passbookLines(book.months, notation);
  return [
    ...pageHead(book, [label, words(notation.number)], notation),
    ...pages,
    ...(passbook.length === 0 ? [] : ['', ...passbook]),
    ...estimateSection(estimatesOf, notation),
    ...notComplete(kept),
    '',
    CAUTIONS,
    '',
  ].join('\n');
}

function documentOf({ book }: KeptBillsValue, findings: readonly PlacedFinding[]): string {
  const own: readonly Finding[] = findings.map(({ finding }) => finding);
  return `${JSON.stringify(bookDocument(book, own), null, 2)}\n`;
}

async function runBill(typed: TypedCommand, io: CommandIo): Promise<number> {
  const locale = typed.values.get('locale');
  const problems = [...about(SUBJECT, checkBillOptions(typed)), ...localeFindings(locale, SUBJECT)];
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  const isIntervals = typed.values.has('intervals');
  const made = await (isIntervals ? billsOfIntervals(typed, io) : billsOfReadings(typed, io));
  const kept = made.value;
  if (kept === null) return finish(io, { ran: false, findings: made.findings });
  const { notation, findings: ofLocale } = householdNotation(locale, kept.book, kept.accountSubject);
  const findings = [...made.findings, ...ofLocale];
  const bills = chooseBills(kept.book.months, typed.values.get('month'));
  if (bills.findings.length > 0)
    return finish(io, { ran: false, findings: [...findings, ...about(SUBJECT, bills.findings)] });
  const has = (name: string): boolean => typed.switches.has(name);
  const page: Page = {
    kept,
    bills: bills.value,
    isExplained: has('explain'),
    estimatesOf: has('estimates') ? kept.readings : null,
  };
  const text = has('json') ? documentOf(kept, findings) : pageText(page, notation);
  const told = { ran: true, findings: inNotation(findings, notation) };
  // What is missing of interval data is said before anything is billed of it.
  if (!isIntervals) io.out(text);
  const status = finish(io, told);
  if (isIntervals) io.out(text);
  return status;
}

/** `unitbook bill`: the bills of a household from its readings or its interval data. */
export const billCommand: Command = {
  name: 'bill',
  help: BILL_HELP,
  options: {
    tariff: 'FILE',
    account: 'FILE',
    readings: 'FILE',
    intervals: 'FILE',
    household: 'FILE',
    columns: 'FILE',
    day: 'DAY',
    on: 'DAY',
    zone: 'ZONE',
    'cycle-day': 'N',
    month: 'MONTH',
    estimates: null,
    explain: null,
    json: null,
    locale: 'TAG',
    today: 'DAY',
  },
  repeated: ['on'],
  run: runBill,
};
