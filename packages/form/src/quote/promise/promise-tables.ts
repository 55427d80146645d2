import { dayText, exactText, type PromiseReport } from '@unitbook/engine';
import { csvText } from '../../plant/csv.ts';
import type { BillsData } from '../charts/chart-data.ts';
import type { QuoteWriting } from '../view/quote-writing.ts';
import { CAUSE_NAMES, periodText, signed, unitsOf, type Compared } from './promise-words.ts';

/** The difference split among its causes, in the stated order, and its sum. */
export function causeTable(compared: Compared, which: string, writing: QuoteWriting) {
  const { promised, actual, parts } = compared;
  const { units, column } = writing;
  return {
    id: 'promise-causes',
    caption: `${which}: what explains the difference, in this order; money in ${writing.sign}`,
    heads: ['Cause', 'Units differ by', 'On the bills', 'On the saving', 'Units quoted', 'Units that came'],
    lines: parts.map(({ cause, bill, saving }) => {
      const own = unitsOf(cause, compared);
      const money = [signed(column(bill)), signed(column(saving))];
      if (own === null) return [CAUSE_NAMES[cause], '', ...money, '', ''];
      return [CAUSE_NAMES[cause], signed(units(own.by)), ...money, units(own.quoted), units(own.came)];
    }),
    sum: [
      'Together',
      '',
      signed(column(actual.after - promised.after)),
      signed(column(actual.saving - promised.saving)),
      '',
      '',
    ],
  };
}

/** Each period as it was promised and as it came, and all together. */
export function periodTable({ periods, promised, actual }: PromiseReport, writing: QuoteWriting) {
  const { units, column } = writing;
  const line = (name: string, own: Pick<Compared, 'promised' | 'actual'>): readonly string[] => [
    name,
    units(own.promised.use),
    units(own.actual.use),
    units(own.promised.generation),
    units(own.actual.generation),
    column(own.promised.after),
    column(own.actual.after),
    column(own.promised.saving),
    column(own.actual.saving),
  ];
  return {
    id: 'promise-periods',
    caption: `Month by month, as promised and as it came; bills with the plant, before surplus they pay out; money in ${writing.sign}`,
    heads: [
      'From and to',
      'Use quoted',
      'Use',
      'Made, quoted',
      'Made',
      'Bill quoted',
      'Bill',
      'Saved, quoted',
      'Saved',
    ],
    lines: periods.map((one) => line(periodText(one.period, writing), one)),
    sum: line('Together', { promised, actual }),
  };
}

/** The bill of each period as quoted and as it came, for the chart. */
export function billsData({ periods }: PromiseReport, writing: QuoteWriting): BillsData {
  return {
    title: 'The bill of each period, as quoted and as it came',
    says: `${String(periods.length)} periods; every figure stands in the table month by month.`,
    unit: writing.sign,
    months: periods.map(({ period, promised, actual }) => ({
      label: periodText(period, writing),
      short: writing.month(period.from, 'short'),
      before: writing.amountAt(promised.after),
      after: writing.amountAt(actual.after),
    })),
    beforeName: 'as quoted',
    afterName: 'as it came',
  };
}

/** Every figure of the comparison as the text of a CSV file, money and units as exact decimals. */
export function promiseCsv({ periods, grid }: PromiseReport): string {
  const money = (amount: number): string => exactText(amount, grid);
  const units = (thousandths: number): string => exactText(thousandths, 1000);
  const pair = (name: string): readonly string[] => [`${name} quoted`, `${name} that came`];
  const causes = Object.values(CAUSE_NAMES);
  return csvText(
    [
      'From',
      'To',
      ...['Use', 'Units made', 'Bill without plant', 'Bill with plant', 'Surplus', 'Saving'].flatMap(pair),
      ...causes.map((name) => `On the bill: ${name}`),
      ...causes.map((name) => `On the saving: ${name}`),
    ],
    periods.map(({ period, promised, actual, parts }) => [
      dayText(period.from),
      dayText(period.to),
      ...(['use', 'generation'] as const).flatMap((key) => [units(promised[key]), units(actual[key])]),
      ...(['before', 'after', 'surplus', 'saving'] as const).flatMap((key) => [
        money(promised[key]),
        money(actual[key]),
      ]),
      ...parts.map(({ bill }) => money(bill)),
      ...parts.map(({ saving }) => money(saving)),
    ]),
  );
}
