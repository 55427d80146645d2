/** The size of text in a drawing. */
const TEXT_SIZE = 12;

/** From the foot of a line of text to that of the next. */
export const LINE = 15;

const SLENDER = /[\s.,:;'’!|()ijl]/;
const BROAD = /[A-Z₹€%@mwMW–—]/;

/**
 * About how wide a text is drawn, in the units of a drawing: rather too wide than too narrow, for the
 * widest of the page's faces.
 *
 * @example
 * textWidth('12') < textWidth('1,000') //=> true
 */
export function textWidth(text: string): number {
  let ems = 0;
  for (const sign of text) ems += SLENDER.test(sign) ? 0.36 : BROAD.test(sign) ? 0.82 : 0.63;
  return TEXT_SIZE * ems;
}

/** The widest of some texts; 0 for none. */
export function widestOf(texts: readonly string[]): number {
  return texts.reduce((most, text) => Math.max(most, textWidth(text)), 0);
}

/**
 * A text in lines that fit a width; a word that does not fit by itself stands alone, and what a space that
 * does not break joins stays together.
 *
 * @example
 * wrapped('paid back in the seventh year', 110) //=> ["paid back in the","seventh year"]
 */
export function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/[ \t\r\n]+/)) {
    const longer = lines.length === 0 ? word : `${lines.at(-1) ?? ''} ${word}`;
    if (lines.length > 0 && textWidth(longer) > width) lines.push(word);
    else lines[Math.max(0, lines.length - 1)] = longer;
  }
  return lines;
}

/**
 * Of how many names one is written, so that none touches the next.
 *
 * @param apart  from one name to the next
 * @param steps  to choose from, smallest first
 * @example
 * nameEvery(['Jan', 'Feb'], 22, [1, 2, 3, 6]) //=> 2
 */
export function nameEvery(names: readonly string[], apart: number, steps: readonly number[]): number {
  const room = widestOf(names) + 5;
  return steps.find((step) => step * apart >= room) ?? steps.at(-1) ?? 1;
}
