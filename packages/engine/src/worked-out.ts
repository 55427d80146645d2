import { addDays, type Figure } from './quantity/index.ts';
import { inForceDuring, type Charge, type LedgersRule, type Tariff } from './tariff/index.ts';
import type { SettledMonth } from './month.ts';

/** The month as far as this asks. */
type Month = Pick<SettledMonth, 'bill' | 'quantities'>;

/** The quantities that a charge names. */
function namedBy(charge: Charge): readonly (string | undefined)[] {
  return [
    'on' in charge ? charge.on : undefined,
    'chosenBy' in charge ? charge.chosenBy : undefined,
    ...(charge.kind === 'percentage'
      ? charge.of.map((base) => (typeof base === 'string' ? undefined : base.recomputedOn))
      : []),
  ];
}

/** The quantities that the lines of a bill and the ledgers of its settlement name. */
function usedNames(tariff: Tariff, { bill }: Month, rule: LedgersRule): ReadonlySet<string | undefined> {
  const charges = tariff.versions.flatMap(({ item }) => {
    const lines = bill.lines.filter(({ version }) => version === item.name);
    return item.charges.filter(({ id }) => lines.some(({ figure }) => figure.id === id));
  });
  const ledgers = rule.ledgers ?? [];
  return new Set([
    ...charges.flatMap(namedBy),
    ...ledgers.flatMap(({ adds, keeps, payment }) => [adds, keeps, payment?.most]),
  ]);
}

/**
 * What the settlement worked out in a month and a charge or a ledger is counted on: what a reader needs to
 * follow the bill. What was given is left out, and so is what was needed on the way only.
 *
 * @param tariff  the month was billed under
 * @param month   under the scheme `ledgers`; under any other there is nothing
 * @returns       figures in the order in which they are worked out
 * @example
 * const period = { from: parseDay('2025-04-01'), to: parseDay('2025-05-01') };
 * workedOut({ versions: [], settlements: [] }, { bill: { period, lines: [] }, quantities: {} }) //=> []
 */
export function workedOut(tariff: Tariff, month: Month): readonly Figure[] {
  const { to } = month.bill.period;
  const rule = inForceDuring(tariff.settlements, { from: addDays(to, -1), to })[0]?.item;
  if (rule?.scheme !== 'ledgers') return [];
  const used = usedNames(tariff, month, rule);
  // What a netting left of a quantity is named after the netting: "net.import".
  const own = new Set((rule.quantities ?? []).map(({ id }) => id));
  return Object.entries(month.quantities).flatMap(([name, figure]) =>
    used.has(name) && own.has(name.split('.')[0] ?? '') ? [figure] : [],
  );
}
