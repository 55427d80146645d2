import { decimalPlaces, decimalToWhole, wholeToDecimal, type Finding } from './quantity/index.ts';
import type { SettlementRule, Tariff } from './tariff/index.ts';
import { quoteFinding, type QuoteInput } from './quote/index.ts';

/** A largest plant in watts, with the words for it. */
interface Limit {
  readonly watts: number;
  readonly words: string;
}

const plain = (watts: number): string => wholeToDecimal(watts, 3).replace(/\.?0+$/, '');

/** The limits of a rule, each in watts, cut down where a percentage falls between. */
function limitsOf({ plantLimit }: SettlementRule, load: number | null): readonly Limit[] {
  const { most, percentOfLoad } = plantLimit ?? {};
  const limits: Limit[] = [];
  if (most !== undefined) limits.push({ watts: decimalToWhole(most, 3), words: `${most} kW` });
  if (percentOfLoad !== undefined && load !== null) {
    const places = decimalPlaces(percentOfLoad);
    const watts = Math.floor((load * decimalToWhole(percentOfLoad, places)) / (100 * 10 ** places));
    limits.push({ watts, words: `${plain(watts)} kW, ${percentOfLoad} % of the sanctioned load` });
  }
  return limits;
}

/** The rule that is in force when the plant begins, as far as one is. */
function ruleAtStart({ settlements }: Tariff, start: number): SettlementRule | undefined {
  return settlements.find(({ period }) => period.from <= start && start < period.to)?.item;
}

/**
 * Whether the settlement of a tariff admits a plant, from the first day of the quote on.
 *
 * @param watts  of all modules
 * @example
 * plantLimitFindings({ settlements: [] }, { start: 0, watts: 4000, load: '4' }) //=> []
 */
export function plantLimitFindings(
  tariff: Tariff,
  { start, watts, load }: Pick<QuoteInput, 'start' | 'watts'> & { readonly load: string | undefined },
): readonly Finding[] {
  const rule = ruleAtStart(tariff, start);
  if (rule === undefined) return [];
  const over = limitsOf(rule, load === undefined ? null : decimalToWhole(load, 3)).filter(
    (limit) => watts > limit.watts,
  );
  const clause = rule.plantLimit?.clause ?? '';
  return over.map(({ words }) =>
    quoteFinding(
      'quote/plant-not-admitted',
      { path: ['plant', 'kWp'] },
      { kWp: plain(watts), limit: words, clause },
    ),
  );
}
