import {
  decimalPlaces,
  decimalToWhole,
  givenFigure,
  isDecimalText,
  parseDay,
  type DayNumber,
  type Figure,
  type Finding,
} from './quantity/index.ts';
import type { LedgerRule, Tariff } from './tariff/index.ts';
import type { LedgerStates } from './settlement/index.ts';
import { periodFinding } from './period-findings.ts';

/** What an account begins with: the bank of unit netting, or ledgers. */
export interface Opened {
  readonly value: { readonly credit: Figure; readonly ledgers: LedgerStates };
  readonly findings: readonly Finding[];
}

/** The ledgers that any of the settlement rules declares, by id. */
function ledgersOf({ document }: Tariff): ReadonlyMap<string, LedgerRule> {
  const all = document.settlements.flatMap((rule) => (rule.scheme === 'ledgers' ? (rule.ledgers ?? []) : []));
  return new Map(all.map((ledger) => [ledger.id, ledger]));
}

function creditFigure(text: string): Figure {
  const words = { id: 'opening', label: 'Credit brought forward', unit: 'kWh', clause: 'account' } as const;
  return givenFigure({ ...words, numerator: decimalToWhole(text, 3), denominator: 1000 });
}

/**
 * Read the balances that an account brings forward.
 *
 * @param opening  by ledger, or "credit" for the bank of unit netting
 * @param first    first day of the first period: the day they were born, for all that is known
 */
export function openLedgers(
  opening: Readonly<Record<string, string>>,
  tariff: Tariff,
  first: string | undefined,
): Opened {
  const known = ledgersOf(tariff);
  const hasBank = tariff.document.settlements.some(({ scheme }) => scheme === 'unit-netting');
  const names = [...known.keys(), ...(hasBank && !known.has('credit') ? ['credit'] : [])];
  const findings: Finding[] = [];
  const states: Record<string, LedgerStates[string]> = {};
  let credit = '0';
  for (const [id, text] of Object.entries(opening)) {
    const path = ['account', 'opening', id];
    const places = known.get(id)?.unit === 'money' ? 8 : 3;
    if (!names.includes(id)) {
      const list = names.map((name) => `"${name}"`).join(', ') || 'none';
      findings.push(periodFinding('period/unknown-ledger', { path }, { name: id, known: list }));
    } else if (
      !isDecimalText(text) ||
      text.startsWith('-') ||
      decimalPlaces(text) > places ||
      text.length > 13
    ) {
      findings.push(periodFinding('period/not-a-quantity', { path }, { name: id, value: text }));
    } else if (!known.has(id)) credit = text;
    else {
      const born = (first === undefined ? null : parseDay(first)) ?? (0 as DayNumber);
      const unitPlaces = known.get(id)?.unit === 'money' ? decimalPlaces(text) : 3;
      const amount = decimalToWhole(text, unitPlaces);
      const lots = amount === 0 ? [] : [{ born, amount }];
      states[id] = { lots, denominator: 10 ** unitPlaces, creditSince: amount === 0 ? null : born };
    }
  }
  return { value: { credit: creditFigure(credit), ledgers: states }, findings };
}
