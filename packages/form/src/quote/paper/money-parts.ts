import { html, type TemplateResult } from 'lit';
import type { Quote } from '@unitbook/engine';
import { assumptionsOf, upkeepText } from '../view/assumptions.ts';
import { renderFacts, renderItem, type Fact } from './paper-parts.ts';
import { countedText, rangeText, yearsText, type PaperView } from './paper-view.ts';

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
  const alone = words.sentences.batteryAlone(writing.cash(battery.saving), yearsText(battery.payback, paper));
  return [
    [words.labels.battery, `${writing.number(said.capacity)} kWh, ${writing.cash(battery.cost)}`],
    ['', alone],
  ];
}

/** How much more surplus is paid each year, where that is counted. */
function surplusFacts({ input }: Quote, { words: { assumptions }, writing }: PaperView): readonly Fact[] {
  const { surplus } = input.document.escalation;
  return surplus === undefined
    ? []
    : [[assumptions.surplus, assumptions.growing(writing.number(surplus.percent))]];
}

/** What it costs: the price item by item, the subsidy and when it comes, and upkeep. */
export function renderCosts(paper: PaperView): TemplateResult {
  const { quote, words, writing } = paper;
  const { labels, heads, sentences } = words;
  const { outlay, dayOne, input } = quote;
  const { subsidy } = input.document;
  const to = subsidy?.to === 'seller' ? sentences.sellerWord : sentences.customer;
  const facts: readonly Fact[] = [
    ...priceFacts(quote, paper),
    ...batteryFacts(quote, paper),
    [labels.price, writing.cash(outlay.price)],
    [
      labels.subsidy,
      subsidy === undefined ? sentences.noSubsidy : `${writing.cash(outlay.subsidy)} (${subsidy.source})`,
    ],
    ['', subsidy === undefined ? '' : sentences.subsidyLater(countedText(subsidy.paidAfter, paper), to)],
    [labels.cashOnDayOne, writing.cash(dayOne.cash)],
    [labels.upkeep, upkeepText(input.document, writing, words.assumptions)],
  ];
  return renderItem(9, heads.costs, renderFacts(facts));
}

/** The loan with its interest, or that there is none. */
export function renderLoanPart({ quote, words, writing }: PaperView): TemplateResult {
  const { labels, heads, sentences } = words;
  const { loan, dayOne, input } = quote;
  if (loan === null) return renderItem(10, heads.loan, html`<p>${sentences.noLoan}</p>`);
  const of = (amount: number): string => writing.share({ numerator: amount, denominator: 10 ** loan.places });
  return renderItem(
    10,
    heads.loan,
    renderFacts([
      [labels.borrowed, writing.cash(dayOne.borrowed)],
      [labels.rate, `${writing.number(input.document.loan?.rate ?? '')} %`],
      [
        labels.instalment,
        `${of(loan.instalment)}, ${sentences.instalments({ text: String(loan.lines.length), count: loan.lines.length })}`,
      ],
      [labels.interest, sentences.interestTotal(of(loan.interest), of(loan.paid))],
      [labels.fees, loan.fees === 0 ? '' : of(loan.fees)],
    ]),
  );
}

function carbonFacts({ carbon, input }: Quote, { words, writing }: PaperView): readonly Fact[] {
  const { carbon: said } = input.document;
  if (carbon === null || said === undefined) return [];
  const kilograms = writing.number(carbon.year.split('.')[0] ?? '');
  return [
    [words.labels.carbon, `${kilograms} kg (${said.version}${words.assumptions.apart}${said.variant})`],
  ];
}

/** Everything that the figures hang on, with the reason of the rises behind them. */
export function renderAssumptions(paper: PaperView): TemplateResult {
  const { quote, words, writing, charges } = paper;
  const { document } = quote.input;
  const { basis } = document.escalation;
  const ownUse = quote.ownUse === 'profile' ? { ownUse: words.assumptions.byIntervals } : {};
  const [rise, ...others] = assumptionsOf(
    document,
    { charges, tariff: '', words: words.assumptions, ...ownUse },
    writing,
  );
  const why: Fact = [words.labels.reason, basis === '' ? words.sentences.notSaid : basis];
  const facts = [
    ...(rise === undefined ? [] : [rise]),
    ...surplusFacts(quote, paper),
    why,
    ...others,
    ...carbonFacts(quote, paper),
  ];
  return renderItem(11, words.heads.assumptions, renderFacts(facts));
}

/** The answer at the head of the quote. */
export function renderPaperAnswer(paper: PaperView): TemplateResult {
  const { quote, words, writing, draws } = paper;
  const { labels, sentences } = words;
  const { simple, discounted, smallestBill } = quote.measures;
  const plain = yearsText(simple.first, paper);
  const range =
    draws === null ? [] : [sentences.drawn(rangeText(draws, paper), writing.number(String(draws.count)))];
  return html`<dl class="facts boxed">
    <div>
      <dt>${labels.payback}</dt>
      <dd>
        ${[plain, ...range, `${labels.discounted} ${yearsText(discounted.first, paper)}`].join(words.assumptions.apart)}
      </dd>
    </div>
    <div>
      <dt>${labels.saving}</dt>
      <dd>${writing.cash(quote.years[0]?.saving ?? 0)}</dd>
    </div>
    <div>
      <dt>${labels.smallestBill}</dt>
      <dd>${writing.cash(smallestBill)}</dd>
    </div>
    <div>
      <dt>${labels.cashOnDayOne}</dt>
      <dd>${writing.cash(quote.dayOne.cash)}</dd>
    </div>
  </dl>`;
}
