import { atLeft, PAGE_WIDTH, plainText, wrap } from './text.ts';

const LABEL_WIDTH = 11;

/** An entry of the head of a page: a label, and lines of text beside it. */
export function headEntry(label: string, text: string): readonly string[] {
  return wrap(plainText(text), PAGE_WIDTH - LABEL_WIDTH).map(
    (line, index) => atLeft(index === 0 ? label : '', LABEL_WIDTH) + line,
  );
}
