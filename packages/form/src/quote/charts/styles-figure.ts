import { css } from '../../styles/css.ts';

/** What stands around a drawing, and the charts on paper. */
export const figureStyles: string = css`
  .quote-figure {
    margin: 0 0 1.5rem;
  }

  .quote-figure figcaption {
    border-bottom: 1px solid var(--rule-strong);
    color: var(--ink-blue);
    font-weight: 600;
    margin-bottom: 0.5rem;
  }

  .quote-figure .keys {
    display: flex;
    flex-wrap: wrap;
    font-size: 0.875rem;
    gap: 0.15rem 1.25rem;
    margin-block: 0.35rem;
  }

  .quote-figure .keys li {
    align-items: center;
    display: flex;
    gap: 0.4rem;
  }

  .quote-figure summary {
    cursor: pointer;
    min-height: 1.75rem;
  }

  .figures-room {
    overflow-x: auto;
  }

  .figures-table {
    border-collapse: collapse;
    font-size: 0.875rem;
    min-width: 0;
    width: auto;
  }

  .figures-table :is(th, td) {
    border-bottom: 1px solid var(--rule);
    font-weight: 400;
    padding: 0.2rem 0.6rem;
    text-align: right;
    vertical-align: bottom;
  }

  .figures-table td {
    white-space: nowrap;
  }

  .figures-table th:first-child {
    text-align: left;
  }

  .figures-table th.long {
    min-width: 9rem;
  }

  .figures-table thead th {
    border-block: 1px solid var(--rule-strong);
    color: var(--ink-faint);
  }

  .quote-figure .notes {
    font-size: 0.875rem;
    padding-top: 0.35rem;
  }

  @media print {
    /* Not every printer has colour, and thin grey lines get lost on many. */
    .quote-figure {
      --ink: #000;
      --ink-blue: #000;
      --ink-faint: #000;
      --rule: #888;
      --rule-strong: #000;

      break-inside: avoid;
      color: #000;
    }

    .quote-figure details:not([open]) {
      display: none;
    }

    .quote-figure :is(.keys, .notes, .figures-table) {
      font-size: 8pt;
    }

    svg.quote-chart:is(.narrow, .wide) {
      max-width: 100%;
    }
  }
`;
