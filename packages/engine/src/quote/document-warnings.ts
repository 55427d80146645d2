import { decimalToWhole, type Finding, type Path } from '../quantity/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';
import { compared, exactDecimal, isZero } from './exact-decimals.ts';
import { DEGRADATION_STUDIES } from './finance/index.ts';
import { quoteFinding } from './findings.ts';
import { promisingWords, quotedWords } from './promising-words.ts';
import { LONGEST_WITHOUT_REPLACEMENT, MOST_RISE } from './warning-limits.ts';

/** What rises each year, with its place: charges by their id, and what surplus is paid. */
interface Rise {
  readonly charge: string;
  readonly percent: string;
  readonly path: Path;
}

function risesOf({ escalation: { charges, surplus } }: QuoteDocument): readonly Rise[] {
  const own = Object.entries(charges).map(([charge, percent]) => ({
    charge,
    percent,
    path: ['escalation', 'charges', charge],
  }));
  if (surplus === undefined) return own;
  const { percent } = surplus;
  return [...own, { charge: 'what surplus is paid', percent, path: ['escalation', 'surplus', 'percent'] }];
}

function riseWarnings(document: QuoteDocument): readonly Finding[] {
  const rises = risesOf(document);
  const most = exactDecimal(MOST_RISE);
  const high = rises.filter(({ percent }) => compared(exactDecimal(percent), most) > 0);
  const { basis } = document.escalation;
  const isUnsaid = basis.trim() === '' && rises.some(({ percent }) => !isZero(percent));
  return [
    ...high.map(({ charge, percent, path }) =>
      quoteFinding('quote/rise-above-usual', { path }, { charge, percent, most: MOST_RISE }),
    ),
    ...(isUnsaid ? [quoteFinding('quote/rise-without-basis', { path: ['escalation', 'basis'] })] : []),
  ];
}

/** What is replaced for nothing is no replacement: somebody pays for it. */
function replacementWarnings({ upkeep, years }: QuoteDocument): readonly Finding[] {
  const isReplaced = upkeep.replacements.some(({ amount }) => !isZero(amount));
  const isShort = decimalToWhole(years, 0) <= LONGEST_WITHOUT_REPLACEMENT;
  if (isReplaced || isShort) return [];
  const values = { years, most: String(LONGEST_WITHOUT_REPLACEMENT) };
  return [quoteFinding('quote/no-replacement', { path: ['upkeep', 'replacements'] }, values)];
}

/** Loss of later years alone: a plant may well lose nothing in its first one. */
function wearWarnings({ degradation }: QuoteDocument): readonly Finding[] {
  if (!isZero(degradation.later)) return [];
  const study = DEGRADATION_STUDIES.find(
    ({ measure, percent }) => measure === 'median' && percent.length === 2,
  );
  const [from = '', to = ''] = study?.percent ?? [];
  const source = [study?.title, study?.publisher, study?.year].join(', ');
  const values = { usual: `${from} to ${to} % at the median of modules`, source };
  return [quoteFinding('quote/no-degradation', { path: ['degradation', 'later'] }, values)];
}

/** The texts of a quote that praise; names of people and places praise nothing. */
function praisingTexts({
  offer,
  plant,
  price,
}: QuoteDocument): readonly (readonly [string | undefined, Path])[] {
  const { modules, inverter, layout, shading } = plant;
  return [
    [offer.seller, ['offer', 'seller']],
    [offer.installer, ['offer', 'installer']],
    [offer.promise, ['offer', 'promise']],
    [modules, ['plant', 'modules']],
    [inverter, ['plant', 'inverter']],
    [layout, ['plant', 'layout']],
    [shading, ['plant', 'shading']],
    ...price.map(({ item }, at) => [item, ['price', at, 'item']] as const),
  ];
}

function wordWarnings(document: QuoteDocument, after: string): readonly Finding[] {
  return praisingTexts(document).flatMap(([text = '', path]) => {
    const words = promisingWords(text);
    if (words.length === 0) return [];
    return [quoteFinding('quote/promising-words', { path }, { words: quotedWords(words), after })];
  });
}

/**
 * What a quote document itself assumes or says that promises too much: rises, no replacement, no wear, words.
 *
 * @param document  that was checked
 * @param after     what the bills of the first year come to with the plant, as text
 * @returns         questions, with a path into the document
 * @source          Residential Solar Energy Disclosure Act, Utah Code 13-52-202, State of Utah, 2018: rises of
 *                  rates and their basis; the other limits are named where they stand
 */
export function documentWarnings(document: QuoteDocument, after: string): readonly Finding[] {
  return [
    ...riseWarnings(document),
    ...replacementWarnings(document),
    ...wearWarnings(document),
    ...wordWarnings(document, after),
  ];
}
