import { addQuotients, dayText, wholeToDecimal, type Quotient } from './quantity/index.ts';
import { inForceDuring, type Tariff } from './tariff/index.ts';
import { keepPeriods } from './keep-periods.ts';
import type { UnitsMonth } from './keeper.ts';
import type { UnitsPeriod } from './periods-document.ts';
import type { PreparedQuote } from './quote-prepare.ts';
import { isOfUnitsTaken, ownUseOf, unitColumns } from './quote/index.ts';

/** The months of the first year with the plant, as periods that are kept in full. */
function firstPeriods(prepared: PreparedQuote): readonly UnitsPeriod[] {
  const { units, biller } = prepared;
  const own = ownUseOf(prepared);
  const names = unitColumns(own.blocks, own.measures);
  return biller.periods.slice(0, 12).map(({ from, to }, at) => ({
    from: dayText(from),
    to: dayText(to),
    quantities: Object.fromEntries(
      names.map((name, column) => [
        name,
        wholeToDecimal(units.withPlant[at * units.width + column] as number, 3),
      ]),
    ),
  }));
}

/** The quantity of the first charge for units taken, without its time block; null: there is no such charge. */
function quantityIn({ versions }: Tariff, { period }: UnitsMonth): string | null {
  const [version] = inForceDuring(versions, period);
  const charge = version?.item.charges.find(isOfUnitsTaken);
  return charge?.on.replace(/@.*$/, '') ?? null;
}

function unitsIn(tariff: Tariff, month: UnitsMonth): Quotient | null {
  const name = quantityIn(tariff, month);
  if (name === null) return null;
  if (month.passbook !== null && name === 'billed') return month.passbook.billed;
  const whole = month.quantities[name];
  if (whole !== undefined) return whole;
  const blocks = Object.entries(month.quantities).filter(([id]) => id.startsWith(`${name}@`));
  return blocks.length === 0 ? null : addQuotients(blocks.map(([, figure]) => figure));
}

/**
 * The units that each month of the first year is billed for: the quantity of the first charge for units taken, as the
 * bill lists them; of time blocks, all together.
 *
 * @param prepared  its units are made
 * @returns         units, exact; null for a month of which a bill has no such charge
 */
export function quoteBilledUnits(prepared: PreparedQuote): readonly (Quotient | null)[] {
  return quoteKeptUnits(prepared).billed;
}

/** Units of the first year that only bills kept in full tell. */
export interface KeptUnits {
  /** What each month is billed for; see {@link quoteBilledUnits}. */
  readonly billed: readonly (Quotient | null)[];
  /** Units of surplus that the settlements of the year pay. */
  readonly paid: Quotient;
  /** Units that are neither used nor paid: they lapse. */
  readonly lapsed: Quotient;
}

/** What a month moves out of its bank, or out of all ledgers of units. */
function movedIn({ passbook, ledgers }: UnitsMonth, key: 'paid' | 'lapsed'): readonly Quotient[] {
  if (passbook !== null) return [passbook[key]];
  return ledgers.filter(({ unit }) => unit !== 'money').map((ledger) => ledger[key]);
}

/**
 * The units of the first year as its bills with the plant have them: billed in each month, and those of surplus that
 * are paid and that lapse.
 *
 * @param prepared  its units are made
 */
export function quoteKeptUnits(prepared: PreparedQuote): KeptUnits {
  const { tariff, input } = prepared;
  const { quantities, settlementDay } = input.document;
  const account = {
    since: dayText(input.start),
    quantities,
    ...(settlementDay === undefined ? {} : { settlementDay }),
  };
  const periods = firstPeriods(prepared);
  const kept = keepPeriods({ account, tariff, periods, withSavings: false });
  const moved = (key: 'paid' | 'lapsed'): Quotient =>
    addQuotients(kept.value.flatMap((month) => movedIn(month, key)));
  return {
    billed: periods.map((_, at) => {
      const month = kept.value[at];
      return month === undefined ? null : unitsIn(tariff, month);
    }),
    paid: moved('paid'),
    lapsed: moved('lapsed'),
  };
}
