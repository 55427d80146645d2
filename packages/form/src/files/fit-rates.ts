import type { AccountDocument, IntervalChannel, ReadingRow } from '@unitbook/engine';
import type { Offer } from './fit-book.ts';
import { registerOf } from './meter-in-force.ts';
import { counted, listed, SHORT_WORDS } from './words.ts';

/** The registers of the two-way meter. */
export type GridChannel = 'import' | 'export';
export const GRID: readonly GridChannel[] = ['import', 'export'];

/** The rates of a register in a file. */
function fileRates(offers: readonly Offer[], id: GridChannel): readonly string[] {
  return [...new Set(offers.flatMap(({ row }) => Object.keys(row.rates?.[id] ?? {})))].sort();
}

/** Whether any reading has what a register counts in all. */
export function hasTotal(offers: readonly Offer[], id: IntervalChannel): boolean {
  return offers.some(({ row }) => (row[id] ?? '').trim() !== '');
}

/** A reading without the rates of a register. */
export function withoutRates(row: ReadingRow, id: GridChannel): ReadingRow {
  const { rates, ...rest } = row;
  const kept = Object.entries(rates ?? {}).filter(([known]) => known !== id);
  return kept.length === 0 ? rest : { ...rest, rates: Object.fromEntries(kept) };
}

/** What is said of the rates of one register. */
export interface RateFit {
  readonly id: GridChannel;
  /** Whether the rates are left out, since the account counts the total. */
  readonly drops: boolean;
  /** The rates that the account has no place for; empty where it has. */
  readonly unset: readonly string[];
  /** Rates that the account calls otherwise; a sentence, or ''. */
  readonly unlike: string;
  readonly note: string;
}

const FITS = { drops: false, unset: [], unlike: '', note: '' } as const;

/** See how the rates of a register in a file go with those of an account. */
export function rateFit(offers: readonly Offer[], account: AccountDocument, id: GridChannel): RateFit {
  const own = (registerOf(offers, account, id).own?.register.rates ?? []).map((rate) => rate.id);
  const filed = fileRates(offers, id);
  if (filed.length === 0) {
    const note = `This account counts ${counted(own.length, 'rate')} of ${id}; the file has the total alone. The rates stay open: copy them from the display.`;
    return { id, ...FITS, note: own.length === 0 || offers.length === 0 ? '' : note };
  }
  if (own.length === 0 && hasTotal(offers, id)) {
    const note = `The file has rates of ${id} beside the total. This account counts the total: the rates are left out.`;
    return { id, ...FITS, drops: true, note };
  }
  if (own.length === 0) return { id, ...FITS, unset: filed };
  const isAlike = own.length === filed.length && filed.every((rate) => own.includes(rate));
  if (isAlike) return { id, ...FITS };
  const unlike = `The file calls the rates of ${id} ${listed(filed)}; this account calls them ${listed(own)}. Call them alike in “This account”, under “Meters”.`;
  return { id, ...FITS, unlike };
}

/** What an account can call a rate. */
const NAME = /^[A-Za-z0-9]{1,12}$/;

/** What has to be set in the account before rates can be taken over; each a sentence. */
export function rateObstacles(fits: readonly RateFit[]): readonly string[] {
  const unset = fits.filter(({ unset: rates }) => rates.length > 0);
  const groups = new Map<string, RateFit[]>();
  for (const fit of unset) groups.set(fit.unset.join(), [...(groups.get(fit.unset.join()) ?? []), fit]);
  const sentences = [...groups.values()].map((group) => {
    const rates = group[0]?.unset ?? [];
    const words = listed(group.map(({ id }) => SHORT_WORDS[id].toLowerCase()));
    const ids = listed(group.map(({ id }) => id));
    if (rates.length === 1)
      return `The file has the units ${words} of one rate alone (${listed(rates)}), and no total: no bill can be made of one rate. Copy the others, or the total, from the display.`;
    const odd = rates.every((rate) => NAME.test(rate))
      ? ''
      : ' The account takes names of letters and digits: look at how the table is read, and call them so there.';
    return `The file has the units ${words} by rate (${listed(rates)}) and no total. Set ${counted(rates.length, 'rate')} of ${ids} in “This account”, under “Meters”, and call them ${listed(rates)} as the file does.${odd} Which rate is which time, the bill or the supplier says.`;
  });
  return [...sentences, ...fits.flatMap(({ unlike }) => (unlike === '' ? [] : [unlike]))];
}
