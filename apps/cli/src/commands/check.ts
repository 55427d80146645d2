import {
  billsLetter,
  billsMemo,
  checkAccountBills,
  checkResultDocument,
  effectsOf,
  parseDay,
  quotientOf,
  reportBills,
  type Account,
  type BillsReport,
  type CheckedAccount,
  type CheckedBill,
  type DayNumber,
  type DisputeDocument,
  type Finding,
  type Tariff,
} from '@unitbook/engine';
import { about, commandFinding, type PlacedFinding } from '../findings.ts';
import { CHECK_HELP } from '../help-check.ts';
import type { CommandIo } from '../io.ts';
import { householdNotation, localeFindings } from '../locale.ts';
import { readCheckFile, type CheckFiles } from '../read/check-file.ts';
import { readDisputeFile } from '../read/dispute-file.ts';
import { readTariffFile } from '../read/tariff-file.ts';
import { checkPage } from '../render/check-page.ts';
import { dayWords } from '../render/day-words.ts';
import { inNotation } from '../render/in-notation.ts';
import type { PageNotation } from '../render/notation.ts';
import { letterLines, sheetLines } from '../render/sheet.ts';
import { tariffHead } from '../render/tariff-head.ts';
import { runCheckBatch } from './check-batch.ts';
import { checkCheckOptions } from './check-options.ts';
import { finish, type Command, type TypedCommand } from './command.ts';
import { hasOption } from './shared-options.ts';

const SUBJECT = 'unitbook check';

/** Printed bills, checked. */
interface Checked {
  readonly account: Account;
  readonly tariff: Tariff;
  readonly subject: string;
  readonly checked: CheckedAccount;
  readonly dispute: DisputeDocument | null;
  readonly place: CheckFiles['place'];
}

interface Found {
  readonly value: Checked | null;
  readonly findings: readonly PlacedFinding[];
}

const NO_DISPUTE = { value: null, findings: [] };

async function readOthers(io: CommandIo, paths: readonly string[]) {
  const read = [];
  for (const path of paths) read.push(await readTariffFile(io, path));
  return {
    tariffs: read.flatMap(({ value }) => (value === null ? [] : [value])),
    isWhole: read.every(({ value }) => value !== null),
    findings: read.flatMap(({ findings }) => findings),
  };
}

async function checkOf({ values, lists }: TypedCommand, io: CommandIo): Promise<Found> {
  const files = await readCheckFile(io, values.get('bills') ?? '', values.get('tariff'));
  const others = await readOthers(io, lists.get('other') ?? []);
  const disputePath = values.get('dispute');
  const dispute = disputePath === undefined ? NO_DISPUTE : await readDisputeFile(io, disputePath);
  const isDisputeBroken = disputePath !== undefined && dispute.value === null;
  const besides = [...others.findings, ...dispute.findings];
  if (!('place' in files)) return { value: null, findings: [...files, ...besides] };
  const { account, tariff, readings, bills, place, subject, connected, isOpeningKnown } = files;
  const findings = [...files.findings, ...besides];
  if (
    account === null ||
    tariff === null ||
    readings === null ||
    bills === null ||
    !others.isWhole ||
    isDisputeBroken
  )
    return { value: null, findings };
  const tolerance = values.get('tolerance');
  const checked = checkAccountBills(
    { account, tariff, otherTariffs: others.tariffs, readings, bills, connected, isOpeningKnown },
    tolerance === undefined ? {} : { tolerance: quotientOf(tolerance) },
  );
  const told = place([...checked.findings, ...checked.bills.flatMap((bill) => bill.findings)]);
  const value = { account, tariff, subject, checked, dispute: dispute.value, place };
  return { value, findings: [...findings, ...told] };
}

/** The bills that are printed: all, or the one asked for. */
function chosenBills(bills: readonly CheckedBill[], asked: string | undefined) {
  const all = bills.map((checked, at) => ({ place: at + 1, checked }));
  return asked === undefined ? all : all.filter(({ place }) => String(place) === asked);
}

