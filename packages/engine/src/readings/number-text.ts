/** What a text that should be a number turned out to be. */
export type NumberText =
  | { readonly kind: 'number'; readonly text: string }
  | { readonly kind: 'comma-unclear'; readonly grouped: string; readonly decimal: string }
  | { readonly kind: 'formula' | 'mixed-separators' | 'not-a-number' | 'empty' }
  | { readonly kind: 'letter'; readonly offer: string };

const PLAIN = /^-?\d+(?:\.\d+)?$/;
const GROUPED = /^-?\d{1,3}(?:(?:,\d{2})*,\d{3})+$/;
const LETTERS: Readonly<Record<string, string>> = { o: '0', O: '0', l: '1', I: '1', i: '1', S: '5', B: '8' };

/** Digits of other scripts (Devanagari, Kannada script, Arabic …) as 0 to 9: blocks of ten in a row. */
function latinDigits(text: string): string {
  return text.replace(/\p{Nd}/gu, (character) => {
    const code = character.codePointAt(0) ?? 0;
    if (code < 128) return character;
    let zero = code;
    while (/\p{Nd}/u.test(String.fromCodePoint(zero - 1)) && code - zero < 9) zero -= 1;
    return String(code - zero);
  });
}

/** Take off what people write around a number: currency, unit, "/-", spaces. */
function bare(text: string): string {
  return latinDigits(text.normalize('NFKC'))
    .replace(/^(?:rs\.?|inr|₹|€|\$|£)\s*/i, '')
    .replace(/\s*(?:kwh|kw|kwp|units?|₹|rs\.?)\s*$/i, '')
    .replace(/\/-\s*$/, '')
    .replace(/^−/, '-')
    .replace(/[\s'’_\u00a0\u202f]/g, '');
}

/** Commas and points together: the last one marks the decimals, the others group. */
function withBoth(text: string): NumberText {
  const mark = text.lastIndexOf(',') > text.lastIndexOf('.') ? ',' : '.';
  const other = mark === ',' ? '.' : ',';
  const at = text.lastIndexOf(mark);
  const whole = text.slice(0, at).replaceAll(other, ',');
  const rest = text.slice(at + 1);
  if (!GROUPED.test(whole) || !/^\d+$/.test(rest)) return { kind: 'mixed-separators' };
  return { kind: 'number', text: `${whole.replaceAll(',', '')}.${rest}` };
}

/** Commas only: one with one or two digits after it marks decimals, several group, three digits are unclear. */
function withCommas(text: string): NumberText {
  const parts = text.split(',');
  const last = parts.at(-1) ?? '';
  if (parts.length > 2) {
    return GROUPED.test(text) ? { kind: 'number', text: parts.join('') } : { kind: 'mixed-separators' };
  }
  if (last.length === 3 && (parts[0] ?? '').replace('-', '').length <= 3) {
    return { kind: 'comma-unclear', grouped: parts.join(''), decimal: parts.join('.') };
  }
  return PLAIN.test(parts.join('.'))
    ? { kind: 'number', text: parts.join('.') }
    : { kind: 'mixed-separators' };
}

/** Several points: they group, as in 1.164.444. */
function withPoints(text: string): NumberText {
  const commas = text.replaceAll('.', ',');
  return GROUPED.test(commas)
    ? { kind: 'number', text: text.replaceAll('.', '') }
    : { kind: 'mixed-separators' };
}

/**
 * Read a number as people type it: "12,892.4", "12892,4", "1,16,444", "Rs 1,401/-", "४३४२".
 *
 * @param text  as typed
 * @returns     a plain decimal text, or what stands in the way
 * @example
 * readNumberText('1,16,444').text //=> "116444"
 * readNumberText('12892,4').text //=> "12892.4"
 * readNumberText('12,892').kind //=> "comma-unclear"
 */
export function readNumberText(text: string): NumberText {
  if (PLAIN.test(text)) return { kind: 'number', text };
  const trimmed = text.trim();
  if (trimmed === '') return { kind: 'empty' };
  if (/^[=@]|^[+-]\s*(?:[A-Za-z(]|.*[=(*+])/.test(trimmed)) return { kind: 'formula' };
  const stripped = bare(trimmed).replace(/^\+/, '');
  if (PLAIN.test(stripped)) return { kind: 'number', text: stripped };
  if (/^-?[\d.,]+$/.test(stripped)) {
    const commas = stripped.includes(',');
    const points = stripped.includes('.');
    return commas && points ? withBoth(stripped) : commas ? withCommas(stripped) : withPoints(stripped);
  }
  const offer = stripped.replace(/[oOlIiSB]/g, (letter) => LETTERS[letter] ?? letter);
  return PLAIN.test(offer) ? { kind: 'letter', offer } : { kind: 'not-a-number' };
}
