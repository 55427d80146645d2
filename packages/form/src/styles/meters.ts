import { css } from './css.ts';

/** Registers of a meter: previous, present and units in columns. */
export const meterStyles: string = css`
  .meter {
    border: 0;
    margin: 0 0 1rem;
    min-width: 0;
    padding: 0;
  }

  legend {
    color: var(--ink-blue);
    font-style: italic;
    padding: 0;
  }

  .meter .heads,
  .register {
    display: grid;
    gap: 0 0.75rem;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1.1fr) 3.25rem;
  }

  .meter .heads {
    border-block: 1px solid var(--rule-strong);
    color: var(--ink-faint);
    font-size: 0.8125rem;
    padding-block: 0.15rem;
  }

  .meter .heads span:first-child {
    display: none;
  }

  .meter .heads span,
  .units {
    text-align: right;
  }

  .register {
    border-bottom: 1px solid var(--rule);
    padding-block: 0.5rem;
  }

  .register .name,
  .register .findings {
    grid-column: 1 / -1;
  }

  .register .name .hint {
    display: block;
  }

  .previous,
  .present {
    display: grid;
    align-content: start;
    text-align: right;
  }

  .previous input,
  .present input {
    font-size: 1.375rem;
    min-height: 3rem;
    padding-inline: 0.3rem;
    text-align: right;
  }

  .previous input {
    font-size: 1.1875rem;
  }

  .on {
    display: none;
  }

  @media (max-width: 39.99rem) {
    .meter .heads,
    .register {
      column-gap: 0.4rem;
    }

    .previous input,
    .present input {
      font-size: 1.0625rem;
      padding-inline: 0.25rem;
    }

    .carried {
      font-size: 1.0625rem;
    }
  }

  .carried {
    color: var(--ink-faint);
    font-size: 1.125rem;
    line-height: 2.5rem;
  }

  .previous .carried {
    line-height: 3rem;
  }

  .units {
    line-height: 3rem;
  }

  .carry {
    border-block: 1px solid var(--ink-blue);
    display: flex;
    font-size: 1.125rem;
    justify-content: space-between;
    margin-bottom: 0.75rem;
    padding-block: 0.25rem;
  }

  @media (min-width: 40rem) {
    .meter .heads,
    .register {
      grid-template-columns: minmax(0, 1.5fr) minmax(0, 1.1fr) minmax(0, 1.2fr) 3.25rem;
    }

    .meter .heads span:first-child {
      display: inline;
      text-align: left;
    }

    .register .name {
      grid-column: auto;
    }
  }

  @media (min-width: 64rem) {
    .carry {
      display: none;
    }
  }
`;
