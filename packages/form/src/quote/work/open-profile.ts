import type { Finding, QuoteProfile } from '@unitbook/engine';
import {
  isZone,
  localColumns,
  streamText,
  type CollectedFile,
  type LocalIntervals,
  type TableLayout,
} from '@unitbook/meter-files';
import type { LayoutKeep } from '../../files/keep-layouts.ts';
import { confirmedLayout, draftOf, openQuestions, rememberedLayout } from '../../files/layout-draft.ts';
import { openSource } from '../../files/open-source.ts';
import { browserZone } from '../../files/zones.ts';
import type { AskedFile, RefusedFile } from '../../plant/days/day-file.ts';

/** A meter file that was read to its end, before its times and channels are looked at. */
export interface ProfileFile {
  readonly name: string;
  readonly file: CollectedFile;
  readonly findings: readonly Finding[];
}

/** What a file turned out to be. */
export type OpenedProfile =
  | { readonly kind: 'file'; readonly opened: ProfileFile }
  | { readonly kind: 'asked'; readonly asked: AskedFile }
  | { readonly kind: 'refused'; readonly refused: RefusedFile };

/** How a file is to be read. */
export interface ProfileOptions {
  /** What the columns of a table are, where a person has said so. */
  readonly layout: TableLayout | null;
  /** Where layouts are remembered; null remembers none. */
  readonly layouts: LayoutKeep | null;
}

/** Intervals that a quote can be worked out by. */
export interface ReadIntervals {
  readonly name: string;
  readonly profile: QuoteProfile;
  /** The first and the last day, as the engine counts days. */
  readonly span: LocalIntervals['span'];
  /** Whether units were given to the grid: then the house has a plant already. */
  readonly isGiving: boolean;
  readonly findings: readonly Finding[];
}

const NOBODY = { progress: (): void => undefined, isStopped: (): boolean => false };

const refuse = (name: string, reason: string, findings: readonly Finding[] = []): OpenedProfile => ({
  kind: 'refused',
  refused: { name, reason, findings },
});

/** A table is read by what is remembered of it, or where nothing about it has to be asked. */
function layoutOf(head: string, layouts: LayoutKeep | null): TableLayout | null {
  const known = layouts === null ? null : rememberedLayout(head, (key) => layouts.load(key));
  if (known !== null) return known.layout;
  const draft = draftOf(head);
  return openQuestions(draft).length > 0 ? null : confirmedLayout(draft).layout;
}

/**
 * Read a meter file in this page, whatever its kind.
 *
 * @param blob  nothing of it is sent anywhere
 * @throws FileNotGiven  where the browser does not give the file
 */
export async function openProfile(
  name: string,
  blob: Blob,
  { layout, layouts }: ProfileOptions,
): Promise<OpenedProfile> {
  const opened = await openSource({ name, blob }, layout === null ? NOBODY : { layout, ...NOBODY });
  switch (opened.kind) {
    case 'file':
      return { kind: 'file', opened: { name, file: opened.file, findings: opened.findings } };
    case 'table': {
      const known = layoutOf(opened.head, layouts);
      if (known !== null) return openProfile(name, blob, { layout: known, layouts });
      return { kind: 'asked', asked: { name, blob, head: opened.head } };
    }
    case 'refused':
      return refuse(name, 'It could not be read:', opened.findings);
    case 'own':
      return refuse(name, 'It is a list of meter readings. Expected: a value for each interval of a year.');
    case 'book':
      return refuse(name, 'It was saved from this page, and holds no intervals.');
    case 'stopped':
      return refuse(name, 'It was not read to its end. Choose it once more.');
  }
}

/** Where a file that names its clock is read first: the zone of this device; null: its times stand as they are. */
export function firstZone({ file }: ProfileFile): string | null {
  return file.intervals.length > 0 && file.clock.offset !== null ? (browserZone() ?? '') : null;
}

/** Why a file gives no profile, as far as its channels tell. */
function lacking(file: CollectedFile, missing: readonly string[]): string {
  const streams = [...file.intervals, ...file.registers].map(({ stream }) => streamText(stream));
  const held = streams.length === 0 ? 'no energy' : [...new Set(streams)].join(', ');
  return (
    `It holds ${held}, and nothing of ${missing.join(' and of ')}. Expected: for each interval both what is taken ` +
    'from the grid, which is what a house without a plant uses, and what the plant makes. Put both into one ' +
    'table and say which columns they are, or leave the intervals out.'
  );
}

const notAZone = (zone: string): string =>
  `“${zone}” is no time zone. Expected: a name of the list of zones, such as Asia/Kathmandu. Correct it below.`;

/**
 * Use and generation of a house that has no plant yet: what it takes from the grid is what it uses.
 *
 * @param zone  where the house stands, for a file that names its clock; null: times stand as they are
 */
export function readIntervals(
  { name, file, findings }: ProfileFile,
  zone: string | null,
): ReadIntervals | RefusedFile {
  if (zone !== null && !isZone(zone)) return { name, reason: notAZone(zone), findings };
  const { value, findings: own } = localColumns(file, { zone });
  const told = [...findings, ...own];
  if (value === null) return { name, reason: 'Its intervals cannot be used as they are:', findings: told };
  const { import: use, generation, export: given, minutes, starts } = value.columns;
  const missing = [...(use === null ? ['units taken'] : []), ...(generation === null ? ['units made'] : [])];
  if (use === null || generation === null) return { name, reason: lacking(file, missing), findings: told };
  return {
    name,
    profile: { minutes, starts, use: Float64Array.from(use), generation: Float64Array.from(generation) },
    span: value.span,
    isGiving: given?.some((wattHours) => wattHours > 0) ?? false,
    findings: told,
  };
}
