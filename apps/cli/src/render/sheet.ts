import type { BillLetter, SheetPart, SheetSection } from '@unitbook/engine';
import { renderTable } from './table.ts';
import { PAGE_WIDTH, plainText, wrap, wrapIndented } from './text.ts';

function partLines(part: SheetPart): readonly string[] {
  switch (part.kind) {
    case 'paragraph':
      return wrap(plainText(part.text), PAGE_WIDTH);
    case 'list':
      return part.items.flatMap((item) => wrapIndented(`- ${plainText(item)}`, '', PAGE_WIDTH, '  '));
    case 'table': {
      const columns = part.head.map((heading, at) => ({
        heading: [heading],
        side: part.numbers.includes(at) ? ('right' as const) : ('left' as const),
      }));
      return renderTable(columns, { body: part.rows.map((row) => row.map(plainText)) });
    }
  }
}

/** The sections of a memo as lines. */
export function sheetLines(sections: readonly SheetSection[]): readonly string[] {
  return sections.flatMap(({ title, parts }) => [
    '',
    plainText(title).toUpperCase(),
    ...parts.flatMap((part, at) => [...(at === 0 ? [] : ['']), ...partLines(part)]),
  ]);
}

const numbered = (items: readonly string[]): readonly string[] =>
  items.flatMap((item, at) => wrapIndented(`${String(at + 1)}. ${plainText(item)}`, '', PAGE_WIDTH, '   '));

/** A letter as lines, and below a rule what is no part of it. */
export function letterLines(letter: BillLetter): readonly string[] {
  const { to, date, subject, greeting, paragraphs, asks, encloses, closing, toGather, caution } = letter;
  const list = (title: string, items: readonly string[]): readonly string[] =>
    items.length === 0 ? [] : ['', title, ...numbered(items)];
  return [
    ...to.map(plainText),
    '',
    plainText(date),
    '',
    ...wrap(plainText(subject), PAGE_WIDTH),
    '',
    plainText(greeting),
    ...paragraphs.flatMap((text) => ['', ...wrap(plainText(text), PAGE_WIDTH)]),
    ...list('I ask you:', asks),
    ...list('I enclose:', encloses),
    '',
    ...closing.map(plainText),
    '',
    '-'.repeat(PAGE_WIDTH),
    'No part of the letter.',
    ...list('To be found before it is sent:', toGather),
    '',
    ...wrap(plainText(caution), PAGE_WIDTH),
  ];
}
