import { MOST_HEADERS, type Header } from './directory.ts';
import type { Position, XmlElement } from './elements.ts';
import { ATOM, ESPI, type Entry, type EntryEvents } from './entry.ts';
import { plainText } from './fields.ts';
import { headerContents } from './header-contents.ts';
import { comparableLink } from './links.ts';
import { readingContents } from './reading-contents.ts';

/** Characters of a link that is kept; none of a feed comes near. */
const LONGEST_LINK = 1000;

const entryAt = (at: Position): Entry => ({
  at,
  id: '',
  title: '',
  links: { self: '', up: '', related: [] },
  hasUsagePoint: false,
  hasMeterReading: false,
  type: null,
});

function keepLink({ links }: Entry, element: XmlElement): void {
  const link = comparableLink(element.attribute('href'));
  if (link === '' || link.length > LONGEST_LINK) return;
  const relation = element.attribute('rel');
  if (relation === 'self' && links.self === '') links.self = link;
  else if (relation === 'up' && links.up === '') links.up = link;
  else if (relation === 'related' && links.related.length <= MOST_HEADERS) links.related.push(link);
}

/** Tell what an entry that has ended describes, and let go the blocks that waited for it. */
function endEntry(entry: Entry, events: EntryEvents): void {
  const { at, id, title, links, type } = entry;
  const header: Header = { at, id, title, links };
  if (entry.hasUsagePoint) events.usagePoint(header);
  if (entry.hasMeterReading) events.meterReading(header);
  if (type !== null) events.readingType(header, type);
  events.blocks.entryEnds(links);
  if (entry.hasMeterReading || type !== null) events.blocks.release();
}

/** Reads the elements of a feed. */
export interface Entries {
  readonly open: (element: XmlElement) => void;
  readonly close: (element: XmlElement, text: string) => void;
  /** There are no more elements; the last entry may be cut off. */
  readonly end: () => void;
  /** What there was in the file. */
  readonly seen: { readonly root: string; readonly hasEspi: boolean; readonly hasReading: boolean };
}

/** Read the entries of a feed. Content that stands in no entry is taken as one of an entry without links. */
export function entries(events: EntryEvents): Entries {
  const seen = { root: '', hasEspi: false, hasReading: false };
  let entry = entryAt({ line: 1, column: 1 });
  const headers = headerContents(() => entry, events.localTime);
  const readings = readingContents(() => entry.links, events.blocks);
  const finish = (): void => {
    endEntry(entry, events);
    entry = entryAt({ line: 1, column: 1 });
  };
  return {
    seen,
    open: (element) => {
      const { space, name, parent } = element;
      if (parent === null) seen.root = name;
      if (space === ESPI) {
        seen.hasEspi = true;
        if (name === 'IntervalReading') seen.hasReading = true;
        headers.open(element);
        readings.open(element);
      } else if (space === ATOM && name === 'entry') entry = entryAt(element.at);
      else if (space === ATOM && name === 'link' && parent?.name === 'entry') keepLink(entry, element);
    },
    close: (element, text) => {
      const { space, name, parent } = element;
      if (space === ESPI) {
        headers.close(element, text);
        readings.close(element, text);
      } else if (space !== ATOM) return;
      else if (name === 'entry') finish();
      else if (name === 'title' && parent?.name === 'entry') entry.title ||= plainText(element, text).trim();
      else if (name === 'id' && parent?.name === 'entry') entry.id ||= plainText(element, text).trim();
    },
    end: () => {
      readings.end();
      finish();
    },
  };
}
