/**
 * What the names of columns say, in English, German, Dutch, Italian, Spanish, French and Portuguese. Words of
 * the trade only; marks on letters are off, and "importKwh", "import_kwh" and "Import (kWh)" are one.
 */
const MONEY =
  /\b(?:price|cost|amount|preis|kosten|prezzo|costo|prix|cout|montant|precio|coste|importe|preco|custo|prijs|eur|euro|usd|gbp|inr)\b|[€$£₹]/;
const NO_ENERGY =
  /\b(?:kw|k?va|k?varh?|hz|m3|temp\w*|voltage|spannung|spanning|tension\w*|leistung|vermogen|potenza|puissance|potencia|power|gas|water|wasser)\b/;
/** Units of one letter, which as words mean other things: only in brackets. */
const LETTER_UNIT = /[([]\s*[wva]\s*[)\]]/i;
const REACTIVE = /\b(?:reactive|blind\w*|reactief|reattiv\w*|reactiv\w*|reativ\w*|k?varh)\b/;
const STORED = /batter|akku|\baccu\b|speicher|storage|\baccumulo\b|\b(?:dis)?charged?\b/;
const OWN_USE =
  /self ?consum|own (?:use|consum)|eigenverbrauch|eigenbedarf|eigengebruik|zelfverbruik|auto ?cons[ou]m|\bload\b|hausverbrauch/;
const EXPORT =
  /\bexport|\bfeed ?in|\bfed\b|(?:in)?to (?:the )?grid|\breturned\b|\bsold\b|surplus|einspeis|r(?:u|ue)ckspeis|(?:u|ue)berschuss|terug ?(?:ge)?lever|invoed|injecti|injection|immission|immess|\bcedut|\b(?:re)?vente\b|injecte|excedent|vertid|inyec|injec|injet|\bvenda\b/;
const IMPORT =
  /\bimport|from (?:the )?grid|purchas|bought|withdraw|bezug|bezogen|entnahme|afname|afgenomen|preliev|prelev|acquist|soutir|\bachat|\bcompra/;
const EXPORT_LIKELY = /lieferung|geliefert/;
const IMPORT_LIKELY =
  /consum|consom|\buse\b|\busage\b|\bused\b|verbrauch|verbruik|levering|geleverd|\bdelivered\b/;
const GENERATION =
  /generat|produ[ckzi]|prodott|solar|\bpv\b|photovolt|fotovolt|\bzon(?:ne)?|erzeug|ertrag|opwek|opgewekt|opbrengst|yield|inverter|wechselrichter|geracao|gerada|generaci|generada/;
const NET = /\bnet\b|\bnetto\b|saldo|\bbalance\b|bilanz|\bsolde\b/;

/** OBIS (IEC 62056-6-1): quantity 1 is import, 2 export, 16 their difference; 8 a register, 29 an interval. */
const OBIS = /(?:^|[^\d.])(?:\d{1,3}-\d{1,3}:)?(\d{1,2})\.(\d{1,2})\.(\d{1,2})(?![\d.])/;

/** What a name says of a column of numbers. */
export interface HeaderMeaning {
  readonly is: 'import' | 'export' | 'generation' | 'net' | 'other' | 'nothing';
  readonly evidence: string;
  readonly certain: boolean;
}

/**
 * A name of a column in plain words: small letters, no marks on letters, one space between words.
 *
 * @example
 * plainName('Einspeisung_Zähler1 [kWh]') //=> "einspeisung zahler1 kwh"
 * plainName('importkWh') //=> "import kwh"
 */
export function plainName(name: string): string {
  return name
    .replace(/([km]?wh)(?![a-z])/gi, (unit) => ` ${unit.toLowerCase()} `)
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/[^a-z0-9.:€$£₹*/]+/g, ' ')
    .trim();
}

