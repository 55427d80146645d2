import { css, type CSSResult } from 'lit';

/** On paper: the answer, the bill and the passbook, opened as on the screen, without anything to press. */
export const printStyles: CSSResult = css`
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
    .entry-page,
    .answer-page button,
    .bill-page::after,
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

    .bill-page,
    .answer-page {
      display: block;
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
    caption,
    thead th,
    th .mark,
    .bill-page .heads {
      font-size: 8pt;
    }

    .steps summary.step {
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
      overflow: visible;
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
