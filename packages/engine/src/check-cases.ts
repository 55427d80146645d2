import { addQuotients, exactText, type Figure, type Finding, type Quotient } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import type { PreparedTariff } from './bill/index.ts';
import type { ExpectedFigures, WorkedCase } from './cases-document.ts';
import { keepPeriods } from './keep-periods.ts';
import type { UnitsMonth } from './keeper.ts';

/** One expected figure beside what came out. */
export interface FigureCheck {
  /** Place of the period in the case, from 0. */
  readonly period: number;
  /** Such as "payable", "line energy", "quantity billed", "ledger credit closing". */
  readonly what: string;
  readonly expected: string;
  /** Exact; null where nothing of that name came out. */
  readonly got: string | null;
  readonly isSame: boolean;
}

/** A worked case and what the tariff makes of it. */
export interface CheckedCase {
  readonly case: WorkedCase;
  readonly months: readonly UnitsMonth[];
  readonly checks: readonly FigureCheck[];
  readonly findings: readonly Finding[];
  /** Whether every period was billed and every expected figure came out, and there was one to check. */
  readonly isReproduced: boolean;
}

const text = ({ numerator, denominator }: Quotient): string => exactText(numerator, denominator);

/** The same number in one form: without zeros at the end, fractions in lowest terms. */
function plain(number: string): string {
  const [top = '', bottom] = number.split('/');
  if (bottom !== undefined) return exactText(BigInt(top), Number.parseInt(bottom, 10));
  const places = top.split('.')[1]?.length ?? 0;
  return exactText(BigInt(top.replace('.', '')), 10 ** places);
}

/** The amount of a charge: of one in several parts of a period, their sum. */
function lineAmount({ bill }: UnitsMonth, id: string): string | null {
  const lines = bill.lines.filter(({ figure }) => figure.id === id);
  return lines.length === 0 ? null : text(addQuotients(lines.map(({ figure }) => figure)));
}

function quantityText({ quantities, passbook }: UnitsMonth, name: string): string | null {
  const own: Figure | undefined = quantities[name];
  if (own !== undefined) return text(own);
  if (passbook === null) return null;
  const { billed, imported, exported, setOff, energy } = passbook;
  const columns: Readonly<Record<string, Figure | null>> = {
    billed,
    import: imported,
    export: exported,
    'set-off': setOff,
    generation: energy.generation,
    'self-consumption': energy.selfConsumption,
    'total-use': energy.totalUse,
  };
  const figure = columns[name] ?? null;
  return figure === null ? null : text(figure);
}

type Column = 'opening' | 'added' | 'used' | 'paid' | 'lapsed' | 'closing';

function ledgerText({ ledgers, passbook }: UnitsMonth, id: string, column: Column): string | null {
  const ledger = ledgers.find((one) => one.id === id);
  if (ledger !== undefined) return text(ledger[column]);
  if (passbook === null || id !== 'credit') return null;
  const { opening, creditUsed, paid, lapsed, closing } = passbook;
  const columns: Readonly<Partial<Record<Column, Figure>>> = {
    opening,
    used: creditUsed,
    paid,
    lapsed,
    closing,
  };
  const figure = columns[column];
  return figure === undefined ? null : text(figure);
}

/** Every expected figure of a period with what came out. */
function periodChecks(
  expected: ExpectedFigures,
  month: UnitsMonth | undefined,
  period: number,
): readonly FigureCheck[] {
  const check = (what: string, wanted: string, find: (month: UnitsMonth) => string | null): FigureCheck => {
    const got = month === undefined ? null : find(month);
    return { period, what, expected: wanted, got, isSame: got !== null && plain(got) === plain(wanted) };
  };
  const { payable, sum, lines = {}, quantities = {}, ledgers = {} } = expected;
  return [
    ...(payable === undefined ? [] : [check('payable', payable, ({ bill }) => text(bill.payable))]),
    ...(sum === undefined ? [] : [check('sum', sum, ({ bill }) => text(bill.sum))]),
    ...Object.entries(lines).map(([id, wanted]) => check(`line ${id}`, wanted, (one) => lineAmount(one, id))),
    ...Object.entries(quantities).map(([name, wanted]) =>
      check(`quantity ${name}`, wanted, (one) => quantityText(one, name)),
    ),
    ...Object.entries(ledgers).flatMap(([id, columns]) =>
      (Object.entries(columns) as [Column, string][]).map(([column, wanted]) =>
        check(`ledger ${id} ${column}`, wanted, (one) => ledgerText(one, id, column)),
      ),
    ),
  ];
}

/**
 * Bill a worked case under a tariff and set every figure it expects beside what comes out.
 *
 * @param tariff  as read, or already in normal form
 * @param one     periods with their units, and what they come to
 * @returns       the months that could be billed, every check, and every finding
 */
export function checkCase(tariff: Tariff | PreparedTariff, one: WorkedCase): CheckedCase {
  const kept = keepPeriods({ account: one.account ?? {}, tariff, periods: one.periods, withSavings: false });
  const checks = one.periods.flatMap(({ expected = {} }, index) =>
    periodChecks(expected, kept.value[index], index),
  );
  return {
    case: one,
    months: kept.value,
    checks,
    findings: kept.findings,
    isReproduced:
      checks.length > 0 &&
      checks.every(({ isSame }) => isSame) &&
      !kept.findings.some(({ severity }) => severity === 'error'),
  };
}