function obisMeaning(name: string): HeaderMeaning | null {
  const [code, quantity, kind] = OBIS.exec(name) ?? [];
  if (code === undefined) return null;
  const words: Readonly<Record<string, HeaderMeaning['is']>> = { 1: 'import', 2: 'export', 16: 'net' };
  const isEnergy = kind === '8' || kind === '29' || kind === '9';
  const is = isEnergy ? (words[quantity ?? ''] ?? 'nothing') : 'nothing';
  return { is, evidence: `the OBIS code ${code.trim()}`, certain: true };
}

function wordIn(pattern: RegExp, name: string): string {
  return pattern.exec(name)?.[0].trim() ?? '';
}

const RULES: readonly (readonly [pattern: RegExp, is: HeaderMeaning['is'], certain: boolean])[] = [
  [MONEY, 'nothing', true],
  [REACTIVE, 'nothing', true],
  [STORED, 'other', false],
  [OWN_USE, 'other', false],
];

const DIRECTIONS: readonly (readonly [pattern: RegExp, is: HeaderMeaning['is'], certain: boolean])[] = [
  [EXPORT, 'export', true],
  [IMPORT, 'import', true],
  [EXPORT_LIKELY, 'export', false],
  [GENERATION, 'generation', true],
  [IMPORT_LIKELY, 'import', false],
  [NET, 'net', false],
];

/** Two directions in one name: it says less than either. */
function mixedMeaning(name: string): HeaderMeaning | null {
  const [taken, given, made] = [IMPORT, EXPORT, GENERATION].map((pattern) => wordIn(pattern, name));
  if (taken !== '' && given !== '')
    return { is: 'net', evidence: `both "${taken ?? ''}" and "${given ?? ''}" in its name`, certain: false };
  const used = EXPORT.test(name) || IMPORT.test(name) ? '' : wordIn(IMPORT_LIKELY, name);
  if (made !== '' && used !== '')
    return { is: 'other', evidence: `both "${made ?? ''}" and "${used}" in its name`, certain: false };
  const net = wordIn(NET, name);
  const direction = `${taken ?? ''}${given ?? ''}`;
  if (net === '' || direction === '') return null;
  return { is: 'net', evidence: `both "${net}" and "${direction}" in its name`, certain: false };
}

/**
 * What the name of a column of numbers says of it.
 *
 * @param name  as the file writes it
 * @returns     null where it says nothing
 * @example
 * headerMeaning('Netzbezug (kWh)').is //=> "import"
 * headerMeaning('1-0:2.8.1').is //=> "export"
 */
export function headerMeaning(name: string): HeaderMeaning | null {
  const obis = obisMeaning(name);
  if (obis !== null) return obis;
  const plain = plainName(name);
  const rule = RULES.find(([pattern]) => pattern.test(plain));
  const found = (one: (typeof RULES)[number]): HeaderMeaning => ({
    is: one[1],
    evidence: `"${wordIn(one[0], plain)}" in its name`,
    certain: one[2],
  });
  if (rule !== undefined) return found(rule);
  const noEnergy = wordIn(NO_ENERGY, plain) || wordIn(LETTER_UNIT, name);
  if (headerUnit(name) === null && noEnergy !== '')
    return { is: 'nothing', evidence: `"${noEnergy}" in its name, which is no energy`, certain: true };
  const direction = DIRECTIONS.find(([pattern]) => pattern.test(plain));
  return mixedMeaning(plain) ?? (direction === undefined ? null : found(direction));
}

/**
 * The unit of energy in a name.
 *
 * @example
 * headerUnit('export_wh') //=> "Wh"
 */
export function headerUnit(name: string): 'kWh' | 'Wh' | 'MWh' | null {
  const [unit] = /\b(?:[km]?wh)\b/.exec(plainName(name)) ?? [];
  return unit === undefined
    ? null
    : ({ kwh: 'kWh', wh: 'Wh', mwh: 'MWh' } as const)[unit as 'kwh' | 'wh' | 'mwh'];
}
