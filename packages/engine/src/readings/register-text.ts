import { wholeToDecimal, type Finding, type Path } from '../quantity/index.ts';
import { readingFinding, type ReadingFindingCode } from './findings.ts';
import { readNumberText } from './number-text.ts';
import { READING_PLACES, type Register } from './register.ts';

/** A register reading in thousandths, or null, with what is to be said about it. */
export interface RegisterText {
  readonly value: number | null;
  readonly findings: readonly Finding[];
}

const NO_FINDINGS: readonly never[] = [];

/** A plain decimal of at most three places as thousandths; −1 for anything else. */
function plainThousandths(text: string): number {
  let value = 0;
  let places = -1;
  if (text.length === 0 || text.length > 12) return -1;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code >= 48 && code <= 57) {
      value = value * 10 + (code - 48);
      if (places >= 0) places += 1;
    } else if (code === 46 && places < 0 && at > 0 && at < text.length - 1) places = 0;
    else return -1;
  }
  if (places < 0) return value * 1000;
  return places > READING_PLACES ? -1 : value * (places === 1 ? 100 : places === 2 ? 10 : 1);
}

/** From here on a reading may be the screen test, eights only. */
const SCREEN_TEST = 8_888_000;

/**
 * A reading written plainly, in thousandths: the short way for nearly all readings.
 *
 * @returns −1 where the text wants a closer look
 */
export function plainReading(text: string, register: Register): number {
  const plain = plainThousandths(text);
  if (plain < 0 || plain >= register.fullScale || plain % register.step !== 0) return -1;
  return plain >= SCREEN_TEST && text.startsWith('8888') ? -1 : plain;
}

/** A reading in thousandths as people read it, without trailing zeros. */
export function readingText(thousandths: number): string {
  return wholeToDecimal(thousandths, READING_PLACES).replace(/\.?0+$/, '');
}

function refused(
  code: ReadingFindingCode,
  path: Path,
  values: Record<string, string>,
  offer?: string,
): RegisterText {
  const place = offer === undefined ? { path } : { path, offer };
  return { value: null, findings: [readingFinding(code, place, values)] };
}

/** One comma and three digits after it: the reading before decides between 12892 and 12.892. */
function unclearComma(
  choice: { grouped: string; decimal: string },
  text: string,
  context: RegisterContext,
): RegisterText {
  const { before, path, register } = context;
  // A register without three decimals cannot show 12.892: the comma groups.
  if (register.decimals < READING_PLACES) return checkWidth(choice.grouped, context);
  if (before === null) return refused('reading/comma-unclear', path, { value: text, ...choice });
  const far = (candidate: string): number => Math.abs(plainThousandths(candidate) - before);
  return checkWidth(far(choice.grouped) <= far(choice.decimal) ? choice.grouped : choice.decimal, context);
}

/** Whether a correction goes on from the reading before, by a fifth of the full scale at most. */
function isNearBefore(text: string, { before, register }: RegisterContext): boolean {
  if (before === null) return true;
  const advance = plainThousandths(text) - before;
  return advance >= 0 && advance <= register.fullScale / 5;
}

/** Eights on every digit that the register has. */
function isScreenTest(digits: string, decimals: string, register: Register): boolean {
  return digits.length === register.digits && /^8+$/.test(digits) && /^8*$/.test(decimals);
}

/** The digits and decimals have to fit the register. */
function checkWidth(text: string, context: RegisterContext): RegisterText {
  const { register, path } = context;
  const [whole = '', decimals = ''] = text.split('.');
  const digits = whole.replace(/^0+(?=\d)/, '');
  if (decimals.length > register.decimals && /[1-9]/.test(decimals.slice(register.decimals))) {
    const joined = `${digits}${decimals}`;
    const offer =
      decimals.length === 3 && joined.length <= register.digits && isNearBefore(joined, context)
        ? joined
        : '';
    const values = {
      value: text,
      count: String(decimals.length),
      decimals: String(register.decimals),
      offer,
    };
    return refused('reading/too-many-decimals', path, values, offer === '' ? undefined : offer);
  }
  if (digits.length > register.digits) {
    const dotted = `${digits.slice(0, register.digits)}.${digits.slice(register.digits)}`;
    const fits = decimals === '' && digits.length - register.digits <= register.decimals;
    const offer = fits && isNearBefore(dotted, context) ? dotted : '';
    const values = { value: text, count: String(digits.length), digits: String(register.digits), offer };
    return refused('reading/too-many-digits', path, values, offer === '' ? undefined : offer);
  }
  const value = plainThousandths(
    `${digits}${decimals === '' ? '' : `.${decimals.slice(0, READING_PLACES)}`}`,
  );
  if (isScreenTest(digits, decimals, register)) {
    return { value, findings: [readingFinding('reading/screen-test', { path }, { value: text })] };
  }
  return { value, findings: NO_FINDINGS };
}

/** A letter in place of a digit: what it could be is offered only where the register goes on from it. */
function withLetter(text: string, likely: string, { before, path, register }: RegisterContext): RegisterText {
  const value = plainReading(likely, register);
  const isForward = value >= 0 && (before === null || value >= before);
  if (isForward) return refused('reading/letter', path, { value: text, offer: likely }, likely);
  return refused('reading/letter', path, { value: text, offer: '' });
}

/** What a reading is read against. */
export interface RegisterContext {
  readonly register: Register;
  /** The reading before, in thousandths, or null for the first. */
  readonly before: number | null;
  readonly path: Path;
}

/**
 * Read what somebody typed for a register.
 *
 * @param text     as typed
 * @param context  the register, its reading before, and where the text stands
 * @returns        thousandths, or null with the reason and, where there is one, a correction to offer
 */
export function readRegisterText(text: string, context: RegisterContext): RegisterText {
  const { register, path } = context;
  const plain = plainReading(text, register);
  if (plain >= 0) return { value: plain, findings: NO_FINDINGS };
  const read = readNumberText(text);
  switch (read.kind) {
    case 'empty':
      return refused('reading/missing-register', path, {
        register: register.id,
        meter: register.id === 'generation' ? 'generation' : 'two-way',
      });
    case 'comma-unclear':
      if (read.grouped.startsWith('-')) return refused('reading/negative', path, { value: text });
      return unclearComma(read, text, context);
    case 'letter':
      return withLetter(text, read.offer, context);
    case 'number':
      if (read.text.startsWith('-')) return refused('reading/negative', path, { value: text });
      return checkWidth(read.text, context);
    default:
      return refused(`reading/${read.kind}`, path, { value: text });
  }
}
