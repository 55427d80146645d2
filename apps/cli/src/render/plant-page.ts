import {
  dayText,
  quotientText,
  UPKEEP_CAUTIONS,
  UPKEEP_TASKS,
  wholeToDecimal,
  type DayNumber,
  type Figure,
  type Finding,
  type Judgement,
  type Plant,
  type PlantMonth,
  type UpkeepEntry,
} from '@unitbook/engine';
import { dayWords, periodWords } from './day-words.ts';
import { meterHead } from './meter-head.ts';
import type { PageNotation } from './notation.ts';
import { renderTable, type Column } from './table.ts';
import { PAGE_WIDTH, plainText, wrap, wrapIndented } from './text.ts';

const JUDGEMENT_WORDS: Readonly<Record<Judgement, string>> = {
  fine: 'fine',
  watch: 'watch',
  'look-at-it': 'look at it',
  'cannot-be-told': 'cannot be told',
};

/** What a page about a plant shows. */
export interface PlantPage {
  readonly plant: Plant;
  /** Where the energy comes from: a label, and words. */
  readonly source: readonly [label: string, words: string];
  readonly months: readonly PlantMonth[];
  /** Findings about months and days. */
  readonly findings: readonly Finding[];
  /** What is due of each task next, in the order of the tasks. */
  readonly upkeep: readonly UpkeepEntry[];
  readonly today: DayNumber;
}

/** A figure rounded for reading. */
const rounded = (figure: Figure, places: number, { number }: PageNotation): string =>
  number(quotientText(figure.numerator, figure.denominator, places));

/** A ratio in percent, rounded for reading. */
const percent = ({ numerator, denominator }: Figure, { number }: PageNotation): string =>
  `${number(quotientText(BigInt(numerator) * 100n, denominator, 1))} %`;

function plantWords({ capacities, inverters }: Plant, { number }: PageNotation): string {
  const sizes = capacities.map(({ from, watts }) => {
    const size = `${number(wholeToDecimal(watts, 3).replace(/\.?0+$/, ''))} kWp`;
    return from === null ? size : `${size} from ${dayWords(from)}`;
  });
  if (inverters === null) return sizes.join(', ');
  const count = `${number(String(inverters.count))} ${inverters.count === 1 ? 'inverter' : 'inverters'}`;
  return `${sizes.join(', ')}; ${count}`;
}

function head({ plant, source, months, today }: PlantPage, notation: PageNotation): readonly string[] {
  const bases = [...new Set(months.map(({ basis }) => basis).filter((basis) => basis !== ''))];
  return meterHead('The plant', [
    ['Plant', plantWords(plant, notation)],
    source,
    ['Expected', bases.length === 0 ? 'nothing that months could be judged by' : bases.join('; ')],
    ['Today', dayWords(today)],
    ['Amounts', 'in units; 1 unit is 1 kWh'],
  ]);
}

interface MonthColumn {
  readonly heading: readonly string[];
  readonly of: (month: PlantMonth) => string;
}

function columnsOf(months: readonly PlantMonth[], notation: PageNotation): readonly MonthColumn[] {
  const or = (figure: Figure | null, text: (figure: Figure) => string): string =>
    figure === null ? '–' : text(figure);
  const column = (heading: readonly string[], of: MonthColumn['of']): MonthColumn => ({ heading, of });
  const yieldOf = ({ specificYieldInService, specificYield }: PlantMonth): Figure | null =>
    specificYieldInService ?? specificYield;
  const always = [
    column(['Days', 'run'], ({ daysInService }) => String(daysInService)),
    column(['Made'], ({ generation }) => notation.units(generation)),
    column(['Per kWp', 'and day'], (month) => or(yieldOf(month), (figure) => rounded(figure, 2, notation))),
    column(['Of its', 'size'], ({ capacityUtilisation }) =>
      or(capacityUtilisation, (figure) => percent(figure, notation)),
    ),
  ];
  const ratio = column(['Perf.', 'ratio'], ({ performanceRatio }) =>
    or(performanceRatio, (figure) => rounded(figure, 3, notation)),
  );
  const compared = [
    column(['Expected'], ({ expected }) => or(expected, (figure) => rounded(figure, 1, notation))),
    column(['Share'], ({ share }) => or(share, (figure) => percent(figure, notation))),
  ];
  const hasRatio = months.some(({ performanceRatio }) => performanceRatio !== null);
  return [...always, ...(hasRatio ? [ratio] : []), ...compared];
}

