import { css } from '../../styles/css.ts';

/** Inks and lines of the drawings. */
export const drawingStyles: string = css`
  svg.quote-chart {
    display: block;
    height: auto;
    overflow: hidden;
    width: 100%;
  }

  svg.quote-chart.narrow {
    max-width: 26rem;
  }

  svg.quote-chart.wide {
    max-width: 58rem;
  }

  svg.quote-key {
    flex: none;
    height: 14px;
    width: 24px;
  }

  svg.quote-chart text {
    fill: var(--ink);
    font-family: inherit;
    font-size: 12px;
    font-variant-numeric: lining-nums tabular-nums;
    paint-order: stroke;
    stroke: var(--paper);
    stroke-linejoin: round;
    stroke-width: 3px;
  }

  svg.quote-chart :is(.tick, .case) {
    fill: var(--ink-faint);
  }

  svg.quote-chart .axis-name {
    fill: var(--ink-faint);
    font-style: italic;
  }

  svg.quote-chart :is(.flag, .end, .input) {
    font-weight: 600;
  }

  .quote-figure :is(.grid, .axis, .zero, .flag-line, .line, .dashed, .edge, .hatch, .halo, .outline, .ring) {
    fill: none;
  }

  .quote-figure .grid {
    stroke: var(--rule);
    stroke-width: 0.75;
  }

  .quote-figure .axis {
    stroke: var(--rule-strong);
  }

  .quote-figure .zero {
    stroke: var(--ink);
  }

  .quote-figure .flag-line {
    stroke: var(--ink);
    stroke-dasharray: 1 3;
  }

  .quote-figure .line {
    stroke: var(--ink);
    stroke-linejoin: round;
    stroke-width: 2;
  }

  .quote-figure .dashed {
    stroke: var(--ink-blue);
    stroke-dasharray: 6 4;
    stroke-width: 1.5;
  }

  .quote-figure .edge {
    stroke: var(--ink-faint);
    stroke-width: 0.75;
  }

  .quote-figure .hatch {
    stroke: var(--ink-faint);
    stroke-width: 0.75;
  }

  .quote-figure .halo {
    stroke: var(--paper);
    stroke-width: 4;
  }

  .quote-figure :is(.dot, .solid) {
    fill: var(--ink);
  }

  .quote-figure :is(.outline, .solid, .nil) {
    stroke: var(--ink);
    stroke-width: 1.25;
  }

  .quote-figure .nil {
    fill: var(--paper);
  }

  .quote-figure .ring {
    stroke: var(--ink);
    stroke-width: 2;
  }
`;
