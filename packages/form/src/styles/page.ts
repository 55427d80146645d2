import { css } from './css.ts';

/** The open book: two pages on a desk, one column on a phone. */
export const pageStyles: string = css`
  .book {
    background: var(--paper);
    border: 1px solid #cfc4a5;
    border-radius: 3px;
    box-shadow:
      0 1px 2px rgb(60 45 10 / 25%),
      0 12px 32px rgb(60 45 10 / 18%);
    display: grid;
    grid-template-columns: minmax(0, 1fr);
  }

  .page {
    border-bottom: 1px solid var(--rule-strong);
    min-width: 0;
    padding: 1.25rem 1rem 1.75rem;
  }

  h2 {
    border-bottom: 3px double var(--ledger-red);
    color: var(--ink-blue);
    font-size: 1.25rem;
    font-variant-caps: small-caps;
    font-weight: 600;
    letter-spacing: 0.04em;
    margin-bottom: 0.75rem;
    padding-bottom: 0.15rem;
  }

  .particulars {
    color: var(--ink-faint);
    font-size: 0.9375rem;
    font-style: italic;
    margin-bottom: 0.75rem;
  }

  .safety {
    color: var(--ink-faint);
    font-size: 0.9375rem;
    padding: 1.25rem 1rem 1.5rem;
  }

  .safety h2 {
    border: 0;
    color: var(--ledger-red);
    font-size: 1.0625rem;
    margin-bottom: 0.25rem;
  }

  .safety p + p {
    margin-top: 0.5rem;
  }

  @media (min-width: 64rem) {
    .book {
      grid-template-areas:
        'entry answer'
        'entry bill'
        'passbook passbook'
        'plant plant'
        'safety safety';
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      grid-template-rows: auto 1fr auto auto auto;
    }

    .page,
    .safety {
      padding: 1.75rem 2.25rem 2.25rem 3.5rem;
      position: relative;
    }

    .page::before {
      border-left: 1px solid var(--red-rule);
      border-right: 1px solid var(--red-rule);
      content: '';
      inset: 0 auto 0 2rem;
      position: absolute;
      width: 4px;
    }

    .answer-page {
      border-bottom: 0;
      grid-area: answer;
      padding-bottom: 0.75rem;
    }

    .entry-page {
      background: linear-gradient(to left, rgb(90 70 20 / 16%), rgb(90 70 20 / 4%) 1.25rem, transparent 3rem);
      border-right: 1px solid #cbbf9d;
      display: flex;
      flex-direction: column;
      grid-area: entry;
    }

    .entry-page::after,
    .bill-page::after {
      background: repeating-linear-gradient(transparent 0 2.3rem, var(--rule) 2.3rem calc(2.3rem + 1px));
      content: '';
      flex: 1;
      margin-top: 0.5rem;
    }

    .bill-page {
      grid-area: bill;
      padding-top: 0.75rem;
    }

    .answer-page,
    .bill-page {
      background: linear-gradient(
        to right,
        rgb(90 70 20 / 14%),
        rgb(90 70 20 / 3%) 1.25rem,
        transparent 3rem
      );
    }

    .passbook-page {
      grid-area: passbook;
    }

    .plant-page {
      grid-area: plant;
    }

    .safety {
      columns: 2;
      column-gap: 4rem;
      grid-area: safety;
    }

    .safety h2 {
      column-span: all;
    }
  }
`;
