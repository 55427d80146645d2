import { css } from '../../styles/css.ts';

/** The flyer beside the quote: typed on the left, checked on the right; one under the other on a phone. */
export const flyerStyles: string = css`
  :host {
    container-type: inline-size;
  }

  .flyer {
    display: grid;
    gap: 1.25rem 2rem;
    grid-template-columns: minmax(0, 1fr);
  }

  .flyer section {
    min-width: 0;
  }

  h4 {
    border-bottom: 1px solid var(--rule-strong);
    color: var(--ink-blue);
    margin-bottom: 0.5rem;
  }

  .flyer .pair > .field {
    align-content: start;
  }

  .verdict {
    font-weight: 600;
    margin-bottom: 0.5rem;
  }

  .check .provided {
    margin-block: 0 0.6rem;
  }

  #flyer-open {
    clip-path: inset(50%);
    height: 1px;
    overflow: hidden;
    position: absolute;
    width: 1px;
  }

  .file:has(+ #flyer-open:focus-visible) {
    outline: 3px solid var(--ink-blue);
    outline-offset: 2px;
  }

  #flyer-lines {
    min-width: 0;
    table-layout: fixed;
  }

  #flyer-lines :is(th, td) {
    position: static;
    text-align: right;
    white-space: normal;
  }

  #flyer-lines thead th {
    vertical-align: bottom;
  }

  #flyer-lines tr.name th {
    background: none;
    border-bottom: 0;
    color: var(--ink-blue);
    font-weight: 600;
    padding-bottom: 0;
    text-align: left;
  }

  #flyer-lines :is(.said, .asks td) {
    text-align: left;
  }

  #flyer-lines .said {
    font-style: italic;
    overflow-wrap: anywhere;
  }

  #flyer-lines tr:has(+ .asks) td {
    border-bottom: 0;
  }

  #flyer-lines .findings {
    margin-block: 0 0.25rem;
  }

  @container (min-width: 46rem) {
    .flyer {
      grid-template-columns: minmax(0, 2fr) minmax(0, 3fr);
    }
  }

  @media print {
    .flyer {
      display: block;
    }

    .entry,
    .check button {
      display: none;
    }

    #flyer-lines tbody {
      break-inside: avoid;
    }

    #flyer-lines .finding {
      font-size: 8pt;
    }
  }
`;
