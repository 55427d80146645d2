import type { Finding } from '@unitbook/engine';
import type { CsvSource } from './read-register-csv.ts';
import { cellPosition } from './row.ts';

/**
 * Say at which line and column of a register list a finding about its rows stands.
 *
 * @param source   of the list, from `readRegisterCsv`; null leaves the finding as it is
 * @param finding  with a path such as `['readings', 3, 'import']`
 */
export function locateInCsv(source: CsvSource | null, finding: Finding): Finding {
  const [list, index, key, id, rate] = finding.path;
  if (source === null || finding.position !== undefined || list !== 'readings') return finding;
  if (typeof index !== 'number') return { ...finding, position: { line: 1, column: 1 } };
  const record = source.records[index];
  if (record === undefined) return finding;
  const name =
    key === 'printedDays'
      ? 'printed_days'
      : key === 'estimated'
        ? 'status'
        : key === 'rates'
          ? `${String(id)}_${String(rate)}`
          : key;
  const { columns, delimiter } = source.header;
  const at = columns.findIndex((column) => column === name);
  return { ...finding, position: cellPosition(record, delimiter, Math.max(0, at)) };
}
