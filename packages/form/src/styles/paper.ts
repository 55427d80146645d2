import { css } from './css.ts';

/** Paper, inks and type: an account book's, from fonts that the reader's system has. */
export const paperStyles: string = css`
  :host {
    --paper: #fcf8ec;
    --paper-shade: #f3ecd8;
    --ink: #1c2438;
    --ink-blue: #1d3a77;
    --ink-faint: #575d6e;
    --rule: #b7c6da;
    --rule-strong: #6f86a8;
    --ledger-red: #a3242b;
    --red-rule: #d99a98;
    --question: #7a4b00;
    color-scheme: light;
    display: block;
    color: var(--ink);
    font-family:
      'Iowan Old Style', 'Palatino Linotype', Palatino, 'Book Antiqua', 'URW Palladio L', 'Noto Serif',
      Cambria, Georgia, 'DejaVu Serif', serif;
    font-size: 1rem;
    font-variant-numeric: lining-nums tabular-nums;
    line-height: 1.5;
  }

  * {
    box-sizing: border-box;
  }

  h2,
  h3,
  p,
  ul,
  ol,
  dl,
  dd {
    margin: 0;
    padding: 0;
  }

  ul {
    list-style: none;
  }

  button,
  input,
  select {
    color: inherit;
    font: inherit;
    font-variant-numeric: inherit;
  }

  button {
    background: var(--paper);
    border: 1px solid var(--ink-blue);
    border-radius: 2px;
    color: var(--ink-blue);
    cursor: pointer;
    min-height: 2.25rem;
    padding: 0.2rem 0.7rem;
  }

  button:hover:not(:disabled) {
    background: var(--paper-shade);
  }

  button:disabled {
    border-color: var(--rule);
    color: var(--ink-faint);
    cursor: default;
    opacity: 0.7;
  }

  button.quiet {
    background: none;
    border-color: transparent;
    padding-inline: 0.3rem;
    text-decoration: underline;
    text-decoration-color: var(--rule-strong);
    text-underline-offset: 0.2em;
  }

  button.strong {
    background: var(--ink-blue);
    color: #fff;
  }

  button.strong:hover {
    background: #14295a;
  }

  :focus-visible {
    outline: 3px solid var(--ink-blue);
    outline-offset: 2px;
  }

  .hidden {
    clip-path: inset(50%);
    height: 1px;
    overflow: hidden;
    position: absolute;
    white-space: nowrap;
    width: 1px;
  }

  .hint {
    color: var(--ink-faint);
    font-size: 0.875rem;
  }

  @media (prefers-reduced-motion: no-preference) {
    button {
      transition: background-color 120ms;
    }
  }
`;
