import { expect } from 'vitest';
import {
  keepPeriods,
  type Bill,
  type LedgersRule,
  type UnitNettingRule,
  type UnitsMonth,
} from '@unitbook/engine';
import { valueOf } from '../../support/make.ts';
import { passbookOf } from '../../support/passbook.ts';
import { tariffOfDocument } from './scheme-year.ts';
import {
  asLedgers,
  asUnitNetting,
  bringing,
  documentWith,
  nettingPeriods,
  type NettingYear,
} from './two-schemes.ts';

/** The year of one of the two rules. */
function yearOf(one: NettingYear, rule: UnitNettingRule | LedgersRule): readonly UnitsMonth[] | null {
  const { value, findings } = keepPeriods({
    account: bringing(one, rule.scheme === 'unit-netting' ? 'credit' : 'bank'),
    tariff: tariffOfDocument(documentWith(one, rule)),
    periods: nettingPeriods(one),
  });
  if (findings.length === 0) return value;
  // Lines that nothing rounds, split by days, can need more digits than there are.
  if (one.lines === 'none' && findings.every(({ code }) => code.endsWith('/too-large'))) return null;
  throw new Error(JSON.stringify(findings));
}

const billOf = (bill: Bill | null) =>
  bill === null
    ? null
    : {
        lines: bill.lines.map(({ figure, version, counts }) => [figure.id, valueOf(figure), version, counts]),
        payable: valueOf(bill.payable),
      };

const savingsOf = ({ savings }: UnitsMonth) =>
  savings === null ? null : [savings.saving, savings.fromSelfConsumption, savings.fromExport].map(valueOf);

/** What both tell of a month in the same words. */
const common = (month: UnitsMonth) => ({
  bill: billOf(month.bill),
  withoutSolar: billOf(month.withoutSolar),
  savings: savingsOf(month),
});

function ofNetting(month: UnitsMonth) {
  const { opening, billed, paid, closing, isClosed, payment } = passbookOf(month);
  return {
    ...common(month),
    units: [opening, billed, paid, closing].map(valueOf),
    isClosed,
    rate: payment?.rate ?? null,
  };
}

function ofLedgers(month: UnitsMonth) {
  const [bank] = month.ledgers;
  const billed = month.quantities['billed'];
  if (bank === undefined || billed === undefined) throw new Error('no bank');
  return {
    ...common(month),
    units: [bank.opening, billed, bank.paid, bank.closing].map(valueOf),
    isClosed: bank.isClosed,
    rate: bank.payment?.rate ?? null,
  };
}

/** Both rules bill, carry, pay and save the same in every period of a year. */
export function expectSame(one: NettingYear): void {
  const netting = yearOf(one, asUnitNetting(one));
  const ledgers = yearOf(one, asLedgers(one));
  expect(netting === null).toBe(ledgers === null);
  expect(ledgers?.map(ofLedgers)).toEqual(netting?.map(ofNetting));
}
