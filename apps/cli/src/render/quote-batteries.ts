import { wholeToDecimal, type BatterySizes, type Quote, type SizePoint } from '@unitbook/engine';
import { crossedAt, markMeans } from './quote-crossed.ts';
import type { QuoteWriter } from './quote-writer.ts';
import { renderTable, type Column } from './table.ts';
import { PAGE_WIDTH, wrap } from './text.ts';

const right = (...heading: readonly string[]): Column => ({ heading, side: 'right' });

/** The size of the quote beside a battery, and the size that is worth most beside it. */
interface BatteryPoint {
  readonly wattHours: number;
  readonly quoted: SizePoint;
  readonly best: SizePoint;
}

function pointsOf(quote: Quote, batteries: readonly BatterySizes[]): readonly BatteryPoint[] {
  return batteries.flatMap(({ wattHours, sizes: { points } }) => {
    const quoted = points.find(({ watts }) => watts === quote.input.watts);
    if (quoted === undefined) return [];
    const best = points.reduce((most, point) =>
      point.netPresentValue > most.netPresentValue ? point : most,
    );
    return [{ wattHours, quoted, best }];
  });
}

const kilo = (thousandths: number, { number }: QuoteWriter): string =>
  number(wholeToDecimal(thousandths, 3).replace(/\.?0+$/, ''));

/** What a kWh of battery saves more in the first year than the battery above, if it is larger. */
function addedText(points: readonly BatteryPoint[], at: number, grid: number, writer: QuoteWriter): string {
  const [before, point] = [points[at - 1], points[at]];
  if (before === undefined || point === undefined || point.wattHours <= before.wattHours) return '–';
  return writer.quotient({
    numerator: BigInt(point.quoted.saving - before.quoted.saving) * 1000n,
    denominator: (point.wattHours - before.wattHours) * grid,
  });
}

const WORDS =
  'Beside the plant as quoted. Added kWh: what each kWh of battery saves more in year 1 than the battery above it. ' +
  'Payback: of plant and battery together. Best plant: of the sizes above, the one of the highest value now beside ' +
  'this battery. Power and prices of a battery go by its capacity.';

/** Other batteries beside the plant of a quote, and the plant that suits each best. */
export function quoteBatteryRows(
  quote: Quote,
  batteries: readonly BatterySizes[],
  writer: QuoteWriter,
): readonly string[] {
  const columns: readonly Column[] = [
    right('Battery', 'kWh'),
    right('Saving', 'year 1'),
    right('Added', 'kWh'),
    right('Net', 'price'),
    right('Pay-', 'back'),
    right('Value', 'now'),
    right('Best plant', 'kWp'),
  ];
  const points = pointsOf(quote, batteries);
  const body = points.map(({ wattHours, quoted, best }, at) => [
    wattHours === 0 ? 'none' : kilo(wattHours, writer),
    writer.money(quoted.saving),
    addedText(points, at, quote.grid, writer),
    writer.money(quoted.netPrice),
    crossedAt(quoted, writer),
    writer.money(quoted.netPresentValue),
    kilo(best.watts, writer),
  ]);
  return [...renderTable(columns, { body }), ...wrap(`${WORDS}${markMeans(body)}`, PAGE_WIDTH)];
}
