import { css } from '../styles/css.ts';
import { chartStyles } from './styles-chart.ts';
import { plantPrintStyles } from './styles-print.ts';

const pageStyles = css`
  .part + .part {
    margin-top: 1.75rem;
  }

  .part > h3.sub:first-child {
    margin-top: 0;
  }

  h4.sub {
    font-size: 1rem;
    margin-block: 1.25rem 0.25rem;
  }

  h4 {
    margin: 0;
  }

  .verdict {
    align-items: baseline;
    border-bottom: 3px double var(--ink-blue);
    display: flex;
    font-size: 1.1875rem;
    gap: 0.6rem;
    padding-block: 0.35rem;
  }

  .verdict-sign {
    border: 2px solid currentcolor;
    border-radius: 50%;
    flex: none;
    font-weight: 700;
    height: 1.75rem;
    line-height: 1.5rem;
    text-align: center;
    width: 1.75rem;
  }

  .verdict :is(.verdict-sign, strong) {
    color: var(--ink-blue);
  }

  .verdict.watch :is(.verdict-sign, strong),
  td.judged.watch .sign {
    color: var(--question);
  }

  .verdict.look-at-it :is(.verdict-sign, strong),
  td.judged.look-at-it .sign {
    color: var(--ledger-red);
  }

  .twelve {
    display: grid;
    gap: 0.25rem 0.75rem;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    margin-block: 0.5rem;
  }

  @media (min-width: 40rem) {
    .twelve {
      grid-template-columns: repeat(6, minmax(0, 1fr));
    }
  }

  .echo:empty {
    min-height: 0;
  }

  .field + .findings,
  .pair + .findings {
    margin-bottom: 0.75rem;
  }

  td.judged {
    text-align: left;
  }

  td.judged .sign {
    display: inline-block;
    font-weight: 700;
    text-align: center;
    width: 1.1rem;
  }

  td.judged.look-at-it {
    font-weight: 600;
  }

  table.data {
    min-width: 34rem;
  }

  table.data td:last-child,
  table.data th:last-child {
    text-align: left;
    white-space: normal;
  }

  ol.day-findings,
  ol.diary {
    display: grid;
    gap: 0.5rem;
    list-style: none;
    margin-block: 0.5rem;
  }

  ol.diary {
    gap: 0;
  }

  .effect {
    border-left: 2px solid var(--ink-blue);
    font-size: 0.9375rem;
    margin: 0 0 0.4rem 1rem;
    padding-left: 0.6rem;
  }

  .tasks {
    display: grid;
    gap: 0 2.5rem;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 24rem), 1fr));
  }

  .tasks > li {
    border-bottom: 1px solid var(--rule);
    padding-block: 0.5rem;
  }

  .task-head {
    align-items: baseline;
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1rem;
    justify-content: space-between;
  }

  .due-text {
    color: var(--ink-faint);
    display: block;
    font-size: 0.9375rem;
  }

  .due-text.now {
    color: var(--question);
    font-weight: 600;
  }

  .caution {
    border-left: 3px solid var(--ledger-red);
    font-size: 0.9375rem;
    margin-block: 0.25rem;
    padding-left: 0.6rem;
  }

  .caution .mark {
    color: var(--ledger-red);
  }

  .cautions {
    list-style: disc;
    padding-left: 1.25rem;
  }

  @media (min-width: 64rem) {
    .cautions {
      column-gap: 3rem;
      columns: 2;
    }
  }
`;

/** The page of the plant in the book's inks, the print rules last. */
export const plantStyles: string = pageStyles + chartStyles + plantPrintStyles;
