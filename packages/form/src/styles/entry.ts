import { css } from './css.ts';

/** The left page: fields with their labels and echoes, and what folds away. */
export const entryStyles: string = css`
  .months {
    align-items: center;
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
    margin-bottom: 1rem;
  }

  .months select {
    flex: 1 1 12rem;
  }

  #remove-month {
    align-self: start;
  }

  .pair {
    display: grid;
    gap: 0.25rem 1.25rem;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 14rem), 1fr));
    margin-bottom: 0.75rem;
  }

  .field {
    align-content: start;
    display: grid;
    gap: 0.1rem;
    min-width: 0;
  }

  .field.tick {
    align-items: center;
    display: flex;
    gap: 0.5rem;
    margin-block: 0.5rem;
  }

  label,
  .label {
    font-weight: 600;
  }

  input[type='text'],
  select {
    background: #fffdf6;
    border: 1px solid var(--rule-strong);
    border-radius: 2px;
    min-height: 2.5rem;
    min-width: 0;
    padding: 0.2rem 0.5rem;
    width: 100%;
  }

  input[type='file'] {
    max-width: 100%;
    min-height: 2.5rem;
    padding-block: 0.35rem;
  }

  ::file-selector-button {
    font: inherit;
  }

  input[type='checkbox'] {
    accent-color: var(--ink-blue);
    height: 1.25rem;
    width: 1.25rem;
  }

  input[aria-invalid='true'] {
    border-color: var(--ledger-red);
    border-width: 2px;
  }

  .echo {
    color: var(--ink-blue);
    font-size: 0.9375rem;
    min-height: 1.4em;
  }

  details.help,
  details.account {
    border-top: 1px solid var(--rule);
    padding-block: 0.25rem;
  }

  details.account {
    border-bottom: 1px solid var(--rule);
    border-top: 0;
    margin-bottom: 0.75rem;
  }

  details.help > summary,
  details.account > summary {
    color: var(--ink-blue);
    cursor: pointer;
    min-height: 2.25rem;
    padding-block: 0.35rem;
  }

  .help dt {
    font-weight: 600;
  }

  .help dd {
    margin-bottom: 0.35rem;
  }
`;
