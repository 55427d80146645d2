import { css } from './css.ts';

/** On paper: the answer, the bill and the passbook, opened as on the screen, without anything to press. */
export const printStyles: string = css`
  @media print {
    :host {
      --paper: #fff;
      --paper-shade: #fff;
      font-size: 10pt;
    }

    .book {
      border: 0;
      box-shadow: none;
      display: block;
    }

    .page,
    .safety {
      background: none;
      border: 0;
      columns: auto;
      padding: 0 0 14pt;
    }

    .page::before,
    .entry-page > :not(h2, .meter),
    .entry-page::after,
    .entry-page .echo,
    .entry-page .hint,
    .entry-page .findings,
    .answer-page button,
    .bill-page .tip,
    .bill-page::after,
    .plant-page:not(:has(> details[open])),
    .plant-page > details > summary,
    .lines summary::before {
      display: none;
    }

    .answer .payable {
      font-size: 22pt;
    }

    .lines > li > details > summary {
      padding: 0;
    }

    .lines > li > details > summary > :is(.label, .amount) {
      padding-block: 2pt;
    }

    :focus-visible {
      outline: 0;
    }

    .bill-page,
    .answer-page,
    .entry-page {
      display: block;
    }

    .meter {
      break-inside: avoid;
      margin: 0 0 6pt;
    }

    .register {
      padding-block: 1pt;
    }

    .register :is(input, .carried, .units) {
      background: none;
      border: 0;
      font-size: 10pt;
      line-height: 1.5;
      min-height: 0;
      padding: 0;
    }

    .lines {
      font-size: 10pt;
    }

    .how,
    .particulars,
    .period,
    .safety {
      font-size: 9pt;
    }

    .how .which,
    .rounding,
    .clause,
    .hint,
    thead th,
    th .mark,
    .page .heads {
      font-size: 8pt;
    }

    .steps summary {
      min-height: 0;
      padding-left: 0;
    }

    .lines > li > details > summary,
    tr,
    .split,
    .safety,
    .answer {
      break-inside: avoid;
    }

    .sub {
      break-after: avoid;
    }

    h2 {
      break-after: avoid;
      font-size: 12pt;
    }

    .passbook-page {
      break-inside: avoid;
    }

    .wide {
      background: none;
      overflow: visible;
    }

    .on {
      display: inline;
    }

    table {
      font-size: 8pt;
      min-width: 0;
    }

    th,
    td {
      padding: 1.5pt 2.5pt;
    }

    th button.quiet {
      border: 0;
      color: inherit;
      min-height: 0;
      padding: 0;
      text-decoration: none;
    }
  }
`;
