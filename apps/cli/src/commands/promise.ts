import {
  checkPromise,
  prepareQuote,
  workOutQuote,
  type PromiseReport,
  type Quote,
  type Tariff,
} from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import { PROMISE_HELP } from '../help-promise.ts';
import type { CommandIo } from '../io.ts';
import { documentNotation, localeFindings } from '../locale.ts';
import { inNotation } from '../render/in-notation.ts';
import { promiseDocument } from '../render/promise-document.ts';
import { promisePage } from '../render/promise-page.ts';
import { billsOfReadings } from './bill-readings.ts';
import { finish, type Command, type TypedCommand } from './command.ts';
import { checkPromiseOptions } from './promise-options.ts';
import { readQuoteInput } from './quote-input.ts';

const SUBJECT = 'unitbook promise';

/** A promise, what came, and what they come to. */
interface Checked {
  readonly quote: Quote;
  readonly report: PromiseReport;
  readonly tariff: Tariff;
  readonly source: string;
}

interface Found {
  readonly value: Checked | null;
  readonly findings: readonly PlacedFinding[];
}

/** What the quote is read by: columns are those of its profile, not of the readings. */
function quotedBy(typed: TypedCommand): TypedCommand {
  const values = new Map(typed.values);
  const columns = values.get('profile-columns');
  values.delete('columns');
  if (columns !== undefined) values.set('columns', columns);
  return { ...typed, values };
}

/** The tariff that readings are billed by: that of today, or that of the quote. */
function billedBy({ values, ...typed }: TypedCommand): TypedCommand {
  const now = values.get('now') ?? values.get('tariff') ?? '';
  return { ...typed, values: new Map([...values, ['tariff', now]]) };
}

async function checkOf(
  typed: TypedCommand,
  io: CommandIo,
): Promise<Found & { readonly locale?: string | undefined }> {
  const { value: read, findings: ofQuote } = await readQuoteInput(quotedBy(typed), io);
  const kept = await billsOfReadings(billedBy(typed), io);
  const findings = [...ofQuote, ...kept.findings];
  if (read === null || kept.value === null) return { value: null, findings };
  const { input, tariff, profile, inQuote } = read;
  const { locale } = input.document;
  const prepared = prepareQuote(input, tariff, undefined, { profile });
  const all = [...findings, ...inQuote(prepared.findings)];
  if (prepared.value === null) return { value: null, findings: all, locale };
  const { book, source } = kept.value;
  const energies = book.months.map(({ energy }) => energy);
  // Registers of rates tell units of time blocks.
  const quantities = book.months.map((month) => month.quantities);
  const report = checkPromise(prepared.value, { energies, quantities, tariff: book.tariff });
  const told = [...all, ...inQuote(report.findings)];
  if (report.value === null) return { value: null, findings: told, locale };
  const [, words] = source;
  const value = {
    quote: workOutQuote(prepared.value),
    report: report.value,
    tariff: book.tariff,
    source: words((text) => text),
  };
  return { value, findings: told, locale };
}

async function runPromise(typed: TypedCommand, io: CommandIo): Promise<number> {
  const locale = typed.values.get('locale');
  const problems = [...about(SUBJECT, checkPromiseOptions(typed)), ...localeFindings(locale, SUBJECT)];
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  const checked = await checkOf(typed, io);
  const { value } = checked;
  if (value === null) return finish(io, { ran: false, findings: checked.findings });
  const own = { locale: checked.locale, where: 'the quote', subject: SUBJECT };
  const { document } = value.tariff;
  const { notation, findings: ofLocale } = documentNotation(locale, own, document.currency);
  const findings = [...checked.findings, ...ofLocale];
  const page = { ...value, tariff: document };
  io.out(
    typed.switches.has('json')
      ? `${JSON.stringify(promiseDocument(value.report), null, 2)}\n`
      : `${promisePage(page, notation).join('\n')}\n`,
  );
  return finish(io, { ran: true, findings: inNotation(findings, notation) });
}

/** `unitbook promise`: what a quote promised, and what came. */
export const promiseCommand: Command = {
  name: 'promise',
  help: PROMISE_HELP,
  options: {
    quote: 'FILE',
    tariff: 'FILE',
    now: 'FILE',
    household: 'FILE',
    account: 'FILE',
    readings: 'FILE',
    columns: 'FILE',
    profile: 'FILE',
    'profile-columns': 'FILE',
    zone: 'ZONE',
    day: 'DAY',
    on: 'DAY',
    today: 'DAY',
    json: null,
    locale: 'TAG',
  },
  repeated: ['on'],
  run: runPromise,
};
