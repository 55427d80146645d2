import { plainName } from './header-words.ts';

/** Which rate the name of a column says, and whether by a number or by a word. */
export interface HeaderRate {
  readonly id: string;
  readonly word: string;
  readonly isNumber: boolean;
}

const NUMBERED = /\b(?:t|tarif|tariff|tariffa|tarifa|tarief|rate|register|zone|fascia|f|p)\s?([1-9])\b/;
const OBIS = /(?:^|[^\d.])(?:\d{1,3}-\d{1,3}:)?\d{1,2}\.\d{1,2}\.([1-9]\d?)(?![\d.])/;
const WORDS =
  /\b(?:ht|nt|hp|hc|normal|normaal|low|high|laag|hoog|dal|hoch|niedrig|day|night|tag|nacht|dag|giorno|notte|jour|nuit)\b/;
/** Which hours these are differs from one place to the next: such rates are numbered, never named. */
const HOURS = /\b(?:off ?peak|on ?peak|peak|shoulder|punta|pico|ponta|llano|valle|piek|spitze)\b/;

/** The rate in a name by its number; null where it has none. */
function numberedRate(name: string): HeaderRate | null {
  const [, obis] = OBIS.exec(name) ?? [];
  if (obis !== undefined) return { id: obis, word: name.trim(), isNumber: true };
  const [word, id] = NUMBERED.exec(plainName(name)) ?? [];
  return word === undefined || id === undefined ? null : { id, word, isNumber: true };
}

/** The rate in a name by a word, which says nothing about when it holds; null where there is none. */
function wordedRate(name: string, hours: readonly string[]): HeaderRate | null {
  const plain = plainName(name);
  const [word] = WORDS.exec(plain) ?? [];
  if (word !== undefined) return { id: word, word, isNumber: false };
  const [hour] = HOURS.exec(plain) ?? [];
  return hour === undefined ? null : { id: String(hours.indexOf(hour) + 1), word: hour, isNumber: false };
}

/**
 * The rates that the names of columns of values say.
 *
 * A word counts only where several columns have different ones: "low" alone may mean anything.
 *
 * @returns  one for each name; null for a total
 * @example
 * headerRates(['import_normal_kwh', 'import_low_kwh']).map((rate) => rate.id) //=> ["normal","low"]
 * headerRates(['Peak import', 'Off-peak import']).map((rate) => rate.id) //=> ["1","2"]
 */
export function headerRates(names: readonly string[]): readonly (HeaderRate | null)[] {
  const hours = [...new Set(names.flatMap((name) => HOURS.exec(plainName(name))?.[0] ?? []))];
  const worded = names.map((name) => wordedRate(name, hours));
  const areSeveral = new Set(worded.flatMap((rate) => rate?.word ?? [])).size > 1;
  return names.map((name, at) => numberedRate(name) ?? (areSeveral ? (worded[at] ?? null) : null));
}
