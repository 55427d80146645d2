import type { Finding, GenerationPeriod, PlantDay } from '@unitbook/engine';

/** What a plant made, as far as a file tells it. */
export interface Generation {
  /** Billing periods or calendar months, in order of time. */
  readonly periods: readonly GenerationPeriod[];
  /** Single days, where they are known; else none. */
  readonly days: readonly PlantDay[];
  readonly findings: readonly Finding[];
}
