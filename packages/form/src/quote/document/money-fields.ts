import type { QuoteDocument } from '@unitbook/engine';
import { batteryFields, nextBatteryFields } from './battery-fields.ts';
import {
  generationFields,
  lifeFields,
  offerFields,
  plantFields,
  powerFields,
  riseFields,
  selfUseFields,
  settlementFields,
  useFields,
  type FieldSource,
  type QuoteField,
} from './quote-fields.ts';

/** A line of the price. */
export const priceFields = (at: number): readonly QuoteField[] => [
  { path: ['price', at, 'item'], label: 'What for', is: 'text', what: 'what the price is for' },
  { path: ['price', at, 'amount'], label: 'Price before tax', is: 'number', what: 'the price' },
  { path: ['price', at, 'tax'], label: 'Tax on it, %', is: 'number', unit: ' %', mayBeBlank: true },
];

/** A tier of the subsidy. */
export const tierFields = (at: number): readonly QuoteField[] => [
  {
    path: ['subsidy', 'tiers', at, 'upTo'],
    label: 'Up to, kW',
    hint: 'blank in the last: beyond',
    is: 'number',
    unit: ' kW',
    mayBeBlank: true,
  },
  {
    path: ['subsidy', 'tiers', at, 'perKilowatt'],
    label: 'For each kW',
    is: 'number',
    what: 'the amount for each kW',
  },
];

/** What the state adds. */
export function subsidyFields({ subsidy }: QuoteDocument): readonly QuoteField[] {
  if (subsidy === undefined) return [];
  const { amount, tiers = [] } = subsidy;
  return [
    ...(amount === undefined
      ? []
      : [{ path: ['subsidy', 'amount'], label: 'Subsidy', is: 'number' } as const]),
    ...tiers.flatMap((_, at) => tierFields(at)),
    {
      path: ['subsidy', 'most'],
      label: 'At most',
      is: 'number',
      mayBeBlank: true,
      what: 'the most that is paid',
    },
    { path: ['subsidy', 'paidAfter'], label: 'Paid so many months after the start', is: 'number', places: 0 },
    { path: ['subsidy', 'source'], label: 'The scheme, and its date', is: 'text', mayBeBlank: true },
  ];
}

/** What is borrowed. */
export const loanFields = ({ loan }: QuoteDocument): readonly QuoteField[] =>
  loan === undefined
    ? []
    : [
        { path: ['loan', 'amount'], label: 'Borrowed', is: 'number', what: 'the amount borrowed' },
        { path: ['loan', 'rate'], label: 'Interest, % a year', is: 'number', unit: ' %' },
        { path: ['loan', 'months'], label: 'Instalments, months', is: 'number', unit: ' months', places: 0 },
        { path: ['loan', 'fees'], label: 'Fees on the first day', is: 'number', mayBeBlank: true },
      ];

/** What is replaced in some year. */
export const replacementFields = (at: number): readonly QuoteField[] => [
  { path: ['upkeep', 'replacements', at, 'item'], label: 'What is replaced', is: 'text' },
  {
    path: ['upkeep', 'replacements', at, 'year'],
    label: 'In year',
    is: 'number',
    what: 'the year it is replaced in',
    places: 0,
  },
  { path: ['upkeep', 'replacements', at, 'amount'], label: 'Price then', is: 'number' },
];

/** What the plant costs while it runs. */
export const upkeepFields = ({ upkeep }: QuoteDocument): readonly QuoteField[] => [
  { path: ['upkeep', 'perYear'], label: 'Maintenance of the first year', is: 'number' },
  { path: ['upkeep', 'growth'], label: 'It grows each year by, %', is: 'number', unit: ' %' },
  ...upkeep.replacements.flatMap((_, at) => replacementFields(at)),
];

const sigma = (key: string, label: string, mayBeBlank = false): QuoteField => ({
  path: ['uncertainty', key],
  label,
  is: 'number',
  unit: ' %',
  ...(mayBeBlank ? { mayBeBlank } : {}),
});

/** How sure the inputs are. */
export const uncertaintyFields = ({ uncertainty }: QuoteDocument): readonly QuoteField[] =>
  uncertainty === undefined
    ? []
    : [
        sigma('generation', 'Generation over the life, %'),
        sigma('yearToYear', 'Generation from year to year, %', true),
        sigma('use', 'Use, %'),
        sigma('escalation', 'Rises of rates, percentage points'),
        sigma('degradation', 'Wear, percentage points'),
        { ...sigma('useWithEscalation', 'Use goes with rises, −1 to 1', true), unit: '' },
        {
          path: ['uncertainty', 'seed'],
          label: 'Seed of the draws',
          is: 'number',
          mayBeBlank: true,
          places: 0,
        },
        ...(uncertainty.policy === undefined
          ? []
          : [
              {
                path: ['uncertainty', 'policy', 'percent'],
                label: 'Chance that it comes, %',
                is: 'number',
                unit: ' %',
              } as const,
            ]),
      ];

/** A case of other rules. */
export const policyFields = (at: number): readonly QuoteField[] => [
  {
    path: ['policies', at, 'name'],
    label: 'The case is called',
    what: 'what the case is called',
    is: 'text',
    isWanted: true,
  },
  {
    path: ['policies', at, 'from'],
    label: 'From the beginning of year',
    what: 'the year from which the case holds',
    is: 'number',
    places: 0,
  },
  {
    path: ['policies', at, 'selfUse'],
    label: 'Own use then, %',
    is: 'number',
    unit: ' %',
    mayBeBlank: true,
  },
];

/** CO2 that a unit stands for, with where it is from. */
export const carbonFields = ({ carbon }: QuoteDocument): readonly QuoteField[] =>
  carbon === undefined
    ? []
    : [
        { path: ['carbon', 'factor'], label: 'kg CO₂ per kWh', is: 'number' },
        { path: ['carbon', 'version'], label: 'Version and year of the factor', is: 'text' },
        { path: ['carbon', 'variant'], label: 'Average, marginal or life cycle', is: 'text' },
      ];

/** Every field of a quote, in the order of the page. */
export function allFields(source: FieldSource): readonly QuoteField[] {
  const { document } = source;
  return [
    ...offerFields(),
    ...powerFields(source),
    ...settlementFields(),
    ...useFields(),
    ...plantFields(),
    ...generationFields(source),
    ...selfUseFields(),
    ...batteryFields(document),
    ...nextBatteryFields(document),
    ...document.price.flatMap((_, at) => priceFields(at)),
    ...subsidyFields(document),
    ...loanFields(document),
    ...upkeepFields(document),
    ...riseFields(source),
    ...lifeFields(),
    ...uncertaintyFields(document),
    ...(document.policies ?? []).flatMap((_, at) => policyFields(at)),
    ...carbonFields(document),
  ];
}
