import {
  decimalToWhole,
  isDecimalText,
  periodDays,
  roundLargeQuotient,
  type Period,
} from './quantity/index.ts';
import { operandsOf, type SettlementRule, type TariffDocument, type TariffVersion } from './tariff/index.ts';
import { dayFactor, shapeOf, type ShapeLine } from './bill/index.ts';

/** Prices choose no limit: any number does in their place. */
const anyRate = (rate: string) => ({ text: isDecimalText(rate) ? rate : '0', clause: '' });

const THOUSAND = 1000n;

/** A limit of a line as the days of a period scale it, cut down to whole units. */
function scaledLimit(line: ShapeLine, limit: number, document: TariffDocument, period: Period): number {
  const rule = line.dayRule === null ? undefined : document.dayRules?.[line.dayRule];
  if (rule === undefined) return Math.floor(limit / 1000);
  const { numerator, denominator } = dayFactor(rule, period);
  const top = BigInt(limit) * BigInt(numerator);
  const bottom = THOUSAND * BigInt(denominator);
  const { limits } = rule;
  if (limits === undefined) return toNumber(top / bottom);
  const step = BigInt(decimalToWhole(limits.step, 3));
  const steps = roundLargeQuotient(top * THOUSAND, bottom * step, limits.mode);
  return toNumber((steps * step) / THOUSAND);
}

const toNumber = (value: bigint): number => Number.parseInt(value.toString(), 10);

/** Numbers of the settlement at which something changes: steps of choices, and every number it compares with. */
function settlementLimits(rule: SettlementRule | undefined): readonly number[] {
  if (rule?.scheme !== 'ledgers') return [];
  const texts = (rule.quantities ?? []).flatMap((definition) => [
    ...operandsOf(definition).filter((operand) => isDecimalText(operand)),
    ...(definition.is === 'choice' ? definition.steps.flatMap(({ upTo }) => upTo ?? []) : []),
  ]);
  return texts.filter((text) => text.length < 12).map((text) => Math.floor(decimalToWhole(text, 3) / 1000));
}

/**
 * The limits of a version and of the settlement in whole units: of slabs, tables, steps and choices, scaled by
 * the days of a period where a day rule does so; each also times the days, for limits of a day.
 *
 * @param version  of the charges, those of every season
 * @param rule     of the settlement, if any is in force
 * @returns        each once, in ascending order
 */
export function unitLimits(
  document: TariffDocument,
  version: TariffVersion,
  rule: SettlementRule | undefined,
  period: Period,
): readonly number[] {
  const seasons = new Set(Object.keys(document.seasons ?? {}));
  const { lines } = shapeOf(version, document, { rateOf: anyRate, seasons });
  const charged = lines.flatMap((line) =>
    line.tables
      .flatMap(({ limit, pieces }) => [limit, ...pieces.map((piece) => piece.limit)])
      .filter((limit) => limit !== Infinity)
      .map((limit) => scaledLimit(line, limit, document, period)),
  );
  const own = [...charged, ...settlementLimits(rule)].filter((limit) => limit >= 0);
  const all = [...own, ...own.map((limit) => limit * periodDays(period))];
  return [...new Set(all)].sort((a, b) => a - b);
}
