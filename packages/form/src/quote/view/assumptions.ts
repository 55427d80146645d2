import type { QuoteDocument } from '@unitbook/engine';
import type { KnownCharge } from '../document/charges.ts';
import { ENGLISH_ASSUMPTIONS, type AssumptionWords } from '../words/assumption-words.ts';
import type { QuoteWriting } from './quote-writing.ts';

/** What a figure hangs on: its name, and how much it is. */
export type Assumption = readonly [label: string, text: string];

/** What assumptions are said with. */
export interface AssumptionSource {
  readonly charges: readonly KnownCharge[];
  /** The tariff by its name; '' leaves it out. */
  readonly tariff: string;
  /** What own use is by, in the place of the share of the document; left out: by that share. */
  readonly ownUse?: string;
  /** Left out: English. */
  readonly words?: AssumptionWords;
}

/** How rates rise, charges that rise alike together. */
function riseText(
  { escalation }: QuoteDocument,
  { charges, words = ENGLISH_ASSUMPTIONS }: AssumptionSource,
  writing: QuoteWriting,
): string {
  const names = new Map<string, string[]>();
  for (const [id, percent] of Object.entries(escalation.charges)) {
    if (/^-?0*(\.0*)?$/.test(percent)) continue;
    const label = charges.find((charge) => charge.id === id)?.label ?? id;
    names.set(percent, [...(names.get(percent) ?? []), label]);
  }
  if (names.size === 0) return words.notAtAll;
  return [...names]
    .map(([percent, labels]) => words.rises(writing.number(percent), labels.join(', ')))
    .join(words.apart);
}

/** Maintenance, its growth, and what is replaced when. */
export function upkeepText(
  { upkeep }: QuoteDocument,
  writing: QuoteWriting,
  words: AssumptionWords = ENGLISH_ASSUMPTIONS,
): string {
  const { perYear, growth, replacements } = upkeep;
  const items = replacements.map(({ item, year, amount }) =>
    words.replaced(item, year, writing.money(amount)),
  );
  return [words.maintenance(writing.money(perYear), writing.number(growth)), ...items].join(words.apart);
}

/** Everything that the figures hang on, said short. The quote was worked out, so every number is one. */
export function assumptionsOf(
  document: QuoteDocument,
  source: AssumptionSource,
  writing: QuoteWriting,
): readonly Assumption[] {
  const { degradation, selfUse, years, discountRate, use, subsidy } = document;
  const { words = ENGLISH_ASSUMPTIONS, tariff, ownUse } = source;
  const { number } = writing;
  const share = selfUse?.share;
  return [
    ...(tariff === '' ? [] : [[words.tariff, tariff] as const]),
    [words.rise, riseText(document, source, writing)],
    [words.ownUse, ownUse ?? (share === undefined ? words.unknownUse : `${number(share)} %`)],
    [words.wear, words.wears(number(degradation.first), number(degradation.later))],
    [words.upkeep, upkeepText(document, writing, words)],
    [words.discount, `${number(discountRate)} %`],
    [words.life, words.years(years)],
    [words.use, words.used(use.growth === undefined ? '' : number(use.growth))],
    [words.subsidy, subsidy === undefined ? words.none : words.counted],
  ];
}
