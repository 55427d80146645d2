import { dayText, calendarDay, dayNumber, parseDay, type Finding, type Path } from '../quantity/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';
import { quoteFinding } from './findings.ts';
import { rangeFindings, RANGES, type Range } from './ranges.ts';

type Checked = readonly [text: string | undefined, range: Range, path: Path];

function moneyParts({ price, subsidy, loan, upkeep, battery }: QuoteDocument): readonly Checked[] {
  const { money, tax, years } = RANGES;
  return [
    ...price.flatMap((one, at): Checked[] => [
      [one.amount, money, ['price', at, 'amount']],
      [one.tax, tax, ['price', at, 'tax']],
    ]),
    [subsidy?.amount, money, ['subsidy', 'amount']],
    [subsidy?.most, money, ['subsidy', 'most']],
    [subsidy?.paidAfter, RANGES.waiting, ['subsidy', 'paidAfter']],
    ...(subsidy?.tiers ?? []).flatMap((one, at): Checked[] => [
      [one.upTo, RANGES.kWp, ['subsidy', 'tiers', at, 'upTo']],
      [one.perKilowatt, money, ['subsidy', 'tiers', at, 'perKilowatt']],
    ]),
    [loan?.amount, money, ['loan', 'amount']],
    [loan?.rate, RANGES.loanRate, ['loan', 'rate']],
    [loan?.months, RANGES.months, ['loan', 'months']],
    [loan?.fees, money, ['loan', 'fees']],
    [upkeep.perYear, money, ['upkeep', 'perYear']],
    [upkeep.growth, RANGES.growth, ['upkeep', 'growth']],
    ...upkeep.replacements.flatMap((one, at): Checked[] => [
      [one.year, years, ['upkeep', 'replacements', at, 'year']],
      [one.amount, money, ['upkeep', 'replacements', at, 'amount']],
    ]),
    [battery?.cost, money, ['battery', 'cost']],
    [battery?.replacement?.year, years, ['battery', 'replacement', 'year']],
    [battery?.replacement?.amount, money, ['battery', 'replacement', 'amount']],
  ];
}

function otherParts(document: QuoteDocument): readonly Checked[] {
  const { escalation, degradation, uncertainty, policies = [], battery, quantities } = document;
  const { wear, sigma } = RANGES;
  return [
    [document.years, RANGES.years, ['years']],
    [document.discountRate, RANGES.discount, ['discountRate']],
    [document.plant.kWp, RANGES.kWp, ['plant', 'kWp']],
    [document.plant.kW, RANGES.inverters, ['plant', 'kW']],
    [document.selfUse?.share, RANGES.share, ['selfUse', 'share']],
    [document.use.growth, RANGES.growth, ['use', 'growth']],
    [document.generation.usualYield, RANGES.units, ['generation', 'usualYield']],
    [degradation.first, wear, ['degradation', 'first']],
    [degradation.later, wear, ['degradation', 'later']],
    ...Object.entries(escalation.charges).map(([id, text]): Checked => [
      text,
      RANGES.rise,
      ['escalation', 'charges', id],
    ]),
    [escalation.surplus?.percent, RANGES.rise, ['escalation', 'surplus', 'percent']],
    [escalation.surplus?.step, RANGES.rateStep, ['escalation', 'surplus', 'step']],
    ...Object.entries(quantities).map(([id, text]): Checked => [text, RANGES.power, ['quantities', id]]),
    ...policies.flatMap((one, at): Checked[] => [
      [one.from, RANGES.years, ['policies', at, 'from']],
      [one.selfUse, RANGES.share, ['policies', at, 'selfUse']],
    ]),
    [battery?.capacity, RANGES.power, ['battery', 'capacity']],
    [battery?.power, RANGES.power, ['battery', 'power']],
    [battery?.efficiency, RANGES.efficiency, ['battery', 'efficiency']],
    [uncertainty?.generation, sigma, ['uncertainty', 'generation']],
    [uncertainty?.yearToYear, sigma, ['uncertainty', 'yearToYear']],
    [uncertainty?.use, sigma, ['uncertainty', 'use']],
    [uncertainty?.escalation, sigma, ['uncertainty', 'escalation']],
    [uncertainty?.degradation, sigma, ['uncertainty', 'degradation']],
    [uncertainty?.useWithEscalation, RANGES.correlation, ['uncertainty', 'useWithEscalation']],
    [uncertainty?.seed, RANGES.seed, ['uncertainty', 'seed']],
    [uncertainty?.policy?.percent, RANGES.percent, ['uncertainty', 'policy', 'percent']],
    [document.carbon?.factor, RANGES.carbon, ['carbon', 'factor']],
  ];
}

