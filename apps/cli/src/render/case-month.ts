import {
  givenFigure,
  periodDays,
  type BookMonth,
  type Figure,
  type PassbookEntry,
  type Tariff,
  type UnitsMonth,
} from '@unitbook/engine';
import { chargesLines, type ChargesStyle } from './charges.ts';
import { explanationLines } from './explanation.ts';
import { ledgersLines } from './ledgers.ts';
import { atLeft, atRight, plainText, wrap } from './text.ts';

const LABEL_WIDTH = 50;
const AMOUNT_WIDTH = 18;
const HOW_INDENT = '      ';

const nothing = (id: string): Figure =>
  givenFigure({ id, label: id, unit: 'kWh', numerator: 0, denominator: 1000, clause: '' });

/** A month billed from its units in the form of one billed from readings: pages are set from those. */
export function asBookMonth(month: UnitsMonth): BookMonth {
  const { period, quantities, passbook } = month;
  const given = (name: string): Figure | null => quantities[name] ?? null;
  const energy = passbook?.energy ?? {
    period,
    days: periodDays(period),
    isEstimated: false,
    import: given('import') ?? nothing('import'),
    export: given('export') ?? nothing('export'),
    generation: given('generation'),
    selfConsumption: given('self-consumption'),
    totalUse: given('total-use'),
  };
  const ratios = { selfConsumptionShare: null, selfSufficiency: null, specificYield: null };
  return { ...month, energy, ratios };
}

const PASSBOOK_ROWS: readonly (readonly [string, (entry: PassbookEntry) => Figure])[] = [
  ['Units taken from the grid', (entry) => entry.imported],
  ['Units given to the grid', (entry) => entry.exported],
  ['Credit brought forward', (entry) => entry.opening],
  ['Units set off', (entry) => entry.setOff],
  ['Units paid', (entry) => entry.paid],
  ['Units lapsed', (entry) => entry.lapsed],
  ['Credit carried forward', (entry) => entry.closing],
  ['Units billed', (entry) => entry.billed],
];

function figureLines(
  label: string,
  figure: Figure,
  { notation, explanation }: ChargesStyle,
): readonly string[] {
  const parts = wrap(plainText(label), LABEL_WIDTH - 2);
  const rows = parts.map((part, index) =>
    index < parts.length - 1
      ? `  ${part}`
      : `  ${atLeft(part, LABEL_WIDTH)}${atRight(notation.units(figure), AMOUNT_WIDTH)}`,
  );
  return explanation === null ? rows : [...rows, ...explanationLines(figure, HOW_INDENT, explanation)];
}

/** Quantities that a case names and that the settlement of the page does not show of itself. */
function namedLines(month: UnitsMonth, names: readonly string[], style: ChargesStyle): readonly string[] {
  return names.flatMap((name) => {
    const figure: Figure | undefined = month.quantities[name];
    return figure === undefined ? [] : figureLines(figure.label, figure, style);
  });
}

/**
 * A month of a case in full: what became of the units, the ledgers, and the lines down to the amount payable.
 *
 * @param tariff  the case is billed under
 * @param names   quantities that the case names
 * @param style   with an explanation, each of them tells how it comes about
 */
export function caseMonth(
  month: UnitsMonth,
  tariff: Tariff,
  names: readonly string[],
  style: ChargesStyle,
): readonly string[] {
  const settled = [
    namedLines(month, names, style),
    month.passbook === null
      ? ledgersLines(asBookMonth(month), tariff, style)
      : PASSBOOK_ROWS.flatMap(([label, of]) =>
          figureLines(label, of(month.passbook as PassbookEntry), style),
        ),
    chargesLines(month.bill, 'Charges', style),
  ];
  return settled
    .filter((block) => block.length > 0)
    .flatMap((block, index) => (index === 0 ? block : ['', ...block]));
}
