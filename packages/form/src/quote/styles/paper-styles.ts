import { css } from '../../styles/css.ts';

/** The quote as it is printed, seen on the screen: a sheet of the account book. */
export const paperPageStyles: string = css`
  .sheet {
    background: #fff;
    border: 1px solid var(--rule-strong);
    font-size: 0.8125rem;
    line-height: 1.35;
    margin-top: 1rem;
    max-width: 60rem;
    padding: 1.5rem;
  }

  /* The page's faces have no Devanagari: what each system has for it, upright. */
  .sheet:lang(hi) {
    font-family:
      'Iowan Old Style', 'Palatino Linotype', Palatino, 'Book Antiqua', 'URW Palladio L', 'Noto Serif',
      Cambria, Georgia, 'Noto Serif Devanagari', 'Kohinoor Devanagari', 'ITF Devanagari', 'Nirmala UI',
      Mangal, 'Noto Sans Devanagari', 'DejaVu Serif', serif;
    font-style: normal;
  }

  .sheet header {
    align-items: baseline;
    border-bottom: 3px double var(--ledger-red);
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.5rem;
    justify-content: space-between;
    margin-bottom: 0.5rem;
  }

  .sheet h3 {
    color: var(--ink-blue);
    font-size: 1.25rem;
    font-variant-caps: small-caps;
  }

  .sheet h4 {
    border-bottom: 1px solid var(--rule-strong);
    color: var(--ink-blue);
    font-size: 0.875rem;
    margin-block: 0.6rem 0.2rem;
  }

  .sheet .estimate {
    font-style: italic;
  }

  .sheet .trial {
    border: 2px solid var(--ledger-red);
    font-weight: 600;
    margin-block: 0.5rem;
    padding: 0.25rem 0.5rem;
  }

  .sheet .facts > div {
    border-bottom: 1px dotted var(--rule);
    display: flex;
    gap: 0.75rem;
    justify-content: space-between;
  }

  .sheet .facts dt {
    color: var(--ink-faint);
    flex: none;
    max-width: 45%;
  }

  .sheet .facts dd {
    text-align: right;
  }

  .sheet .facts dt:empty + dd {
    text-align: left;
  }

  .sheet:lang(hi) :is(.estimate, .axis-name) {
    font-style: normal;
  }

  .sheet figure {
    align-items: center;
    display: flex;
    gap: 1.5rem;
    margin-block: 0.4rem;
  }

  .sheet figure > svg {
    flex: 0 1 20rem;
    min-width: 0;
  }

  .sheet figcaption {
    border: 0;
    color: inherit;
    flex: 1;
    font-weight: normal;
    margin: 0;
  }

  .sheet figcaption p + p {
    margin-top: 0.4rem;
  }

  .sheet .boxed {
    border-block: 1px solid var(--ink-blue);
    columns: 2;
    column-gap: 1.5rem;
    margin-block: 0.4rem;
  }

  .sheet .boxed > div {
    break-inside: avoid;
  }

  .sheet .boxed dd {
    font-weight: 600;
  }

  .sheet .columns {
    columns: 2;
    column-gap: 1.5rem;
  }

  .sheet .columns .item {
    break-inside: avoid;
  }

  .sheet .columns .item:first-child h4 {
    margin-top: 0;
  }

  .sheet table {
    font-size: 0.75rem;
    min-width: 0;
  }

  .sheet :is(th, td) {
    padding: 0.1rem 0.3rem;
  }

  .sheet th:first-child {
    background: none;
    white-space: normal;
  }

  .sheet ul {
    list-style: disc;
    padding-left: 1.1rem;
  }

  .sheet .signs {
    display: grid;
    gap: 1.5rem;
    grid-template-columns: repeat(3, 1fr);
    margin-top: 2.5rem;
  }

  .sheet .sign {
    border-top: 1px solid var(--ink);
  }

  @media (max-width: 39.99rem) {
    .sheet {
      padding: 0.75rem;
    }

    .sheet :is(.columns, .boxed) {
      columns: 1;
    }

    .sheet figure {
      flex-direction: column;
    }

    .sheet figure > * {
      flex: none;
      width: 100%;
    }

    .sheet .room {
      overflow-x: auto;
    }
  }
`;
