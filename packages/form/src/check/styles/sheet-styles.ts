import { css } from '../../styles/css.ts';

/** The memo and the letter as sheets of paper. */
export const sheetStyles: string = css`
  .sheets {
    display: grid;
    gap: 1.5rem;
    grid-template-columns: minmax(0, 1fr);
  }

  .sheet {
    --paper: #fffdf6;
    background: var(--paper);
    border: 1px solid var(--rule);
    min-width: 0;
    overflow-wrap: break-word;
    padding: 1rem;
  }

  .sheet :is(p, ul, table) {
    margin-bottom: 0.6rem;
  }

  .sheet ul {
    list-style: disc;
    padding-left: 1.25rem;
  }

  .sheet table {
    font-size: 0.875rem;
    min-width: 0;
  }

  .sheet :is(th, td) {
    padding-inline: 0.3rem;
    white-space: normal;
  }

  /* A number that goes on in the next line is read as two. */
  .sheet td.number {
    white-space: nowrap;
  }

  .sheet :is(th, td).words {
    text-align: left;
  }

  .sheet .date {
    text-align: right;
  }

  .beside-letter {
    border-top: 1px dashed var(--rule-strong);
    padding-top: 0.5rem;
  }

  @media (min-width: 64rem) {
    .sheets-page {
      grid-area: sheets;
    }

    .sheets {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    }
  }

  @media print {
    .sheets-page,
    .rules,
    .beside-letter {
      display: none;
    }

    .prints-memo > :not(.sheets-page),
    .prints-letter > :not(.sheets-page),
    .prints-memo .sheet:not(.memo),
    .prints-letter .sheet.memo,
    .prints-memo .sheets-page > h2,
    .prints-letter .sheets-page > h2,
    .sheet summary,
    .prints-letter .sheet > h3 {
      display: none;
    }

    .prints-memo > .sheets-page,
    .prints-letter > .sheets-page {
      display: block;
    }

    .sheets {
      display: block;
    }

    .sheet {
      --paper: #fff;
      background: none;
      padding: 0;
    }

    .sheet,
    .sheet details {
      border: 0;
    }
  }
`;
