import { html, nothing, type TemplateResult } from 'lit';
import { quotientText, type QuoteOrder } from '@unitbook/engine';
import { renderFacts, renderItem, type Fact } from './paper-parts.ts';
import type { PaperView } from './paper-view.ts';

/** A power in words; one that the words do not know as its tariff calls it. */
function powerName(name: string, powers: Readonly<Record<string, string>>): string {
  const known = Object.hasOwn(powers, name) ? powers[name] : undefined;
  return known ?? name.charAt(0).toUpperCase() + name.slice(1).replaceAll('-', ' ');
}

/** An order with its publisher and year, and since when it is in force. */
function orderText(order: QuoteOrder | null, { words: { sentences }, writing }: PaperView): string {
  if (order === null) return sentences.notSaid;
  const { title, publisher, year, from } = order;
  return sentences.inForce([title, publisher, year].join(', '), writing.day(from));
}

/** The days on which surplus is settled. */
function daysText({ ground: { surplus }, words: { sentences }, writing }: PaperView): string {
  const { days } = surplus;
  return days.length === 0 ? sentences.everyBill : days.map(writing.dayOfYear).join(', ');
}

/** The same, and with which bill it comes. */
function settledText(paper: PaperView): string {
  const { ground, words } = paper;
  const { inBill } = ground.surplus;
  const days = daysText(paper);
  return inBill === null ? days : `${days}${words.assumptions.apart}${words.sentences.inBill[inBill]}`;
}

/** The orders in force, what becomes of units given, when that is settled and what is paid. */
function groundFacts(paper: PaperView): readonly Fact[] {
  const { ground, words, writing } = paper;
  const { labels, sentences } = words;
  const { charges, settlement, arrangement, surplus } = ground;
  const rate = surplus.rate === null ? sentences.noSurplusRate : `${writing.money(surplus.rate)} / kWh`;
  return [
    [labels.charges, orderText(charges, paper)],
    [labels.settlement, orderText(settlement, paper)],
    [labels.arrangement, sentences.arrangements[arrangement]],
    [labels.settled, settledText(paper)],
    [labels.surplusRate, rate],
  ];
}

/** What the quote is worked out from: use, powers, tariff, orders, settlement. */
export function renderInputs(paper: PaperView): TemplateResult {
  const { quote, words, writing, tariff } = paper;
  const { labels, heads, sentences } = words;
  const { use, quantities } = quote.input.document;
  const powers = Object.entries(quantities).map(([name, kW]): Fact => [
    powerName(name, words.powers),
    `${writing.number(kW)} kW`,
  ]);
  return renderItem(
    2,
    heads.inputs,
    renderFacts([
      [labels.usedInAYear, `${writing.units(quote.years[0]?.use ?? 0)} kWh`],
      [labels.source, use.source === '' ? sentences.notSaid : use.source],
      ...powers,
      [labels.tariff, tariff],
      ...groundFacts(paper),
    ]),
  );
}

/** Units of surplus that are paid and that lapse, once they are worked out. */
function surplusFacts(paper: PaperView): readonly Fact[] {
  const { kept, ground, words, writing } = paper;
  if (kept === null) return [];
  const { labels } = words;
  const { rate } = ground.surplus;
  const price = rate === null ? '' : ` × ${writing.money(rate)}`;
  const units = (count: typeof kept.paid): string => `${writing.plain(count)} kWh`;
  return [
    ...(kept.paid.numerator > 0
      ? [[labels.surplusPaid, `${units(kept.paid)}${price}; ${daysText(paper)}`] as const]
      : []),
    ...(kept.lapsed.numerator > 0 ? [[labels.lapsed, units(kept.lapsed)] as const] : []),
  ];
}

/** Surplus: units, rate and date, and whether the plant makes more than is used. */
export function renderSurplus(paper: PaperView): TemplateResult {
  const { quote, words, writing } = paper;
  const [first] = quote.years;
  const { sentences } = words;
  const text =
    first === undefined || first.surplus === 0
      ? sentences.noSurplus
      : sentences.surplus(writing.units(first.exported), writing.cash(first.surplus));
  const isAbove = first !== undefined && first.use > 0 && first.generation > first.use;
  const above = isAbove ? sentences.aboveUse(quotientText(first.generation * 100, first.use, 0)) : '';
  return renderItem(
    8,
    words.heads.surplus,
    html`<p>${text}</p>
      ${renderFacts(surplusFacts(paper))} ${above === '' ? nothing : html`<p>${above}</p>`}`,
  );
}
