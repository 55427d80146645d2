import { OPEN_CASES } from './collected-open-cases.ts';
import { SERIES_CASES } from './collected-series-cases.ts';
import { ENERGY_CASES } from './collected-energy-cases.ts';
import type { MessageCase } from './message-case.ts';

/** Everything that can be said of a meter file, whatever its format. */
export const COLLECTED_CASES: readonly MessageCase[] = [...OPEN_CASES, ...SERIES_CASES, ...ENERGY_CASES];
