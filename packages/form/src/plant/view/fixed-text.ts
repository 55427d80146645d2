import type { Writing } from '../../writing/writing.ts';

/**
 * A decimal as the household writes numbers, with all its decimals: in a column they stand beneath each other.
 *
 * @param text  an exact decimal; '' stays
 */
export function fixedText(text: string, writing: Pick<Writing, 'number'>): string {
  if (text === '') return '';
  const [, decimals = ''] = text.split('.');
  const mark = writing.number('0.1').charAt(1);
  const shown = writing.number(text);
  if (decimals === '') return shown;
  const [whole = '', own = ''] = shown.split(mark);
  return `${whole}${mark}${own.padEnd(decimals.length, '0')}`;
}
