/**
 * A year of intervals summed in binary floating point, written by hand for one calendar: the ceiling that
 * exact sums by period and time block are measured against. It checks nothing: neither that an interval
 * is missing nor that one stands twice.
 */

const HOUR_BLOCKS = [0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 1, 1, 3, 3, 3, 3, 0, 0] as const;

/** What a float year is summed from: local minutes, and kWh. */
export interface FloatYear {
  readonly starts: Int32Array;
  readonly taken: Float64Array;
  readonly given: Float64Array;
  readonly made: Float64Array;
  /** The month, 0 to 11, of each day from `firstDay` on. */
  readonly months: Uint8Array;
  readonly firstDay: number;
}

/** Sums in kWh of twelve months × four blocks, for import, export and generation. */
export function floatYear(year: FloatYear, sums: Float64Array): void {
  const { starts, taken, given, made, months, firstDay } = year;
  sums.fill(0);
  for (let row = 0; row < starts.length; row += 1) {
    const start = starts[row] as number;
    const day = Math.floor(start / 1440);
    const hour = Math.floor((start - day * 1440) / 60);
    const at = ((months[day - firstDay] as number) * 4 + (HOUR_BLOCKS[hour] as number)) * 3;
    sums[at] = (sums[at] as number) + (taken[row] as number);
    sums[at + 1] = (sums[at + 1] as number) + (given[row] as number);
    sums[at + 2] = (sums[at + 2] as number) + (made[row] as number);
  }
}

/** One interval as an object, in kWh. */
export interface FloatRow {
  readonly start: number;
  readonly import: number;
  readonly export: number;
  readonly generation: number;
}

/** The same from row objects. */
export function floatRows(
  rows: readonly FloatRow[],
  months: Uint8Array,
  firstDay: number,
  sums: Float64Array,
): void {
  sums.fill(0);
  for (const row of rows) {
    const day = Math.floor(row.start / 1440);
    const hour = Math.floor((row.start - day * 1440) / 60);
    const at = ((months[day - firstDay] as number) * 4 + (HOUR_BLOCKS[hour] as number)) * 3;
    sums[at] = (sums[at] as number) + row.import;
    sums[at + 1] = (sums[at + 1] as number) + row.export;
    sums[at + 2] = (sums[at + 2] as number) + row.generation;
  }
}

const RATES = [3.2, 5.6, 4.1, 8.45] as const;

/**
 * Twelve bills from the sums of a year: export set off inside its block, the bank against what is left of
 * each block in turn, what is left of export into the bank, which lapses with March.
 */
export function floatBills(sums: Float64Array, payables: Float64Array): void {
  let bank = 0;
  for (let month = 0; month < 12; month += 1) {
    let left = 0;
    let energy = 0;
    let kept = bank;
    for (let block = 0; block < 4; block += 1) {
      const at = (month * 4 + block) * 3;
      const taken = sums[at] as number;
      const given = sums[at + 1] as number;
      const setOff = Math.min(given, taken);
      left += given - setOff;
      const fromBank = Math.min(kept, taken - setOff);
      kept -= fromBank;
      const line = (taken - setOff - fromBank) * (RATES[block] as number);
      energy += Math.round(line * 100) / 100;
    }
    bank = month === 2 ? 0 : kept + left;
    const tax = Math.round((energy + 120) * 0.05 * 100) / 100;
    payables[month] = Math.round(energy + 120 + tax);
  }
}
