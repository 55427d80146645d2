import { givenFigure, wholeSteps, type Figure } from './quantity/index.ts';
import type { TariffDocument } from './tariff/index.ts';
import type { LedgerState } from './settlement/index.ts';
import type { Carried } from './month.ts';

/** Credit of unit netting that was brought forward, in thousandths, by what somebody says. */
export const givenCredit = (numerator: number, clause: string): Figure =>
  givenFigure({
    id: 'opening',
    label: 'Credit brought forward',
    unit: 'kWh',
    numerator,
    denominator: 1000,
    clause,
  });

const THOUSANDTH = { numerator: 1, denominator: 1000 } as const;

/**
 * What a ledger holds, in whole thousandths. Money can be held in finer parts: these are cut off here, and stay in what
 * is handed on unless a mistake puts another balance in its place.
 */
export function balanceOf({ lots, denominator }: LedgerState): number {
  const numerator = lots.reduce((sum, { amount }) => sum + amount, 0);
  return denominator === THOUSANDTH.denominator
    ? numerator
    : wholeSteps({ numerator, denominator }, THOUSANDTH, 'down');
}

/** The ledgers of a tariff by its rules, "credit" that of unit netting. */
export function ledgersOf({ settlements }: TariffDocument): readonly string[] {
  const ids = settlements.flatMap((rule) =>
    rule.scheme === 'unit-netting' ? ['credit'] : (rule.ledgers ?? []).map(({ id }) => id),
  );
  return [...new Set(ids)];
}

/** Balances that a bill hands on, by ledger, in thousandths: 0 where a ledger has not begun yet. */
export function balancesOf({ credit, chains }: Carried, tariff: TariffDocument): Record<string, number> {
  const held = chains.actual.ledgers;
  const all = [...new Set([...ledgersOf(tariff), ...Object.keys(held)])];
  const balances = all.map((id): readonly [string, number] => {
    const state = held[id];
    if (state !== undefined) return [id, balanceOf(state)];
    return [id, id === 'credit' ? (credit.numerator as number) : 0];
  });
  return Object.fromEntries(balances);
}
