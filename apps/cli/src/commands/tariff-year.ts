import {
  minorUnitDigits,
  OPEN_MONTHS,
  prepareTariff,
  tariffCliffs,
  tariffYear,
  type MissingQuantity,
  type Tariff,
  type TariffYear,
} from '@unitbook/engine';
import { about, commandFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { readTariffFile } from '../read/tariff-file.ts';
import { CAUTIONS } from '../render/cautions.ts';
import { dayWords } from '../render/day-words.ts';
import { makeNotation, type PageNotation } from '../render/notation.ts';
import { tariffHead } from '../render/tariff-head.ts';
import { cliffLines, spanText, unbilledMonths, yearMonths } from '../render/year-report.ts';
import { unitWords } from '../told/unit-words.ts';
import { finish, type TypedCommand } from './command.ts';
import { yearOptions, type YearOptions } from './tariff-options.ts';

const SUBJECT = 'unitbook tariff';

function missingFinding({ name, label, unit }: MissingQuantity) {
  const isLoad = name === 'sanctioned-load';
  const option = isLoad ? '--load KW' : `--quantity ${name}=VALUE`;
  return commandFinding(
    'command/quantity-missing',
    { path: [] },
    { name, label, option, unit: unitWords(unit) },
  );
}

/** Powers and measures that were typed, in words. */
function quantityWords(quantities: YearOptions['quantities'], notation: PageNotation): string {
  return Object.entries(quantities)
    .map(([name, value]) => `; ${name} ${notation.number(value)}`)
    .join('');
}

function headEntries(
  year: TariffYear,
  { document }: Tariff,
  { options, notation }: { readonly options: YearOptions; readonly notation: PageNotation },
): readonly (readonly [string, string])[] {
  const { units, unitsAreChosen, quantities } = options;
  const chosen = unitsAreChosen ? ' (a choice of this report; --units changes it)' : '';
  const household =
    `a plain one, without a plant: ${notation.number(String(units))} units a month, all from the grid${chosen}` +
    quantityWords(quantities, notation);
  const open =
    year.openFrom === null
      ? ', all that the tariff covers'
      : `; the tariff has no last day: ${String(OPEN_MONTHS)} months from its last dated change, ${dayWords(year.openFrom)}`;
  const left = year.left === 0 ? '' : `; ${notation.number(String(year.left))} later months are left out`;
  const years = year.yearsWithoutHolidays.map(String).join(', ');
  const holidays = years === '' ? '' : ` The tariff lists no holidays of ${years}: taken for weekdays.`;
  const blocks =
    'spread evenly over the hours of each time block in the month, in whole units by largest remainder.' +
    holidays;
  return [
    ['Household', household],
    ['Months', `${spanText(year.months)}${open}${left}`],
    ...(document.timeBlocks === undefined ? [] : [['Units', blocks] as const]),
  ];
}

interface Report {
  readonly tariff: Tariff;
  readonly year: TariffYear;
  readonly cliffs: ReturnType<typeof tariffCliffs>;
  readonly options: YearOptions;
}

function reportText({ tariff, year, cliffs, options }: Report, notation: PageNotation): string {
  const { months } = year;
  const versions = tariff.versions.map(({ item }) => item.name);
  return [
    ...tariffHead(
      tariff.document,
      'A tariff month by month',
      headEntries(year, tariff, { options, notation }),
    ),
    '',
    'MONTHS',
    ...yearMonths(months, options.units, notation),
    '',
    'MONTHS THAT COULD NOT BE BILLED',
    ...unbilledMonths(months),
    '',
    'CLIFFS',
    ...cliffLines(cliffs, { times: options.timesText, versions }, notation),
    '',
    CAUTIONS,
    '',
  ].join('\n');
}

/** `unitbook tariff FILE --year`: a plain household under a tariff, month by month, and where a unit costs most. */
export async function runTariffYear(typed: TypedCommand, io: CommandIo): Promise<number> {
  const [path = ''] = typed.others;
  const { value: tariff, findings } = await readTariffFile(io, path);
  if (tariff === null) return finish(io, { ran: false, findings });
  const options = yearOptions(typed);
  const prepared = prepareTariff(tariff);
  const year = tariffYear(prepared, { units: options.units, quantities: options.quantities });
  const problems = [...year.findings, ...year.missing.map(missingFinding)];
  if (problems.length > 0)
    return finish(io, { ran: false, findings: [...findings, ...about(SUBJECT, problems)] });
  const cliffs = tariffCliffs(prepared, options, { months: year.months, times: options.times });
  const places = minorUnitDigits(tariff.document.currency) ?? 2;
  const notation = makeNotation(typed.values.get('locale') ?? 'en', places);
  io.out(reportText({ tariff, year, cliffs, options }, notation));
  const status = finish(io, { ran: true, findings });
  return year.months.some(({ month }) => month === null) ? Math.max(status, 1) : status;
}
