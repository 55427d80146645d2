/** A published factor of what a unit of electricity gives off. */
export interface CarbonFactor {
  /** kg for a kWh, which is t for a MWh: as published, or grams of it divided by 1,000. */
  readonly factor: string;
  readonly gas: 'CO2' | 'CO2e';
  /** Factors of different kinds answer different questions: none may stand in for another unsaid. */
  readonly kind: 'average' | 'operating-margin' | 'build-margin' | 'life-cycle';
  /** What of: a grid, or a way to make electricity. */
  readonly of: string;
  /** The edition, and the year that it is about. */
  readonly version: string;
  readonly variant: string;
  readonly title: string;
  readonly publisher: string;
  readonly year: number;
  /** Whether it was read where another text quotes it, and not in the publication itself. */
  readonly isQuoted: boolean;
}

const GRID = { gas: 'CO2', of: 'the Indian grid', isQuoted: true } as const;
const DATABASE = {
  title: 'CO2 Baseline Database for the Indian Power Sector',
  publisher: 'Central Electricity Authority',
} as const;
const IN_24 = { ...GRID, ...DATABASE, year: 2024, version: 'version 20: fiscal year 2023-24' } as const;
const IN_25 = { ...GRID, ...DATABASE, year: 2025, version: 'version 21: fiscal year 2024-25' } as const;
/** Earlier years as a table of five years gives them that quotes the edition of 2025. */
const ANEW = { ...IN_25, version: 'version 21: fiscal year 2023-24' } as const;
const MARGIN = 'one more unit of the grid';

const LIFE = { gas: 'CO2e', kind: 'life-cycle' } as const;
const PANEL = {
  ...LIFE,
  variant: 'median',
  version: 'Fifth Assessment Report, Table A.III.2',
  title: 'Climate Change 2014: Mitigation of Climate Change, Annex III',
  publisher: 'Intergovernmental Panel on Climate Change',
  year: 2014,
  isQuoted: true,
} as const;
const REVIEW = {
  ...LIFE,
  of: 'crystalline silicon modules',
  version: '1,700 kWh/m² a year, 30 years',
  title: 'Life Cycle Greenhouse Gas Emissions of Crystalline Silicon Photovoltaic Electricity Generation',
  publisher: 'Hsu et al., National Renewable Energy Laboratory',
  year: 2012,
  isQuoted: false,
} as const;

/**
 * Published factors, each with its edition and variant, for a form to offer. Nothing is worked out with them unless a
 * quote names one: the quote says its own factor, version and variant.
 *
 * @source named in each row
 */
export const CARBON_FACTORS: readonly CarbonFactor[] = [
  { ...IN_24, factor: '0.727', kind: 'average', variant: 'weighted average with renewables' },
  { ...ANEW, factor: '0.7290', kind: 'average', variant: 'weighted average without imports' },
  { ...IN_25, factor: '0.7117', kind: 'average', variant: 'weighted average without imports' },
  { ...IN_25, factor: '0.7097', kind: 'average', variant: 'weighted average with imports' },
  { ...ANEW, factor: '0.9643', kind: 'operating-margin', variant: MARGIN },
  { ...ANEW, factor: '0.5522', kind: 'build-margin', variant: MARGIN },
  { ...IN_25, factor: '0.9646', kind: 'operating-margin', variant: MARGIN },
  { ...IN_25, factor: '0.5119', kind: 'build-margin', variant: MARGIN },
  { ...PANEL, factor: '0.041', of: 'solar modules on roofs' },
  { ...PANEL, factor: '0.048', of: 'solar modules in fields' },
  { ...PANEL, factor: '0.820', of: 'coal' },
  { ...PANEL, factor: '0.490', of: 'gas, combined cycle' },
  { ...PANEL, factor: '0.011', of: 'wind on land' },
  { ...REVIEW, factor: '0.057', variant: 'median as published; half of all from 0.044 to 0.073' },
  { ...REVIEW, factor: '0.045', variant: 'median, harmonised; half of all from 0.039 to 0.049' },
];
