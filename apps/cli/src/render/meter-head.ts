import type { FileClock } from '@unitbook/meter-files';
import { headEntry } from './head-entry.ts';
import { PAGE_WIDTH } from './text.ts';

const HOUR = 60;

const two = (value: number): string => String(value).padStart(2, '0');

/** An offset as people write it: "UTC+10:00". */
function offsetWords(offset: number): string {
  if (offset === 0) return 'UTC';
  const size = Math.abs(offset);
  return `UTC${offset < 0 ? '−' : '+'}${two(Math.floor(size / HOUR))}:${two(size % HOUR)} all year`;
}

/**
 * The clock of a file, in words.
 *
 * @param zone  the time zone that times are shown in; null: as the file has them
 */
export function clockWords({ offset }: FileClock, zone: string | null): string {
  if (offset === null) return 'local time, as the file has it';
  const own = offsetWords(offset);
  return zone === null ? own : `${own} in messages; below it is the time of ${zone}`;
}

/** The head of a page about a meter file: what it shows, and of which file. */
export function meterHead(
  title: string,
  entries: readonly (readonly [label: string, text: string])[],
): readonly string[] {
  return [
    `UNITBOOK   ${title}`,
    '='.repeat(PAGE_WIDTH),
    ...entries.flatMap(([label, text]) => headEntry(label, text)),
  ];
}
