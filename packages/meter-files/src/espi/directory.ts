import type { Position } from './elements.ts';
import { linksAbove, linkTail, type EntryLinks } from './links.ts';
import type { Tell } from './log.ts';
import { names } from './names.ts';
import { isSameType, type ReadingType } from './reading-type.ts';

/** An entry that describes something: not its readings. */
export interface Header {
  readonly at: Position;
  readonly id: string;
  readonly title: string;
  readonly links: EntryLinks;
}

/** Entries and links that are kept of a feed. */
export const MOST_HEADERS = 20_000;

/** What a feed says of its meters, found by links. */
export interface Directory {
  readonly usagePoint: (header: Header) => void;
  readonly meterReading: (header: Header) => void;
  readonly readingType: (header: Header, type: ReadingType) => void;
  /** The MeterReading of an IntervalBlock, by the links of the block's entry. */
  readonly meterReadingOf: (links: EntryLinks) => Header | null;
  readonly typeOf: (meterReading: Header) => ReadingType | null;
  /** The name of its metering point; the same for all readings of one point. */
  readonly pointOf: (meterReading: Header) => string;
  readonly registerOf: (meterReading: Header) => string;
}

function setFirst<Value>(map: Map<string, Value>, link: string, value: Value): void {
  if (link !== '' && !map.has(link)) map.set(link, value);
}

function firstOf<Value>(map: ReadonlyMap<string, Value>, links: readonly string[]): Value | null {
  for (const link of links) {
    const value = map.get(link);
    if (value !== undefined) return value;
  }
  return null;
}

/** The names of metering points. A point can be named before its own entry has come. */
function pointNames() {
  const { give } = names();
  const headers = { byLink: new Map<string, Header>(), bySelf: new Map<string, Header>() };
  const given = new Map<string, string>();
  const nameOf = (key: string, title: string, apart: string): string => {
    const name = given.get(key) ?? give(title, apart);
    given.set(key, name);
    return name;
  };
  return {
    add: (header: Header): void => {
      const { self, related } = header.links;
      setFirst(headers.bySelf, self, header);
      for (const link of [self, ...related]) setFirst(headers.byLink, link, header);
    },
    of: ({ links: { up, self } }: Header): string => {
      const above = linksAbove(self);
      const header = firstOf(headers.byLink, [up, self]) ?? firstOf(headers.bySelf, above);
      if (header !== null) {
        const { id, links, title } = header;
        return nameOf(
          links.self === '' ? id : links.self,
          title,
          links.self === '' ? id : linkTail(links.self),
        );
      }
      const point = [...above, ...linksAbove(up)].find((link) => /(?:^|\/)UsagePoint\/[^/]+$/.test(link));
      return point === undefined ? '' : nameOf(point, '', linkTail(point));
    },
  };
}

/** Make an empty directory. */
export function directory(tell: Tell): Directory {
  const points = pointNames();
  const registers = names();
  const readings = { byLink: new Map<string, Header>(), bySelf: new Map<string, Header>() };
  const types = new Map<string, ReadingType>();
  let kept = 0;

  /** Whether there is room for one more header. */
  const hasRoom = ({ at, links }: Header): boolean => {
    if (kept > MOST_HEADERS) return false;
    kept += 1 + links.related.length;
    if (kept > MOST_HEADERS) tell('espi/too-many-headers', at, { most: String(MOST_HEADERS) });
    return kept <= MOST_HEADERS;
  };
  return {
    usagePoint: (header) => {
      if (hasRoom(header)) points.add(header);
    },
    meterReading: (header) => {
      if (!hasRoom(header)) return;
      const { self, related } = header.links;
      setFirst(readings.bySelf, self, header);
      for (const link of [self, ...related]) setFirst(readings.byLink, link, header);
    },
    readingType: (header, type) => {
      const { self } = header.links;
      const before = types.get(self);
      if (before !== undefined && !isSameType(before, type)) tell('espi/type-twice', type.at, { link: self });
      if (before === undefined && hasRoom(header)) setFirst(types, self, type);
    },
    meterReadingOf: ({ up, self, related }) =>
      firstOf(readings.byLink, [up, self]) ??
      firstOf(readings.bySelf, [...linksAbove(self), ...linksAbove(up), ...related]),
    typeOf: ({ links }) => firstOf(types, links.related),
    pointOf: points.of,
    registerOf: ({ id, title, links: { self } }) => registers.give(title, self === '' ? id : linkTail(self)),
  };
}
