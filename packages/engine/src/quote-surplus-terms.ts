import { isDecimalText, type DayNumber } from './quantity/index.ts';
import { inForceDuring, type Tariff, type TariffDocument } from './tariff/index.ts';
import { lastDayOfYear } from './settlement/index.ts';
import type { PreparedQuote } from './quote-prepare.ts';
import { lifePeriods, rateBeforeRises, type QuoteInput } from './quote/index.ts';

/** An order that a tariff is from: where it is published, and since when it is in force. */
export interface QuoteOrder {
  readonly title: string;
  readonly publisher: string;
  /** Of publication, or "n.d." */
  readonly year: string;
  readonly from: DayNumber;
}

/** When and how surplus is settled as the plant begins. */
export interface SurplusTerms {
  /** Days of the year as mm-dd whose bill settles; empty: every bill does, or nothing is kept. */
  readonly days: readonly string[];
  /** Money for a unit, before it rises; null: nothing is paid, or not one rate that stays. */
  readonly rate: string | null;
  /** Whether it comes with the bill that settles or with the next one; null: nothing is paid. */
  readonly inBill: 'same' | 'next' | null;
}

/**
 * What becomes of units given from bill to bill: they are set off against units taken, gathered and paid, or credited
 * in money; or nothing is carried.
 */
export type Arrangement = 'units' | 'paid' | 'money' | 'none';

/** The ground of a quote in its tariff: the orders in force as the plant begins, and how surplus is settled. */
export interface QuoteGround {
  readonly charges: QuoteOrder | null;
  readonly settlement: QuoteOrder | null;
  readonly arrangement: Arrangement;
  readonly surplus: SurplusTerms;
}

type Rule = TariffDocument['settlements'][number];

/** What is in force in the first month. */
function atStart<Item>(input: QuoteInput, dated: Parameters<typeof inForceDuring<Item>>[0]) {
  const [month] = lifePeriods({ start: input.start, years: 1 });
  return month === undefined ? undefined : inForceDuring(dated, month)[0];
}

/** The source that a clause begins with. */
function orderOf(
  { sources }: TariffDocument,
  one:
    { readonly item: { readonly clause: string }; readonly period: { readonly from: DayNumber } } | undefined,
): QuoteOrder | null {
  const source = sources[one?.item.clause.split(' ')[0] ?? ''];
  if (one === undefined || source === undefined) return null;
  const { title, publisher, year } = source;
  return { title, publisher, year, from: one.period.from };
}

/** The days named by a close; those that the account tells are told by the quote. */
function daysOf(on: string | readonly string[], { document, start }: QuoteInput): readonly string[] {
  if (typeof on !== 'string') return on;
  if (on === 'anniversary') return [lastDayOfYear(start)];
  if (on === 'chosen') return document.settlementDay === undefined ? [] : [document.settlementDay];
  return on === 'every-period' ? [] : [on];
}

interface Payment {
  readonly rate?: string | undefined;
  readonly inBill?: 'same' | 'next' | undefined;
}

/** The closes of a rule and what they pay for units; money that is put by has no rate. */
function closesOf(rule: Rule): {
  readonly on: readonly (string | readonly string[])[];
  readonly paid: readonly Payment[];
} {
  if (rule.scheme === 'unit-netting') {
    const { on, surplus, rate, inBill } = rule.close;
    return { on: [on], paid: surplus === 'paid' ? [{ rate, inBill }] : [] };
  }
  const closed = (rule.ledgers ?? []).filter(({ close }) => close !== undefined);
  return {
    on: closed.flatMap(({ close }) => (close === undefined ? [] : [close.on])),
    paid: closed.flatMap(({ unit, payment }) => (unit === 'money' || payment === undefined ? [] : [payment])),
  };
}

function surplusTerms(input: QuoteInput, document: TariffDocument, rule: Rule | undefined): SurplusTerms {
  if (rule === undefined) return { days: [], rate: null, inBill: null };
  const { on, paid } = closesOf(rule);
  const [first] = paid;
  const rate = first?.rate === undefined ? '' : rateBeforeRises(document, first.rate);
  return {
    days: [...new Set(on.flatMap((one) => daysOf(one, input)))].sort(),
    rate: paid.length === 1 && isDecimalText(rate) ? rate : null,
    inBill: first?.inBill ?? null,
  };
}

/** By what is kept from bill to bill: units before money, since what money is paid for was units first. */
function arrangementOf(rule: Rule | undefined): Arrangement {
  if (rule?.scheme === 'unit-netting') return 'units';
  const ledgers = rule?.ledgers ?? [];
  const ofUnits = ledgers.filter(({ unit }) => unit !== 'money');
  // A balance that a later bill uses up is told by what it keeps of it.
  if (ofUnits.some(({ keeps }) => keeps !== undefined)) return 'units';
  if (ofUnits.length > 0) return 'paid';
  return ledgers.length > 0 ? 'money' : 'none';
}

/**
 * What a quote has from its tariff and has to name: the orders in force as the plant begins, on which days of the year
 * surplus is settled, and what a unit of it is paid.
 *
 * @param prepared  its tariff and its document are taken
 */
export function quoteGround({ input, tariff }: Pick<PreparedQuote, 'input' | 'tariff'>): QuoteGround {
  const { document, versions, settlements }: Tariff = tariff;
  const rule = atStart(input, settlements);
  return {
    charges: orderOf(document, atStart(input, versions)),
    settlement: orderOf(document, rule),
    arrangement: arrangementOf(rule?.item),
    surplus: surplusTerms(input, document, rule?.item),
  };
}