/** A bill that is wrong makes the command end as one that found something. */
const WRONG: readonly CheckedBill['verdict'][] = ['wrong', 'follows'];

function statusOf(status: number, bills: readonly CheckedBill[]): number {
  return status === 0 && bills.some(({ verdict }) => WRONG.includes(verdict)) ? 1 : status;
}

function noSuchBill(asked: string, count: number): Finding {
  const expected = `a bill from 1 to ${String(count)}`;
  return commandFinding('command/not-a-number', { path: [] }, { name: '--bill', value: asked, expected });
}

/** The findings of all bills as of a day. */
function reportOf({ account, tariff, checked, dispute }: Checked, on: DayNumber): BillsReport {
  const effects = effectsOf(checked.bills);
  return reportBills({ account, tariff, checked, on, dispute, effects });
}

const dayOf = (text: string): string => {
  const day = parseDay(text);
  return day === null ? text : dayWords(day);
};

/** What was asked for: a memo, a letter, everything as JSON, or the page. */
function printed(
  value: Checked,
  { values, switches }: TypedCommand,
  notation: PageNotation,
  today: DayNumber,
): string {
  const { account, tariff, checked } = value;
  const on = parseDay(values.get('on') ?? '') ?? today;
  if (switches.has('json'))
    return `${JSON.stringify(checkResultDocument(reportOf(value, on), checked), null, 2)}\n`;
  const written = { ...notation, day: dayOf };
  const holder = account.document.name;
  if (switches.has('letter')) {
    const letter = billsLetter(reportOf(value, on), written, holder === undefined ? {} : { holder });
    return `${letterLines(letter).join('\n')}\n`;
  }
  if (switches.has('memo')) {
    const head = tariffHead(tariff.document, 'Memo on printed bills', [['Account', account.document.id]]);
    return `${[...head, ...sheetLines(billsMemo(reportOf(value, on), written))].join('\n')}\n`;
  }
  const bills = chosenBills(checked.bills, values.get('bill'));
  const shown = new Set(bills.map(({ place }) => place - 1));
  const effects = effectsOf(checked.bills).flatMap((one) => (one !== null && shown.has(one.at) ? [one] : []));
  return `${checkPage({ account, tariff: tariff.document, bills, effects }, written).join('\n')}\n`;
}

async function runCheck(typed: TypedCommand, io: CommandIo): Promise<number> {
  if (hasOption(typed, 'batch') || hasOption(typed, 'join')) return runCheckBatch(typed, io);
  const locale = typed.values.get('locale');
  const problems = [...about(SUBJECT, checkCheckOptions(typed)), ...localeFindings(locale, SUBJECT)];
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  const { value, findings } = await checkOf(typed, io);
  if (value === null) return finish(io, { ran: false, findings });
  const { account, tariff, checked, subject } = value;
  const asked = typed.values.get('bill');
  if (asked !== undefined && chosenBills(checked.bills, asked).length === 0) {
    const none = about(SUBJECT, [noSuchBill(asked, checked.bills.length)]);
    return finish(io, { ran: false, findings: [...findings, ...none] });
  }
  const found = householdNotation(locale, { account, tariff }, subject);
  io.out(printed(value, typed, found.notation, io.today));
  const told = inNotation([...findings, ...found.findings], found.notation);
  return statusOf(finish(io, { ran: true, findings: told }), checked.bills);
}

/** `unitbook check`: printed bills beside the right ones. */
export const checkCommand: Command = {
  name: 'check',
  help: CHECK_HELP,
  options: {
    bills: 'FILE',
    tariff: 'FILE',
    other: 'FILE',
    dispute: 'FILE',
    bill: 'N',
    tolerance: 'MONEY',
    memo: null,
    letter: null,
    json: null,
    on: 'DAY',
    locale: 'TAG',
    batch: 'FILE',
    join: 'FILE',
    findings: 'FILE',
    unread: 'FILE',
    resume: null,
    workers: 'N',
    part: 'I/N',
    every: null,
    'json-lines': null,
    since: 'DAY',
    'settlement-day': 'MM-DD',
  },
  repeated: ['other', 'join'],
  run: runCheck,
};
