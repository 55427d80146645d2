import type { Tariff } from './tariff/index.ts';
import { prepareTariff } from './bill/index.ts';
import { FIGURE, groupOf, nameIn } from './audit/index.ts';
import { ledgersOf } from './check-opening.ts';

/** The names that columns of a table of bills can have under one tariff, besides those of every tariff. */
export interface ColumnNames {
  /** Quantities that the tariff knows: `import`, `sanctioned-load`, `import@peak` … */
  readonly quantities: readonly string[];
  /** Ledgers by their ids, `credit` that of unit netting. */
  readonly ledgers: readonly string[];
  /** Lines of money by the ids of their charges, and `surplus`. */
  readonly lines: readonly string[];
}

/**
 * What a column of a table of bills holds: whose bill it is and of which days, what is known of the account, what was
 * brought forward into its first period, or a figure that the bill prints.
 */
export type BatchColumn =
  | { readonly kind: 'account' | 'from' | 'to' | 'note' }
  | { readonly kind: 'known' | 'opening' | 'printed'; readonly name: string };

const PRINTED = 'printed.';
const OPENING = 'opening';
const OTHER_LINE = 'other-line.';
const BILLED = 'billed';
/** Figures that tell of no stage of a bill, and that a bill prints all the same. */
const OTHERS: readonly string[] = ['days', 'factor', 'load'];
/** A register of a meter, one for each rate where it has several. */
const REGISTER_END = /^(?:import|export|generation)(?:-[A-Za-z0-9]{1,12})?\.(?:previous|present)$/;

/**
 * The names that columns can have under a tariff, of all its versions together.
 *
 * @param tariff  a tariff that was read
 * @example
 * columnNames({ document: { settlements: [], rounding: { line: 'none', total: 'none' }, versions: [{ charges: [{ id: 'energy' }] }] }, versions: [], settlements: [] }).lines //=> ["energy","surplus"]
 */
export function columnNames(tariff: Tariff): ColumnNames {
  const { versions } = tariff.document;
  const lines = versions.flatMap(({ charges }) => charges.map(({ id }) => id));
  return {
    quantities: [...prepareTariff(tariff).quantities.keys()],
    ledgers: ledgersOf(tariff.document),
    lines: [...new Set([...lines, 'surplus'])],
  };
}

/** Whether a bill has a figure of this name under the tariff. */
function isFigure(name: string, { quantities, ledgers, lines }: ColumnNames): boolean {
  const own = nameIn(name);
  switch (groupOf(name)) {
    case 'line':
      return lines.includes(own);
    case 'units':
      return own === BILLED || quantities.includes(own);
    case 'credit':
      return ledgers.includes(own);
    case 'reading':
      return REGISTER_END.test(own);
    case 'other':
      return OTHERS.includes(name);
    default:
      return true;
  }
}

/** A printed figure; a line that the tariff does not have is one only where the table says that it means that. */
function printedColumn(figure: string, names: ColumnNames): BatchColumn | null {
  if (!figure.startsWith(OTHER_LINE))
    return isFigure(figure, names) ? { kind: 'printed', name: figure } : null;
  const line = figure.slice(OTHER_LINE.length);
  return line === '' || names.lines.includes(line) ? null : { kind: 'printed', name: FIGURE.line(line) };
}

const openingColumn = (ledger: string, { ledgers }: ColumnNames): BatchColumn | null =>
  ledgers.includes(ledger) ? { kind: 'opening', name: ledger } : null;

/**
 * What a column holds, by its name:
 *
 * - `account`, `from`, `to`
 * - a quantity of the tariff, known of the account: `import`, `export`, `generation`, `sanctioned-load`, `import@peak` …
 * - `opening`, or `opening.` and a ledger: what was brought forward into the first period of the account
 * - `printed.` and the name of a figure of the bill: `printed.units.billed`, `printed.line.energy`, `printed.payable` …
 * - `printed.other-line.` and a line of the bill that the tariff does not have
 * - `note.` and anything: passed by
 *
 * @param names  what the tariff has, see {@link columnNames}
 * @returns      null: no such column
 * @example
 * batchColumn('printed.payable', { quantities: [], ledgers: [], lines: [] }) //=> {"kind":"printed","name":"payable"}
 */
export function batchColumn(name: string, names: ColumnNames): BatchColumn | null {
  if (name === 'account' || name === 'from' || name === 'to') return { kind: name };
  if (name.startsWith('note.')) return { kind: 'note' };
  if (name === OPENING) return openingColumn('credit', names);
  if (name.startsWith(`${OPENING}.`)) return openingColumn(nameIn(name), names);
  if (name.startsWith(PRINTED)) return printedColumn(name.slice(PRINTED.length), names);
  return names.quantities.includes(name) ? { kind: 'known', name } : null;
}

/**
 * Whether a printed figure is a result: of a bill that prints none, nothing can be told.
 *
 * @example
 * isResultFigure('line.energy') //=> true
 */
export const isResultFigure = (figure: string): boolean =>
  figure === FIGURE.units(BILLED) || ['line', 'total'].includes(groupOf(figure));
