import { css } from './css.ts';

/** What is asked or has to be set right, in the margin of the field it is about. */
export const findingStyles: string = css`
  .findings {
    display: grid;
    gap: 0.5rem;
    margin-block: 0.25rem 0.5rem;
  }

  .finding {
    border-left: 3px solid var(--ink-faint);
    font-size: 0.9375rem;
    padding: 0.1rem 0 0.1rem 0.6rem;
  }

  .finding.error {
    border-color: var(--ledger-red);
  }

  .finding.error .mark {
    color: var(--ledger-red);
  }

  .finding.question {
    border-color: var(--question);
  }

  .finding.question .mark {
    color: var(--question);
  }

  .finding.note,
  .finding.unfinished {
    color: var(--ink-faint);
  }

  .fixes {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
  }

  .fixes button {
    margin-top: 0.3rem;
  }

  .file-findings {
    display: grid;
    gap: 0.35rem;
    margin-top: 0.35rem;
    padding-left: 1.4rem;
  }

  .place {
    color: var(--ledger-red);
    display: block;
    font-weight: 600;
  }

  code {
    font-size: 0.8125rem;
    overflow-wrap: anywhere;
  }

  .undo {
    background: var(--paper-shade);
    margin-bottom: 1rem;
    padding: 0.4rem 0.6rem;
  }
`;
