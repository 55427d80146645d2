import type { Finding } from '@unitbook/engine';
import { tableFinding } from '../findings.ts';
import { MOST_LINES_ABOVE } from '../header-search.ts';
import { shown, type Witness } from './decision.ts';
import type { Head } from './open-head.ts';
import { unixTimeFinding } from './time-columns.ts';

/** What is to be said where two cells contradict each other. */
export function pairFinding(
  code: 'table/mixed-marks' | 'table/mixed-date-orders',
  pair: readonly [Witness, Witness] | null,
  { place }: Head,
): readonly Finding[] {
  if (pair === null) return [];
  const [one, other] = pair;
  const values = { one: shown(one), other: shown(other) };
  return [{ ...tableFinding(code, { path: [] }, values), position: place(other) }];
}

const FIRST = { line: 1, column: 1 };

/** What is to be said of the lines of a table and of its times. */
export function shapeFindings({ rows, split, columns, place }: Head): readonly Finding[] {
  if (split.rows.length === 0) return [{ ...tableFinding('table/empty', { path: [] }), position: FIRST }];
  const { above, header, data } = rows;
  const [first] = data;
  const position = { line: (header ?? first)?.line ?? 1, column: 1 };
  const findings: Finding[] = [];
  const add = (
    code: Parameters<typeof tableFinding>[0],
    values: Readonly<Record<string, string>> = {},
  ): void => {
    findings.push({ ...tableFinding(code, { path: [] }, values), position });
  };
  const count = String(above.length);
  if (above.length > MOST_LINES_ABOVE)
    add('table/header-too-far-down', { count, most: String(MOST_LINES_ABOVE) });
  else if (above.length > 0) add('table/lines-above', { count });
  if (header === null) add('table/no-header');
  if (columns.times.dateTime >= 0 || columns.times.date >= 0) return findings;
  const unix = unixTimeFinding(data, columns.names.length);
  if (unix === null) add('table/no-time-column');
  else findings.push({ ...unix.finding, position: place(unix.at) });
  return findings;
}
