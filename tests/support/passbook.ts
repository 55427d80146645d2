import type { BookMonth, PassbookEntry, SettlementRule, UnitNettingRule } from '@unitbook/engine';

/** The passbook of a month under unit netting; any other has none. */
export function passbookOf({ passbook }: Pick<BookMonth, 'passbook'>): PassbookEntry {
  if (passbook === null) throw new Error('The month has no passbook.');
  return passbook;
}

/** A settlement rule that is unit netting. */
export function unitNetting(rule: SettlementRule | undefined): UnitNettingRule {
  if (rule?.scheme !== 'unit-netting') throw new Error('The rule is no unit netting.');
  return rule;
}
