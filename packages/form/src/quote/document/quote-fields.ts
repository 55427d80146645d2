import { MONTH_KEYS, MONTH_NAMES, type Path, type QuoteDocument } from '@unitbook/engine';
import type { KnownCharge } from './charges.ts';

/** A field of the quote: where it stands, its words, and what may be typed in it. */
export interface QuoteField {
  readonly path: Path;
  readonly label: string;
  readonly hint?: string;
  readonly is: 'number' | 'day' | 'text' | 'words';
  /** What it is called in a message; left out: as its label. */
  readonly what?: string;
  /** What stands behind a number that was read, such as " kWp". */
  readonly unit?: string;
  /** Whether it may stay blank; a blank one is left out of the document. */
  readonly mayBeBlank?: boolean;
  /** Whether a text has to be there: others may stay blank as they are. */
  readonly isWanted?: boolean;
  /** Decimals that a number may have at most, where the engine does not look at one with more. */
  readonly places?: number;
}

/** What the fields of a quote hang on besides the quote. */
export interface FieldSource {
  readonly document: QuoteDocument;
  readonly charges: readonly KnownCharge[];
  readonly powers: readonly string[];
}

const text = (path: Path, label: string, hint = ''): QuoteField => ({
  path,
  label,
  is: 'text',
  mayBeBlank: true,
  ...(hint === '' ? {} : { hint }),
});

const number = (path: Path, label: string, more: Partial<QuoteField> = {}): QuoteField => ({
  path,
  label,
  is: 'number',
  ...more,
});

/** The twelve fields of a table by calendar month. */
export function monthFields(path: Path, what: string, unit: string): readonly QuoteField[] {
  return MONTH_KEYS.map((key, at) =>
    number([...path, key], MONTH_NAMES[at] ?? '', {
      what: `${what} ${MONTH_NAMES[at] ?? ''}`,
      unit,
      mayBeBlank: true,
      places: 3,
    }),
  );
}

/** Who offers what to whom, and from when. */
export const offerFields = (): readonly QuoteField[] => [
  { path: ['offer', 'date'], label: 'Day of the quote', is: 'day' },
  { path: ['offer', 'validUntil'], label: 'Stands until', is: 'day', mayBeBlank: true },
  text(['offer', 'customer'], 'For whom'),
  text(['offer', 'site'], 'Where the plant will stand'),
  text(['offer', 'seller'], 'Who sells'),
  text(['offer', 'licence'], 'Licence of the seller'),
  text(['offer', 'installer'], 'Who installs', 'a licensed person'),
  { path: ['start'], label: 'First day of the plant', hint: 'the first day of a month', is: 'day' },
  {
    path: ['offer', 'promise'],
    label: 'What is warranted',
    hint: 'for how long, and how it is measured',
    is: 'words',
    mayBeBlank: true,
  },
  text(['offer', 'contact'], 'Whom to call after the sale', 'name, number, hours'),
];

/** Powers of the account that the tariff charges. */
export const powerFields = ({ powers, document }: FieldSource): readonly QuoteField[] =>
  [...new Set([...powers, ...Object.keys(document.quantities)])].map((name) =>
    number(['quantities', name], `${name.charAt(0).toUpperCase()}${name.slice(1).replaceAll('-', ' ')}, kW`, {
      hint: 'as on the bill',
      unit: ' kW',
      mayBeBlank: !powers.includes(name),
    }),
  );

/** The day of the year that the account chooses, under a tariff that lets it. */
export const settlementFields = (): readonly QuoteField[] => [
  text(
    ['settlementDay'],
    'Settlement day chosen',
    'month and day, such as 09-30; only where the tariff lets the account choose',
  ),
];

/** What the household uses. */
export const useFields = (): readonly QuoteField[] => [
  ...monthFields(['use', 'months'], 'the units used in', ' units'),
  text(['use', 'source'], 'Where the units are from', 'such as: twelve bills, April 2025 to March 2026'),
  number(['use', 'growth'], 'Use grows each year by, %', {
    unit: ' %',
    mayBeBlank: true,
    hint: 'may stay blank',
  }),
];

