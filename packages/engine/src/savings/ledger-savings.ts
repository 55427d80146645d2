import { givenFigure, renamedFigure, type Figure, type Outcome } from '../quantity/index.ts';
import {
  billLedgers,
  type LedgerBill,
  type LedgerBillInput,
  type LedgerChain,
  type PreparedTariff,
} from '../bill/index.ts';
import type { MonthBills } from './savings.ts';
import { changesWithoutPlant, savingsOf } from './savings.ts';

type Given = Readonly<Record<string, Figure>>;

/** The three chains of an account: as it is, with export that counts for nothing, and without a plant. */
export interface LedgerChains {
  readonly actual: LedgerChain;
  /** null once a period could not be billed that way. */
  readonly withoutExport: LedgerChain | null;
  readonly withoutSolar: LedgerChain | null;
}

/** A billed period, what solar saved in it, and what each chain hands on. */
export interface LedgerMonth extends MonthBills {
  readonly ledgers: LedgerBill['ledgers'];
  readonly quantities: Readonly<Record<string, Figure>>;
  readonly chains: LedgerChains;
}

/** What a period is billed from, with the chains that lead to it. */
export interface LedgerMonthInput extends Omit<LedgerBillInput, 'chain'> {
  readonly chains: LedgerChains;
  /** false: no bills besides the one there is. */
  readonly withSavings: boolean;
}

/** Channel and block of a quantity's name. */
const partsOf = (name: string): readonly [string, string] => {
  const [channel = '', block] = name.split('@');
  return [channel, block === undefined ? '' : `@${block}`];
};

const nothing = ({ id, label, unit, denominator }: Figure): Figure =>
  givenFigure({ id, label, unit, numerator: 0, denominator, clause: '' });

/** Nettings inside a period, by the measure that names them. */
type Windows = ReadonlyMap<string, { readonly of: string; readonly less: string }>;

/** The plant as it is, but what it gives to the grid is not counted. */
function withoutExport(given: Given, windows: Windows): Given {
  const figureOf = (name: string, figure: Figure): Figure => {
    const [channel] = partsOf(name);
    const { of = channel, less } = windows.get(name) ?? {};
    if (of === 'export' || of === 'shared') return nothing(figure);
    const whole = less === 'export' ? given[of] : undefined;
    return whole === undefined ? figure : renamedFigure(whole, { id: name, label: figure.label });
  };
  return Object.fromEntries(Object.entries(given).map(([name, figure]) => [name, figureOf(name, figure)]));
}

const FROM_THE_ROOF = ['export', 'generation', 'self-consumption', 'plant-capacity', 'shared'];

/** No plant: the whole use is taken from the grid; null where it is not known. */
function withoutSolar(given: Given, windows: Windows): Given | null {
  const result: Record<string, Figure> = {};
  for (const [name, figure] of Object.entries(given)) {
    const [channel, block] = partsOf(name);
    const of = windows.get(name)?.of ?? channel;
    if (FROM_THE_ROOF.includes(of)) result[name] = nothing(figure);
    else if (of === 'import') {
      const use = given[`total-use${block}`];
      if (use === undefined) return null;
      result[name] = renamedFigure(use, { id: name, label: `${figure.label}, without solar` });
    } else result[name] = figure;
  }
  return result;
}

/**
 * Bill a period under a rule of scheme `ledgers`, and beside it what it would be without export and
 * without solar: each with its own chain of ledgers, as if it had been so from the first period.
 *
 * @returns savings null where total use is not known, in this period or one before
 */
export function billLedgerMonth(
  prepared: PreparedTariff,
  input: LedgerMonthInput,
): Outcome<LedgerMonth | null> {
  const { chains, given, withSavings } = input;
  const isTold = withSavings && !prepared.isSavingUnclear;
  const actual = billLedgers(prepared, { ...input, chain: chains.actual });
  if (actual.value === null) return { value: null, findings: actual.findings };
  const { measures = {} } = prepared.tariff.document;
  const windows: Windows = new Map(
    Object.entries(measures).flatMap(([name, { window }]) => (window === undefined ? [] : [[name, window]])),
  );
  const unplanted = isTold ? withoutSolar(given, windows) : null;
  const { changes = [] } = input;
  const billed = (as: Given | null, chain: LedgerChain | null, plant = changes): LedgerBill | null =>
    as === null || chain === null
      ? null
      : billLedgers(prepared, { ...input, given: as, chain, changes: plant }).value;
  const noSolar = billed(unplanted, chains.withoutSolar, changesWithoutPlant(changes));
  const noExport = billed(isTold ? withoutExport(given, windows) : null, chains.withoutExport);
  const { bill, ledgers, quantities } = actual.value;
  const isKnown = noSolar !== null && noExport !== null;
  const value: LedgerMonth = {
    bill,
    ledgers,
    quantities: quantities(),
    withoutSolar: isKnown ? noSolar.bill : null,
    savings: isKnown ? savingsOf(bill, noSolar.bill, noExport.bill) : null,
    chains: {
      actual: actual.value.chain,
      withoutExport: noExport?.chain ?? null,
      withoutSolar: noSolar?.chain ?? null,
    },
  };
  return { value, findings: actual.findings };
}
