import { css } from './css.ts';

/** The passbook: one ruled line for each month; wider than a phone, it scrolls by itself. */
export const passbookStyles: string = css`
  .wide {
    /* A shadow at the edge where there is more; the covers scroll away with what they cover. */
    background:
      linear-gradient(to right, var(--paper) 30%, transparent) 0 0 / 2.5rem 100% local,
      linear-gradient(to left, var(--paper) 30%, transparent) 100% 0 / 2.5rem 100% local,
      linear-gradient(to right, rgb(60 45 10 / 35%), transparent) 0 0 / 0.9rem 100% scroll,
      linear-gradient(to left, rgb(60 45 10 / 35%), transparent) 100% 0 / 0.9rem 100% scroll;
    background-repeat: no-repeat;
    overflow-x: auto;
  }

  table {
    border-collapse: collapse;
    font-size: 0.9375rem;
    min-width: 46rem;
    width: 100%;
  }

  .balance {
    font-style: italic;
    padding-top: 0.5rem;
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
    background: var(--paper);
    left: 0;
    position: sticky;
    text-align: left;
  }

  tr[aria-current='true'] th {
    background: var(--paper-shade);
  }

  td.none {
    color: var(--ink-faint);
  }

  .opening,
  .used,
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

  @media (max-width: 39.99rem) {
    th .mark {
      display: block;
    }
  }

  .due {
    margin-top: 0.75rem;
  }
`;
