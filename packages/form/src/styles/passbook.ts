import { css } from './css.ts';

/** The passbook: one ruled line for each month; wider than a phone, it scrolls by itself. */
export const passbookStyles: string = css`
  .wide {
    overflow-x: auto;
  }

  table {
    border-collapse: collapse;
    font-size: 0.9375rem;
    min-width: 46rem;
    width: 100%;
  }

  caption {
    caption-side: bottom;
    color: var(--ink-faint);
    font-size: 0.875rem;
    font-style: italic;
    padding-top: 0.5rem;
    text-align: left;
  }

  th,
  td {
    border-bottom: 1px solid var(--rule);
    font-weight: 400;
    padding: 0.25rem 0.5rem;
    text-align: right;
    white-space: nowrap;
  }

  thead th {
    border-block: 1px solid var(--rule-strong);
    color: var(--ink-faint);
    font-size: 0.8125rem;
    vertical-align: bottom;
    white-space: normal;
  }

  th:first-child {
    text-align: left;
  }

  td.none {
    color: var(--ink-faint);
  }

  .opening,
  .setOff,
  .billed,
  .closing {
    border-left: 1px solid var(--red-rule);
  }

  td.closing,
  td.payable {
    font-weight: 600;
  }

  th.payable,
  td.payable {
    border-left: 3px double var(--red-rule);
  }

  tr[aria-current='true'] {
    background: var(--paper-shade);
  }

  tr.closed th,
  tr.closed td {
    border-bottom: 3px double var(--ledger-red);
  }

  th .mark {
    color: var(--ledger-red);
    font-size: 0.8125rem;
    font-style: italic;
  }

  th button.quiet {
    min-height: 1.75rem;
    padding: 0 0.1rem;
  }

  .due {
    margin-top: 0.75rem;
  }
`;
