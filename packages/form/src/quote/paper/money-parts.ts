import { html, type TemplateResult } from 'lit';
import type { Quote } from '@unitbook/engine';
import { assumptionsOf, upkeepText } from '../view/assumptions.ts';
import { renderFacts, renderItem, type Fact } from './paper-parts.ts';
import { yearsText, type PaperView } from './paper-view.ts';

function priceFacts({ outlay }: Quote, { words, writing }: PaperView): readonly Fact[] {
  return outlay.items.map(({ item, amount, tax }) => [
    item,
    tax === 0 ? writing.cash(amount) : `${writing.cash(amount)}, ${words.labels.tax} ${writing.cash(tax)}`,
  ]);
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
    [labels.price, writing.cash(outlay.price)],
    [
      labels.subsidy,
      subsidy === undefined ? sentences.noSubsidy : `${writing.cash(outlay.subsidy)} (${subsidy.source})`,
    ],
    ['', subsidy === undefined ? '' : sentences.subsidyLater(writing.number(subsidy.paidAfter), to)],
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
      [labels.instalment, `${of(loan.instalment)}, ${sentences.instalments(String(loan.lines.length))}`],
      [labels.interest, sentences.interestTotal(of(loan.interest), of(loan.paid))],
      [labels.fees, loan.fees === 0 ? '' : of(loan.fees)],
    ]),
  );
}

function carbonFacts({ carbon, input }: Quote, { words, writing }: PaperView): readonly Fact[] {
  const { carbon: said } = input.document;
  if (carbon === null || said === undefined) return [];
  const kilograms = writing.number(carbon.year.split('.')[0] ?? '');
  return [[words.labels.carbon, `${kilograms} kg (${said.version}; ${said.variant})`]];
}

/** Everything that the figures hang on, with the reason of the rises behind them. */
export function renderAssumptions(paper: PaperView): TemplateResult {
  const { quote, words, writing, charges } = paper;
  const { document } = quote.input;
  const { basis } = document.escalation;
  const [rise, ...others] = assumptionsOf(
    document,
    { charges, tariff: '', words: words.assumptions },
    writing,
  );
  const why: Fact = [words.labels.reason, basis === '' ? words.sentences.notSaid : basis];
  const facts = [...(rise === undefined ? [] : [rise]), why, ...others, ...carbonFacts(quote, paper)];
  return renderItem(11, words.heads.assumptions, renderFacts(facts));
}

/** The answer at the head of the quote. */
export function renderPaperAnswer(paper: PaperView): TemplateResult {
  const { quote, words, writing, draws } = paper;
  const { labels, sentences } = words;
  const { simple, discounted, smallestBill } = quote.measures;
  const plain = yearsText(simple.first, paper);
  const range =
    draws === null
      ? ''
      : `; ${sentences.drawn(`${yearsText(draws.payback.p50, paper)} – ${yearsText(draws.payback.p90, paper)}`, writing.number(String(draws.count)))}`;
  return html`<dl class="facts boxed">
    <div>
      <dt>${labels.payback}</dt>
      <dd>${plain}${range}; ${labels.discounted} ${yearsText(discounted.first, paper)}</dd>
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
