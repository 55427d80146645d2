import { parseDay, quotientText, type DrawSummary, type Quote, type QuoteDocument } from '@unitbook/engine';
import { dayWords } from './day-words.ts';
import { headEntry } from './head-entry.ts';
import { afterStart } from './quote-answer.ts';
import type { QuoteWriter } from './quote-writer.ts';

type Entry = readonly [label: string, text: string];

/** Why a figure was taken; nothing where nothing is said. */
const basisWords = (basis = ''): string => (basis.trim() === '' ? '' : `. Basis: ${basis}`);

/** "a; b", without what is empty. */
const joined = (parts: readonly string[]): string => parts.filter((part) => part !== '').join('; ');

/** A yearly change in words; none where nothing changes. */
function yearly(percent: string | undefined, { number }: QuoteWriter): string {
  if (percent === undefined || /^-?0+(\.0+)?$/.test(percent)) return 'the same every year';
  const sign = percent.startsWith('-') ? '' : '+';
  return `${sign}${number(percent)} % a year`;
}

function useText({ years, input }: Quote, writer: QuoteWriter): string {
  const { use } = input.document;
  const filled = input.filled.length === 0 ? '' : 'months marked * have no bill and were filled';
  const units = `${writer.units(years[0]?.use ?? 0)} units in year 1, ${yearly(use.growth, writer)}`;
  return `${joined([units, filled])}. Source: ${use.source}`;
}

function madeText({ years, input }: Quote, writer: QuoteWriter): string {
  const { document, watts } = input;
  const made = years[0]?.generation ?? 0;
  const { first, later, source } = document.degradation;
  const loses =
    first === later
      ? `${writer.number(first)} % less each year`
      : `${writer.number(first)} % less in year 2, ${writer.number(later)} % each year after`;
  // Wh over W are kWh over kWp.
  const each = writer.number(quotientText(made, watts, 0));
  const worn = source === undefined ? '' : `; of wear: ${source}`;
  return (
    `${writer.units(made)} units in year 1, ${each} for each kWp; ${loses}. ` +
    `Source: ${document.generation.source}${worn}`
  );
}

function ownUseText({ ownUse, years, input }: Quote, { number, units }: QuoteWriter): string {
  const { selfUse } = input.document;
  if (ownUse === 'profile')
    return `${units(years[0]?.selfUse ?? 0)} units in year 1, by a profile of interval values`;
  if (selfUse?.share === undefined)
    return 'not known: the tables below are with nothing used at home, the least that a plant saves';
  return `${number(selfUse.share)} % of what is made in each month${basisWords(selfUse.basis)}`;
}

/** Charges by how they rise: "+2 % a year: energy, fixed". */
function ratesText({ escalation: { charges, surplus, basis } }: QuoteDocument, writer: QuoteWriter): string {
  const rises = Object.entries(charges).map(([id, percent]) => [id, yearly(percent, writer)] as const);
  const groups = [...new Set(rises.map(([, rise]) => rise))].map((rise) => {
    const ids = rises.filter(([, own]) => own === rise).map(([id]) => id);
    return `${rise}: ${ids.join(', ')}`;
  });
  const paid =
    surplus === undefined
      ? []
      : [
          `${yearly(surplus.percent, writer)}: what surplus is paid, rounded to ${writer.number(surplus.step)}`,
        ];
  const risen = [...groups, ...paid];
  const all = risen.length === 0 ? 'none rises' : joined([...risen, 'others stay as they are']);
  return `${all}${basisWords(basis)}`;
}

function priceText({ outlay, input }: Quote, { money, amount, number }: QuoteWriter): string {
  const { price, battery } = input.document;
  const items = outlay.items.map(({ item, amount: plain, tax }, at) => {
    const percent = price[at]?.tax;
    const taxed = tax === 0 || percent === undefined ? '' : ` + ${money(tax)} tax (${number(percent)} %)`;
    return `${item} ${money(plain)}${taxed}`;
  });
  const stored = battery === undefined ? [] : [`battery ${amount(battery.cost)}`];
  return `${money(outlay.price)}: ${[...items, ...stored].join(', ')}`;
}

