import { css } from '../styles/css.ts';

/** The chart: told apart by form, so that it needs no colour. */
export const chartStyles: string = css`
  figure {
    margin: 0 0 0.5rem;
  }

  figcaption {
    color: var(--ink-faint);
    font-size: 0.875rem;
    text-align: center;
  }

  .strips {
    display: grid;
    gap: 0.75rem 1.5rem;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 21rem), 1fr));
  }

  svg.strip {
    display: block;
    height: auto;
    width: 100%;
  }

  svg.wide {
    max-width: 62rem;
  }

  svg.narrow {
    max-width: 34rem;
  }

  svg text {
    fill: var(--ink);
    font-family: sans-serif;
    font-size: 11px;
  }

  svg .tick {
    fill: var(--ink-faint);
  }

  svg :is(.mark-sign, .sign) {
    font-weight: 700;
  }

  svg .sign {
    font-size: 15px;
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 3px;
  }

  .grid {
    stroke: var(--rule);
  }

  .band {
    fill: #d9e2ef;
  }

  .band-edge {
    fill: none;
    stroke: var(--rule-strong);
    stroke-width: 0.75;
  }

  .expected {
    fill: none;
    stroke: var(--ink-blue);
    stroke-dasharray: 4 3;
    stroke-width: 1.25;
  }

  path.made {
    fill: none;
    stroke: var(--ink);
    stroke-width: 4;
  }

  rect.day {
    fill: #8795b0;
  }

  .halo {
    fill: none;
    stroke: var(--paper);
    stroke-width: 3;
  }

  circle.zero {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.25;
  }

  .outage {
    fill: none;
    stroke: var(--ink-faint);
    stroke-width: 1;
  }

  .mark-line {
    stroke: var(--ink-faint);
    stroke-dasharray: 1 3;
  }

  .pointed {
    fill: none;
    stroke: var(--ledger-red);
    stroke-width: 2;
  }

  .legend,
  .entries {
    display: flex;
    flex-wrap: wrap;
    font-size: 0.875rem;
    gap: 0.15rem 1.25rem;
    margin-bottom: 0.5rem;
  }

  .legend li {
    align-items: center;
    display: flex;
    gap: 0.4rem;
  }

  svg.key {
    flex: none;
    height: 14px;
    width: 24px;
  }

  .letter {
    border: 1px solid var(--rule-strong);
    border-radius: 2px;
    display: inline-block;
    font-family: sans-serif;
    font-size: 0.75rem;
    min-width: 1.25rem;
    padding-inline: 0.2rem;
    text-align: center;
  }
`;
