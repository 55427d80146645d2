import type { SaxesTagNS } from 'saxes';
import type { EspiFindingCode } from './findings.ts';

/** A place in the file: line and column, both from 1. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** An element that is open. */
export interface XmlElement {
  /** The address of its namespace. */
  readonly space: string;
  readonly name: string;
  readonly parent: XmlElement | null;
  /** Of an attribute without a prefix; '' where there is none. */
  readonly attribute: (name: string) => string;
  /** Where its tag begins. */
  readonly at: Position;
  /** Where its text begins. */
  readonly textAt: Position;
  /** The name of the first element in it; null while there is none. */
  child: string | null;
}

/** What a reader of XML tells. */
export interface XmlEvents {
  readonly open: (element: XmlElement) => void;
  /** `text` is what stands in the element itself, cut after LONGEST_TEXT characters and one. */
  readonly close: (element: XmlElement, text: string) => void;
  /** Why the rest of the file is not read. Nothing is told after this. */
  readonly refuse: (
    code: EspiFindingCode,
    position: Position,
    values: Readonly<Record<string, string>>,
  ) => void;
}

/** Characters of the text of an element that are kept. */
export const LONGEST_TEXT = 1000;

/** Elements in one another past which a file is refused; a feed has eight. */
const DEEPEST = 64;

/** The elements that are open, and the text since the last tag. */
export function elementStack(events: XmlEvents): {
  text: (more: string) => void;
  open: (tag: { tag: SaxesTagNS; at: Position; textAt: Position }) => void;
  close: () => void;
} {
  let innermost: XmlElement | null = null;
  let depth = 0;
  let text = '';
  return {
    text: (more) => {
      if (text.length <= LONGEST_TEXT) text += more.slice(0, LONGEST_TEXT + 1 - text.length);
    },
    open: ({ tag, at, textAt }) => {
      if (innermost !== null) innermost.child ??= tag.local;
      const attribute = (name: string): string => tag.attributes[name]?.value ?? '';
      const parent = innermost;
      innermost = { space: tag.uri, name: tag.local, parent, attribute, at, textAt, child: null };
      depth += 1;
      text = '';
      if (depth > DEEPEST) events.refuse('espi/too-deep', at, { most: String(DEEPEST) });
      else events.open(innermost);
    },
    close: () => {
      if (innermost === null) return;
      events.close(innermost, text);
      innermost = innermost.parent;
      depth -= 1;
      text = '';
    },
  };
}
