import { css } from './css.ts';

/** What is told beside plain readings: a meter that was changed, rates, estimates and what took their place. */
export const changeStyles: string = css`
  .change {
    border-left: 3px double var(--ledger-red);
    padding-left: 0.9rem;
  }

  .change legend {
    color: var(--ledger-red);
  }

  .change > .hint {
    margin-bottom: 0.5rem;
  }

  .meter .heads.two,
  .register.two {
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
  }

  .change > .fixes {
    margin-top: 0.25rem;
  }

  .two .previous input {
    font-size: 1.375rem;
  }

  .printed {
    align-items: center;
    color: var(--ink-faint);
    display: flex;
    flex-wrap: wrap;
    font-size: 0.9375rem;
    gap: 0 0.6rem;
    grid-column: 1 / -1;
    justify-content: flex-end;
  }

  .printed del {
    color: var(--ledger-red);
  }

  .photo {
    background: var(--paper-shade);
    margin-bottom: 0.75rem;
    padding: 0.4rem 0.6rem 0.6rem;
  }

  .ticks {
    border: 0;
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1rem;
    margin: 0.35rem 0 0;
    min-width: 0;
    padding: 0;
  }

  .ticks legend {
    margin-bottom: 0.15rem;
  }

  .ticks .tick {
    align-items: center;
    display: inline-flex;
    gap: 0.4rem;
    min-height: 2.25rem;
  }

  .ticks label {
    font-weight: 400;
  }

  .help > .fixes {
    margin-block: 0.25rem 0.75rem;
  }

  .help .help {
    border-left: 1px solid var(--rule);
    margin-bottom: 0.75rem;
    padding-left: 0.75rem;
  }

  @media (max-width: 39.99rem) {
    .two .previous input {
      font-size: 1.0625rem;
    }
  }

  @media (min-width: 40rem) {
    .meter .heads.two,
    .register.two {
      grid-template-columns: minmax(0, 1.5fr) minmax(0, 1.2fr) minmax(0, 1.2fr);
    }
  }

  @media print {
    .change > :not(legend, .heads, .register),
    .meter button,
    .printed .hint {
      display: none;
    }

    .printed {
      font-size: 8pt;
    }

    .two .previous input {
      font-size: 10pt;
    }
  }
`;
