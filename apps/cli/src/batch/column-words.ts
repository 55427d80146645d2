import type { ColumnNames } from '@unitbook/engine';

/** What is told of a column that a table cannot have. */
export interface ColumnWords {
  readonly expected: string;
  readonly remedy: string;
}

const REMEDY = 'Correct its name, or begin it with "note.", which is passed by.';
/** Quantities that are named besides, since every bill has them. */
const OF_EVERY_BILL: readonly string[] = ['self-consumption', 'total-use'];

interface Kind {
  /** How the name begins. */
  readonly prefix: string;
  readonly words: (own: string, names: ColumnNames) => Partial<ColumnWords> & { readonly expected: string };
}

const ledgerWords =
  (prefix: string) =>
  (_: string, { ledgers }: ColumnNames) => ({
    expected:
      ledgers.length === 0
        ? 'no balance: the tariff carries none forward'
        : `"${prefix}" and a ledger of the tariff: ${ledgers.join(', ')}`,
  });

const LINE = 'printed.line.';
const OTHER_LINE = 'printed.other-line.';
const UNITS = 'printed.units.';

const KINDS: readonly Kind[] = [
  { prefix: 'opening', words: ledgerWords('opening.') },
  ...['printed.opening.', 'printed.closing.'].map((prefix) => ({ prefix, words: ledgerWords(prefix) })),
  {
    prefix: LINE,
    words: (own, { lines }) => ({
      expected: `"${LINE}" and a line of the tariff: ${lines.join(', ')}`,
      ...(own === ''
        ? {}
        : { remedy: `Correct its name, or name it "${OTHER_LINE}${own}", if the tariff has no such line.` }),
    }),
  },
  {
    prefix: OTHER_LINE,
    words: (own) => ({
      expected: `"${OTHER_LINE}" and a line that the tariff does not have`,
      ...(own === '' ? {} : { remedy: `Correct its name, or name it "${LINE}${own}".` }),
    }),
  },
  {
    prefix: UNITS,
    words: (_, { quantities }) => ({
      expected: `"${UNITS}" and billed, ${OF_EVERY_BILL.join(', ')} or a quantity of the tariff: ${quantities
        .filter((name) => !OF_EVERY_BILL.includes(name))
        .join(', ')}`,
    }),
  },
  {
    prefix: 'printed.reading.',
    words: () => ({
      expected: '"printed.reading.", a register such as import or import-1, and ".previous" or ".present"',
    }),
  },
];

/**
 * What may stand in place of a column that a table cannot have, and what to do.
 *
 * @param names  what the tariff has
 * @example
 * columnWords('opening.bank', { quantities: [], ledgers: ['credit'], lines: [] }).expected //=> "\"opening.\" and a ledger of the tariff: credit"
 */
export function columnWords(name: string, names: ColumnNames): ColumnWords {
  const kind = KINDS.find(({ prefix }) => name.startsWith(prefix));
  if (kind !== undefined) return { remedy: REMEDY, ...kind.words(name.slice(kind.prefix.length), names) };
  const quantities = names.quantities.join(', ');
  return {
    expected: `account, from, to, opening, "printed." and a figure, or a quantity of the tariff: ${quantities}`,
    remedy: REMEDY,
  };
}
