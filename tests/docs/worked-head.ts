import { addDays } from '@unitbook/engine';
import { dayOf } from '../support/make.ts';

/** What a page says of something that was worked out, and what it comes to. */
export interface Worked {
  readonly at: string;
  readonly what: string;
  readonly said: readonly string[];
  readonly found: readonly string[];
}

/** "30 days from 2025-04-01, billed 170" as a period and quantities. */
export function readHead(head: string) {
  const [, days = '0', from = '', rest = ''] = /^(\d+) days? from (\S+?)((?:, .*)?):$/.exec(head) ?? [];
  const quantities = [...rest.matchAll(/, ([a-z-]+) ([\d.]+)/g)].map(
    (match) => [match[1] ?? '', match[2] ?? ''] as const,
  );
  const first = dayOf(from);
  const period = { from: first, to: addDays(first, Number.parseInt(days, 10)) };
  return { period, quantities: Object.fromEntries(quantities) as Readonly<Record<string, string>> };
}
