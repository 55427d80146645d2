import type { Blocks } from './blocks.ts';
import { wholeNumber } from './digits.ts';
import type { XmlElement } from './elements.ts';
import { keepField, plainText } from './fields.ts';
import type { EntryLinks } from './links.ts';
import { addQuality, rawReading, readingParts, type ReadingParts } from './reading.ts';

/** The children of an IntervalReading that are read: what it costs is not. */
const READING_NAMES: ReadonlySet<string> = new Set(['value', 'tou', 'consumptionTier']);
const PERIOD_NAMES: ReadonlySet<string> = new Set(['start', 'duration']);

/** The IntervalReading that is open. */
interface OpenReading {
  readonly element: XmlElement;
  readonly parts: ReadingParts;
}

/** Keep what is in an IntervalReading. */
function keepPart({ parts, element: reading }: OpenReading, element: XmlElement, text: string): void {
  const { name, parent } = element;
  if (parent === reading) {
    if (READING_NAMES.has(name)) keepField(parts.own, element, text);
  } else if (parent?.parent !== reading) return;
  else if (parent.name === 'timePeriod' && PERIOD_NAMES.has(name)) keepField(parts.period, element, text);
  else if (parent.name === 'ReadingQuality' && name === 'quality')
    addQuality(parts, plainText(element, text));
}

/** Read the IntervalBlocks of entries. */
export function readingContents(
  links: () => EntryLinks,
  blocks: Blocks,
): {
  readonly open: (element: XmlElement) => void;
  readonly close: (element: XmlElement, text: string) => void;
  /** There are no more elements, though a block may be open. */
  readonly end: () => void;
} {
  let block: XmlElement | null = null;
  let reading: OpenReading | null = null;

  const endBlock = (): void => {
    if (block !== null) blocks.finish();
    block = null;
    reading = null;
  };
  const beginBlock = (element: XmlElement): void => {
    endBlock();
    block = element;
    blocks.begin(links(), element.at);
  };
  const endReading = ({ element, parts }: OpenReading): void => {
    blocks.reading(rawReading(parts));
    reading = null;
    if (element === block) endBlock();
  };
  /** The start of a block, from which readings without times are counted. */
  const readStart = (text: string): void => {
    const seconds = wholeNumber(text);
    if (typeof seconds === 'number') blocks.start(seconds);
  };
  return {
    open: (element) => {
      const { name, parent, at } = element;
      if (name === 'IntervalBlock') beginBlock(element);
      else if (name === 'IntervalReading') {
        // A reading outside a block is a block of one.
        if (block === null) beginBlock(element);
        reading ??= { element, parts: readingParts(at) };
      } else if (name === 'timePeriod' && reading !== null && parent === reading.element)
        reading.parts.hasPeriod = true;
    },
    close: (element, text) => {
      const { name, parent } = element;
      if (reading !== null && element === reading.element) endReading(reading);
      else if (reading !== null) keepPart(reading, element, text);
      else if (block !== null && element === block) endBlock();
      else if (name === 'start' && parent?.name === 'interval' && block !== null && parent.parent === block)
        readStart(plainText(element, text));
    },
    end: endBlock,
  };
}
