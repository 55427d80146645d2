import { dayText, type Finding } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import { billDocument, columnTexts, ledgerDocument, passbookDocument } from './book-document.ts';
import type { CheckedCase } from './check-cases.ts';
import type { UnitsMonth } from './keeper.ts';

function monthDocument({ period, passbook, ledgers, quantities, bill }: UnitsMonth) {
  return {
    from: dayText(period.from),
    to: dayText(period.to),
    passbook: passbook === null ? null : passbookDocument(passbook),
    ledgers: ledgers.map(ledgerDocument),
    quantities: columnTexts(quantities, Object.keys(quantities)),
    bill: billDocument(bill),
  };
}

function caseDocument({ case: { id, title, kind }, checks, months, isReproduced }: CheckedCase) {
  return {
    id,
    title,
    kind,
    isReproduced: checks.length === 0 ? null : isReproduced,
    checks: checks.map((check) => ({ ...check, period: String(check.period + 1) })),
    months: months.map(monthDocument),
  };
}

/** Checked cases as JSON, every number as exact text. */
export type CheckedCasesDocument = ReturnType<typeof checkedCasesDocument>;

/**
 * Put checked cases and their findings into a plain object for JSON: every expected figure beside what came
 * out, and every bill with its derivation.
 *
 * @param tariff    the cases were billed under
 * @param cases     `isReproduced` is null where a case expects nothing
 * @param findings  of all of them
 * @example
 * checkedCasesDocument({ document: { id: 'x' }, versions: [], settlements: [] }, [], []).tariff //=> "x"
 */
export function checkedCasesDocument(
  tariff: Tariff,
  cases: readonly CheckedCase[],
  findings: readonly Finding[],
) {
  return {
    format: 'unitbook-checked-cases-1',
    tariff: tariff.document.id,
    cases: cases.map(caseDocument),
    findings,
  };
}
