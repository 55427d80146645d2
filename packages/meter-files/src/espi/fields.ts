import { LONGEST_TEXT, type Position, type XmlElement } from './elements.ts';

/** The text of one element that was given, and where it stands. */
export interface Field {
  readonly text: string;
  readonly at: Position;
  /** Whether the same element was given once more, and where. */
  twice: Position | null;
}

/** Elements by name. */
export type Fields = Map<string, Field>;

/** The text of an element that should hold text alone. */
export function plainText(element: XmlElement, text: string): string {
  return element.child === null ? text : `${text}<${element.child}>`;
}

/** Keep an element; of two of one name the first, and that there are two. */
export function keepField(fields: Fields, element: XmlElement, text: string): void {
  const before = fields.get(element.name);
  if (before === undefined)
    fields.set(element.name, { text: plainText(element, text), at: element.textAt, twice: null });
  else before.twice ??= element.textAt;
}

/** Whether a text was cut, so that it is no longer what the file says. */
export const isCut = ({ text }: Field): boolean => text.length > LONGEST_TEXT;

/** Characters of a text that a finding repeats. */
const QUOTED = 40;

/** A text for a finding: short, on one line. */
export function quoted(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > QUOTED ? `${line.slice(0, QUOTED)}…` : line;
}
