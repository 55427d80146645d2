import type { TableLayout } from './layout-document.ts';

/** What can be wrong with a cell that should hold a number. */
type NumberFault =
  | 'table/bad-number'
  | 'table/number-marks'
  | 'table/too-many-digits'
  | 'table/spreadsheet-error'
  | 'table/exponent'
  | 'table/formula';

/** Digits that a double holds exactly, whatever they are. */
const MOST_DIGITS = 15;

/** What a cell holds: nothing, a number (see {@link NumberCell}), or something else. */
export type CellKind = 'empty' | 'number' | NumberFault;

const POINT = 46;

const escaped = (mark: string): string => `\\${mark}`;

/** All that people write as a space or an apostrophe between digits, as one of each. */
function plainMarks(text: string): string {
  return text
    .trim()
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replace(/[’ʼ]/g, "'")
    .replace(/^\u2212/, '-');
}

function faultOf(text: string): NumberFault {
  if (/^(?:[=@]|[+-]\s*[A-Za-z(])/.test(text)) return 'table/formula';
  if (text.startsWith('#')) return 'table/spreadsheet-error';
  if (/^[+-]?\d[\d.,]*[eE][+-]?\d+$/.test(text)) return 'table/exponent';
  return /^[+-]?[\d.,' ]*\d[\d.,' ]*$/.test(text) ? 'table/number-marks' : 'table/bad-number';
}

/**
 * Reads numbers by their digits, with the marks of a layout. It holds the number read last, so that reading
 * millions of cells makes no objects.
 */
export class NumberCell {
  /** The number without its mark: `whole` of 10^-`places`, at most 15 digits. */
  whole = 0;
  /** How many decimals are written. */
  places = 0;
  private readonly mark: number;
  private readonly form: RegExp;
  private readonly group: string;
  /** Whether the number was read from digits and a mark alone. */
  private isPlain = false;

  constructor({ decimalMark, grouping }: Pick<TableLayout, 'decimalMark' | 'grouping'>) {
    this.mark = decimalMark.charCodeAt(0);
    this.group = grouping;
    const group = escaped(grouping);
    const whole =
      grouping === '' ? String.raw`\d*` : String.raw`\d{1,3}(?:${group}\d{2,3})*${group}\d{3}|\d*`;
    this.form = new RegExp(`^([+-]?)(${whole})(?:${escaped(decimalMark)}(\\d*))?$`);
  }

  /** Read a cell; `whole` and `places` are set where it holds a number. */
  read(text: string): CellKind {
    const { length } = text;
    this.isPlain = false;
    if (length === 0) return 'empty';
    if (length > MOST_DIGITS) return this.readOther(text);
    const { mark } = this;
    let whole = 0;
    let markAt = -1;
    for (let at = 0; at < length; at += 1) {
      const code = text.charCodeAt(at);
      if (code >= 48 && code <= 57) whole = whole * 10 + (code - 48);
      else if (code === mark && markAt < 0 && at > 0) markAt = at;
      else return this.readOther(text);
    }
    this.whole = whole;
    this.places = markAt < 0 ? 0 : length - markAt - 1;
    this.isPlain = markAt < length - 1;
    return 'number';
  }

  /** The number of the cell read last as decimal text: digits as they stand, a point; ".5" becomes "0.5". */
  text(cell: string): string {
    if (this.isPlain) return this.mark === POINT ? cell : cell.replace(',', '.');
    const [, sign = '', whole = '', decimals = ''] = this.form.exec(plainMarks(cell)) ?? [];
    const digits = this.group === '' ? whole : whole.replaceAll(this.group, '');
    const end = decimals === '' ? '' : `.${decimals}`;
    return `${sign === '-' && this.whole < 0 ? '-' : ''}${digits === '' ? '0' : digits}${end}`;
  }

  private readOther(cell: string): CellKind {
    const text = plainMarks(cell);
    if (text === '') return 'empty';
    const [, sign, written = '', decimals = ''] = this.form.exec(text) ?? [];
    if (written === '' && decimals === '') return faultOf(text);
    const whole = this.group === '' ? written : written.replaceAll(this.group, '');
    return this.keep(sign === '-', whole, decimals);
  }

  private keep(isNegative: boolean, whole: string, decimals: string): CellKind {
    let places = decimals.length;
    let digits = (whole + decimals).replace(/^0+(?=\d)/, '');
    // Zeros at the end can be left out where the number would else be too long.
    while (places > 0 && digits.endsWith('0') && Math.max(digits.length, places) > MOST_DIGITS) {
      digits = digits.length > 1 ? digits.slice(0, -1) : digits;
      places -= 1;
    }
    if (Math.max(digits.length, places) > MOST_DIGITS) return 'table/too-many-digits';
    const value = Number.parseInt(digits, 10);
    // 0 subtracted from leaves no −0.
    this.whole = isNegative ? 0 - value : value;
    this.places = places;
    return 'number';
  }
}

/**
 * A decimal text times a power of ten, by moving the point; digits stay as they stand.
 *
 * @param by  to the right
 * @example
 * movePoint('006342', -3) //=> "006.342"
 * movePoint('-1.5', 3) //=> "-1500"
 */
export function movePoint(text: string, by: number): string {
  if (by === 0) return text;
  const [, sign = '', whole = '', decimals = ''] = /^(-?)(\d+)(?:\.(\d+))?$/.exec(text) ?? [];
  const digits = whole.padStart(Math.max(0, -by) + 1, '0') + decimals.padEnd(Math.max(0, by), '0');
  const places = Math.max(0, decimals.length - by);
  return sign + (places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`);
}
