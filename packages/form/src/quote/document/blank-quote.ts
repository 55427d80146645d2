import type { QuoteDocument } from '@unitbook/engine';

/** The form of a saved quote that this version reads and writes. */
export const QUOTE_FORMAT = 'unitbook-quote-1';

/**
 * A quote with nothing typed. Nothing that a saving hangs on is filled in: whoever quotes has to say it.
 *
 * @param locale  how its numbers are grouped, such as "en-IN"
 * @param today   ISO date, or ''
 */
export function blankQuote(locale: string, today: string): QuoteDocument {
  return {
    format: QUOTE_FORMAT,
    offer: { date: today },
    locale,
    start: '',
    years: '25',
    quantities: {},
    use: { months: {}, source: '' },
    plant: { kWp: '' },
    generation: { months: {}, source: '' },
    selfUse: { share: '', basis: '' },
    degradation: { first: '', later: '' },
    escalation: { charges: {}, basis: '' },
    price: [{ item: '', amount: '' }],
    upkeep: { perYear: '', growth: '', replacements: [] },
    discountRate: '',
    payable: 'as-billed',
  };
}

/** A quote as the text of a file: what is kept in the browser and what is saved. */
export function quoteText(document: QuoteDocument): string {
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** What the generation is said by. */
export type GenerationKind = 'months' | 'irradiation' | 'year';

/** What a quote says its generation by. */
export function generationKind({ generation }: QuoteDocument): GenerationKind {
  if (generation.year !== undefined) return 'year';
  return generation.irradiation === undefined ? 'months' : 'irradiation';
}

/** The generation said another way, before anything is typed for it: source and yield stay. */
export function generationBy(document: QuoteDocument, kind: GenerationKind): QuoteDocument['generation'] {
  const { source, usualYield } = document.generation;
  const kept = { source, ...(usualYield === undefined ? {} : { usualYield }) };
  switch (kind) {
    case 'months':
      return { months: {}, ...kept };
    case 'year':
      return { year: '', ...kept };
    case 'irradiation':
      return { irradiation: {}, unit: 'kWh/m2/day', performanceRatio: '', ...kept };
  }
}

/** Parts of a quote that may be left out, as they are before anything is typed in them. */
export const BLANK_PARTS = {
  subsidy: { amount: '', paidAfter: '', to: 'customer', source: '' },
  loan: { amount: '', rate: '', months: '', kind: 'reducing' },
  uncertainty: { generation: '', use: '', escalation: '', degradation: '' },
  carbon: { factor: '', version: '', variant: '' },
  battery: { capacity: '', power: '', efficiency: '', cost: '' },
} as const satisfies {
  readonly subsidy: NonNullable<QuoteDocument['subsidy']>;
  readonly loan: NonNullable<QuoteDocument['loan']>;
  readonly uncertainty: NonNullable<QuoteDocument['uncertainty']>;
  readonly carbon: NonNullable<QuoteDocument['carbon']>;
  readonly battery: NonNullable<QuoteDocument['battery']>;
};
