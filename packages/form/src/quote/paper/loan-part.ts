import { html, type TemplateResult } from 'lit';
import { leftAfterInstalment, netInMonth, priceWithLoan, type LoanSchedule } from '@unitbook/engine';
import { renderFacts, renderItem, type Fact } from './paper-parts.ts';
import type { PaperView } from './paper-view.ts';

/** What is borrowed, for how long, and what that costs. */
function termFacts(loan: LoanSchedule, { quote, words, writing }: PaperView): readonly Fact[] {
  const { labels, sentences } = words;
  const { dayOne, input } = quote;
  const of = (amount: number): string => writing.share({ numerator: amount, denominator: 10 ** loan.places });
  const months = { text: String(loan.lines.length), count: loan.lines.length };
  return [
    [labels.borrowed, writing.cash(dayOne.borrowed)],
    [labels.rate, `${writing.number(input.document.loan?.rate ?? '')} %`],
    [labels.instalment, `${of(loan.instalment)}, ${sentences.instalments(months)}`],
    [labels.interest, sentences.interestTotal(of(loan.interest), of(loan.paid))],
    [labels.fees, loan.fees === 0 ? '' : of(loan.fees)],
  ];
}

/** What the plant comes to in cash and with the loan, and what a month leaves beside its instalment. */
function besideFacts({ quote, words, writing }: PaperView): readonly Fact[] {
  const { labels } = words;
  const [withLoan, left] = [priceWithLoan(quote), leftAfterInstalment(quote)];
  return [
    [labels.cashPrice, writing.cash(quote.outlay.price)],
    [labels.withLoan, withLoan === null ? '' : writing.share(withLoan)],
    [labels.netMonth, writing.share(netInMonth(quote))],
    [labels.leftMonth, left === null ? '' : writing.share(left)],
  ];
}

/** The loan with its interest beside the price in cash, or that there is none. */
export function renderLoanPart(paper: PaperView): TemplateResult {
  const { heads, sentences } = paper.words;
  const { loan } = paper.quote;
  if (loan === null) return renderItem(10, heads.loan, html`<p>${sentences.noLoan}</p>`);
  return renderItem(10, heads.loan, renderFacts([...termFacts(loan, paper), ...besideFacts(paper)]));
}
