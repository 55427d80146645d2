import { wholeToDecimal, type CaseResult, type DrawSummary, type Quote, type Sizes } from '@unitbook/engine';
import type {
  BillsData,
  CashFlowData,
  SensitivityData,
  SensitivityInput,
  SizeCurveData,
} from '../charts/chart-data.ts';
import { paybackWords } from './answer-view.ts';
import type { QuoteWriting } from './quote-writing.ts';

/** Money by year, with the band of the draws once there is one. */
export function cashFlowOf(quote: Quote, draws: DrawSummary | null, writing: QuoteWriting): CashFlowData {
  const { simple } = quote.measures;
  const { cumulative, first } = simple;
  const band = draws?.band;
  return {
    title: 'Spent and saved, by year',
    says:
      `It begins at ${writing.cash(cumulative[0] ?? 0)} and ends at ${writing.cash(cumulative.at(-1) ?? 0)} ` +
      `after ${String(quote.years.length)} years. An estimate, no promise.`,
    unit: writing.sign,
    lineName: 'as quoted',
    years: cumulative.map((amount, year) => ({
      year,
      label: String(year),
      value: writing.amountAt(amount),
      band:
        band === undefined
          ? null
          : {
              low: writing.aboutAt(band.p90[year] ?? 0),
              middle: writing.aboutAt(band.p50[year] ?? 0),
              high: writing.aboutAt(band.p10[year] ?? 0),
            },
    })),
    payback:
      first === null ? null : { year: first, label: `paid back after ${paybackWords(simple, writing)}` },
  };
}

/** The bill of each month of the first year, before and after. */
export function billsOf({ months, measures }: Quote, writing: QuoteWriting): BillsData {
  return {
    title: 'The bill of each month of the first year',
    says: `With the plant no bill is below ${writing.cash(measures.smallestBill)}.`,
    unit: writing.sign,
    beforeName: 'without the plant',
    afterName: 'with the plant',
    months: months.map(({ period, before, after }) => ({
      label: writing.month(period.from, 'long'),
      short: writing.month(period.from, 'short'),
      before: writing.amountAt(before),
      after: writing.amountAt(after),
    })),
  };
}

const sizeAmount = (watts: number, writing: QuoteWriting) => {
  const decimal = wholeToDecimal(watts, 3).replace(/\.?0+$/, '');
  return { at: watts / 1000, text: `${writing.number(decimal)} kWp`, decimal };
};

/** What plants of other sizes save in the first year. */
export function sizeCurveOf(
  quote: Quote,
  { points, onlySurplusFrom }: Sizes,
  writing: QuoteWriting,
): SizeCurveData {
  const chosen = sizeAmount(quote.input.watts, writing);
  const flat = onlySurplusFrom === null ? null : sizeAmount(onlySurplusFrom.watts, writing);
  return {
    title: 'What a plant saves in the first year, by its size',
    says:
      flat === null
        ? 'Every larger plant of these lowers the bills further.'
        : `From ${flat.text} on another unit earns only what surplus is paid.`,
    unit: writing.sign,
    sizeUnit: 'kWp',
    sizeName: 'size of the plant',
    valueName: 'saved in the first year',
    points: points.map(({ watts, saving }) => ({
      size: sizeAmount(watts, writing),
      value: writing.amountAt(saving),
    })),
    chosen: { size: chosen, label: `this plant, ${chosen.text}` },
    surplusFrom: flat === null ? null : { size: flat, label: `from ${flat.text} on only surplus is added` },
  };
}

/** The pairs of usual cases: what an input is called, its low case and its high one; '' is as quoted. */
const PAIRS: readonly (readonly [label: string, low: string, high: string])[] = [
  ['How rates rise', 'rise-0', 'rise-twice'],
  ['Generation', 'generation-less', ''],
  ['Use', 'use-less', 'use-more'],
  ['Wear', 'degradation', ''],
  ['Subsidy', 'subsidy-refused', ''],
  ['Surplus', 'surplus-unpaid', ''],
  ['Rules', 'policy-1', ''],
];

/** What matters most to what is left at the end of the life. */
export function sensitivityOf(
  quote: Quote,
  cases: readonly CaseResult[],
  writing: QuoteWriting,
): SensitivityData {
  const base = writing.amountAt(quote.measures.lifeNet);
  const asQuoted = { input: 'as quoted', result: base };
  const caseOf = (id: string) => {
    if (id === '') return asQuoted;
    const found = cases.find((one) => one.id === id);
    if (found?.quote == null) return undefined;
    const { measures, grid } = found.quote;
    return { input: found.name, result: writing.atGrid(grid).amountAt(measures.lifeNet) };
  };
  const inputs = PAIRS.flatMap(([label, lowId, highId]): readonly SensitivityInput[] => {
    const [low, high] = [caseOf(lowId), caseOf(highId) ?? asQuoted];
    return low === undefined ? [] : [{ label, low, high }];
  });
  return {
    title: `What matters most to what is left after ${String(quote.years.length)} years`,
    says: 'One input at a time is changed; everything else stays as quoted.',
    base,
    baseName: 'as quoted',
    inputs,
  };
}
