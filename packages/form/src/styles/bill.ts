import { css } from './css.ts';

/** The bill: particulars on the left, figures in ruled columns on the right. */
export const billStyles: string = css`
  .bill-page {
    display: flex;
    flex-direction: column;
  }

  .tip {
    display: block;
  }

  .bill-page .heads,
  .lines > li > details > summary {
    align-items: baseline;
    display: grid;
    gap: 0 0.5rem;
    grid-template-columns: minmax(0, 1fr) 5rem 5rem;
  }

  .bill-page .heads {
    border-block: 1px solid var(--rule-strong);
    color: var(--ink-faint);
    font-size: 0.8125rem;
    padding-block: 0.2rem;
  }

  .bill-page .heads span + span {
    text-align: right;
  }

  .lines.split > li > details > summary {
    grid-template-columns: minmax(0, 1fr) 5rem;
  }

  .lines {
    font-size: 0.9375rem;
  }

  .lines > li {
    border-bottom: 1px solid var(--rule);
  }

  .lines summary {
    cursor: pointer;
    list-style: none;
    position: relative;
  }

  .lines > li > details > summary {
    align-items: stretch;
    padding-left: 1.1rem;
  }

  .lines > li > details > summary > :is(.label, .amount),
  .lines > li > details > summary::before {
    padding-block: 0.35rem 0.25rem;
  }

  .lines summary::-webkit-details-marker {
    display: none;
  }

  .lines summary::before {
    color: var(--ink-blue);
    content: '+';
    font-family: sans-serif;
    left: 0;
    position: absolute;
  }

  .lines details[open] > summary::before {
    content: '−';
  }

  .lines summary:hover {
    background: var(--paper-shade);
  }

  .lines .label {
    font-weight: 400;
  }

  .amount {
    border-left: 1px solid var(--red-rule);
    text-align: right;
    white-space: nowrap;
  }

  .amount.without {
    color: var(--ink-faint);
  }

  .amount.credit {
    color: var(--ledger-red);
  }

  .lines .sum {
    border-top: 1px solid var(--ink);
  }

  .lines .total {
    border-bottom: 3px double var(--ink);
    border-top: 1px solid var(--ink);
  }

  .lines .total .label,
  .lines .total .own {
    font-size: 1.125rem;
    font-weight: 700;
  }

  .sub {
    color: var(--ink-blue);
    font-size: 1.0625rem;
    font-variant-caps: small-caps;
    font-weight: 600;
    margin-top: 1.25rem;
  }

  @media (min-width: 64rem) {
    .lines {
      font-size: 1rem;
    }

    .bill-page .heads,
    .lines > li > details > summary {
      grid-template-columns: minmax(0, 1fr) 7rem 7rem;
    }

    .lines.split > li > details > summary {
      grid-template-columns: minmax(0, 1fr) 7rem;
    }
  }
`;
