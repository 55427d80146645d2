import type { DayNumber, Finding } from './quantity/index.ts';
import type { Account } from './readings/index.ts';
import { groupOf, type BillFacts, type Figures, type PrintedBill } from './audit/index.ts';
import { consistencyFindings, otherCurrencyFindings, unknownLineFindings } from './audit/index.ts';
import { surprisesOf, type AppUnits, type KnownBill, type Surprise } from './audit/index.ts';
import { runBill, type BillRun, type RunBasis } from './check-run.ts';

/** What is known around a bill: its account, the bills before it, an app. Whatever is not known is null. */
export interface BillSurroundings {
  readonly account: Account | null;
  /** The bill printed before it. */
  readonly printedBefore: PrintedBill | null;
  /** The right bill before it. */
  readonly before: KnownBill | null;
  /** The right bill of the same month a year before. */
  readonly yearBefore: KnownBill | null;
  readonly app: AppUnits | null;
  /** The day on which the plant was connected for net metering. */
  readonly connected: DayNumber | null;
}

/** A bill as it was set beside the right one, as far as findings and surprises go by it. */
interface Checked {
  readonly printed: PrintedBill;
  readonly facts: BillFacts;
  readonly basis: RunBasis;
}

/** Findings that keep a bill from being set beside a right one at all. */
const INCOMPARABLE: readonly string[] = ['check/other-currency'];

/** Whether any finding says that no amount of a bill can be compared. */
export const isIncomparable = (findings: readonly Finding[]): boolean =>
  findings.some(({ code }) => INCOMPARABLE.includes(code));

/**
 * What a printed bill says that cannot all be true, and that does not go with its account and tariff: what does not
 * come to its own total first of all.
 */
export function printedFindings(
  printed: PrintedBill,
  { facts }: Pick<Checked, 'facts'>,
  { account, printedBefore }: BillSurroundings,
): readonly Finding[] {
  const findings = consistencyFindings(printed, printedBefore, account);
  const isTotal = ({ path }: Finding): boolean => groupOf(String(path.at(-1))) === 'total';
  return [
    ...findings.filter(isTotal),
    ...otherCurrencyFindings(printed, facts.tariff),
    ...findings.filter((finding) => !isTotal(finding)),
    ...unknownLineFindings(printed, facts.tariff),
  ];
}

/** Questions that the right bill answers: credit that is gone because a settlement closed the bank. */
export function unanswered(findings: readonly Finding[], { month }: BillRun): readonly Finding[] {
  const isClosed = month.passbook?.isClosed === true;
  return isClosed ? findings.filter(({ code }) => code !== 'check/credit-gone') : findings;
}

/** What surprises on a right bill. */
export function surprisesOfBill(
  { printed, facts, basis }: Checked,
  right: BillRun,
  { printedBefore, before, yearBefore, app, connected }: BillSurroundings,
): readonly Surprise[] {
  const run = (own: BillFacts): Figures | null => runBill(own, basis)?.figures ?? null;
  const { figures, month } = right;
  const known = { printed, printedBefore, before, yearBefore, connected, app };
  return surprisesOf({ facts, right: figures, month, run, ...known });
}
