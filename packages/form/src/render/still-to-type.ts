import type { Finding } from '@unitbook/engine';
import { isUnfinished } from '../view/unfinished.ts';
import type { RowView } from '../view/view-book.ts';
import type { Writing } from '../writing/writing.ts';

/** A field in words, by the path of what is said of it. */
function fieldWords({ code, path }: Finding): string {
  if (code === 'reading/change-at-end') return 'the reading after the change';
  const [, , field = 'import', channel, rate] = path;
  if (field === 'rates') return `${String(channel)} rate ${String(rate)}`;
  return field === 'event' ? 'the numbers' : String(field);
}

const METERS = { final: ' of the old meter', first: ' of the new meter' } as const;

/** "Still to type: import, export on 1 May 2025." */
export function stillToType({ row, day, findings }: RowView, writing: Writing): string {
  const fields = [...new Set(findings.filter(isUnfinished).map(fieldWords))];
  const meter = row.event === undefined ? '' : METERS[row.event];
  const date = day === null ? '' : ` on ${writing.day(day)}`;
  return `Still to type: ${fields.join(', ')}${meter}${date}.`;
}
