import { streamText, type CollectedFile, type TableLayout } from '@unitbook/meter-files';
import type { LayoutKeep } from '../../files/keep-layouts.ts';
import { confirmedLayout, draftOf, openQuestions, rememberedLayout } from '../../files/layout-draft.ts';
import { openSource, type Opened } from '../../files/open-source.ts';
import type { AskedFile, DayFile, RefusedFile } from './day-file.ts';
import { daysOfFile } from './days-of-file.ts';

const NOBODY = { progress: (): void => undefined, isStopped: (): boolean => false };

/** What a file turned out to be: days of a plant, a table to be asked about, or why not. */
export type OpenedDays =
  | { readonly kind: 'days'; readonly file: DayFile }
  | { readonly kind: 'asked'; readonly asked: AskedFile }
  | { readonly kind: 'refused'; readonly refused: RefusedFile };

/** How a file is to be read. */
export interface DayFileOptions {
  /** What the columns of a table are, where a person has said so. */
  readonly layout?: TableLayout;
  /** Where layouts are remembered; null remembers none. */
  readonly layouts?: LayoutKeep | null;
}

const refuse = (name: string, reason: string, findings: RefusedFile['findings'] = []): OpenedDays => ({
  kind: 'refused',
  refused: { name, reason, findings },
});

/** The zone of a file that names its clock is that of the device: a plant is looked after from nearby. */
function zoneOf({ clock }: CollectedFile): string | null {
  return clock.offset === null ? null : new Intl.DateTimeFormat().resolvedOptions().timeZone;
}

function takeDays(name: string, { file, findings }: Opened & { readonly kind: 'file' }): OpenedDays {
  const zone = zoneOf(file);
  const own = daysOfFile(file, zone);
  const told = [...findings, ...own.findings].filter(({ severity }) => severity !== 'note');
  if (own.days.some(({ wattHours }) => wattHours !== null))
    return { kind: 'days', file: { name, days: own.days, zone, findings: told } };
  const streams = [...file.intervals, ...file.registers].map(({ stream }) => streamText(stream));
  const held = streams.length === 0 ? 'no energy' : [...new Set(streams)].join(', ');
  const reason =
    `It holds ${held}, and no whole day of generation. ` +
    'Open the file of the inverter or of the generation meter.';
  return refuse(name, reason, told);
}

/** A table is read by what is remembered of it, or where nothing about it has to be asked. */
function layoutOf(head: string, layouts: LayoutKeep | null): TableLayout | null {
  const known = layouts === null ? null : rememberedLayout(head, (key) => layouts.load(key));
  if (known !== null) return known.layout;
  const draft = draftOf(head);
  return openQuestions(draft).length > 0 ? null : confirmedLayout(draft).layout;
}

async function openTable(name: string, blob: Blob, layout: TableLayout): Promise<OpenedDays> {
  const opened = await openSource({ name, blob }, { layout, ...NOBODY });
  return opened.kind === 'file' ? takeDays(name, opened) : refuse(name, 'It could not be read.');
}

/**
 * Read a file of daily or interval generation, in this page.
 *
 * @param blob     nothing of it is sent anywhere
 * @param options  what was confirmed of a table, and where that is remembered
 */
export async function openDayFile(
  name: string,
  blob: Blob,
  { layout, layouts = null }: DayFileOptions = {},
): Promise<OpenedDays> {
  if (layout !== undefined) return openTable(name, blob, layout);
  const opened = await openSource({ name, blob }, NOBODY);
  switch (opened.kind) {
    case 'file':
      return takeDays(name, opened);
    case 'table': {
      const known = layoutOf(opened.head, layouts);
      if (known !== null) return openTable(name, blob, known);
      return { kind: 'asked', asked: { name, blob, head: opened.head } };
    }
    case 'refused':
      return refuse(name, 'It could not be read:', opened.findings);
    case 'own':
      return refuse(name, 'It is a list of meter readings: take them over under “Readings”.');
    case 'book':
      return refuse(name, 'It is a book saved from this page: open it at the top of the page.');
    case 'stopped':
      return refuse(name, 'It was not read to its end.');
  }
}
