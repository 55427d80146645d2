/** Units of every month of a life, in whole thousandths, in columns. */
export interface LifeUnits {
  readonly use: Float64Array;
  readonly generation: Float64Array;
  /** Used at home of what the plant made: as it was made, or later out of a battery. */
  readonly selfUse: Float64Array;
  /** A row for each month: import, export, generation, plant-capacity, and what time blocks and measures add. */
  readonly withPlant: Float64Array;
  /** The same without the plant: everything is taken from the grid. */
  readonly withoutPlant: Float64Array;
  /** Columns of a row. */
  readonly width: number;
}

/** The columns that every row of units has. */
export const UNIT_COLUMNS = ['import', 'export', 'generation', 'plant-capacity'] as const;
/** Columns of a row without time blocks and measures. */
export const WIDTH: number = UNIT_COLUMNS.length;
/** What is told by time block, in the order of the columns. */
export const BLOCK_CHANNELS = ['import', 'export', 'generation'] as const;

/**
 * The columns of a row of units: the plain ones, then each channel by block, then the measures of windows.
 *
 * @param blocks    of the tariff, in its order; none: no more columns
 * @param measures  of the tariff that are netted inside windows; left out: none
 * @example
 * unitColumns(['peak', 'rest']).slice(4, 7) //=> ["import@peak","import@rest","export@peak"]
 */
export function unitColumns(blocks: readonly string[], measures: readonly string[] = []): readonly string[] {
  return [
    ...UNIT_COLUMNS,
    ...BLOCK_CHANNELS.flatMap((channel) => blocks.map((block) => `${channel}@${block}`)),
    ...measures,
  ];
}

/**
 * Room for the units of so many months.
 *
 * @param width  columns of a row; left out: without time blocks and measures
 * @example
 * makeLifeUnits(12).withPlant.length //=> 48
 */
export function makeLifeUnits(months: number, width: number = WIDTH): LifeUnits {
  return {
    use: new Float64Array(months),
    generation: new Float64Array(months),
    selfUse: new Float64Array(months),
    withPlant: new Float64Array(months * width),
    withoutPlant: new Float64Array(months * width),
    width,
  };
}
