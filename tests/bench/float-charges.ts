import {
  dayFactor,
  isDecimalText,
  priceAt,
  roundQuotient,
  shapeOf,
  type Period,
  type Shape,
  type ShapeLine,
  type TariffDocument,
  type TariffVersion,
} from '@unitbook/engine';

type Line = ShapeLine;
type Rounding = { readonly step: string; readonly mode: string } | null | undefined;

/** A number of a document as a float of JavaScript source. */
export const float = (text: string): string => String(Number(text));

/** Money or units rounded as a programmer does it: `Math.round`, of hundredths where it is to hundredths. */
export function roundedSource(value: string, rounding: Rounding): string {
  if (rounding === null || rounding === undefined) return value;
  const step = Number(rounding.step);
  const whole = { up: 'ceil', ceiling: 'ceil', down: 'floor', floor: 'floor' }[rounding.mode] ?? 'round';
  const per = Math.round(1 / step);
  // A tiny bit keeps what is whole already from falling to the whole number below.
  const nudge = whole === 'floor' ? ' + 1e-9' : whole === 'ceil' ? ' - 1e-9' : '';
  if (step === 1) return `Math.${whole}(${value}${nudge})`;
  return Math.abs(per * step - 1) < 1e-12
    ? `Math.${whole}((${value}) * ${String(per)}${nudge}) / ${String(per)}`
    : `Math.${whole}((${value}) / ${String(step)}${nudge}) * ${String(step)}`;
}

/** What the lines of a period are written with. */
export interface ChargeNames {
  /** The variable of a quantity. */
  readonly quantity: (name: string) => string;
  /** The variable of a ledger of money. */
  readonly ledger: (id: string) => string;
}

interface Context {
  readonly document: TariffDocument;
  readonly shape: Shape;
  readonly period: Period;
  readonly names: ChargeNames;
}

function factorOf({ dayRule }: Line, { document, period }: Context): number {
  const rule = dayRule === null ? undefined : document.dayRules?.[dayRule];
  if (rule === undefined) return 1;
  const { numerator, denominator } = dayFactor(rule, period);
  return numerator / denominator;
}

const ENERGY = (unit: string | undefined): boolean =>
  !['kW', 'kVA', 'class', 'money'].includes(unit ?? 'kWh');

/** A limit in units, scaled by the days where the charge says so. */
function limitOf(line: Line, limit: number, quantity: number, context: Context): number {
  const { quantities } = context.shape;
  const isOne = quantities.names[quantity] === 'one';
  const isScaled = line.scaling.startsWith('limits') && !isOne && ENERGY(quantities.units[quantity]);
  if (!isScaled) return limit / 1000;
  const factor = factorOf(line, context);
  const rounding = line.dayRule === null ? undefined : context.document.dayRules?.[line.dayRule]?.limits;
  const scaled = (limit / 1000) * factor;
  if (rounding === undefined || factor === 1) return scaled;
  const step = Number(rounding.step);
  return roundQuotient(Math.round((scaled / step) * 1e6), 1e6, rounding.mode) * step;
}

/** Pieces as nested conditions, each with what the pieces below it cost. */
function piecesSource(line: Line, table: Line['tables'][number], x: string, context: Context): string {
  const rates = table.pieces.map(({ rate }) => rate / 10 ** line.ratePlaces);
  let source = '';
  let base = 0;
  let below = 0;
  table.pieces.forEach((piece, at) => {
    const rate = rates[at] ?? 0;
    const amount =
      at === 0 ? `${x} * ${String(rate)}` : `${String(base)} + (${x} - ${String(below)}) * ${String(rate)}`;
    const limit = limitOf(line, piece.limit, line.quantity, context);
    source += at === table.pieces.length - 1 ? amount : `${x} <= ${String(limit)} ? ${amount} : `;
    base += (limit - below) * rate;
    below = limit;
  });
  return `(${source})`;
}