/** Whether something is paid out of the upkeep. */
const OF_UPKEEP = { included: 'in it', 'not-included': 'not in it', 'not-said': 'not said' } as const;

function upkeepText({ upkeep, battery }: QuoteDocument, writer: QuoteWriter): string {
  const next = battery?.replacement === undefined ? [] : [{ item: 'Battery', ...battery.replacement }];
  const replaced = [...upkeep.replacements, ...next].map(
    ({ item, year, amount }) => `${item} in year ${year}: ${writer.amount(amount)}`,
  );
  return joined([
    `${writer.amount(upkeep.perYear)} in year 1, ${yearly(upkeep.growth, writer)}`,
    `cleaning: ${OF_UPKEEP[upkeep.cleaning ?? 'not-said']}, insurance: ${OF_UPKEEP[upkeep.insurance ?? 'not-said']}`,
    ...replaced,
  ]);
}

function subsidyText({ outlay, input }: Quote, { money }: QuoteWriter): string {
  const { subsidy } = input.document;
  if (subsidy === undefined) return 'none';
  return `${money(outlay.subsidy)} ${afterStart(subsidy.paidAfter)}, to the ${subsidy.to}. Source: ${subsidy.source}`;
}

const PAYABLE = {
  'as-billed': 'rounded to what is payable, as the tariff says',
  'before-rounding': 'as their lines come to, before they are rounded to what is payable',
} as const;

function uncertainText(
  { uncertainty }: QuoteDocument,
  draws: DrawSummary | null,
  { number }: QuoteWriter,
): string {
  if (uncertainty === undefined) return 'not said: no range can be given';
  const { generation, yearToYear = '0', use, escalation, degradation, policy, seed = '1' } = uncertainty;
  const sigmas =
    `one sigma: generation ${number(generation)} %, a year against others ${number(yearToYear)} %, ` +
    `use ${number(use)} %; rises ${number(escalation)} and wear ${number(degradation)} percentage points`;
  const may =
    policy === undefined
      ? ''
      : `"${policy.name}" comes within the life with a chance of ${number(policy.percent)} %`;
  const drawn = draws === null ? 'nothing was drawn' : `${number(String(draws.count))} draws, seed ${seed}`;
  return joined([sigmas, may, drawn]);
}

/** The day of the year that the account chose for its settlement, where the quote says one. */
function settledEntry({ settlementDay }: QuoteDocument): readonly Entry[] {
  const day = settlementDay === undefined ? null : parseDay(`2000-${settlementDay}`);
  // Of a day of every year the year says nothing.
  return day === null
    ? []
    : [['Settled', `on ${dayWords(day).replace(/ 2000$/, '')} of each year, the day chosen`]];
}

/** What the figures of a quote hang on, each with where it is from. */
export function assumptionLines(
  quote: Quote,
  draws: DrawSummary | null,
  writer: QuoteWriter,
): readonly string[] {
  const { document, years, start } = quote.input;
  const entries: readonly Entry[] = [
    [
      'Life',
      `${String(years)} years from ${dayWords(start)}; money of later years discounted at ${writer.number(document.discountRate)} % a year`,
    ],
    ['Use', useText(quote, writer)],
    ['Made', madeText(quote, writer)],
    ['Own use', ownUseText(quote, writer)],
    ['Rates', ratesText(document, writer)],
    ['Bills', PAYABLE[document.payable]],
    ...settledEntry(document),
    ['Price', priceText(quote, writer)],
    ['Subsidy', subsidyText(quote, writer)],
    ['Upkeep', upkeepText(document, writer)],
    ['Uncertain', uncertainText(document, draws, writer)],
  ];
  return entries.flatMap(([label, text]) => headEntry(label, text));
}
