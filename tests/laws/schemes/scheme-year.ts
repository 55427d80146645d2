import fc from 'fast-check';
import {
  keepPeriods,
  readTariff,
  type Figure,
  type LedgerEntry,
  type Tariff,
  type TariffDocument,
  type UnitsAccount,
  type UnitsMonth,
  type UnitsPeriod,
} from '@unitbook/engine';
import {
  documentOf,
  opening,
  openingOf,
  periodsOf,
  scheme,
  year,
  type MonthSpec,
  type SchemeSpec,
} from '../random-scheme.ts';

/** A generated scheme with a generated year under it. */
export interface SchemeYear {
  readonly spec: SchemeSpec;
  readonly months: readonly MonthSpec[];
  readonly brought: { readonly units: number; readonly money: string };
  readonly account: UnitsAccount;
}

/** Any scheme and any year; failures print the seed and the smallest year that fails. */
export const schemeYear: fc.Arbitrary<SchemeYear> = fc.record({
  spec: scheme,
  months: year,
  brought: opening,
  account: fc.record({
    since: fc.constantFrom('2023-12-15', '2023-03-31', '2020-02-29', '2022-07-10'),
    settlementDay: fc.constantFrom('09-30', '02-29', '01-01'),
  }),
});

/** The columns of a ledger's line. */
export const COLUMNS = ['opening', 'added', 'used', 'paid', 'lapsed', 'closing'] as const;

/** Read a generated document as a file would be read. */
export function tariffOfDocument(document: TariffDocument): Tariff {
  const { value, findings } = readTariff(JSON.stringify(document));
  if (value === null || findings.length > 0) {
    throw new Error(JSON.stringify(findings.map(({ code, path, found }) => ({ code, path, found }))));
  }
  return value;
}

/** Bill periods that can be billed. */
export function kept(
  document: TariffDocument,
  periods: readonly UnitsPeriod[],
  account: UnitsAccount,
): readonly UnitsMonth[] {
  const tariff = tariffOfDocument(document);
  const { value, findings } = keepPeriods({ account, tariff, periods, withSavings: false });
  if (findings.length > 0) {
    // Lines that nothing rounds can need more digits than there are: such a year is refused, not billed wrong.
    const isRefused =
      document.rounding.line === 'none' && findings.every(({ code }) => code.endsWith('/too-large'));
    fc.pre(!isRefused);
    throw new Error(JSON.stringify(findings));
  }
  return value;
}

/** The account of a year, with what it brings forward. */
export function accountOf({ spec, brought, account }: SchemeYear): UnitsAccount {
  return { ...account, opening: openingOf(spec, brought) };
}

/** Bill a generated year. */
export function keptYear(one: SchemeYear): readonly UnitsMonth[] {
  return kept(documentOf(one.spec), periodsOf(one.spec, one.months), accountOf(one));
}

/** An exact quotient of whole numbers. */
export type Exact = readonly [top: bigint, bottom: bigint];

/** The value of a figure. */
export const exact = ({ numerator, denominator }: Pick<Figure, 'numerator' | 'denominator'>): Exact => [
  BigInt(numerator),
  BigInt(denominator),
];

const plus = ([a, b]: Exact, [c, d]: Exact): Exact => [a * d + c * b, b * d];

/** The sum of figures. */
export const sumOf = (figures: readonly Figure[]): Exact => figures.map(exact).reduce(plus, [0n, 1n]);

/** Below 0, 0 or above 0 as one value is less than, equal to or more than another. */
export function compared([a, b]: Exact, [c, d]: Exact): number {
  const difference = a * d - c * b;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** Every figure of a period: lines, sums, quantities and the columns of its ledgers. */
export function figuresOf({ bill, quantities, ledgers }: UnitsMonth): readonly Figure[] {
  const columns = ledgers.flatMap((entry: LedgerEntry) => COLUMNS.map((column) => entry[column]));
  const { lines, sum, payable, roundingDifference } = bill;
  return [
    ...lines.map(({ figure }) => figure),
    sum,
    payable,
    ...(roundingDifference === null ? [] : [roundingDifference]),
    ...Object.values(quantities),
    ...columns,
  ];
}
