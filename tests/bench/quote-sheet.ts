import { HyperFormula } from 'hyperformula';
import type { FloatQuoteTerms } from './quote-float.ts';

/**
 * The same quote as a user would put it into a spreadsheet: one row a month, 25 years, bills with and without the
 * plant. hyperformula is GPL-3.0 and serves this benchmark only; it is never shipped.
 */
export interface QuoteSheet {
  /** Change what rates rise by each year, and recalculate; the saving of all years. */
  readonly setRise: (rise: number) => number;
  /** Change the share of own use, and recalculate. */
  readonly setShare: (share: number) => number;
}

type Cell = string | number;

const energyOf = (units: string): string =>
  `MIN(${units},50)*3+MAX(0,MIN(${units},150)-50)*4.8+MAX(0,MIN(${units},300)-150)*6.5+MAX(0,${units}-300)*8`;

/** Energy, fixed, minimum, fuel, tax, subsidy and sum of a bill, in seven cells from a column on. */
function billCells(
  units: string,
  factor: string,
  [energy, fixed]: readonly [string, string],
): readonly Cell[] {
  return [
    `=ROUND((${energyOf(units)})*${factor},2)`,
    `=ROUND($D$1*60*${factor},2)`,
    `=ROUND(MAX(0,150*${factor}-${energy}-${fixed}),2)`,
    `=ROUND(${units}*0.4*${factor},2)`,
    `=ROUND(${energy}*0.06,2)`,
    `=-ROUND(MIN(${units},50)*1.5,2)`,
  ];
}

/** A: use, B: generation of year 1, C: year, D: factor, E: made, F: own, G: available, H: set off, I: bank … */
function monthCells(row: number, { use, generation }: FloatQuoteTerms): readonly Cell[] {
  const month = (row - 2) % 12;
  const year = Math.floor((row - 2) / 12);
  const at = (column: string, of = row): string => `${column}${String(of)}`;
  const bank = month === 0 ? '0' : at('I', row - 1);
  return [
    use[month] ?? 0,
    generation[month] ?? 0,
    year,
    `=(1+$A$1)^${at('C')}`,
    `=ROUND(${at('B')}*(1-$B$1)^${at('C')},0)`,
    `=ROUND(${at('E')}*$C$1,0)`,
    `=${at('E')}-${at('F')}+${bank}`,
    `=MIN(${at('G')},${at('A')}-${at('F')})`,
    `=${at('G')}-${at('H')}`,
    `=${at('A')}-${at('F')}-${at('H')}`,
    ...billCells(at('A'), at('D'), [at('K'), at('L')]),
    `=SUM(${at('K')}:${at('P')})`,
    ...billCells(at('J'), at('D'), [at('R'), at('S')]),
    `=SUM(${at('R')}:${at('W')})`,
    month === 11 ? `=ROUND(${at('I')}*2.6,2)` : 0,
  ];
}

/** Build the sheet of a quote. */
export function buildQuoteSheet(terms: FloatQuoteTerms): QuoteSheet {
  const count = terms.years * 12;
  const months = Array.from({ length: count }, (_, at) => monthCells(at + 2, terms));
  const last = String(count + 1);
  const head: Cell[] = [terms.rise, terms.wear, terms.share, terms.load];
  const sums: Cell[] = [`=SUM(Q2:Q${last})-SUM(X2:X${last})+SUM(Y2:Y${last})`];
  const engine = HyperFormula.buildFromArray([head, ...months, sums] as Cell[][], { licenseKey: 'gpl-v3' });
  const total = (): number => engine.getCellValue({ sheet: 0, row: count + 1, col: 0 }) as number;
  const set = (col: number, value: number): number => {
    engine.setCellContents({ sheet: 0, row: 0, col }, value);
    return total();
  };
  return { setRise: (rise) => set(0, rise), setShare: (share) => set(2, share) };
}
