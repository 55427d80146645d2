/** Tables and rules of a page are at most so wide where they can be. */
export const PAGE_WIDTH = 78;

/** Characters that would move the cursor, ring or turn the direction of text around. */
const UNSEEN = /[\p{Cc}\p{Bidi_Control}\ufeff]/gu;

/**
 * A text from a file, safe to print on one line: what cannot be seen is written as its code.
 *
 * @example
 * plainText('a\u001b[2J') //=> "a\\u001b[2J"
 */
export function plainText(text: string): string {
  return text.replace(UNSEEN, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/** How many columns a text takes; every character we print takes one. */
export function textWidth(text: string): number {
  return Array.from(text).length;
}

/** What a line is not broken in: a word, or a clause in brackets with what follows it closely. */
const UNBROKEN = /\[[^\]]*\]\S*|\S+/g;

/**
 * Break a text at spaces into lines of a width; a word that is longer stands alone.
 *
 * @example
 * wrap('one two three', 8) //=> ["one two","three"]
 */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.match(UNBROKEN) ?? ['']) {
    if (line !== '' && textWidth(line) + 1 + textWidth(word) > width) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, line];
}

/** Wrap a text behind an indent; lines after the first stand behind `more` besides. */
export function wrapIndented(text: string, indent: string, width: number, more = ''): readonly string[] {
  return wrap(text, width - indent.length - more.length).map(
    (line, index) => `${indent}${index === 0 ? '' : more}${line}`,
  );
}

/** Put a text at the right end of a column. */
export function atRight(text: string, width: number): string {
  return ' '.repeat(Math.max(0, width - textWidth(text))) + text;
}

/** Put a text at the left end of a column. */
export function atLeft(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - textWidth(text)));
}
