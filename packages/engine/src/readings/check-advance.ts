import { quotientText, type Finding, type Path } from '../quantity/index.ts';
import type { Account } from './account.ts';
import { readingFinding, type ReadingFindingCode } from './findings.ts';
import { readingByDays } from './estimate-reading.ts';
import type { MeterSpan } from './meter-spans.ts';
import { confirmationKey, shownBy, type Reading } from './reading.ts';
import { readingText } from './register-text.ts';
import { READING_PLACES, type Register } from './register.ts';

/** What two readings in a row are checked against. */
export interface PairContext {
  readonly account: Account;
  /** The meters that counted. */
  readonly span: MeterSpan;
  readonly from: Reading;
  readonly to: Reading;
  readonly days: number;
  /** The last reading before `from` in which nothing was estimated; left out: there is none. */
  readonly actual?: Reading | null;
  /** The days of the period before; left out: there is none, or it is not looked at. */
  readonly daysBefore?: number | null;
}

/** Units a day and kW of load beyond which a digit too many is likelier than use. */
const ASK_PER_KILOWATT = 50;
/** Units a day and kWp beyond which no plant goes. Common practice: 7.5. */
const ASK_PER_PEAK_TENTHS = 75;

/** Watt-hours beyond which the advance of a register is asked about. */
export function askAbove(register: Register, { account, days }: PairContext): number {
  if (register.id === 'import') return account.sanctionedLoad * ASK_PER_KILOWATT * days;
  return (account.plantCapacity * ASK_PER_PEAK_TENTHS * days) / 10;
}

/** Watt-hours that can have passed a register at all: the whole load all day long, or the best of days. */
export function possibleAdvance(register: Register, context: PairContext): number {
  if (register.id !== 'import') return askAbove(register, context);
  return context.account.sanctionedLoad * 24 * context.days;
}

/** The advance in watt-hours, after the multiplying factor. */
const inWattHours = (register: Register, advance: number): number =>
  (advance * register.factor.numerator) / register.factor.denominator;

/** An advance after the multiplying factor in units, for messages. */
function unitsText({ factor }: Register, advance: number, places: number): string {
  const { numerator, denominator } = factor;
  return quotientText(BigInt(advance) * BigInt(numerator), denominator * 10 ** READING_PLACES, places);
}

/** Whether a register went forward, and not further than is plausible. */
export function isPlainAdvance(register: Register, context: PairContext): boolean {
  const advance = (shownBy(context.to, register) ?? 0) - (shownBy(context.from, register) ?? 0);
  return advance >= 0 && inWattHours(register, advance) <= askAbove(register, context);
}

/** The reading with its point one or two places to the left, if that fits. */
function redDigitOffer(register: Register, before: number, after: number, most: number): string {
  for (const shift of register.id === 'generation' ? [10, 100] : [10]) {
    const candidate = after / shift;
    const advance = inWattHours(register, candidate - before);
    if (Number.isInteger(candidate) && candidate >= before && advance <= most) return readingText(candidate);
  }
  return '';
}

/** Where a register stands in its row. */
export function registerPath(path: Path, { id, rate }: Register): Path {
  return rate === null ? [...path, id] : [...path, 'rates', id, rate];
}

/** A register in words: "import", "import rate 1". */
export function registerWords({ id, rate }: Pick<Register, 'id' | 'rate'>): string {
  return rate === null ? id : `${id} rate ${rate}`;
}

/** Two values of a register, the later of which is the lower. */
interface StepBack {
  readonly register: Register;
  readonly before: number;
  readonly after: number;
}

/** What a step back is: a full scale passed, a counter that began anew, an estimate too high, or a mistake. */
function stepBackCode({ register, before, after }: StepBack, context: PairContext): ReadingFindingCode {
  const { from, to } = context;
  const isConfirmed = to.confirmed.includes(confirmationKey('reading/below-before', register.key));
  const most = possibleAdvance(register, context);
  const wrapped = inWattHours(register, after + register.fullScale - before);
  const isPlausible = before > 0.9 * register.fullScale && wrapped <= most;
  if (from.estimated.includes(register.id) && !isPlausible) return 'reading/below-estimate';
  if (isConfirmed || isPlausible) return 'reading/rolled-over';
  const canBeginAnew = register.id === 'generation' && inWattHours(register, after) <= most;
  return canBeginAnew ? 'reading/began-anew' : 'reading/below-before';
}

function belowBefore(step: StepBack, context: PairContext): Finding {
  const { register, before, after } = step;
  const values = {
    value: readingText(after),
    before: readingText(before),
    top: readingText(register.fullScale - 1000),
    units: unitsText(register, after + register.fullScale - before, register.decimals),
  };
  const code = stepBackCode(step, context);
  if (code !== 'reading/below-estimate')
    return readingFinding(code, { path: registerPath(context.to.path, register) }, values);
  const offer = estimateByDays(register, context);
  const place = { path: registerPath(context.from.path, register), ...(offer === '' ? {} : { offer }) };
  return readingFinding(code, place, { ...values, offer });
}

/** What an estimate would be by days between two actual readings; '' where there are none. */
function estimateByDays(register: Register, { actual, from, to }: PairContext): string {
  if (actual == null || to.estimated.includes(register.id)) return '';
  const [before, after] = [shownBy(actual, register), shownBy(to, register)];
  if (before === null || after === null || after < before) return '';
  const known = { before, after, from: actual.day, to: to.day };
  return readingText(readingByDays(register, known, from.day));
}

/**
 * Check how far one register went between two readings.
 *
 * A counter is taken to have passed its full scale only from above 90 % of it and to a plausible use;
 * any other step back is an error, never a huge bill. A generation register can have begun anew.
 *
 * @returns findings; `reading/rolled-over` says that the full scale was passed
 */
export function advanceFindings(register: Register, context: PairContext): Finding[] {
  const before = shownBy(context.from, register) ?? 0;
  const after = shownBy(context.to, register) ?? 0;
  if (after < before) return [belowBefore({ register, before, after }, context)];
  const advance = inWattHours(register, after - before);
  const ask = askAbove(register, context);
  if (advance <= ask) return [];
  const offer = redDigitOffer(register, before, after, ask);
  const place = { path: registerPath(context.to.path, register), ...(offer === '' ? {} : { offer }) };
  return [
    readingFinding('reading/large-advance', place, {
      units: unitsText(register, after - before, 0),
      days: String(context.days),
      most: quotientText(ask, 10 ** READING_PLACES, 0),
      because:
        register.id === 'import'
          ? `a load of ${readingText(context.account.sanctionedLoad)} kW`
          : `a plant of ${readingText(context.account.plantCapacity)} kWp`,
      offer,
    }),
  ];
}