/** What the columns are that their headings only hint at. */
function columnWords({ months }: PlantPage): string {
  const size =
    'Of its size: capacity utilisation, units over what the plant would make at full size day and night.';
  const hasRatio = months.some(({ performanceRatio }) => performanceRatio !== null);
  const ratio = ' Perf. ratio: performance ratio, by the irradiation of a usual year, not by a measured one.';
  return months.length === 0 ? '' : `${size}${hasRatio ? ratio : ''}`;
}

function monthTable({ months }: PlantPage, notation: PageNotation): readonly string[] {
  if (months.length === 0) return ['No period is known in whole.'];
  const shown = columnsOf(months, notation);
  const columns: readonly Column[] = [
    { heading: ['Period'], side: 'right' },
    ...shown.map(({ heading }): Column => ({ heading, side: 'right' })),
    { heading: ['Judgement'], side: 'left' },
  ];
  const body = months.map((month) => [
    periodWords(month.period),
    ...shown.map(({ of }) => of(month)),
    JUDGEMENT_WORDS[month.judgement],
  ]);
  return renderTable(columns, { body });
}

const begun = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function findingText({ found, expected, remedy, code }: Finding): readonly string[] {
  const told = `${begun(found)}. Expected: ${expected}. ${remedy} [${code}]`;
  return wrapIndented(plainText(told), '', PAGE_WIDTH, '  ');
}

/** When a task is due, and when it was done last. */
function dueWords({ day, last, overdueSince }: UpkeepEntry, today: DayNumber): string {
  const before = last === null ? 'not in the diary' : `last done ${dayWords(last)}`;
  if (day > today) return `due ${dayWords(day)}; ${before}`;
  return overdueSince === null ? `DUE NOW; ${before}` : `DUE since ${dayWords(overdueSince)}; ${before}`;
}

function upkeepLines({ upkeep, today }: PlantPage): readonly string[] {
  return UPKEEP_TASKS.flatMap(({ id, label, how, isForLicensed, source }) => {
    const entry = upkeep.find(({ task }) => task.id === id);
    if (entry === undefined) return [];
    const licensed = isForLicensed ? ', by licensed people' : '';
    const when = wrapIndented(`${label}${licensed}: ${dueWords(entry, today)}`, '', PAGE_WIDTH, '  ');
    return entry.day > today ? when : [...when, ...wrapIndented(`${how} (${source})`, '  ', PAGE_WIDTH)];
  });
}

/**
 * A plant in full: what it made month by month beside what was to be expected, what its months and days show,
 * the upkeep that is due, and what can hurt someone.
 */
export function plantPage(page: PlantPage, notation: PageNotation): readonly string[] {
  const { findings } = page;
  return [
    ...head(page, notation),
    '',
    'MONTHS',
    ...monthTable(page, notation),
    ...wrap(
      'Fine: within one sigma below what is expected, or two above; watch: up to two below. About one healthy month in six is as low as "watch". A low month is a finding, not a diagnosis.',
      PAGE_WIDTH,
    ),
    ...wrap(columnWords(page), PAGE_WIDTH),
    '',
    'WHAT MONTHS AND DAYS SHOW',
    ...(findings.length === 0 ? ['Nothing.'] : findings.flatMap(findingText)),
    '',
    `UPKEEP, as of ${dayText(page.today)}`,
    ...upkeepLines(page),
    '',
    'CAUTIONS',
    ...wrap('Local codes decide; where they are stricter they hold.', PAGE_WIDTH),
    ...UPKEEP_CAUTIONS.flatMap(({ text, source }) =>
      wrapIndented(`- ${text} (${source})`, '', PAGE_WIDTH, '  '),
    ),
  ];
}
