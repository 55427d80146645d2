import { quotientText, type Finding } from '../quantity/index.ts';
import type { Account } from './account.ts';
import { readingFinding } from './findings.ts';
import { confirmationKey, type Reading } from './reading.ts';
import { readingText } from './register-text.ts';
import { READING_PLACES, type Register } from './register.ts';

/** What two readings in a row are checked against. */
export interface PairContext {
  readonly account: Account;
  readonly from: Reading;
  readonly to: Reading;
  readonly days: number;
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

/** Whether a register went forward, and not further than is plausible. */
export function isPlainAdvance(register: Register, context: PairContext): boolean {
  const advance = (context.to[register.id] ?? 0) - (context.from[register.id] ?? 0);
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

function belowBefore(
  register: Register,
  context: PairContext,
  before: number,
  after: number,
): Finding | null {
  const path = [...context.to.path, register.id];
  const wrapped = inWattHours(register, after + register.fullScale - before);
  const values = {
    value: readingText(after),
    before: readingText(before),
    top: readingText(register.fullScale - 1000),
    units: quotientText(wrapped, 10 ** READING_PLACES, register.decimals),
  };
  const confirmed = context.to.confirmed.includes(confirmationKey('reading/below-before', register.id));
  const plausible = before > 0.9 * register.fullScale && wrapped <= possibleAdvance(register, context);
  return readingFinding(
    confirmed || plausible ? 'reading/rolled-over' : 'reading/below-before',
    { path },
    values,
  );
}

/**
 * Check how far one register went between two readings.
 *
 * A counter is taken to have passed its full scale only from above 90 % of it and to a plausible use;
 * any other step back is an error, never a huge bill.
 *
 * @returns findings; `reading/rolled-over` says that the full scale was passed
 */
export function advanceFindings(register: Register, context: PairContext): Finding[] {
  const before = context.from[register.id] ?? 0;
  const after = context.to[register.id] ?? 0;
  if (after < before) {
    const finding = belowBefore(register, context, before, after);
    return finding === null ? [] : [finding];
  }
  const advance = inWattHours(register, after - before);
  const ask = askAbove(register, context);
  if (advance <= ask) return [];
  const offer = redDigitOffer(register, before, after, ask);
  const place = { path: [...context.to.path, register.id], ...(offer === '' ? {} : { offer }) };
  return [
    readingFinding('reading/large-advance', place, {
      units: quotientText(advance, 10 ** READING_PLACES, 0),
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
