import type { Bill, BillLine, Figure } from '@unitbook/engine';
import { deriveFigure } from './derive.ts';
import { moneyText, plainText } from './figure-text.ts';

/** Exact texts by name. */
export type Figures = Record<string, string>;

/** Units, limit and width of the parts that a slab charge splits a quantity into. */
function partFigures(line: Figure, name: string): Figures {
  const figures: Figures = {};
  line.inputs.forEach((part, index) => {
    const [units] = part.inputs;
    if (part.operation !== 'product' || units?.operation !== 'part') return;
    const at = `${name}.part${index + 1}`;
    figures[`${at}.units`] = plainText(units);
    const [above, upTo] = units.parameters;
    if (above === undefined || upTo === undefined) return;
    figures[`${at}.upTo`] = upTo.text;
    figures[`${at}.width`] = deriveFigure({ name: at, op: 'difference', of: [upTo.text, above.text] }, {});
  });
  return figures;
}

function add(figures: Figures, name: string, text: string): void {
  const before = figures[name];
  figures[name] = before === undefined ? text : deriveFigure({ name, op: 'sum', of: [before, text] }, {});
}

/** Lines by id, with the version before them where a bill stands under several. */
function lineFigures(lines: readonly BillLine[], currency: string): Figures {
  const versions = new Set(lines.map((line) => line.version));
  const figures: Figures = {};
  for (const { figure, version, counts } of lines) {
    const name = versions.size > 1 ? `${version}.${figure.id}` : figure.id;
    figures[name] = moneyText(figure, currency);
    Object.assign(figures, partFigures(figure, name));
    if (versions.size > 1 && counts) add(figures, `${version}.sum`, plainText(figure));
  }
  return figures;
}

/**
 * Everything a bill says, as exact texts by name: every line, the parts of slabs, sum and payable.
 */
export function billFigures(bill: Bill): Figures {
  const { currency, lines, sum, payable, roundingDifference } = bill;
  return {
    ...lineFigures(lines, currency),
    lines: String(lines.length),
    sum: moneyText(sum, currency),
    payable: moneyText(payable, currency),
    ...(roundingDifference === null ? {} : { rounding: moneyText(roundingDifference, currency) }),
  };
}

/** The same names with something before each. */
export function prefixed(figures: Figures, prefix: string): Figures {
  return Object.fromEntries(Object.entries(figures).map(([name, text]) => [`${prefix}${name}`, text]));
}
