import {
  measureEnergy,
  readReadings,
  type Account,
  type DayNumber,
  type GenerationPeriod,
  type ReadingPair,
} from '@unitbook/engine';
import type { ReadingsFile } from '../read/own-readings.ts';
import type { Generation } from './generation.ts';

/** Units as the register counts them: no tariff rounds what a plant makes. */
const AS_COUNTED: Parameters<typeof measureEnergy>[2] = {
  decimals: '3',
  rounding: 'half-up',
  roundedAt: 'difference',
  clause: '',
};

const isEstimated = ({ from, to }: ReadingPair): boolean =>
  [from, to].some(({ estimated }) => estimated.includes('generation'));

/**
 * What a plant made between readings, from the register of generation.
 *
 * @param readings  rows behind a gap are left out, as no period spans it
 * @param today     the last day that a reading can have
 */
export function generationOfReadings(
  account: Account,
  { rows, gaps, place }: ReadingsFile,
  today: DayNumber,
): Generation {
  const read = readReadings(rows.slice(0, gaps[0]), account, { today });
  const measured = read.value.map((pair) => ({ pair, energy: measureEnergy(pair, account, AS_COUNTED) }));
  const periods = measured.flatMap(({ pair, energy: { value } }): readonly GenerationPeriod[] => {
    const { generation, period } = value;
    // A counter that began anew has no whole period; the finding says so.
    if (generation === null) return [];
    return [{ period, wattHours: generation.numerator as number, isEstimated: isEstimated(pair) }];
  });
  const findings = [...read.findings, ...measured.flatMap(({ energy }) => energy.findings)];
  return { periods, days: [], findings: findings.map(place) };
}
