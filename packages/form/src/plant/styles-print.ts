import { css } from '../styles/css.ts';

/** The page on paper: nothing to press, and nothing cut in two. */
export const plantPrintStyles: string = css`
  @media print {
    button,
    .screen,
    .undo,
    .plant details .hint,
    .plant .echo,
    details.help:not([open]) {
      display: none;
    }

    table button,
    th button.quiet {
      display: inline;
    }

    .plant ol.diary details.help {
      display: block;
    }

    .verdict {
      font-size: 11pt;
    }

    .part + .part {
      margin-top: 12pt;
    }

    .plant :is(.caution, .due-text, .effect, .legend, .entries, figcaption, .finding),
    .plant .field {
      font-size: 9pt;
    }

    .plant :is(input[type='text'], select) {
      background: none;
      border: 0;
      appearance: none;
      border-bottom: 1px solid var(--rule);
      font-size: 10pt;
      min-height: 0;
      padding: 0;
    }

    figure,
    .tasks > li,
    ol.day-findings > li {
      break-inside: avoid;
    }

    .strips {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }

    .part > h3,
    h4 {
      break-after: avoid;
    }

    svg.wide,
    svg.narrow {
      max-width: 100%;
    }

    .tasks {
      grid-template-columns: 1fr 1fr;
    }
  }
`;
