/** What a study found plants to lose. */
export interface DegradationStudy {
  readonly of: 'modules' | 'systems';
  readonly measure: 'median' | 'mean';
  /** Percent a year as printed: one number, or the two ends of a range. */
  readonly percent: readonly [string] | readonly [string, string];
  /** The band printed as "P80", in percent a year; null where none is printed. */
  readonly band: readonly [string, string] | null;
  readonly title: string;
  readonly publisher: string;
  /** null where the publication names none. */
  readonly year: number | null;
}

const REVIEW = {
  title: 'Photovoltaic Degradation Rates - an Analytical Review, Progress in Photovoltaics 21:12-29',
  publisher: 'Jordan, Kurtz; NREL',
  year: 2013,
} as const;
const COMPENDIUM = {
  title: 'Compendium of Photovoltaic Degradation Rates',
  publisher: 'Jordan, Kurtz, VanSant, Newmiller; NREL',
  year: 2016,
} as const;
const ENGINEERS = {
  title: 'Photovoltaic module degradation paper',
  publisher: 'DNV GL',
  year: null,
} as const;

/**
 * What published reviews of crystalline silicon found, to judge what a quote assumes. Nothing is worked out
 * with them: a quote says its own rate.
 */
export const DEGRADATION_STUDIES: readonly DegradationStudy[] = [
  { of: 'modules', measure: 'median', percent: ['0.5'], band: null, ...REVIEW },
  { of: 'modules', measure: 'median', percent: ['0.5', '0.6'], band: null, ...COMPENDIUM },
  { of: 'modules', measure: 'mean', percent: ['0.8', '0.9'], band: null, ...COMPENDIUM },
  { of: 'modules', measure: 'mean', percent: ['0.57'], band: ['0.10', '1.06'], ...ENGINEERS },
  { of: 'systems', measure: 'median', percent: ['0.77'], band: ['0.05', '1.45'], ...ENGINEERS },
];