/** The plant that is offered. */
export const plantFields = (): readonly QuoteField[] => [
  number(['plant', 'kWp'], 'Plant size, kWp', { unit: ' kWp', hint: 'all modules together' }),
  number(['plant', 'kW'], 'Inverters, kW', { unit: ' kW', mayBeBlank: true, hint: 'alternating current' }),
  text(['plant', 'modules'], 'Modules'),
  text(['plant', 'inverter'], 'Inverter'),
  text(['plant', 'layout'], 'Layout', 'where the modules lie, direction and tilt'),
  text(['plant', 'shading'], 'Shade', 'and what was taken off for it'),
];

/** What the plant makes, said by months, a year or irradiation. */
export function generationFields({ document: { generation } }: FieldSource): readonly QuoteField[] {
  const { months, year, irradiation, unit } = generation;
  const per = unit === 'kWh/m2/month' ? ' kWh per m²' : ' kWh per m² and day';
  return [
    ...(months === undefined ? [] : monthFields(['generation', 'months'], 'the units made in', ' units')),
    ...(year === undefined
      ? []
      : [
          number(['generation', 'year'], 'Units of the first year', {
            unit: ' units',
            hint: 'shared out by days',
          }),
        ]),
    ...(irradiation === undefined
      ? []
      : [
          ...monthFields(['generation', 'irradiation'], 'the irradiation of', per),
          number(['generation', 'performanceRatio'], 'Performance ratio', { hint: 'such as 0.78' }),
        ]),
    text(['generation', 'source'], 'Where this is from', 'publisher, method, year'),
    number(['generation', 'usualYield'], 'Plants of the region make, kWh per kWp and year', {
      hint: 'more than that is warned of',
      mayBeBlank: true,
    }),
    number(['degradation', 'first'], 'Wear in the second year, %', { unit: ' %' }),
    number(['degradation', 'later'], 'Wear each year after, %', { unit: ' %' }),
    text(['degradation', 'source'], 'Where the wear is from', 'such as the sheet of the modules'),
  ];
}

/** How much of it the house uses as it is made. */
export const selfUseFields = (): readonly QuoteField[] => [
  number(['selfUse', 'share'], 'Own use, % of what is made', {
    unit: ' %',
    hint: 'blank: nothing is counted as used at home, the least that can be',
    mayBeBlank: true,
  }),
  text(['selfUse', 'basis'], 'Why so much', 'who is at home by day, what runs then'),
];

/** Rises that are said of something that cannot rise by this tariff: it has no such charge, or one that follows others. */
export function strayRises({ document, charges }: FieldSource): readonly string[] {
  const rising = charges.filter(({ follows }) => follows === '').map(({ id }) => id);
  return charges.length === 0
    ? []
    : Object.keys(document.escalation.charges).filter((id) => !rising.includes(id));
}

const riseField = (id: string, label: string): QuoteField =>
  number(['escalation', 'charges', id], `${label}, % a year`, {
    what: `the yearly rise of the ${label.toLowerCase()}`,
    unit: ' %',
    mayBeBlank: true,
  });

/** How rates rise, charge by charge. */
export const riseFields = (source: FieldSource): readonly QuoteField[] => [
  ...source.charges.filter(({ follows }) => follows === '').map(({ id, label }) => riseField(id, label)),
  ...strayRises(source).map((id) =>
    riseField(id, `“${source.charges.find((charge) => charge.id === id)?.label ?? id}”`),
  ),
  text(['escalation', 'basis'], 'Why so much', 'past orders, or a forecast with its publisher'),
];

/** How long is looked ahead, and what later money is worth. */
export const lifeFields = (): readonly QuoteField[] => [
  number(['discountRate'], 'Discount rate, % a year', { unit: ' %', hint: 'what money earns elsewhere' }),
  number(['years'], 'Life looked at, years', { unit: ' years', places: 0 }),
];
