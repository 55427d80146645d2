import {
  checkAccount,
  keepBook,
  type Book,
  type BookMonth,
  type Figure,
  type ReadingRow,
} from '@unitbook/engine';
import { billFigures, prefixed, type Figures } from './bill-figures.ts';
import { moneyText, plainText } from './figure-text.ts';
import { tariffNamed } from './load-tariffs.ts';

/** The account of a case: what a bill depends on; the rest is filled in. */
interface CaseAccount {
  readonly load?: string;
  readonly plant?: string;
  readonly credit?: string;
  readonly factor?: string;
  readonly digits?: '4' | '5' | '6' | '7' | '8';
  readonly decimals?: '0' | '1' | '2' | '3';
}

/** A household's readings under a tariff: `[date, import, export]`, with generation where it is metered. */
export interface BookRun {
  readonly tariff: string;
  readonly account?: CaseAccount;
  readonly readings: readonly (readonly string[])[];
}

function account({ account: given = {}, readings }: BookRun) {
  const register = { digits: given.digits ?? '6', decimals: given.decimals ?? '0' };
  const meter = { serial: 'case', multiplyingFactor: given.factor ?? '1' };
  const hasGeneration = readings.some((row) => row.length > 3);
  return checkAccount({
    format: 'unitbook-account-1',
    id: 'case',
    sanctionedLoad: given.load ?? '5',
    plantCapacity: given.plant ?? '5',
    openingCredit: given.credit ?? '0',
    meters: {
      grid: { ...meter, import: register, export: register },
      ...(hasGeneration ? { generation: { ...meter, multiplyingFactor: '1', generation: register } } : {}),
    },
  });
}

/** Columns of every ledger by its id: `bank.closing`. */
function ledgerFigures({ ledgers, bill }: BookMonth): Figures {
  return Object.assign(
    {},
    ...ledgers.map(({ id, unit, opening, added, used, paid, lapsed, closing }): Figures => {
      const text = (figure: Figure): string =>
        unit === 'money' ? moneyText(figure, bill.currency) : plainText(figure);
      const columns = Object.entries({ opening, added, used, paid, lapsed, closing });
      return Object.fromEntries(columns.map(([name, figure]) => [`${id}.${name}`, text(figure)]));
    }),
  ) as Figures;
}

/** Columns of the passbook, or of the ledgers in place of it. */
function settledFigures(month: BookMonth): Figures {
  const { passbook } = month;
  if (passbook === null) return ledgerFigures(month);
  const { opening, imported, exported, setOff, billed, paid, lapsed, closing } = passbook;
  const columns = { opening, imported, exported, setOff, billed, paid, lapsed, closing };
  return Object.fromEntries(Object.entries(columns).map(([name, figure]) => [name, plainText(figure)]));
}

function monthFigures(month: BookMonth): Figures {
  const { energy, ratios, bill, withoutSolar, savings } = month;
  const { generation, selfConsumption, totalUse } = energy;
  const { selfConsumptionShare, selfSufficiency, specificYield } = ratios;
  const known = {
    generation,
    selfConsumption,
    totalUse,
    selfConsumptionShare,
    selfSufficiency,
    specificYield,
  };
  const figures: Figures = { days: String(energy.days), ...settledFigures(month), ...billFigures(bill) };
  for (const [name, figure] of Object.entries(known)) if (figure !== null) figures[name] = plainText(figure);
  if (withoutSolar !== null) Object.assign(figures, prefixed(billFigures(withoutSolar), 'withoutSolar.'));
  if (savings !== null) {
    figures['withoutExport.payable'] = moneyText(savings.withoutExport.payable, bill.currency);
    figures['saving'] = moneyText(savings.saving, bill.currency);
    figures['fromExport'] = moneyText(savings.fromExport, bill.currency);
  }
  return figures;
}

function bookFigures({ months, paymentsDue }: Book): Figures {
  const figures: Figures = { months: String(months.length) };
  months.forEach((month, index) => Object.assign(figures, prefixed(monthFigures(month), `${index + 1}.`)));
  const [due] = paymentsDue;
  if (due !== undefined) figures['due.units'] = plainText(due.units);
  return figures;
}

/**
 * Keep the book of a case and name everything in it: `1.billed`, `1.energy`, `2.payable` …
 *
 * @throws Error when the account cannot be used: a slip in the case file
 */
export function runBook(run: BookRun): Figures {
  const { value, findings } = account(run);
  if (value === null) throw new Error(findings.map((finding) => finding.found).join('; '));
  const readings = run.readings.map(([date = '', taken = '', given = '', generation]): ReadingRow => ({
    date,
    import: taken,
    export: given,
    generation,
  }));
  const book = keepBook({ account: value, tariff: tariffNamed(run.tariff), readings });
  const errors = book.findings.filter((finding) => finding.severity === 'error');
  return { ...bookFigures(book.value), findings: errors.map((finding) => finding.code).join(' ') };
}
