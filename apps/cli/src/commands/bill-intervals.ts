import type { Book, Finding, Notation } from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import { keepIntervalBook, type IntervalBook } from '../interval-book.ts';
import type { CommandIo } from '../io.ts';
import { readColumnsFile } from '../read/columns-file.ts';
import { readTariffAndAccount, type TariffAndAccount } from '../read/household.ts';
import { estimatedCount, readIntervalsFile } from '../read/intervals-file.ts';
import { fileName } from '../read/read-bytes.ts';
import { dayWords } from '../render/day-words.ts';
import type { KeptBills } from './bill-readings.ts';
import type { TypedCommand } from './command.ts';

const FIRST = '1';

/** A finding about the data, the account or the tariff, each under its own file. */
function placed(finding: Finding, both: TariffAndAccount, data: string): PlacedFinding {
  const [part] = finding.path;
  if (part === 'account') return { subject: both.accountSubject, finding };
  return {
    subject: part === undefined || part === 'intervals' || part === 'periods' ? data : both.tariffSubject,
    finding,
  };
}

function spanWords({ months }: Book): string {
  const [first, last] = [months[0]?.energy.period.from, months.at(-1)?.energy.period.to];
  return first === undefined || last === undefined ? '' : `, ${dayWords(first)} to ${dayWords(last)}`;
}

/** How many intervals there are, how many values nobody measured, and which days are billed. */
function sourceWords({ book, count, minutes }: IntervalBook, estimated: number, words: string) {
  return (number: Notation['number']): string => {
    const told =
      estimated === 0 ? '' : `, ${number(String(estimated))} of the values estimated or substituted`;
    return `${number(String(count))} of ${String(minutes)} minutes${told}${spanWords(book)} (${words})`;
  };
}

/** `unitbook bill --intervals`: bills of interval data. */
export async function billsOfIntervals(typed: TypedCommand, io: CommandIo): Promise<KeptBills> {
  const path = (name: string): string => typed.values.get(name) ?? '';
  const both = await readTariffAndAccount(io, { tariff: path('tariff'), account: path('account') });
  const columns = await readColumnsFile(io, typed.values.get('columns'));
  const data = fileName(path('intervals'));
  const read = columns.isBroken ? null : await readIntervalsFile(io, path('intervals'), columns.layout);
  const found = [...both.findings, ...columns.findings, ...about(data, read?.findings ?? [])];
  const { tariff, account } = both;
  const file = read?.file ?? null;
  if (tariff === null || account === null || read === null || file === null)
    return { value: null, findings: found };
  const zone = typed.values.get('zone') ?? columns.layout?.zone ?? null;
  const cycleDay = Number.parseInt(typed.values.get('cycle-day') ?? FIRST, 10);
  const kept = keepIntervalBook({ tariff, account, file, zone, cycleDay });
  const findings = [...found, ...kept.findings.map((finding) => placed(finding, both, data))];
  if (kept.value === null) return { value: null, findings };
  const { book, periods, doubts } = kept.value;
  const words = sourceWords(kept.value, estimatedCount(file), `${data}, ${read.words}`);
  return {
    value: {
      book,
      accountSubject: both.accountSubject,
      source: ['Intervals', words],
      isComplete: book.months.length === periods,
      doubts,
      readings: null,
    },
    findings,
  };
}
