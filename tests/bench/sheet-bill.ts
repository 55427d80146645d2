import { HyperFormula } from 'hyperformula';

/**
 * A year of plain bills as a user would put them into a spreadsheet: one row a month, one column a line.
 * hyperformula is GPL-3.0 and serves this benchmark only; it is never shipped.
 */
export interface YearSheet {
  /** Set the units of all twelve months and recalculate; returns the sum of the year. */
  readonly recalculate: (units: readonly number[]) => number;
  /** Set one load for all months and recalculate: the sheet's best case, since energy stays. */
  readonly setLoad: (load: number) => number;
}

function monthRow(row: number): (string | number)[] {
  const units = `A${String(row)}`;
  const cell = (column: string): string => `${column}${String(row)}`;
  const energy =
    `=ROUND(MIN(${units},50)*2.7+MAX(0,MIN(${units},100)-50)*3.645+MAX(0,MIN(${units},200)-100)*5.1275` +
    `+MAX(0,MIN(${units},300)-200)*6.305+MAX(0,${units}-300)*7.4825,2)`;
  const load = '$J$1';
  return [
    0,
    energy,
    `=ROUND(${load}*IF(${load}<=2,40,IF(${load}<=5,75.5,110.25)),2)`,
    `=ROUND(${units}*0.4875,2)`,
    `=ROUND((${cell('B')}+${cell('C')})*0.0425,2)`,
    `=ROUND(${cell('B')}*0.027,2)`,
    `=ROUND((${cell('B')}+${cell('C')}+${cell('D')}+${cell('E')}+${cell('F')})*0.15,2)`,
    `=ROUND(SUM(B${String(row)}:G${String(row)}),0)`,
  ];
}

/** Build the sheet of a year. */
export function buildYearSheet(): YearSheet {
  const rows = Array.from({ length: 12 }, (_, month) => monthRow(month + 1));
  rows[0] = [...(rows[0] ?? []), '', 3];
  const engine = HyperFormula.buildFromArray([...rows, ['', '', '', '', '', '', '', '=SUM(H1:H12)']], {
    licenseKey: 'gpl-v3',
  });
  const total = (): number => engine.getCellValue({ sheet: 0, row: 12, col: 7 }) as number;
  return {
    recalculate: (units) => {
      engine.batch(() => {
        units.forEach((value, row) => engine.setCellContents({ sheet: 0, row, col: 0 }, value));
      });
      return total();
    },
    setLoad: (load) => {
      engine.setCellContents({ sheet: 0, row: 0, col: 9 }, load);
      return total();
    },
  };
}
