import type { TemplateResult } from 'lit';
import type { Quote } from '@unitbook/engine';
import { upkeepText } from '../view/assumptions.ts';
import { renderFacts, renderItem, type Fact } from './paper-parts.ts';
import { countedText, paybackOn, type PaperView } from './paper-view.ts';

function priceFacts({ outlay }: Quote, { words, writing }: PaperView): readonly Fact[] {
  return outlay.items.map(({ item, amount, tax }) => [
    item,
    tax === 0 ? writing.cash(amount) : `${writing.cash(amount)}, ${words.labels.tax} ${writing.cash(tax)}`,
  ]);
}

/** The battery's own price, and what it comes to by itself: it is in the price and in every saving. */
function batteryFacts({ battery, input }: Quote, paper: PaperView): readonly Fact[] {
  const { words, writing } = paper;
  const { battery: said } = input.document;
  if (battery === null || said === undefined) return [];
  const own = { first: battery.payback, last: battery.paybackForGood };
  const alone = words.sentences.batteryAlone(writing.cash(battery.saving), paybackOn(own, paper));
  return [
    [words.labels.battery, `${writing.number(said.capacity)} kWh, ${writing.cash(battery.cost)}`],
    ['', alone],
  ];
}

/** What the state adds, to whom and when it is paid, and the payback where it is refused. */
function subsidyFacts(paper: PaperView): readonly Fact[] {
  const { quote, cases, words, writing } = paper;
  const { labels, sentences } = words;
  const { outlay, input } = quote;
  const { subsidy } = input.document;
  if (subsidy === undefined) return [[labels.subsidy, sentences.noSubsidy]];
  const to = subsidy.to === 'seller' ? sentences.sellerWord : sentences.customer;
  const without = cases.find(({ id }) => id === 'subsidy-refused')?.quote ?? null;
  return [
    [labels.subsidy, `${writing.cash(outlay.subsidy)} (${subsidy.source})`],
    ['', sentences.subsidyLater(countedText(subsidy.paidAfter, paper), to)],
    ['', without === null ? '' : sentences.withoutSubsidy(paybackOn(without.measures.simple, paper))],
  ];
}

/** Maintenance and replacements, and whether cleaning and an insurance are paid out of it. */
function upkeepFacts({ quote, words, writing }: PaperView): readonly Fact[] {
  const { labels, sentences } = words;
  const { document } = quote.input;
  const { cleaning, insurance } = document.upkeep;
  const said = (one: typeof cleaning): string =>
    one === undefined ? sentences.notSaid : sentences.ofUpkeep[one];
  return [
    [labels.upkeep, upkeepText(document, writing, words.assumptions)],
    [labels.cleaning, said(cleaning)],
    [labels.insurance, said(insurance)],
  ];
}

/** What it costs: the price item by item, the subsidy and when it comes, and upkeep. */
export function renderCosts(paper: PaperView): TemplateResult {
  const { quote, words, writing } = paper;
  const { labels, heads } = words;
  return renderItem(
    9,
    heads.costs,
    renderFacts([
      ...priceFacts(quote, paper),
      ...batteryFacts(quote, paper),
      [labels.price, writing.cash(quote.outlay.price)],
      ...subsidyFacts(paper),
      [labels.cashOnDayOne, writing.cash(quote.dayOne.cash)],
      ...upkeepFacts(paper),
    ]),
  );
}
