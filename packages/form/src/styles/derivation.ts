import { css } from './css.ts';

/** How a figure comes about: each step indented beneath the one it belongs to. */
export const derivationStyles: string = css`
  .how {
    border-left: 2px solid var(--ink-blue);
    font-size: 0.9375rem;
    margin: 0 0 0.6rem 0.3rem;
    padding-left: 0.8rem;
  }

  .how .which {
    color: var(--ink-blue);
    font-size: 0.875rem;
    font-style: italic;
    font-weight: 400;
    margin-top: 0.25rem;
  }

  .formula {
    overflow-wrap: anywhere;
  }

  .rounding,
  .clause {
    color: var(--ink-faint);
    font-size: 0.875rem;
  }

  .clause {
    font-style: italic;
  }

  .steps {
    border-left: 1px solid var(--rule);
    margin-top: 0.15rem;
    padding-left: 0.6rem;
  }

  .step {
    align-items: baseline;
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.75rem;
    justify-content: space-between;
  }

  .steps .value {
    margin-left: auto;
    text-align: right;
  }

  .steps summary {
    align-items: baseline;
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.75rem;
    justify-content: space-between;
    min-height: 1.75rem;
    padding-left: 1.1rem;
  }

  .steps div.step {
    padding-left: 1.1rem;
  }

  .steps .clause,
  .steps .formula,
  .steps .rounding {
    padding-left: 1.1rem;
  }
`;
