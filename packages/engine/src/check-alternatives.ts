import { isSameQuotient, signOf, wholeSteps, ZERO, type Quotient } from './quantity/index.ts';
import { FIGURE, thousandthsOf, unitLedgers, type BillFacts, type Figures } from './audit/index.ts';
import { runBill, type BillRun, type RunBasis } from './check-run.ts';

/** What is to be paid if so much was brought forward. */
export interface Alternative {
  /** The ledger of which nobody knows what it held: "credit" of unit netting. */
  readonly ledger: string;
  /** Thousandths brought forward. */
  readonly opening: number;
  readonly payable: Quotient;
}

const THOUSANDTH = { numerator: 1, denominator: 1000 } as const;

/** A balance that is enough: in units for everything imported, in money for the whole bill. */
function enoughOf(facts: BillFacts, ledger: string, without: BillRun): number {
  if (unitLedgers(facts).includes(ledger)) return facts.units['import'] ?? 0;
  const sum = without.figures.get('sum') ?? ZERO;
  return signOf(sum) > 0 ? wholeSteps(sum, THOUSANDTH, 'up') : 0;
}

interface Unknown {
  /** Ledgers of which nobody knows what they held. */
  readonly unknown: readonly string[];
  /** Figures of the printed bill, and of the one printed before it. */
  readonly known: readonly (Figures | null)[];
}

/**
 * What a bill comes to for each balance that may have been brought forward, where nobody knows which: none, what is known
 * of, and enough. The least balance for each amount, from none upwards, ledger by ledger.
 */
export function alternativesOf(
  facts: BillFacts,
  basis: RunBasis,
  { unknown, known: [printed, before] }: Unknown,
): readonly Alternative[] {
  const found: Alternative[] = [];
  for (const ledger of unknown) {
    const runOf = (amount: number): BillRun | null =>
      runBill({ ...facts, opening: { ...facts.opening, [ledger]: amount } }, basis);
    const without = runOf(0);
    if (without === null) continue;
    const balances = [
      0,
      facts.opening[ledger] ?? 0,
      thousandthsOf(printed?.get(FIGURE.opening(ledger))) ?? 0,
      thousandthsOf(before?.get(FIGURE.closing(ledger))) ?? 0,
      enoughOf(facts, ledger, without),
    ];
    for (const opening of [...new Set(balances)].sort((one, other) => one - other)) {
      const payable = runOf(opening)?.figures.get('payable');
      if (payable === undefined || found.some((one) => isSameQuotient(one.payable, payable))) continue;
      found.push({ ledger, opening, payable });
    }
  }
  return found;
}
