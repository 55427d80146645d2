import {
  dayText,
  exactText,
  projectionText,
  type CausePart,
  type PromisedPeriod,
  type PromiseReport,
} from '@unitbook/engine';

type Money = (amount: number) => string;

const unitsText = (thousandths: number): string => exactText(thousandths, 1000);

const yearsText = (value: number | null): string | null => (value === null ? null : projectionText(value, 3));

function sideDocument(
  { use, generation, selfUse, before, after, surplus, saving }: PromiseReport['promised'],
  money: Money,
) {
  return {
    use: unitsText(use),
    generation: unitsText(generation),
    selfUse: unitsText(selfUse),
    before: money(before),
    after: money(after),
    surplus: money(surplus),
    saving: money(saving),
  };
}

const partDocument = ({ cause, bill, saving }: CausePart, money: Money) => ({
  cause,
  bill: money(bill),
  saving: money(saving),
});

const periodDocument = ({ period, promised, actual, parts }: PromisedPeriod, money: Money) => ({
  from: dayText(period.from),
  to: dayText(period.to),
  promised: sideDocument(promised, money),
  actual: sideDocument(actual, money),
  parts: parts.map((part) => partDocument(part, money)),
});

/** The report on a promise as JSON prints it: every number a text, money and units exact. */
export function promiseDocument(report: PromiseReport): object {
  const { grid, periods, promised, actual, parts, generation, lost, payback } = report;
  const money: Money = (amount) => exactText(amount, grid);
  const { ratio, low, high, verdict } = generation;
  return {
    format: 'unitbook-promise-1',
    promised: sideDocument(promised, money),
    actual: sideDocument(actual, money),
    parts: parts.map((part) => partDocument(part, money)),
    generation: {
      ratio: projectionText(ratio, 4),
      low: projectionText(low, 4),
      high: projectionText(high, 4),
      verdict,
    },
    ...(lost === null
      ? {}
      : { lost: { promised: unitsText(lost.promised), actual: unitsText(lost.actual) } }),
    payback: {
      promised: yearsText(payback.promised),
      restAsQuoted: yearsText(payback.restAsQuoted),
      ifItGoesOn: yearsText(payback.ifItGoesOn),
    },
    periods: periods.map((one) => periodDocument(one, money)),
  };
}