/** Tables as nested conditions on what chooses them. */
function chosenSource(
  line: Line,
  context: Context,
  write: (table: Line['tables'][number]) => string,
): string {
  const chooser = context.names.quantity(context.shape.quantities.names[line.chooser] ?? '');
  const parts = line.tables.map((table, at) =>
    at === line.tables.length - 1
      ? write(table)
      : `${chooser} <= ${String(limitOf(line, table.limit, line.chooser, context))} ? ${write(table)} : `,
  );
  return `(${parts.join('')})`;
}

const sumSource = (places: readonly number[]): string =>
  places.length === 0 ? '0' : `(${places.map((at) => `l${String(at)}`).join(' + ')})`;

function amountSource(line: Line, context: Context): string {
  const factor = factorOf(line, context);
  const times = line.scaling.endsWith('amount') && factor !== 1 ? ` * ${String(factor)}` : '';
  const first = (line.tables[0]?.pieces[0]?.rate ?? 0) / 10 ** line.ratePlaces;
  switch (line.kind) {
    case 'table': {
      const x = context.names.quantity(context.shape.quantities.names[line.quantity] ?? '');
      return chosenSource(line, context, (table) => piecesSource(line, table, x, context)) + times;
    }
    case 'share': {
      const percent = chosenSource(line, context, (table) => {
        const rate = (table.pieces[0]?.rate ?? 0) / 10 ** line.ratePlaces;
        return String(rate / (line.isInside ? 100 - first : 100));
      });
      return `${sumSource(line.basis)} * ${percent}`;
    }
    case 'shortfall':
      return `Math.max(0, ${String(first)}${times} - ${sumSource(line.basis)})`;
    case 'floor':
      return `Math.max(${sumSource(line.basis)}, ${String(first)}${times})`;
    case 'credit':
      return '';
  }
}

/** Credit: the balance brought forward first, then what was earned. */
function creditSource(line: Line, at: number, { names }: Context): string {
  const { charge } = line;
  const ledger = charge.kind === 'credit' && charge.ledger !== undefined ? names.ledger(charge.ledger) : '0';
  const percent = (line.tables[0]?.pieces[0]?.rate ?? 0) / 10 ** line.ratePlaces;
  const limit =
    percent === 100 ? sumSource(line.basis) : `${sumSource(line.basis)} * ${String(percent / 100)}`;
  const most = roundedSource(limit, line.rounding?.rounding);
  const [used, earned] = [`used${String(at)}`, `earned${String(at)}`];
  const keep =
    ledger === '0'
      ? ''
      : `if (${ledger} >= ${used}) { keeps_${ledger} = ${ledger} - ${used}; adds_${ledger} = ${earned}; }
    else { keeps_${ledger} = 0; adds_${ledger} = ${ledger} + ${earned} - ${used}; }`;
  return `const ${earned} = ${sumSource(line.earned)};
    const ${used} = Math.max(0, Math.min(${ledger} + ${earned}, Math.max(0, ${most})));
    const l${String(at)} = -${used};
    ${keep}`;
}

/** The lines of a period as statements, and their sum as an expression. */
export function chargesSource(
  document: TariffDocument,
  version: TariffVersion,
  { period, seasons, names }: { period: Period; seasons: ReadonlySet<string>; names: ChargeNames },
): { readonly statements: string; readonly sum: string } {
  const rateOf = (rate: string) => {
    if (isDecimalText(rate)) return { text: rate, clause: '' };
    const price = priceAt(document, rate, period);
    if ('problem' in price) throw new Error(price.problem);
    return price;
  };
  const shape = shapeOf(version, document, { rateOf, seasons });
  const context = { document, shape, period, names };
  const statements = shape.lines.map((line, at) =>
    line.kind === 'credit'
      ? creditSource(line, at, context)
      : `const l${String(at)} = ${roundedSource(amountSource(line, context), line.rounding?.rounding)};`,
  );
  const adds = shape.lines.flatMap(({ adds: counts }, at) => (counts ? [at] : []));
  return { statements: statements.join('\n    '), sum: sumSource(adds) };
}
