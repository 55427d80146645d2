import type { Book } from '@unitbook/engine';
import { DEMO_HOUSEHOLD } from '../examples.ts';
import { about, commandFinding } from '../findings.ts';
import { DEMO_HELP } from '../help.ts';
import type { CommandIo } from '../io.ts';
import { keepHousehold, wholeInput } from '../keep-household.ts';
import { householdNotation, localeFindings } from '../locale.ts';
import { householdFrom } from '../read/household.ts';
import { billPage } from '../render/bill-page.ts';
import { CAUTIONS } from '../render/cautions.ts';
import type { PageNotation } from '../render/notation.ts';
import { pageHead } from '../render/page-head.ts';
import { passbookLines } from '../render/passbook.ts';
import { yearSummary, yearTable } from '../render/year.ts';
import { readingsWords } from './bill-readings.ts';
import { finish, type Command, type TypedCommand } from './command.ts';

const SUBJECT = 'unitbook demo';

function demoText(book: Book, rows: number, notation: PageNotation): string {
  const { months } = book;
  // The first bill with something in every column: units billed after a credit was used up.
  const at = Math.max(
    0,
    months.findIndex(({ passbook }) => passbook?.billed.numerator !== 0),
  );
  const month = months[at];
  const bill = month === undefined ? [] : billPage(month, at + 1, book, { notation, explanation: null });
  return [
    ...pageHead(book, ['Readings', readingsWords(book, rows, 'a household made up for this demo')], notation),
    '',
    'THE YEAR IN SHORT',
    ...yearTable(months, notation),
    '',
    ...yearSummary(book, notation),
    '',
    ...bill,
    '',
    ...passbookLines(months, notation),
    '',
    CAUTIONS,
    '',
  ].join('\n');
}

function runDemo(typed: TypedCommand, io: CommandIo): Promise<number> {
  const locale = typed.values.get('locale');
  const extra = typed.others.map((value) =>
    commandFinding('command/extra-argument', { path: [] }, { value, remedy: 'Leave it out.' }),
  );
  const problems = [...about(SUBJECT, extra), ...localeFindings(locale, SUBJECT)];
  if (problems.length > 0) return Promise.resolve(finish(io, { ran: false, findings: problems }));
  const read = householdFrom(DEMO_HOUSEHOLD, 'the demo household');
  const input = wholeInput(read);
  if (input === null) return Promise.resolve(finish(io, { ran: false, findings: read.findings }));
  // Without today: what the demo shows must not hang on the clock.
  const { book, findings } = keepHousehold(input);
  const { notation, findings: ofLocale } = householdNotation(locale, book, read.accountSubject);
  io.out(demoText(book, input.readings.rows.length, notation));
  return Promise.resolve(finish(io, { ran: true, findings: [...read.findings, ...ofLocale, ...findings] }));
}

/** `unitbook demo`: a year of an invented household. */
export const demoCommand: Command = {
  name: 'demo',
  help: DEMO_HELP,
  options: { locale: 'TAG' },
  run: runDemo,
};
