import {
  parseDay,
  type FlyerLine,
  type Quote,
  type QuoteResult,
  type TariffResult,
  type TariffDocument,
} from '@unitbook/engine';
import { CAUTIONS, ROOF_CAUTIONS } from './cautions.ts';
import { dayWords } from './day-words.ts';
import { assumptionLines } from './quote-assumptions.ts';
import { answerLines } from './quote-answer.ts';
import { comesToLines } from './quote-comes-to.ts';
import { quoteBatteryRows } from './quote-batteries.ts';
import { quoteCases, quoteSizeRows } from './quote-compared.ts';
import { quoteTariffs } from './quote-tariffs.ts';
import { flyerRows } from './quote-flyer.ts';
import { quoteMonths, quoteYears } from './quote-years.ts';
import { quoteWriter, type QuoteWriter } from './quote-writer.ts';
import type { PageNotation } from './notation.ts';
import { tariffHead } from './tariff-head.ts';
import { PAGE_WIDTH, wrap } from './text.ts';

/** What a page about a quote shows. */
export interface QuotePage {
  readonly result: QuoteResult;
  readonly tariff: TariffDocument;
  /** Whether other sizes are asked for. */
  readonly withSizes: boolean;
  /** The quote under other tariffs. */
  readonly others: readonly TariffResult[];
  /** The claims of a flyer; null: there is none. */
  readonly flyer: readonly FlyerLine[] | null;
}

const dayText = (text: string): string => {
  const day = parseDay(text);
  return day === null ? text : dayWords(day);
};

type Entry = readonly [label: string, text: string];

/** Who offers what to whom; what is not said is left out. */
function offerEntries({ input }: Quote, { number }: QuoteWriter): readonly Entry[] {
  const { offer, plant } = input.document;
  const until = offer.validUntil === undefined ? '' : `, stands until ${dayText(offer.validUntil)}`;
  const inverters = plant.kW === undefined ? [] : [`inverters ${number(plant.kW)} kW`];
  const parts = [...inverters, plant.modules, plant.inverter, plant.layout];
  const described = parts.filter((part) => part !== undefined);
  const seller = [offer.seller, offer.licence === undefined ? undefined : `licence ${offer.licence}`];
  const entries: readonly (readonly [string, string | undefined])[] = [
    ['Quote', `of ${dayText(offer.date)}${until}`],
    ['For', offer.customer],
    ['Site', offer.site],
    [
      'Seller',
      seller.every((part) => part === undefined)
        ? undefined
        : seller.filter((part) => part !== undefined).join(', '),
    ],
    ['Installer', offer.installer],
    ['Plant', [`${number(plant.kWp)} kWp`, ...described].join('; ')],
    ['Shade', plant.shading],
    ['Promise', offer.promise],
    ['Call', offer.contact],
  ];
  return entries.flatMap(([label, text]) => (text === undefined ? [] : [[label, text] as const]));
}

/** Whether what goes from one bill to the next is units; the first ledger tells, and it may hold money. */
function carriesUnits({ settlements }: TariffDocument): boolean {
  return settlements.every((rule) => rule.scheme === 'unit-netting' || rule.ledgers?.[0]?.unit !== 'money');
}

function section(title: string, lines: readonly string[]): readonly string[] {
  return ['', title, ...lines];
}

/** A quote in full: the answer first, then what it hangs on, its months and years, and what else could be. */
export function quotePage(
  { result, tariff, withSizes, flyer, others }: QuotePage,
  notation: PageNotation,
): readonly string[] {
  const { quote, cases, sizes, batteries, draws } = result;
  const writer = quoteWriter(quote, notation);
  const other = withSizes ? section('OTHER SIZES', quoteSizeRows(quote, sizes, writer)) : [];
  const stored =
    withSizes && batteries.length > 0
      ? section('OTHER BATTERIES', quoteBatteryRows(quote, batteries, writer))
      : [];
  return [
    ...tariffHead(tariff, 'A quote for a plant', offerEntries(quote, writer)),
    ...section('THE ANSWER', answerLines(result, writer)),
    ...section('WHAT IT HANGS ON', assumptionLines(quote, draws, writer)),
    ...section('YEAR 1, MONTH BY MONTH', quoteMonths(result, carriesUnits(tariff), writer)),
    ...section('YEAR BY YEAR', quoteYears(quote, writer)),
    ...section('WHAT IT COMES TO', comesToLines(quote, writer)),
    ...section('WHAT IF', quoteCases(quote, cases, writer)),
    ...(others.length === 0 ? [] : section('OTHER TARIFFS', quoteTariffs(quote, { tariff, others }, writer))),
    ...other,
    ...stored,
    ...(flyer === null ? [] : section('A FLYER BESIDE IT', flyerRows(flyer, writer))),
    '',
    ...wrap(ROOF_CAUTIONS, PAGE_WIDTH),
    CAUTIONS,
  ];
}
