import { dayText, type ReadingRow, type RegisterId } from '@unitbook/engine';
import { addDecimals, decimalOf, decimalText } from '../collected/decimal-text.ts';
import type { MeterReadingRow, RegisterValues } from '../collected/reading-rows.ts';

const REGISTER_IDS = ['import', 'export', 'generation'] as const satisfies readonly RegisterId[];

/**
 * What the plant made in all. The engine counts no rates of generation: where only rates were read, the
 * total is their sum.
 */
function generationOf({ generation, rates }: RegisterValues): string | undefined {
  const texts = Object.values(rates?.generation ?? {});
  if (generation !== undefined || texts.length === 0) return generation;
  return decimalText(texts.map(decimalOf).reduce(addDecimals));
}

/** The rates of import and export, where there are any. */
function ratesOf({ rates }: RegisterValues): Pick<ReadingRow, 'rates'> {
  const { import: taken, export: given } = rates ?? {};
  if (taken === undefined && given === undefined) return {};
  return {
    rates: {
      ...(taken === undefined ? {} : { import: taken }),
      ...(given === undefined ? {} : { export: given }),
    },
  };
}

/** What was estimated: "import", and "import" for the rate "import@1". */
function estimatedOf(names: readonly string[]): Pick<ReadingRow, 'estimated'> {
  const ids = REGISTER_IDS.filter((id) => names.some((name) => name === id || name.startsWith(`${id}@`)));
  return ids.length === 0 ? {} : { estimated: ids };
}

function rowOf({ day, values, estimated }: MeterReadingRow): ReadingRow {
  const { import: taken, export: given } = values;
  const made = generationOf(values);
  return {
    date: dayText(day),
    ...(taken === undefined ? {} : { import: taken }),
    ...(given === undefined ? {} : { export: given }),
    ...(made === undefined ? {} : { generation: made }),
    ...ratesOf(values),
    ...estimatedOf(estimated),
  };
}

/**
 * Readings of a meter file as rows of readings: the minute of the day is left out, digits stay as they are
 * in the file.
 *
 * A register of which only rates were read has its rates and no total; rates of generation are summed up.
 * A register with one rate that was estimated counts as estimated.
 *
 * @param rows  in order of time
 * @returns     one for each, in the same order
 * @example
 * toReadingRows([{ day: 20179, minute: 0, values: { rates: { import: { 1: '3042', 2: '1300' } } }, estimated: ['import@2'], line: 4 }]) //=> [{"date":"2025-04-01","rates":{"import":{"1":"3042","2":"1300"}},"estimated":["import"]}]
 */
export function toReadingRows(rows: readonly MeterReadingRow[]): readonly ReadingRow[] {
  return rows.map(rowOf);
}
