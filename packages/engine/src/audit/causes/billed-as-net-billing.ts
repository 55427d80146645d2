import type { Quotient } from '../../quantity/index.ts';
import type { Cause, CauseContext, Variant } from '../cause.ts';
import { netsUnits, unitLedgers } from '../charge-basis.ts';
import { exportRates } from '../export-rates.ts';
import { FIGURE } from '../figure-names.ts';
import { thousandths, withShown, withUnits, type BillFacts } from '../facts.ts';
import { lineRounding, negated, rateFor, roundedLine, times } from '../solved-number.ts';
import { unknownLines } from '../unknown-lines.ts';

/** One arrangement in place of netting: what is charged in full, and what is paid for apart from it. */
interface Arrangement {
  readonly id: string;
  readonly taken: number;
  readonly paid: number;
  readonly what: (rate: string) => string;
}

function arrangementsOf({ units }: BillFacts): readonly Arrangement[] {
  const { import: taken = 0, export: given = 0, generation: made } = units;
  if (given === 0) return [];
  const billing: Arrangement = {
    id: 'net-billing',
    taken,
    paid: given,
    what: (rate) => `Every unit imported is charged, and every unit given is paid at ${rate}`,
  };
  if (made === undefined || made < given) return [billing];
  const gross: Arrangement = {
    id: 'gross',
    taken: taken + made - given,
    paid: made,
    what: (rate) => `All use is charged, and every unit made is paid at ${rate}`,
  };
  return [billing, gross];
}

/** A rate, and the printed figures it was worked out from. */
interface Rate {
  readonly text: string;
  readonly fitted: readonly string[];
}

/** Rates that somewhere are lawful; and that of a line of the bill which the tariff does not have. */
function ratesOf(facts: BillFacts, context: CauseContext, paid: number): readonly Rate[] {
  const lawful = exportRates([facts.tariff, ...context.otherTariffs]).map((text) => ({ text, fitted: [] }));
  const [line] = unknownLines(facts, context.printed).filter(({ amount }) => amount.numerator < 0);
  if (line === undefined) return lawful;
  const rounding = lineRounding(facts.tariff, {});
  const text = rateFor(negated(line.amount), thousandths(paid), { rounding });
  if (text === null || lawful.some((rate) => rate.text === text)) return lawful;
  return [...lawful, { text, fitted: [FIGURE.line(line.charge)] }];
}

/** Nothing is set off: credit stays, and what is given or made is a line of money. */
function billed(facts: BillFacts, { taken, paid }: Arrangement, line: string, rate: string): BillFacts {
  const amount = roundedLine(times(rate, thousandths(paid)), lineRounding(facts.tariff, {}));
  const shown: Record<string, Quotient> = {
    [FIGURE.units('import')]: thousandths(facts.units['import'] ?? 0),
    [FIGURE.units('export')]: thousandths(facts.units['export'] ?? 0),
  };
  const ledgers = unitLedgers(facts);
  for (const id of ledgers) {
    const units = thousandths(facts.opening[id] ?? 0);
    shown[FIGURE.opening(id)] = units;
    shown[FIGURE.closing(id)] = units;
  }
  const opening = { ...facts.opening, ...Object.fromEntries(ledgers.map((id) => [id, 0])) };
  const own = withUnits({ ...facts, opening }, { import: taken, export: 0 });
  // Use worked out by somebody else would contradict what is charged in full.
  const units = Object.fromEntries(
    Object.entries(own.units).filter(([name]) => name !== 'self-consumption' && name !== 'total-use'),
  );
  const label = 'Units given, in money';
  const accountLines = [...facts.accountLines, { id: FIGURE.line(line), label, amount: negated(amount) }];
  return withShown({ ...own, units, accountLines }, shown);
}

/** C24: a net-metered account is billed as net billing, or gross. */
export const BILLED_AS_NET_BILLING: Cause = {
  id: 'billed-as-net-billing',
  name: 'Billed as net billing or gross',
  stage: 'netting',
  evidence: ['the agreement, which names the arrangement', 'earlier bills, on which units were set off'],
  source: 'C24, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts, context) => {
    if (!netsUnits(facts.tariff) || Object.keys(facts.units).some((name) => name.includes('@'))) return [];
    const unknown = unknownLines(facts, context.printed).find(({ amount }) => amount.numerator < 0);
    const line = unknown?.charge ?? 'export-credit';
    return arrangementsOf(facts).flatMap((arrangement) =>
      ratesOf(facts, context, arrangement.paid).map(({ text, fitted }): Variant => ({
        id: `${arrangement.id} ${text}`,
        what: arrangement.what(text),
        facts: billed(facts, arrangement, line, text),
        fitted,
      })),
    );
  },
};
