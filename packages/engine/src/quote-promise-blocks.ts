import { dayText, type Finding } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import type { EnergyPeriod } from './energy/index.ts';
import { nettingWindows } from './quote-netting-windows.ts';
import type { PreparedQuote } from './quote-prepare.ts';
import { promiseNames, type PeriodQuantities } from './quote-promised-columns.ts';
import { quoteFinding } from './quote/index.ts';

/** Names in words; of none: "no time blocks". */
const listed = (names: readonly string[]): string =>
  names.length === 0 ? 'no time blocks' : names.join(', ');

/** Time blocks and measures of the tariff of today that are not those of the quote. */
function otherBlocks({ profile }: PreparedQuote, { document }: Tariff): readonly Finding[] {
  const own = [...(profile?.blocks ?? []), ...(profile?.windows.map(({ id }) => id) ?? [])];
  const today = [
    ...(document.timeBlocks?.blocks.map(({ id }) => id) ?? []),
    ...nettingWindows(document).map(({ id }) => id),
  ];
  if (own.length === today.length && own.every((id, at) => id === today[at])) return [];
  const values = { own: listed(own), today: listed(today) };
  return [quoteFinding('quote/promise-other-blocks', { path: [] }, values)];
}

/** Units by time block and measure that are billed and that some periods do not tell. */
function unknownUnits(
  { profile }: PreparedQuote,
  energies: readonly EnergyPeriod[],
  quantities: readonly PeriodQuantities[],
): readonly Finding[] {
  const names = promiseNames(profile);
  const lacks = energies.filter((_, at) => names.some((name) => quantities[at]?.[name] === undefined));
  const [first] = lacks;
  if (first === undefined) return [];
  const missing = names.filter((name) => energies.some((_, at) => quantities[at]?.[name] === undefined));
  const values = {
    count: String(lacks.length),
    first: dayText(first.period.from),
    names: listed(missing),
    remedy: missing.some((name) => name.includes('@'))
      ? 'Read the registers of the rates for every period, and name each for its time block in the account.'
      : 'Readings do not tell what windows of time leave: compare the bills with those of the quote one by one.',
  };
  return [quoteFinding('quote/promise-by-blocks', { path: [] }, values)];
}

/**
 * What keeps a promise from being checked by time block and inside windows of time.
 *
 * @param energies    of the periods, and
 * @param quantities  what is known of each of them besides
 */
export function promiseBlockFindings(
  prepared: PreparedQuote,
  tariff: Tariff,
  energies: readonly EnergyPeriod[],
  quantities: readonly PeriodQuantities[],
): readonly Finding[] {
  const other = otherBlocks(prepared, tariff);
  return other.length > 0 ? other : unknownUnits(prepared, energies, quantities);
}
