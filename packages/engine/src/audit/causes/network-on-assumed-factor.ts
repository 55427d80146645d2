import { isDecimalText, periodDays, roundLargeQuotient, type Quotient } from '../../quantity/index.ts';
import { operandsOf, priceAt, type Charge, type TariffDocument } from '../../tariff/index.ts';
import type { Cause, CauseContext, Variant } from '../cause.ts';
import { versionsDuring } from '../charge-basis.ts';
import { FIGURE } from '../figure-names.ts';
import { thousandths, withShown, withUnits, type BillFacts } from '../facts.ts';
import { lineRounding, rateFor, times } from '../solved-number.ts';

const HOURS = 24;
/** The factor that the project reference assumes; any other is worked out from the printed line. */
const USUAL_PERCENT = '19';
/** Decimals of a percentage that somebody may have set. */
const PLACES = 2;

type PerUnit = Extract<Charge, { kind: 'per-unit' }>;

/** Quantities of units made: generation itself, and what is worked out from it. */
function ofGeneration({ settlements }: TariffDocument): ReadonlySet<string> {
  const names = new Set(['generation']);
  for (const rule of settlements) {
    for (const one of rule.scheme === 'ledgers' ? (rule.quantities ?? []) : [])
      if (one.is !== 'netting' && operandsOf(one).some((name) => names.has(name))) names.add(one.id);
  }
  return names;
}

/** Charges of the period that ask for money for each unit made. */
function networkCharges(facts: BillFacts): readonly PerUnit[] {
  const made = ofGeneration(facts.tariff);
  return versionsDuring(facts)
    .flatMap(({ charges }) => charges)
    .filter((charge) => charge.kind === 'per-unit')
    .filter(({ on, rate, inTotal }) => made.has(on) && !rate.startsWith('-') && inTotal !== false);
}

/** What the plant would make at full power all the time, in units for each percent of it. */
function atOnePercent({ powers, period }: BillFacts): Quotient | null {
  const power = powers['plant-capacity'] ?? 0;
  return power === 0 ? null : { numerator: power * HOURS * periodDays(period), denominator: 100_000 };
}

function rateNumber({ tariff, period }: BillFacts, rate: string): string | null {
  if (isDecimalText(rate)) return rate;
  const price = priceAt(tariff, rate, period);
  return 'text' in price ? price.text : null;
}

/** The percentage that a printed line comes to. */
function solved(facts: BillFacts, charge: PerUnit, { printed }: CauseContext): string | null {
  const [amount, full, rate] = [
    printed.get(FIGURE.line(charge.id)),
    atOnePercent(facts),
    rateNumber(facts, charge.rate),
  ];
  if (amount === undefined || full === null || rate === null) return null;
  return rateFor(amount, times(rate, full), { rounding: lineRounding(facts.tariff, charge), most: PLACES });
}

/** Units made replaced by a percentage of full power; what the meters show stays. */
function assumed(facts: BillFacts, percent: string, fitted: readonly string[]): readonly Variant[] {
  const full = atOnePercent(facts);
  const { import: taken = 0, export: given = 0, generation: made } = facts.units;
  if (full === null || made === undefined) return [];
  const units = times(percent, full);
  const whole = roundLargeQuotient(BigInt(units.numerator) * 1000n, BigInt(units.denominator), 'half-up');
  const shown: Record<string, Quotient> = { [FIGURE.units('generation')]: thousandths(made) };
  if (made >= given) {
    shown[FIGURE.units('self-consumption')] = thousandths(made - given);
    shown[FIGURE.units('total-use')] = thousandths(taken + made - given);
  }
  const own = withUnits(facts, { generation: Number.parseInt(whole.toString(), 10) });
  const what = `Charges on generation are taken on ${percent} % of full power in place of the meter`;
  return [{ id: percent, what, facts: withShown(own, shown), fitted }];
}

/** C38: a charge for each unit made is taken on an assumed factor of capacity although the units are metered. */
export const NETWORK_ON_ASSUMED_FACTOR: Cause = {
  id: 'network-on-assumed-factor',
  name: 'Charge on an assumed capacity factor',
  stage: 'charges',
  evidence: [
    'photos of the generation meter at both ends, and its commissioning report',
    'the clause that says when an assumed factor is allowed',
  ],
  source:
    'C38, Why a net-metered bill is wrong, or right but surprising, project reference, 2025; a network charge by capacity factor, DT Next, 2024',
  variants: (facts, context) => {
    const charges = networkCharges(facts);
    if (charges.length === 0) return [];
    const found = charges.flatMap((charge) => {
      const percent = solved(facts, charge, context);
      return percent === null ||
        percent === USUAL_PERCENT ||
        !/[1-9]/.test(percent) ||
        percent.startsWith('-')
        ? []
        : assumed(facts, percent, [FIGURE.line(charge.id)]);
    });
    return [...assumed(facts, USUAL_PERCENT, []), ...found];
  },
};
