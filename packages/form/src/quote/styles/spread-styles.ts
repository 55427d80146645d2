import { css } from '../../styles/css.ts';

/** The two pages beside each other, and the strip that stays in sight. */
export const spreadStyles: string = css`
  /* One page after the other, in a plain flow: in rows of a grid the strip would stay in its own row. */
  .quote-book {
    display: block;
  }

  .quote-book > .strip {
    height: calc(4.5rem + 9px);
    margin-block: 0;
    padding-inline: 1rem;
  }

  .strip {
    background: repeating-linear-gradient(var(--paper-shade) 0 1.5rem, var(--rule) 1.5rem calc(1.5rem + 1px));
    border-block: 3px double var(--ledger-red);
    bottom: 0;
    font-size: 0.8125rem;
    line-height: calc(1.5rem + 1px);
    margin-block: 1rem;
    max-height: calc(4.5rem + 9px);
    overflow-y: auto;
    padding-inline: 0.5rem;
    position: sticky;
    top: 0;
    z-index: 2;
  }

  /* The strip lies over what is scrolled beneath it: what is gone to must come to rest beside it. */
  .quote-book :is(h3, button, summary, input, select, textarea, [tabindex]) {
    scroll-margin-block: 6rem;
  }

  .strip div {
    display: inline;
    margin-right: 1rem;
  }

  .strip :is(dt, dd) {
    display: inline;
  }

  .strip .short dd {
    color: var(--ink-blue);
    font-weight: 600;
  }

  .strip dt {
    color: var(--ink-faint);
    font-style: italic;
  }

  .strip dt::after {
    content: ':';
  }

  @media (min-width: 64rem) {
    .quote-book {
      display: grid;
      grid-template-areas:
        'inputs results'
        'paper paper'
        'safety safety';
      grid-template-columns: minmax(0, 19fr) minmax(0, 31fr);
      grid-template-rows: auto auto auto;
    }

    .quote-book .page {
      padding: 1.75rem 1.5rem 2.25rem 2.75rem;
    }

    .quote-book .page::before {
      inset-inline-start: 1.4rem;
    }

    .inputs-page {
      background: linear-gradient(to left, rgb(90 70 20 / 16%), rgb(90 70 20 / 4%) 1.25rem, transparent 3rem);
      border-right: 1px solid #cbbf9d;
      grid-area: inputs;
    }

    .results-page {
      background: linear-gradient(
        to right,
        rgb(90 70 20 / 14%),
        rgb(90 70 20 / 3%) 1.25rem,
        transparent 3rem
      );
      grid-area: results;
    }

    .paper-page {
      grid-area: paper;
    }

    .quote-book .safety::before {
      display: none;
    }
  }
`;
