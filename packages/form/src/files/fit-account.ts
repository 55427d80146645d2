import {
  readNumberText,
  type AccountDocument,
  type IntervalChannel,
  type ReadingRow,
} from '@unitbook/engine';
import { without } from '../household/without.ts';
import { plainDecimal, widthOf } from './exact.ts';
import { registerTexts, type Offer } from './fit-book.ts';
import { registerOf, type RegisterOfOffers } from './meter-in-force.ts';
import { GRID, hasTotal, rateFit, rateObstacles, withoutRates } from './fit-rates.ts';
import type { Setting } from './take-over.ts';
import { listed } from './words.ts';

const CHANNELS: readonly IntervalChannel[] = ['import', 'export', 'generation'];

/** What the registers of an account can hold at most. */
const MOST_DIGITS = 8;
const MOST_DECIMALS = 3;

/** How readings go with what the account says of its meters. */
export interface AccountFit {
  /** Readings without what the account does not count. */
  readonly offers: readonly Offer[];
  /** Digits and decimals to set, so that the readings fit; empty where they do. */
  readonly settings: readonly Setting[];
  /** The settings in words: "import with 3 decimals". */
  readonly settingWords: string;
  /** Why nothing can be taken over before the account is set; each a sentence. */
  readonly obstacles: readonly string[];
  /** What else is to be told. */
  readonly notes: readonly string[];
}

const idOf = (key: string): IntervalChannel => key.split('-')[0] as IntervalChannel;

function withoutGeneration(whole: ReadingRow): ReadingRow {
  const { estimated } = whole;
  const row = without(whole, 'generation', 'estimated');
  const kept = estimated?.filter((id) => id !== 'generation') ?? [];
  return kept.length === 0 ? row : { ...row, estimated: kept };
}

/** How wide registers are. */
export interface Width {
  readonly digits: number;
  readonly decimals: number;
}

const NO_WIDTH: Width = { digits: 0, decimals: 0 };

/** The digits and decimals that the registers of one kind need: as many as are asked for, where there are any. */
function widthNeeded(offers: readonly Offer[], id: IntervalChannel, least: Width): Width {
  const widths = offers.flatMap(({ row }) =>
    [...registerTexts(row)].flatMap(([key, text]) => {
      const read = idOf(key) === id ? readNumberText(text) : null;
      return read?.kind === 'number' ? [widthOf(read.text)] : [];
    }),
  );
  return widths.reduce(
    (most, { digits, decimals }) => ({
      digits: Math.max(most.digits, digits),
      decimals: Math.max(most.decimals, decimals),
    }),
    widths.length === 0 ? NO_WIDTH : least,
  );
}

/** What of a register has to be set for readings of a file. */
interface RegisterSetting {
  readonly id: IntervalChannel;
  readonly settings: readonly Setting[];
  /** "3 decimals"; '' for nothing. */
  readonly words: string;
}

function registerSetting(
  needed: Width,
  { own, isChanged }: RegisterOfOffers,
  id: IntervalChannel,
): RegisterSetting {
  // Readings of several meters: which of them is to be wider, nobody can tell from here.
  if (own === null || isChanged) return { id, settings: [], words: '' };
  const { register, path } = own;
  const wider = (['digits', 'decimals'] as const).flatMap((field) => {
    const most = field === 'digits' ? MOST_DIGITS : MOST_DECIMALS;
    const wanted = Math.min(most, needed[field]);
    return wanted > Number.parseInt(register[field], 10) ? [{ field, wanted: String(wanted) }] : [];
  });
  return {
    id,
    settings: wider.map(({ field, wanted }) => ({ path: [...path, field], value: wanted })),
    words: listed(wider.map(({ field, wanted }) => `${wanted} ${field}`)),
  };
}

/** Settings in words, alike ones together: "import and export with 3 decimals". */
function settingWords(settings: readonly RegisterSetting[]): string {
  const alike = new Map<string, string[]>();
  for (const { id, words } of settings) if (words !== '') alike.set(words, [...(alike.get(words) ?? []), id]);
  return listed([...alike].map(([words, ids]) => `${listed(ids)} with ${words}`));
}

/** Readings cut to as many decimals as a register can have: a display cuts, too. */
function cut(row: ReadingRow): ReadingRow {
  const short = (text: string): string => {
    const read = readNumberText(text);
    if (read.kind !== 'number' || widthOf(read.text).decimals <= MOST_DECIMALS) return text;
    const [digits = '', decimals = ''] = plainDecimal(read.text).split('.');
    return `${digits}.${decimals.slice(0, MOST_DECIMALS)}`;
  };
  const totals = CHANNELS.flatMap((id) => (row[id] === undefined ? [] : [[id, short(row[id])] as const]));
  const rates = GRID.flatMap((id) => {
    const own = row.rates?.[id];
    if (own === undefined) return [];
    return [
      [id, Object.fromEntries(Object.entries(own).map(([rate, text]) => [rate, short(text)]))] as const,
    ];
  });
  return {
    ...row,
    ...Object.fromEntries(totals),
    ...(rates.length === 0 ? {} : { rates: Object.fromEntries(rates) }),
  };
}

function lackingNotes(offers: readonly Offer[], { meters }: AccountDocument): readonly string[] {
  const has = (id: IntervalChannel): boolean =>
    offers.some(({ row }) => [...registerTexts(row).keys()].some((key) => idOf(key) === id));
  const wanted = CHANNELS.filter((id) => id !== 'generation' || meters.generation !== undefined);
  const lacking = wanted.filter((id) => !has(id));
  return lacking.length === 0 || offers.length === 0
    ? []
    : [`The file has no ${listed(lacking)}: copy ${lacking.length === 1 ? 'it' : 'them'} from the display.`];
}

const isFiner = (offers: readonly Offer[]): boolean =>
  CHANNELS.some((id) => widthNeeded(offers, id, NO_WIDTH).decimals > MOST_DECIMALS);

/**
 * See how readings of a file go with the meters of an account.
 *
 * @param offers  readings of the file
 * @param least   how wide the registers are to be at least; left out: as wide as the readings
 */
export function fitAccount(
  offers: readonly Offer[],
  account: AccountDocument,
  least: Width = NO_WIDTH,
): AccountFit {
  const rates = GRID.map((id) => rateFit(offers, account, id));
  const noPlace = account.meters.generation === undefined && hasTotal(offers, 'generation');
  const kept = offers.map(({ day, row }) => {
    const own = rates.reduce((held, { id, drops }) => (drops ? withoutRates(held, id) : held), row);
    return { day, row: cut(noPlace ? withoutGeneration(own) : own) };
  });
  const settings = CHANNELS.map((id) =>
    registerSetting(widthNeeded(kept, id, least), registerOf(kept, account, id), id),
  );
  const isChanged = CHANNELS.some((id) => registerOf(kept, account, id).isChanged);
  return {
    offers: kept,
    settings: settings.flatMap((one) => one.settings),
    settingWords: settingWords(settings),
    obstacles: rateObstacles(rates),
    notes: [
      ...rates.flatMap(({ note }) => (note === '' ? [] : [note])),
      ...(noPlace
        ? ['The file has what the plant made; this account has no generation meter: it is left out.']
        : []),
      ...lackingNotes(kept, account),
      ...(isChanged
        ? ['A meter was changed between these readings: look whether each fits the meter of its day.']
        : []),
      ...(isFiner(offers) ? ['Decimals behind the third are left out: a register has three at most.'] : []),
    ],
  };
}
