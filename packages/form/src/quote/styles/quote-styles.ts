import { css } from '../../styles/css.ts';
import { quoteChartStyles } from '../charts/styles.ts';
import { paperPageStyles } from './paper-styles.ts';
import { quotePrintStyles } from './print-styles.ts';
import { spreadStyles } from './spread-styles.ts';

const pageStyles = css`
  .part + .part {
    margin-top: 1.5rem;
  }

  .part > h3.sub:first-child {
    margin-top: 0;
  }

  h3.sub {
    color: var(--ink-blue);
    font-size: 1.0625rem;
    margin-block: 0 0.5rem;
  }

  h4 {
    margin: 0;
  }

  #quote-open {
    clip-path: inset(50%);
    height: 1px;
    overflow: hidden;
    position: absolute;
    width: 1px;
  }

  .file:has(+ #quote-open:focus-visible) {
    outline: 3px solid var(--ink-blue);
    outline-offset: 2px;
  }

  input[type='range'] {
    accent-color: var(--ink-blue);
    height: 2.25rem;
    margin: 0;
    width: 100%;
  }

  textarea {
    background: #fffdf6;
    border: 1px solid var(--rule-strong);
    border-radius: 2px;
    color: inherit;
    font: inherit;
    padding: 0.3rem 0.5rem;
    resize: vertical;
    width: 100%;
  }

  .whole-line {
    grid-column: 1 / -1;
  }

  .echo:empty {
    min-height: 0;
  }

  .pair > .field {
    align-content: end;
  }

  .sliders {
    margin-bottom: 0;
    row-gap: 0.75rem;
  }

  .sliders > .field {
    align-content: start;
  }

  .twelve {
    display: grid;
    gap: 0.25rem 0.75rem;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    margin-block: 0.5rem;
  }

  .line {
    border-bottom: 1px dashed var(--rule);
    margin-bottom: 0.5rem;
    padding-bottom: 0.25rem;
  }

  details.account {
    margin-bottom: 0;
  }

  details.account[open] {
    padding-bottom: 0.75rem;
  }

  .wanted {
    color: var(--ledger-red);
    font-size: 0.875rem;
    font-style: italic;
    margin-left: 0.5rem;
  }

  .wanted-list li {
    border-bottom: 1px solid var(--rule);
    font-size: 0.9375rem;
    padding-block: 0.25rem;
  }

  .follows li {
    color: var(--ink-faint);
    font-size: 0.875rem;
  }

  .answer dd.note {
    color: var(--ink-faint);
    flex-basis: 100%;
    font-size: 0.875rem;
    font-weight: 400;
    margin: 0;
    text-align: left;
  }

  .answer .payable {
    font-size: 2rem;
  }

  .progress {
    align-items: center;
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem 0.75rem;
    margin-top: 0.5rem;
  }

  .progress label {
    font-weight: 400;
  }

  progress {
    accent-color: var(--ink-blue);
    flex: 1 1 8rem;
    max-width: 16rem;
  }

  .caution {
    border-left: 3px solid var(--ledger-red);
    font-size: 0.9375rem;
    margin-block: 0.6rem;
    padding-left: 0.6rem;
  }

  .caution .mark {
    color: var(--ledger-red);
  }

  .stale {
    border-left: 3px dashed var(--rule-strong);
    margin-left: -0.75rem;
    padding-left: calc(0.75rem - 3px);
  }

  table.data {
    font-size: 0.875rem;
    min-width: 40rem;
  }

  table.data caption {
    color: var(--ink-faint);
    font-size: 0.875rem;
    text-align: left;
  }

  .data :is(th, td) {
    padding-inline: 0.35rem;
  }

  table.data th:first-child {
    white-space: normal;
  }
`;

/** The page of the quote in the book's inks, the print rules last. */
export const quoteStyles: string =
  pageStyles + spreadStyles + quoteChartStyles + paperPageStyles + quotePrintStyles;
