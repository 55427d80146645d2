import { css } from './css.ts';

/** The answer, above the bill: one large figure and what goes with it. */
export const answerStyles: string = css`
  .period {
    color: var(--ink-faint);
    font-style: italic;
  }

  .answer > div {
    align-items: baseline;
    border-bottom: 1px solid var(--rule);
    display: flex;
    flex-wrap: wrap;
    gap: 0 1rem;
    justify-content: space-between;
    padding-block: 0.3rem;
  }

  .answer dd {
    font-weight: 600;
    margin-left: auto;
    text-align: right;
  }

  .answer .payable {
    color: var(--ink-blue);
    font-size: 2.75rem;
    line-height: 1.1;
  }

  .answer .payable.asked {
    color: var(--question);
  }

  .answer .first {
    border-bottom: 3px double var(--ink-blue);
  }

  .why {
    margin-top: 0.6rem;
  }

  .provided {
    border-left: 3px solid var(--question);
    color: var(--question);
    margin-top: 0.6rem;
    padding-left: 0.6rem;
  }
`;