/** Every number of a quote that is out of its range. */
export function numberFindings(document: QuoteDocument): readonly Finding[] {
  const all = [...otherParts(document), ...moneyParts(document)];
  return all.flatMap(([text, range, path]) => rangeFindings(text, range, path));
}

/** A settlement day that no year has. */
function settlementDayFindings({ settlementDay: value }: QuoteDocument): readonly Finding[] {
  if (value === undefined || (/^\d{2}-\d{2}$/.test(value) && parseDay(`2000-${value}`) !== null)) return [];
  return [quoteFinding('quote/no-such-day', { path: ['settlementDay'] }, { value, form: 'mm-dd' })];
}

/** Days that are none, and a start inside a month. */
export function dayFindings(document: QuoteDocument): readonly Finding[] {
  const { offer, start } = document;
  const days: readonly (readonly [string | undefined, Path])[] = [
    [offer.date, ['offer', 'date']],
    [offer.validUntil, ['offer', 'validUntil']],
    [start, ['start']],
  ];
  const none = [
    ...days.flatMap(([value, path]) =>
      value === undefined || parseDay(value) !== null
        ? []
        : [quoteFinding('quote/no-such-day', { path }, { value, form: 'yyyy-mm-dd' })],
    ),
    ...settlementDayFindings(document),
  ];
  const day = parseDay(start);
  if (day === null || calendarDay(day).day === 1) return none;
  const { year, month } = calendarDay(day);
  const first = dayText(dayNumber({ year: month === 12 ? year + 1 : year, month: (month % 12) + 1, day: 1 }));
  return [
    ...none,
    quoteFinding('quote/start-inside-month', { path: ['start'], offer: first }, { value: start, first }),
  ];
}

/** A whole number as text; null for any other text, of which its range tells. */
const wholeOf = (text: string): number | null => (/^\d{1,9}$/.test(text) ? Number.parseInt(text, 10) : null);

/** Years of replacements, cases and loans beyond the life. */
export function lifeFindings({
  years,
  upkeep,
  policies = [],
  loan,
  battery,
}: QuoteDocument): readonly Finding[] {
  const known = wholeOf(years) ?? 0;
  const outside = (what: string, year: string | undefined, path: Path): readonly Finding[] =>
    (wholeOf(year ?? '') ?? 0) <= known || year === undefined
      ? []
      : [quoteFinding('quote/year-outside-life', { path }, { what, year, years })];
  const longest = String(known * 12);
  const isLong = loan !== undefined && (wholeOf(loan.months) ?? 0) > known * 12;
  return [
    ...upkeep.replacements.flatMap(({ item, year }, at) =>
      outside(item, year, ['upkeep', 'replacements', at, 'year']),
    ),
    ...policies.flatMap(({ name, from }, at) =>
      outside(`the case "${name}"`, from, ['policies', at, 'from']),
    ),
    ...outside('the next battery', battery?.replacement?.year, ['battery', 'replacement', 'year']),
    ...(isLong
      ? [
          quoteFinding(
            'quote/loan-longer-than-life',
            { path: ['loan', 'months'] },
            { months: loan.months, most: longest },
          ),
        ]
      : []),
  ];
}
