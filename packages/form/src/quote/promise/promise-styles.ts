import { css } from '../../styles/css.ts';

/** The promise and what came, in the book's inks. */
export const promiseStyles: string = css`
  :host {
    container-type: inline-size;
  }

  h4 {
    border-bottom: 1px solid var(--rule-strong);
    color: var(--ink-blue);
    margin-bottom: 0.5rem;
  }

  .verdict {
    font-size: 1.125rem;
    margin-bottom: 0.75rem;
  }

  .part .note {
    max-width: 44rem;
  }

  .answer dd {
    white-space: normal;
  }

  .field.which-bills,
  .field.tariffs {
    margin-bottom: 0.75rem;
    max-width: 32rem;
  }

  #promise-causes {
    min-width: 29rem;
  }

  /* Of a table wider than the page the name is read without scrolling. */
  table.data caption {
    left: 0;
    max-width: 100cqi;
    position: sticky;
  }

  #promise-months ~ button {
    margin-bottom: 1rem;
  }

  #promise-open {
    clip-path: inset(50%);
    height: 1px;
    overflow: hidden;
    position: absolute;
    width: 1px;
  }

  .file:has(+ #promise-open:focus-visible) {
    outline: 3px solid var(--ink-blue);
    outline-offset: 2px;
  }

  @media print {
    button,
    .field {
      display: none;
    }

    #promise-causes {
      min-width: 0;
    }

    #promise-chart-bills svg.quote-chart {
      max-width: 100mm;
    }

    .verdict {
      font-size: 11pt;
    }

    .answer dd.note {
      font-size: 9pt;
    }

    h4 {
      break-after: avoid;
    }

    .part > :is(dl, figure) {
      break-inside: avoid;
    }
  }
`;
