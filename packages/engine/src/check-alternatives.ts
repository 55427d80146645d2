import { isSameQuotient, type Quotient } from './quantity/index.ts';
import { FIGURE, type BillFacts, type Figures } from './audit/index.ts';
import { runBill, type RunBasis } from './check-run.ts';

/** What is to be paid if so much was brought forward. */
export interface Alternative {
  /** The ledger of which nobody knows what it held: "credit" of unit netting. */
  readonly ledger: string;
  /** Thousandths brought forward. */
  readonly opening: number;
  readonly payable: Quotient;
}

/** Thousandths of a figure; none where it is finer. */
function wholeThousandths(value: Quotient | undefined): readonly number[] {
  if (value === undefined || typeof value.numerator === 'bigint') return [];
  const whole = (value.numerator * 1000) / value.denominator;
  return Number.isInteger(whole) ? [whole] : [];
}

/** Balances that may have been brought forward: none, what is known of, and enough for everything imported. */
function candidates(facts: BillFacts, ledger: string, known: readonly (Figures | null)[]): readonly number[] {
  const [printed, before] = known;
  const all = [
    0,
    facts.opening[ledger] ?? 0,
    ...wholeThousandths(printed?.get(FIGURE.opening(ledger))),
    ...wholeThousandths(before?.get(FIGURE.closing(ledger))),
    facts.units['import'] ?? 0,
  ];
  return [...new Set(all)].sort((one, other) => one - other);
}

/**
 * What a bill comes to for each balance that may have been brought forward, where nobody knows which: the least balance
 * for each amount, from none upwards.
 *
 * @param known  figures of the printed bill, and of the one printed before it
 */
export function alternativesOf(
  facts: BillFacts,
  basis: RunBasis,
  known: readonly (Figures | null)[],
): readonly Alternative[] {
  const [ledger] = Object.keys(facts.opening);
  if (ledger === undefined) return [];
  const found: Alternative[] = [];
  for (const opening of candidates(facts, ledger, known)) {
    const run = runBill({ ...facts, opening: { ...facts.opening, [ledger]: opening } }, basis);
    const payable = run?.figures.get('payable');
    if (payable === undefined || found.some((one) => isSameQuotient(one.payable, payable))) continue;
    found.push({ ledger, opening, payable });
  }
  return found;
}
