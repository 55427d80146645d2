import type { Finding } from '../../quantity/index.ts';
import { atBill, type ConsistencyCheck, type ConsistencyTerms } from './check.ts';
import { sameSerial } from './serials.ts';

function offAccount({ bill, before, account }: ConsistencyTerms): readonly Finding[] {
  const printed = bill.document.account;
  const own = account?.document.id ?? before?.document.account;
  if (printed === undefined || own === undefined || sameSerial(printed, own)) return [];
  return [atBill(bill, ['account'], 'check/other-account', { printed, own })];
}

function offCurrency({ bill, before }: ConsistencyTerms): readonly Finding[] {
  const [printed, earlier] = [bill.document.currency, before?.document.currency];
  if (printed === undefined || earlier === undefined || printed === earlier) return [];
  return [atBill(bill, ['currency'], 'check/currency-changed', { printed, before: earlier })];
}

/** A bill is of this account, and of the currency of the bill before. */
export const SAME_ACCOUNT: ConsistencyCheck = {
  id: 'same-account',
  holds: 'a bill is of this account and of the same currency',
  find: (terms) => [...offAccount(terms), ...offCurrency(terms)],
};
