import { parseDay } from '@unitbook/engine';
import type { TableLayout } from '@unitbook/meter-files';
import { expect, it } from 'vitest';
import { confirmedLayout, draftOf } from '../../files/layout-draft.ts';
import { firstZone, openProfile, readIntervals, type ProfileFile } from './open-profile.ts';

const layoutOf = (head: string): TableLayout => {
  const { layout } = confirmedLayout(draftOf(head));
  if (layout === null) throw new Error('The table has no layout.');
  return layout;
};

const table = (head: string, ...lines: readonly string[]): string => `${[head, ...lines].join('\n')}\n`;
const HEAD = 'time,import kWh,generation kWh';

async function opened(text: string): Promise<ProfileFile> {
  const read = await openProfile('a.csv', new Blob([text]), { layout: layoutOf(text), layouts: null });
  if (read.kind !== 'file') throw new Error(`It was read as ${read.kind}.`);
  return read.opened;
}

const DAY = parseDay('2025-01-01') ?? 0;

it('takes what the house takes as its use, and what the plant makes, in watt-hours', async () => {
  const text = table(HEAD, '2025-01-01 08:00,0.200,1.5', '2025-01-01 09:00,0.250,1.25');
  const file = await opened(text);
  expect(firstZone(file)).toBe(null);
  const made = readIntervals(file, null);
  expect(made).toMatchObject({
    name: 'a.csv',
    profile: { minutes: 60 },
    isGiving: false,
    span: { from: DAY, to: DAY + 1 },
  });
  if ('reason' in made) throw new Error(made.reason);
  expect([...made.profile.starts]).toEqual([DAY * 1440 + 480, DAY * 1440 + 540]);
  expect([...made.profile.use]).toEqual([200, 250]);
  expect([...made.profile.generation]).toEqual([1500, 1250]);
});

it('tells of units given: then the house has a plant already', async () => {
  const head = 'time,import kWh,export kWh,generation kWh';
  const giving = await opened(table(head, '2025-01-01 08:00,0,1,1.5', '2025-01-01 09:00,0.25,0,1.25'));
  expect(readIntervals(giving, null)).toMatchObject({ isGiving: true });
  const none = await opened(table(head, '2025-01-01 08:00,1,0,1.5', '2025-01-01 09:00,0.25,0,1.25'));
  expect(readIntervals(none, null)).toMatchObject({ isGiving: false });
});

it('says what a file lacks', async () => {
  const file = await opened(table('time,import kWh', '2025-01-01 08:00,0.2', '2025-01-01 09:00,0.25'));
  const made = readIntervals(file, null);
  expect('reason' in made ? made.reason : '').toContain(
    'and nothing of units made. Expected: for each interval',
  );
});

it('moves times that name their clock to that of the house, and asks for one that is a zone', async () => {
  const text = table(
    HEAD,
    '2025-01-01T02:30:00Z,0.2,1.5',
    '2025-01-01T03:30:00Z,0.25,1.25',
    '2025-01-01T04:30:00Z,0.25,1.25',
  );
  const file = await opened(text);
  expect(firstZone(file)).not.toBe(null);
  const made = readIntervals(file, 'Asia/Kolkata');
  // Half past two in Greenwich is eight in the morning there.
  expect('reason' in made ? made.reason : made.profile.starts[0]).toBe(DAY * 1440 + 480);
  const none = readIntervals(file, 'Atlantis/Port');
  expect('reason' in none ? none.reason : '').toContain('“Atlantis/Port” is no time zone');
});

it.each([
  ['', 'It could not be read:'],
  ['Dear customer', 'It could not be read:'],
  ['date;import;export\n2025-04-01;1;2\n', 'a list of meter readings'],
  ['{"format":"unitbook-household-1"}', 'It was saved from this page'],
])('refuses %j and says why', async (text, said) => {
  const read = await openProfile('a.txt', new Blob([text]), { layout: null, layouts: null });
  expect(read.kind === 'refused' ? read.refused.reason : read.kind).toContain(said);
});

it('asks about a table, and reads one that was confirmed before', async () => {
  const text = table(HEAD, '2025-01-01 08:00,0.200,1.5', '2025-01-01 09:00,0.250,1.25');
  const asked = await openProfile('a.csv', new Blob([text]), { layout: null, layouts: null });
  expect(asked.kind).toBe('asked');
  const kept = JSON.stringify(layoutOf(text));
  const layouts = { load: () => kept, save: () => true, forget: () => true };
  const read = await openProfile('a.csv', new Blob([text]), { layout: null, layouts });
  expect(read.kind).toBe('file');
});
