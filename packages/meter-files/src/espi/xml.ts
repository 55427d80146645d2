import { SaxesParser, type SaxesTagNS } from 'saxes';
import { elementStack, type Position, type XmlEvents } from './elements.ts';
import { LONGEST_RUN, segments } from './segments.ts';

type Parser = SaxesParser<{ xmlns: true }>;

const here = (parser: Parser): Position => ({ line: parser.line, column: parser.column + 1 });

/** Where a tag begins, told when the parser has read its name and one more character. */
function tagPosition({ line, column }: Parser, name: string): Position {
  // The name ended the line, so the parser stands at the beginning of the next.
  if (column === 0) return { line: line - 1, column: 1 };
  return { line, column: Math.max(1, column - name.length - 1) };
}

type Refuse = XmlEvents['refuse'];

/** Have a parser refuse what is no well-formed XML, and what could make entities of its own. */
function listenForFaults(parser: Parser, refuse: Refuse): void {
  parser.on('error', ({ message }) => {
    const problem = message.replace(/^\d+:\d+: /, '').replace(/\.$/, '');
    refuse('espi/not-well-formed', { line: parser.line, column: Math.max(1, parser.column) }, { problem });
  });
  parser.on('doctype', (type) => {
    if (type.includes('[')) refuse('espi/doctype', here(parser), {});
  });
}

interface Tag {
  readonly tag: SaxesTagNS;
  readonly at: Position;
  readonly textAt: Position;
}

/** The tags of one segment, in order; null is an end. */
type Queue = (Tag | null)[];

/** Have a parser put tags into a queue and texts where they are kept. */
function listenForTags(parser: Parser, queue: Queue, keep: (text: string) => void): void {
  let at: Position = { line: 1, column: 1 };
  parser.on('opentagstart', ({ name }) => {
    at = tagPosition(parser, name);
  });
  parser.on('opentag', (tag) => {
    queue.push({ tag, at, textAt: here(parser) });
  });
  parser.on('closetag', () => {
    queue.push(null);
  });
  parser.on('text', keep);
  parser.on('cdata', keep);
}

/**
 * Read XML piece by piece. Nothing is ever fetched and no entity is declared: a document type with a
 * subset of its own is refused.
 *
 * The parser gets the text up to one ">" at a time, so that what is said of a file does not depend on
 * where the pieces end, and so that a tag which turns out to be wrong is never acted upon.
 */
export function xmlReader(events: XmlEvents): { write: (text: string) => void; end: () => void } {
  const parser: Parser = new SaxesParser({ xmlns: true });
  let refused = false;
  let sinceTag = 0;
  const isRefused = (): boolean => refused;
  const queue: Queue = [];
  const refuse: Refuse = (code, position, values) => {
    if (!refused) events.refuse(code, position, values);
    refused = true;
  };
  const stack = elementStack({ ...events, refuse });
  listenForFaults(parser, refuse);
  listenForTags(parser, queue, stack.text);

  const parse = (segment: string): void => {
    sinceTag += segment.length;
    if (sinceTag > LONGEST_RUN) refuse('espi/too-long', here(parser), { most: String(LONGEST_RUN) });
    if (isRefused()) return;
    parser.write(segment);
    for (const tag of queue) {
      if (isRefused()) return;
      if (tag === null) stack.close();
      else stack.open(tag);
      sinceTag = 0;
    }
    queue.length = 0;
  };
  const cut = segments(parse);
  return {
    write: (text) => {
      if (!isRefused()) cut.write(text);
    },
    end: () => {
      if (!isRefused()) cut.end();
      if (!isRefused()) parser.close();
    },
  };
}
