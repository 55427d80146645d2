import { css } from './css.ts';

/** The shelf above the book: which book lies open, and what was put aside. */
export const shelfStyles: string = css`
  .shelf {
    align-items: center;
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem 0.75rem;
    margin-bottom: 0.75rem;
  }

  .shelf .which {
    flex: 1 1 16rem;
  }

  .shelf button.quiet,
  .file {
    color: var(--ink-blue);
  }

  .file {
    cursor: pointer;
    font-weight: 400;
    padding: 0.4rem 0.3rem;
    text-decoration: underline;
    text-decoration-color: var(--rule-strong);
    text-underline-offset: 0.2em;
  }

  #open-file {
    clip-path: inset(50%);
    height: 1px;
    overflow: hidden;
    position: absolute;
    width: 1px;
  }

  .file:has(+ #open-file:focus-visible) {
    outline: 3px solid var(--ink-blue);
    outline-offset: 2px;
  }

  .notice {
    background: var(--paper);
    border-left: 3px solid var(--ledger-red);
    margin-bottom: 0.75rem;
    padding: 0.5rem 0.8rem;
  }

  .notice ul {
    list-style: disc;
    padding-left: 1.25rem;
  }

  .notice summary {
    cursor: pointer;
    min-height: 1.75rem;
  }

  #asides {
    border-color: var(--rule-strong);
  }

  @media print {
    .shelf,
    .notice {
      display: none;
    }
  }
`;
