import { html, type TemplateResult } from 'lit';
import type { DrawSummary, Payback, Quote } from '@unitbook/engine';
import { assumptionsOf } from '../view/assumptions.ts';
import { isOwedAgain } from '../words/payback-text.ts';
import { renderFacts, renderItem, type Fact } from './paper-parts.ts';
import { paybackOn, rangeText, type PaperView } from './paper-view.ts';

/** How much more surplus is paid each year, where that is counted. */
function surplusFacts({ input }: Quote, { words: { assumptions }, writing }: PaperView): readonly Fact[] {
  const { surplus } = input.document.escalation;
  return surplus === undefined
    ? []
    : [[assumptions.surplus, assumptions.growing(writing.number(surplus.percent))]];
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

/** The range of the draws; they count to the first time that the price has come back. */
function drawnPayback(simple: Payback, draws: DrawSummary, paper: PaperView): string {
  const { sentences } = paper.words;
  const range = rangeText(draws, paper);
  const told = isOwedAgain(simple) ? sentences.atFirst(range) : range;
  return sentences.drawn(told, paper.writing.number(String(draws.count)));
}

/** The same of the saving of the first year: from the middle of all draws to what nine in ten reach. */
function drawnSaving(draws: DrawSummary | null, { words, writing }: PaperView): readonly string[] {
  if (draws === null) return [];
  const { p50, p90 } = draws.saving;
  const range = `${writing.about(p50)} – ${writing.about(p90)}`;
  return [words.sentences.drawn(range, writing.number(String(draws.count)))];
}

/** The answer at the head of the quote. */
export function renderPaperAnswer(paper: PaperView): TemplateResult {
  const { quote, words, writing, draws } = paper;
  const { labels } = words;
  const { simple, discounted, smallestBill } = quote.measures;
  const range = draws === null ? [] : [drawnPayback(simple, draws, paper)];
  return html`<dl class="facts boxed">
    <div>
      <dt>${labels.payback}</dt>
      <dd>
        ${[paybackOn(simple, paper), ...range, `${labels.discounted} ${paybackOn(discounted, paper)}`].join(words.assumptions.apart)}
      </dd>
    </div>
    <div>
      <dt>${labels.saving}</dt>
      <dd>
        ${[writing.cash(quote.years[0]?.saving ?? 0), ...drawnSaving(draws, paper)].join(words.assumptions.apart)}
      </dd>
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
