import { css } from '../../styles/css.ts';

/** On paper: the answer first, then the bill that lies open, printed beside right; nothing to press. */
export const checkPrintStyles: string = css`
  @media print {
    .check-book {
      display: block;
    }

    .check-book .page {
      background: none;
      border: 0;
      padding: 0 0 10pt;
    }

    .check-book .page::before,
    .check-book button:not(.bill),
    .check-book input[type='file'],
    .check-book .hint,
    .check-book .echo,
    .check-book details.account,
    .check-book details.help:not([open]),
    .check-book .row.empty,
    .check-book .row.status {
      display: none;
    }

    .check-book button.bill {
      border: 0;
      min-height: 0;
      padding: 0;
    }

    .check-book .paper-page {
      break-before: page;
    }

    p.verdict {
      font-size: 16pt;
    }

    .row,
    .columns > .heads {
      break-inside: avoid;
      grid-template-columns: minmax(0, 1fr) 32mm;
    }

    .row .typed {
      align-items: baseline;
      background: none;
      grid-template-columns: minmax(0, 1fr) 40mm;
      padding: 1pt 4pt;
    }

    .row .typed input {
      background: none;
      border: 0;
      min-height: 0;
      padding: 0;
      text-align: right;
    }

    .row .computed {
      align-content: baseline;
      padding: 1pt 0;
    }

    .explanation,
    .part > h3,
    table {
      break-inside: avoid;
    }

    .part > h3 {
      break-after: avoid;
    }
  }
`;
