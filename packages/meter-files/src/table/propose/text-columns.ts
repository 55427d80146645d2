import { VALUE_QUALITIES } from '../../stream.ts';
import type { TableColumn } from '../layout-document.ts';
import type { TableRow } from '../table-row.ts';
import { headerMeaning, headerUnit, plainName } from './header-words.ts';

type Quality = (typeof VALUE_QUALITIES)[number];

/** What a column is that holds no numbers to read, and why. */
export interface TextColumn {
  readonly column: TableColumn;
  readonly evidence: string;
  readonly certain: boolean;
}

const POINT =
  /\b(?:point|ean\w*|mpan|nmi|pod|cups|prm|pdl|malo|melo|marktlokation|messlokation|zahlpunkt|zaehlpunkt|home|house|household|site|premises?|account|address|adresse|customer|connection|location|anschluss|aansluiting)\b/;
const METER =
  /\b(?:meter|meter ?(?:id|no|nr|number|serial)|serial|serialnumber|zahler\w*|zaehler\w*|meternummer|contatore|matricola|contador|compteur|device)\b/;
const QUALITY_NAME =
  /\b(?:quality|status|flag|qualit\w*|zustand|estimat\w*|read(?:ing)? type|validation|kwaliteit|calidad|stato|estado|statut)\b/;

const WORDS: Readonly<Record<Quality, readonly string[]>> = {
  actual: [
    'a',
    'act',
    'actual',
    'measured',
    'real',
    'ok',
    'valid',
    'good',
    'w',
    'wahr',
    'gemessen',
    'gemeten',
    'reale',
  ],
  estimated: ['e', 'est', 'estimated', 'estimate', 'geschatzt', 'geschat', 'stimato', 'estime', 'estimado'],
  substituted: ['s', 'sub', 'substituted', 'substitute', 'ersatzwert', 'ersatz'],
  edited: ['edited', 'manual', 'corrected', 'korrigiert'],
  missing: ['missing', 'null', 'none', 'no data', 'fehlt'],
};

/** What a word of a column of quality means; null where it is not known. */
function qualityOf(word: string): Quality | null {
  const plain = plainName(word);
  return VALUE_QUALITIES.find((quality) => WORDS[quality].includes(plain)) ?? null;
}

const MOST_WORDS = 12;

/** The texts of a column, each once. */
const textsOf = (data: readonly TableRow[], at: number): readonly string[] => [
  ...new Set(data.map(({ cells }) => (cells[at] ?? '').trim())),
];

function qualityColumn(texts: readonly string[]): TextColumn {
  const words = texts.flatMap((text) => {
    const is = qualityOf(text);
    return is === null ? [] : [[text, is] as const];
  });
  const unknown = texts.filter((text) => qualityOf(text) === null);
  const listed = unknown.map((text) => (text === '' ? 'an empty cell' : `"${text}"`)).join(', ');
  const evidence = unknown.length === 0 ? 'all its words are known' : `what ${listed} means is not known`;
  return { column: { is: 'quality', words: Object.fromEntries(words) }, evidence, certain: false };
}

/** Whether texts are words of quality, each of them: several, as one alone could mean anything. */
function areQualities(texts: readonly string[]): boolean {
  const filled = texts.filter((text) => text !== '');
  return filled.length > 1 && filled.every((text) => qualityOf(text) !== null);
}

/** What a column of texts is. */
export function textColumn(data: readonly TableRow[], at: number, name: string): TextColumn {
  const plain = plainName(name);
  const texts = textsOf(data, at);
  if (QUALITY_NAME.test(plain) && texts.length <= MOST_WORDS) return qualityColumn(texts);
  const point = POINT.exec(plain)?.[0];
  if (point !== undefined)
    return { column: { is: 'point' }, evidence: `"${point}" in its name`, certain: true };
  const meter = METER.exec(plain)?.[0];
  if (meter !== undefined)
    return { column: { is: 'meter' }, evidence: `"${meter}" in its name`, certain: true };
  if (areQualities(texts)) return qualityColumn(texts);
  return { column: { is: 'nothing' }, evidence: 'it holds texts, and its name says nothing', certain: false };
}

/** What a column of numbers is that names a meter or a point: whole numbers, the same over many rows. */
export function identifierColumn(data: readonly TableRow[], at: number, name: string): TextColumn | null {
  const plain = plainName(name);
  if (headerUnit(name) !== null || headerMeaning(name) !== null) return null;
  const texts = textsOf(data, at);
  const isWhole = texts.every((text) => /^\d*$/.test(text));
  const areFew = texts.length === 1 || texts.length * 4 <= data.length;
  const isNamed = POINT.test(plain) || METER.test(plain);
  return isNamed && isWhole && areFew ? textColumn(data, at, name) : null;
}
