import { css } from '../../styles/css.ts';

/** On paper only the sheet is seen: two pages of A4. */
export const quotePrintStyles: string = css`
  @media print {
    .answer-page,
    .inputs-page,
    .results-page,
    .strip,
    .quote-book > .safety,
    .paper-page > button,
    .notice {
      display: none;
    }

    /* One part beside the quote, printed alone. */
    :host([data-print]) .paper-page {
      display: none;
    }

    :host([data-print]) .results-page {
      display: block;
    }

    :host([data-print]) .results-page > :not(.beside),
    :host([data-print='flyer']) .beside[data-part='promise'],
    :host([data-print='promise']) .beside[data-part='flyer'],
    :host([data-print]) .beside :is(summary, button) {
      display: none;
    }

    .quote-book .page::before {
      display: none;
    }

    .quote-book .paper-page {
      padding: 0;
    }

    .sheet {
      border: 0;
      font-size: 7.4pt;
      line-height: 1.2;
      margin: 0;
      max-width: none;
      overflow: visible;
      padding: 0;
    }

    .sheet h3 {
      font-size: 12pt;
    }

    .sheet h4 {
      font-size: 8.4pt;
      margin-block: 3pt 0.5pt;
      break-after: avoid;
    }

    .sheet :is(.columns, .boxed) {
      columns: 2;
    }

    .sheet table {
      font-size: 7pt;
    }

    .sheet :is(th, td) {
      padding: 0.4pt 2pt;
    }

    .sheet thead th {
      font-size: 6.6pt;
    }

    .sheet :is(tr, .item > dl, .signs, figure) {
      break-inside: avoid;
    }

    .sheet figure {
      margin-block: 3pt 0;
    }

    .sheet svg.quote-chart.narrow {
      flex: none;
      width: 52mm;
    }

    .sheet .second-page {
      break-before: page;
    }

    .sheet .signs {
      margin-top: 22pt;
    }

    .sheet .money {
      margin-top: 2pt;
    }
  }
`;
