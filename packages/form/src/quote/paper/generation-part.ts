import type { TemplateResult } from 'lit';
import { lowGeneration, quotientText, type QuoteDocument } from '@unitbook/engine';
import { renderFacts, renderItem } from './paper-parts.ts';
import type { PaperView } from './paper-view.ts';

/** How sure the generation is: over the life, and from year to year where that is said. */
function sigmasOf(
  { generation, yearToYear }: NonNullable<QuoteDocument['uncertainty']>,
  paper: PaperView,
): string {
  const said = [generation, ...(yearToYear === undefined ? [] : [yearToYear])];
  return said.map((percent) => `${paper.writing.number(percent)}\u00a0%`).join(', ');
}

/** What is made at least in nine cases of ten, or that the quote does not say how sure it is. */
function lowCaseText(paper: PaperView): string {
  const { quote, words, writing } = paper;
  const low = lowGeneration(quote);
  const { uncertainty } = quote.input.document;
  if (low === null || uncertainty === undefined) return words.sentences.notSaid;
  const year = low.year === null ? '' : writing.units(low.year);
  return words.sentences.lowCase(writing.units(low.mean), year, sigmasOf(uncertainty, paper));
}

/** What the plant makes: the year, each kWp, where it is from, the low case, and wear. */
export function renderGeneration(paper: PaperView): TemplateResult {
  const { quote, words, writing } = paper;
  const { labels, heads, sentences } = words;
  const { generation, degradation, uncertainty } = quote.input.document;
  const made = quote.years[0]?.generation ?? 0;
  const each = sentences.perKilowatt(writing.number(quotientText(made, quote.input.watts, 0)));
  // Where a quote says how sure it is, what it names is the middle: half of all cases make more.
  const middle = uncertainty === undefined ? '' : ' (P50)';
  return renderItem(
    4,
    heads.generation,
    renderFacts([
      [labels.madeInAYear, `${writing.units(made)} kWh${middle}, ${each}`],
      [labels.source, generation.source === '' ? sentences.notSaid : generation.source],
      [labels.lowCase, lowCaseText(paper)],
      ['', sentences.wear(writing.number(degradation.first), writing.number(degradation.later))],
    ]),
  );
}
