import { css } from '../styles/css.ts';

/** The panel for meter files, beside what the book is set in. */
export const fileStyles: string = css`
  :host {
    padding-bottom: 0.75rem;
  }

  .drop {
    align-items: center;
    border: 1px dashed var(--rule-strong);
    border-radius: 2px;
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.75rem;
    margin-block: 0.6rem;
    padding: 0.4rem 0.6rem;
  }

  .drop.over {
    background: var(--paper-shade);
    border-style: solid;
  }

  .drop input {
    flex: 1 1 14rem;
    min-width: 0;
  }

  textarea {
    background: #fffdf6;
    border: 1px solid var(--rule-strong);
    border-radius: 2px;
    color: inherit;
    font: inherit;
    font-variant-numeric: inherit;
    min-height: 5.5rem;
    padding: 0.2rem 0.5rem;
    resize: vertical;
    width: 100%;
  }

  .row {
    align-items: end;
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 0.75rem;
    margin-block: 0.4rem;
  }

  .row .field {
    flex: 1 1 14rem;
  }

  .row p {
    padding-block: 0.35rem;
  }

  @media (min-width: 40rem) {
    /* Beside a field that has a line for its echo below. */
    .row .field:has(.echo) ~ button {
      margin-bottom: 1.35rem;
    }
  }

  .told {
    margin-block: 0.6rem;
  }

  .told:empty {
    margin: 0;
  }

  #read-text {
    margin-bottom: 0.6rem;
  }

  .caution {
    border-left: 3px solid var(--ledger-red);
    font-size: 0.875rem;
    padding-left: 0.6rem;
  }

  .say {
    margin-block: 0.4rem;
  }

  .wide {
    margin-block: 0.4rem;
    max-height: 24rem;
    overflow: auto;
    /* Else what is hidden in it, but for whoever hears the page, would stick out of it. */
    position: relative;
  }

  .wide table {
    font-size: 0.875rem;
    min-width: 0;
  }

  .wide th,
  .wide td {
    vertical-align: top;
  }

  thead th {
    background: var(--paper);
    position: sticky;
    top: 0;
    z-index: 1;
  }

  .wide th,
  .wide td {
    padding-inline: 0.35rem;
  }

  td.said,
  th.said {
    min-width: 4.25rem;
    text-align: left;
    white-space: normal;
  }

  tbody th {
    white-space: normal;
  }

  tbody th.day {
    min-width: 5.75rem;
  }

  td.amount-cell {
    white-space: normal;
  }

  tbody th .hint {
    display: block;
    overflow-wrap: anywhere;
  }

  .row button.quiet,
  .question-card .hint,
  .wide .hint {
    font-size: 0.8125rem;
  }

  .questions {
    display: grid;
    gap: 0 1.25rem;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 14rem), 1fr));
    margin-block: 0.6rem;
  }

  .question-card {
    align-content: start;
    border-bottom: 1px solid var(--rule);
    display: grid;
    gap: 0.1rem;
    min-width: 0;
    padding-block: 0.5rem;
  }

  .question-card.column {
    grid-column: 1 / -1;
  }

  .question-card.open {
    border-left: 3px solid var(--question);
    padding-left: 0.6rem;
  }

  .question-card .mark {
    color: var(--question);
    font-weight: 600;
  }

  .question-card .tick {
    margin: 0;
  }

  .parts {
    display: grid;
    gap: 0.25rem 0.75rem;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 11rem), 1fr));
  }

  pre {
    background: var(--paper-shade);
    font-size: 0.8125rem;
    margin: 0.3rem 0;
    overflow-x: auto;
    padding: 0.3rem 0.5rem;
  }

  .tick label {
    font-weight: 400;
  }

  .tick input {
    flex: none;
  }

  progress {
    accent-color: var(--ink-blue);
    width: 100%;
  }
`;
