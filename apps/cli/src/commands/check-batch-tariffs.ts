import type { Tariff } from '@unitbook/engine';
import type { PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { readTariffFile } from '../read/tariff-file.ts';
import type { TypedCommand } from './command.ts';

/** The tariffs that a table of bills is checked by. */
export interface BatchTariffs {
  /** null: one of them cannot be used. */
  readonly tariff: Tariff | null;
  readonly others: readonly Tariff[];
  readonly findings: readonly PlacedFinding[];
}

/** The files of the tariffs, that of the bills first. */
export const tariffPaths = ({ values, lists }: TypedCommand): readonly string[] => [
  values.get('tariff') ?? '',
  ...(lists.get('other') ?? []),
];

/** Read the tariffs of `--tariff` and `--other`, with everything that is wrong with any of them. */
export async function readBatchTariffs(typed: TypedCommand, io: CommandIo): Promise<BatchTariffs> {
  const all = [];
  for (const path of tariffPaths(typed)) all.push(await readTariffFile(io, path));
  const [first, ...rest] = all;
  const isWhole = all.every(({ value }) => value !== null);
  return {
    tariff: isWhole ? (first?.value ?? null) : null,
    others: rest.flatMap(({ value }) => (value === null ? [] : [value])),
    findings: all.flatMap(({ findings }) => findings),
  };
}
