import { expect, it } from 'vitest';
import { layoutKey, layoutText, proposeTable, type TableLayout } from '@unitbook/meter-files';
import { memory } from '../../../../../tests/support/memory.ts';
import { keepLayoutsIn } from '../../files/keep-layouts.ts';
import { openDayFile } from './open-day-file.ts';

const open = (text: string) => openDayFile('days.csv', new Blob([text]));

/** What was taken, or why not. */
async function told(text: string): Promise<string> {
  const opened = await open(text);
  return opened.kind === 'refused' ? opened.refused.reason : opened.kind;
}

const lines = (head: string, mark: string): string =>
  [
    head,
    ...Array.from({ length: 20 }, (_, at) => `2025-04-${String(at + 1).padStart(2, '0')}${mark}14.${at % 7}`),
  ].join('\n');

it('takes a table with one line for each day without a question', async () => {
  const opened = await open(lines('date,generation kWh', ','));
  expect(opened.kind).toBe('days');
  if (opened.kind !== 'days') return;
  expect(opened.file.days).toHaveLength(20);
  expect(opened.file.days[1]?.wattHours).toBe(14_100);
});

it('guesses nothing: a table that leaves doubt is asked about, and read as a person says', async () => {
  const text = 'day,x\n3.4.25,14\n4.4.25,15\n5.4.25,13\n';
  const opened = await open(text);
  expect(opened.kind === 'asked' ? opened.asked.head : '').toBe(text);
  const layout: TableLayout = {
    ...proposeTable(text).layout,
    holds: 'intervals',
    minutes: '1440',
    label: 'start',
    clock: 'local',
    dateOrder: 'day-month-year',
    columns: [{ is: 'date' }, { is: 'generation', unit: 'kWh' }],
    confirmed: true,
  };
  const read = await openDayFile('days.csv', new Blob([text]), { layout });
  // 3 April 2025 is day 20181: 1 January 2025 is day 20089, and 92 days later.
  expect(read.kind === 'days' ? read.file.days[0] : null).toEqual({ day: 20181, wattHours: 14_000 });
  const { storage } = memory({ [`unitbook-columns-${layoutKey(layout.header)}`]: layoutText(layout) });
  const layouts = keepLayoutsIn(() => ({ ...storage, removeItem: () => undefined }));
  expect((await openDayFile('next.csv', new Blob([text]), { layouts })).kind).toBe('days');
});

it.each([
  ['', 'could not be read'],
  ['a letter to the supplier', 'could not be read'],
  ['date;import;export\n2025-04-01;1;2\n', 'list of meter readings'],
  ['{\n  "format": "unitbook-household-1"', 'book saved from this page'],
  ['100,NEM12,200402070911,MDA1,Ret1\n', 'holds no energy'],
  [lines('date,import kWh', ','), 'no whole day of generation'],
])('says of %j why it is not taken', async (text, reason) => {
  expect(await told(text)).toContain(reason);
});
