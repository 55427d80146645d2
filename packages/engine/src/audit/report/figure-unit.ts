import type { FigureUnit } from '../../quantity/index.ts';
import type { TariffDocument } from '../../tariff/index.ts';
import { groupOf, nameIn } from '../figure-names.ts';

function ledgerUnit({ settlements }: Pick<TariffDocument, 'settlements'>, id: string): FigureUnit | null {
  const rules = settlements.flatMap((rule) => (rule.scheme === 'ledgers' ? (rule.ledgers ?? []) : []));
  return rules.find((rule) => rule.id === id)?.unit ?? null;
}

/**
 * What a figure of a bill counts.
 *
 * @example
 * figureUnit('line.energy', { settlements: [] }) //=> "money"
 */
export function figureUnit(
  name: string,
  tariff: Pick<TariffDocument, 'settlements' | 'measures'>,
): FigureUnit {
  if (name === 'days') return 'day';
  if (name === 'load') return 'kW';
  switch (groupOf(name)) {
    case 'reading':
    case 'other':
      return 'ratio';
    case 'units':
      return tariff.measures?.[nameIn(name)]?.unit ?? 'kWh';
    case 'credit':
      return ledgerUnit(tariff, nameIn(name)) ?? 'kWh';
    case 'line':
    case 'account':
    case 'total':
      return 'money';
  }
}
