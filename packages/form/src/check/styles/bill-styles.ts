import { css } from '../../styles/css.ts';

/** The printed bill as a column of paper, and what is right beside it. */
export const billPaperStyles: string = css`
  .columns {
    margin-top: 0.75rem;
  }

  .columns > .heads,
  .row {
    display: grid;
    gap: 0 0.75rem;
    grid-template-columns: minmax(0, 1fr) 6.5rem;
  }

  .columns > .heads {
    color: var(--ink-faint);
    font-size: 0.8125rem;
  }

  .columns > .heads span + span {
    text-align: right;
  }

  .columns .part {
    margin-top: 0.5rem;
  }

  .row {
    border-bottom: 1px solid var(--rule);
  }

  .row .typed {
    background: #fffdf6;
    border-inline: 1px solid var(--rule);
    display: grid;
    gap: 0.1rem;
    padding: 0.3rem 0.6rem 0.15rem;
  }

  .row .name {
    display: grid;
    gap: 0.1rem 0.6rem;
  }

  .row .name button {
    justify-self: start;
  }

  .row .echo:empty {
    display: none;
  }

  .row .computed {
    align-content: end;
    display: grid;
    padding-bottom: 0.5rem;
    text-align: right;
  }

  .row .computed .amount {
    border: 0;
    color: var(--ink-faint);
  }

  .row .told {
    grid-column: 1 / -1;
  }

  .row.differs .computed .amount {
    color: var(--ink);
    font-weight: 700;
    text-decoration: underline;
  }

  .row.differs input {
    border-bottom: 3px double var(--ledger-red);
  }

  .row .off {
    color: var(--ledger-red);
    font-weight: 600;
    white-space: nowrap;
  }

  .thirds {
    display: grid;
    gap: 0 0.75rem;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 9rem), 1fr));
    margin-bottom: 0.5rem;
  }

  .thirds .row {
    grid-template-columns: minmax(0, 1fr);
  }

  .thirds .computed {
    display: none;
  }

  @media (min-width: 64rem) {
    .check-book {
      grid-template-areas:
        'answer paper'
        'sheets sheets'
        'safety safety';
      grid-template-columns: minmax(0, 23fr) minmax(0, 27fr);
      grid-template-rows: auto auto auto;
    }

    .check-book .page {
      padding: 1.75rem 1.5rem 2.25rem 2.75rem;
    }

    .check-book .page::before {
      inset-inline-start: 1.4rem;
    }

    .check-book .answer-page {
      background: linear-gradient(to left, rgb(90 70 20 / 16%), rgb(90 70 20 / 4%) 1.25rem, transparent 3rem);
      border-right: 1px solid #cbbf9d;
    }

    .check-book .paper-page {
      background: linear-gradient(
        to right,
        rgb(90 70 20 / 14%),
        rgb(90 70 20 / 3%) 1.25rem,
        transparent 3rem
      );
      grid-area: paper;
    }

    .check-book .safety::before {
      display: none;
    }

    .columns > .heads,
    .row {
      grid-template-columns: minmax(0, 1fr) 9rem;
    }

    .row .typed {
      align-items: center;
      grid-template-columns: minmax(0, 1fr) 11rem;
    }

    .row .typed > input {
      grid-column: 2;
      grid-row: 1 / span 2;
    }

    .row .typed > .name + label + input,
    .row .typed > .name + label + .hint + input {
      grid-row: 2 / span 2;
    }

    .row .typed > .echo {
      grid-column: 2;
    }

    .row .typed > :is(.field, .name) {
      grid-column: 1 / -1;
    }

    .row .computed {
      align-content: center;
      padding-bottom: 0;
    }

    .thirds .typed {
      grid-template-columns: minmax(0, 1fr);
    }

    .thirds .typed > :is(input, .echo) {
      grid-column: 1;
      grid-row: auto;
    }
  }
`;
