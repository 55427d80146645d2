import { css } from '../../styles/css.ts';
import { billPaperStyles } from './bill-styles.ts';
import { checkPrintStyles } from './check-print-styles.ts';
import { sheetStyles } from './sheet-styles.ts';

const answerStyles = css`
  .bills ul {
    display: flex;
    flex-direction: column;
    gap: 0.25rem;
    margin-bottom: 0.5rem;
  }

  .bills {
    margin-bottom: 1rem;
  }

  button.bill {
    border-color: var(--rule);
    color: var(--ink);
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.75rem;
    justify-content: space-between;
    text-align: left;
    width: 100%;
  }

  button.bill[aria-current='true'] {
    border-color: var(--ink-blue);
    border-left-width: 5px;
  }

  .part {
    margin-top: 1.25rem;
  }

  h3.sub {
    margin-block: 0 0.35rem;
  }

  h4 {
    color: var(--ink-blue);
    margin-block: 0.75rem 0.25rem;
  }

  p.verdict {
    font-size: 1.5rem;
    font-weight: 700;
    line-height: 1.25;
  }

  #check-open {
    clip-path: inset(50%);
    height: 1px;
    overflow: hidden;
    position: absolute;
    width: 1px;
  }

  .file:has(+ #check-open:focus-visible) {
    outline: 3px solid var(--ink-blue);
    outline-offset: 2px;
  }

  .wanted-list,
  .nearest {
    list-style: disc;
    padding-left: 1.25rem;
  }

  .stale {
    border-left: 3px dashed var(--rule-strong);
    margin-left: -0.75rem;
    padding-left: calc(0.75rem - 3px);
  }

  .answer-page .heads {
    border-block: 1px solid var(--rule-strong);
    color: var(--ink-faint);
    display: grid;
    font-size: 0.8125rem;
    gap: 0 0.5rem;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    padding: 0.2rem 0 0.2rem 1.1rem;
    text-align: right;
  }

  .answer-page .heads span:first-child {
    display: none;
  }

  .lines.four > li > details > summary,
  .lines.four > li > .plain {
    display: grid;
    gap: 0 0.5rem;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    padding-left: 1.1rem;
  }

  .lines.four .label {
    grid-column: 1 / -1;
  }

  .lines.four .on-paper {
    border-left: 0;
    text-decoration: underline wavy var(--ledger-red) 1px;
    text-underline-offset: 0.2em;
  }

  .lines.four .off {
    font-weight: 700;
  }

  .cause,
  .confidence,
  .sign {
    margin-bottom: 0.35rem;
  }

  .confidence {
    color: var(--ink-faint);
  }

  table.parts,
  table.deciders {
    margin-block: 0.35rem 0.75rem;
    min-width: 0;
  }

  table.deciders :is(th, td) {
    white-space: normal;
  }

  table.parts th {
    white-space: normal;
  }

  table.parts .together :is(th, td) {
    border-bottom: 3px double var(--ink);
    border-top: 1px solid var(--ink);
    font-weight: 700;
  }

  .evidence .field.tick {
    align-items: flex-start;
    margin-block: 0.2rem;
  }

  .evidence input {
    flex: none;
  }

  .evidence label {
    font-weight: 400;
  }

  .evidence .state {
    color: var(--ink-faint);
    font-style: italic;
  }
`;

/** The page of printed bills in the book's inks, the print rules last. */
export const checkStyles: string = answerStyles + billPaperStyles + sheetStyles + checkPrintStyles;
