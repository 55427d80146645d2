/** JSON objects, as far as the frame looks at them. */
type Parts = Readonly<Record<string, unknown>>;

/** A fragment of the table with the key under which it stands. */
interface Fragment {
  readonly place: string;
  readonly json: string;
}

/** A row of the table. */
export interface RegulationRow {
  readonly line: number;
  readonly says: string;
  readonly fragments: readonly Fragment[];
}

/** A document, and what it is billed with. */
export interface Framed {
  readonly document: Parts;
  readonly account: Parts;
  readonly period: Parts;
}

const FRAGMENT = /([a-zA-Z]+) `(\{[^`]*\})`/g;

/** The rows of the table, each with the fragments of its second cell. */
export function regulationRows(text: string): readonly RegulationRow[] {
  return text.split('\n').flatMap((row, index) => {
    const [, says = '', write = ''] = row.split(/ ?\| ?/);
    if (!row.startsWith('| ') || says.startsWith('The regulation')) return [];
    const fragments = [...write.matchAll(FRAGMENT)].map(([, place = '', json = '']) => ({ place, json }));
    return [{ line: index + 1, says, fragments }];
  });
}

const clause = 'T 1';
const words = { label: 'X', clause };

const QUANTITIES = [
  { is: 'netting', id: 'net', supply: ['bank', 'export'], demand: ['import'], routes: 'any', ...words },
];
const LEDGERS = [
  { id: 'bank', unit: 'kWh', adds: 'net.export', keeps: 'net.bank', ...words },
  { id: 'credit', unit: 'money', ...words },
];
const CHARGES = [
  { id: 'energy', kind: 'per-unit', on: 'net.import', rate: '6.00', ...words },
  { id: 'fixed', kind: 'fixed', amount: '60.00', scaledBy: 'month', ...words },
  { id: 'feed-in', kind: 'per-unit', on: 'export', rate: '3.00', ...words },
];
const BLOCKS = {
  clause,
  blocks: [
    { id: 'peak', label: 'Peak' },
    { id: 'off', label: 'Off-peak' },
  ],
  calendar: [
    { block: 'peak', from: '18:00', to: '22:00' },
    { block: 'off', from: '22:00', to: '18:00' },
  ],
};
const series = (rate: string) => ({
  is: 'series',
  clause,
  values: [{ from: '2024-04-01', rate }],
  inForce: 'last-day',
});

const isParts = (value: unknown): value is Parts =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Parts that need a clause of their own, wherever they stand. */
const WITH_CLAUSE = ['carry', 'close', 'life', 'payment', 'cap', 'holidays'];

/** A fragment with the clauses and labels that the table leaves out. */
function filled(part: Parts, more: Parts): Parts {
  const inner = Object.entries(part).map(([key, value]) => {
    if (key === 'blocks') return [key, (value as readonly Parts[]).map((one) => ({ label: 'X', ...one }))];
    if (!isParts(value) || !WITH_CLAUSE.includes(key)) return [key, value] as const;
    return [key, { clause, ...(key === 'payment' ? { label: 'X' } : {}), ...value }] as const;
  });
  return { ...more, ...(Object.fromEntries(inner) as Parts) };
}

/** A list with more entries: one of the same id takes the place of the old one, and stands last. */
function added(list: readonly Parts[], entries: readonly Parts[]): readonly Parts[] {
  const named = entries.map((entry, index) => ({ id: `own-${String(index)}`, ...entry }));
  return [...list.filter(({ id }) => !named.some((entry) => entry.id === id)), ...named];
}

/** What each key of the document gets from fragments of named things. */
const NAMED: Readonly<Record<string, Parts>> = {
  measures: { label: 'X' },
  prices: { clause },
  dayRules: { clause },
  seasons: {},
};

function named(fragments: readonly Parts[], more: Parts): Parts {
  const entries = fragments.flatMap((one) => Object.entries(one) as [string, Parts][]);
  return Object.fromEntries(entries.map(([name, value]) => [name, { ...more, ...value }]));
}

/** Unit netting has no quantities of its own: what netting leaves is called "billed" there. */
function ofUnitNetting(document: Parts): Parts {
  const charges = CHARGES.map((charge) => ({
    ...charge,
    ...('on' in charge && charge.on === 'net.import' ? { on: 'billed' } : {}),
  }));
  const [version] = document['versions'] as readonly Parts[];
  return { ...document, versions: [{ ...version, charges }] };
}

const KNOWN = 'charges quantities ledgers settlements sharing timeBlocks versionChange trueUp account period'
  .split(' ')
  .concat(Object.keys(NAMED));

/**
 * Put the fragments of a row into a small document, each under its key, with the ids, labels and clauses
 * that the table leaves out.
 */
export function framed({ fragments }: RegulationRow): Framed {
  const odd = fragments.find(({ place }) => !KNOWN.includes(place));
  if (odd !== undefined) throw new Error(`"${odd.place}" is no place for a fragment`);
  const at = (place: string): readonly Parts[] =>
    fragments.flatMap((one) => (one.place === place ? [JSON.parse(one.json) as Parts] : []));
  const listed = (place: string): readonly Parts[] => at(place).map((one) => filled(one, words));
  const [sharing] = at('sharing');
  const settlement = {
    ...{ from: '2024-04-01', scheme: 'ledgers', clause },
    quantities: added(QUANTITIES, listed('quantities')),
    ledgers: added(LEDGERS, listed('ledgers')),
    ...(sharing === undefined ? {} : { sharing: { clause, ...sharing } }),
  };
  const seasons = { summer: { from: '04-01', through: '06-30' } };
  const base = { seasons, ...documentFrame() };
  const more = Object.entries(NAMED).map(([key, own]) => [
    key,
    { ...(base as Parts & typeof base)[key as 'seasons'], ...named(at(key), own) },
  ]);
  const [blocks] = at('timeBlocks').map((one) => filled(one, { clause }));
  const [change] = at('versionChange').map((one) => ({ clause, ...one }));
  const [trueUp] = at('trueUp').map((one) => ({ clause, ...one }));
  const charges = added(CHARGES, listed('charges'));
  const document = {
    ...base,
    ...(Object.fromEntries(more) as Parts),
    ...(blocks === undefined ? {} : { timeBlocks: blocks }),
    ...(change === undefined ? {} : { versionChange: change }),
    ...(trueUp === undefined ? {} : { trueUp }),
    versions: [{ name: 'T', from: '2021-04-01', clause, charges }],
    settlements: [{ ...settlement, from: '2021-04-01' }],
  };
  const rules = at('settlements').map((one) => filled(one, { clause }));
  const isUnitNetting = rules.some(({ scheme }) => scheme === 'unit-netting');
  const settled = rules.length === 0 ? document : { ...document, settlements: rules };
  return {
    document: isUnitNetting ? ofUnitNetting(settled) : settled,
    account: Object.assign({}, ...at('account')) as Parts,
    period: Object.assign({}, ...at('period')) as Parts,
  };
}

function documentFrame() {
  return {
    ...{ format: 'unitbook-tariff-1', id: 'frame', name: 'A frame', supplier: 'TARESCO', currency: 'INR' },
    sources: { T: { title: 'Order', publisher: 'Tarumira Electricity Commission (invented)', year: '2024' } },
    units: { clause, decimals: '0', rounding: 'down', roundedAt: 'difference' },
    rounding: { clause, line: { step: '0.01', mode: 'half-up' }, total: 'none' },
    measures: {},
    prices: { 'purchase-cost': series('2.90'), retail: series('6.00') },
    dayRules: { month: { rule: 'days-over', divisor: '30', clause } },
    timeBlocks: BLOCKS,
    versionChange: { rule: 'in-force-on-last-day', clause },
  };
}
