import { dayText, periodDays, type DayNumber, type Finding } from '../quantity/index.ts';
import type { Account } from './account.ts';
import {
  advanceFindings,
  askAbove,
  isPlainAdvance,
  possibleAdvance,
  type PairContext,
} from './check-advance.ts';
import { readingFinding } from './findings.ts';
import { confirmationKey, isUsualBill, type Reading, type ReadingPair } from './reading.ts';
import { readingText } from './register-text.ts';
import type { Register, RegisterId } from './register.ts';

const NONE: readonly never[] = [];

/** The registers an account has, in the order of the form. */
export function registersOf(account: Account): readonly Register[] {
  const { import: taken, export: given, generation } = account.registers;
  return generation === null ? [taken, given] : [taken, given, generation];
}

/** Import and export that each go on from the other's reading before. */
function swapped({ account, from, to, days }: PairContext): Finding[] {
  const { import: taken } = account.registers;
  const context = { account, from, to, days };
  const far = (value: number, before: number): number => Math.abs(value - before);
  const closer =
    far(to.import, from.export) < far(to.import, from.import) &&
    far(to.export, from.import) < far(to.export, from.export);
  const forward = to.import >= from.export && to.export >= from.import;
  if (!closer || !forward || to.export - from.import > askAbove(taken, context)) return [];
  return [readingFinding('reading/registers-swapped', { path: [...to.path, 'import'] })];
}

/** The NET screen shows import less export: with export added it goes on from the import before. */
function netScreen(context: PairContext): Finding[] {
  const { account, from, to } = context;
  const whole = to.import + to.export;
  const advance = whole - from.import;
  if (
    to.import >= from.import ||
    advance < 0 ||
    advance > possibleAdvance(account.registers.import, context)
  ) {
    return [];
  }
  const offer = readingText(whole);
  const place = { path: [...to.path, 'import'], offer };
  return [readingFinding('reading/net-screen', place, { value: readingText(to.import), offer })];
}

/** Numbers far below the readings before: units of the month instead of the register. */
function unitsNotReadings(context: PairContext): Finding[] {
  const { account, from, to } = context;
  const registers = registersOf(account);
  const small = registers.every((register) => {
    const before = from[register.id] ?? 0;
    const value = to[register.id] ?? 0;
    return value < before / 2 && value <= possibleAdvance(register, context);
  });
  const nearTop = registers.some((register) => (from[register.id] ?? 0) > 0.9 * register.fullScale);
  if (!small || nearTop) return [];
  const offer = registers
    .map((register) => `${register.id} ${readingText((from[register.id] ?? 0) + (to[register.id] ?? 0))}`)
    .join(', ');
  return [readingFinding('reading/units-not-readings', { path: to.path, offer }, { offer })];
}

/** The import and export of last time again, which the "last bill" screen shows. */
function sameAsBefore({ from, to }: PairContext): Finding[] {
  return (['import', 'export'] as const)
    .filter((id) => to[id] === from[id] && to[id] > 0)
    .map((id) =>
      readingFinding('reading/same-as-before', { path: [...to.path, id] }, { value: readingText(to[id]) }),
    );
}

function dayFindings(from: Reading, to: Reading): readonly Finding[] {
  const path = [...to.path, 'date'];
  const days = to.day - from.day;
  if (days <= 0) {
    return [
      readingFinding('reading/day-not-after', { path }, { day: dayText(to.day), before: dayText(from.day) }),
    ];
  }
  if (to.printedDays !== null && to.printedDays !== days) {
    const values = { days: String(days), printed: String(to.printedDays) };
    return [readingFinding('reading/days-differ', { path }, values)];
  }
  if (isUsualBill(days)) return NONE;
  return [readingFinding('reading/days-unusual', { path }, { days: String(days) })];
}

/** A question that was answered stays as a note. */
function answered(finding: Finding, confirmed: readonly string[]): Finding {
  if (finding.severity !== 'question') return finding;
  const place = finding.path.at(-1);
  const register = place === 'date' || place === 'export' || place === 'generation' ? place : 'import';
  return confirmed.includes(confirmationKey(finding.code, register))
    ? { ...finding, severity: 'note' }
    : finding;
}

/** The findings that explain a step back better than "below the reading before". */
function explanations(context: PairContext): readonly Finding[] {
  for (const explain of [swapped, netScreen, unitsNotReadings]) {
    const findings = explain(context);
    if (findings.length > 0) return findings;
  }
  return [];
}

function registerFindings(context: PairContext): Finding[] {
  const advances = registersOf(context.account).flatMap((register) => advanceFindings(register, context));
  const back = advances.some((finding) => finding.code === 'reading/below-before');
  const explained = back ? explanations(context) : NONE;
  // What explains a step back stands in for it: no bill can be made of such numbers.
  return explained.length === 0 ? [...advances, ...sameAsBefore(context)] : [...explained];
}

/** Whether there is nothing to say of the registers: the short way for nearly all months. */
function isUnremarkable(context: PairContext): boolean {
  const { from, to, account } = context;
  const { import: taken, export: given, generation } = account.registers;
  const moved = to.import !== from.import && to.export !== from.export;
  if (!moved || !isPlainAdvance(taken, context) || !isPlainAdvance(given, context)) return false;
  return generation === null || isPlainAdvance(generation, context);
}

/**
 * Check two readings in a row against each other.
 *
 * @param pair      whose readings
 * @param findings  receives what there is to say, with the way to set each right
 * @returns         the pair, or null when no bill can be made of it
 */
export function checkPair(
  { account, from, to }: Omit<PairContext, 'days'>,
  findings: Finding[],
): ReadingPair | null {
  const period = { from: from.day, to: to.day };
  const days = periodDays(period);
  const context = { account, from, to, days };
  const ofDays = dayFindings(from, to);
  if (ofDays.length === 0 && isUnremarkable(context)) return { from, to, period, rolledOver: NONE };
  const ofRegisters = days > 0 ? registerFindings(context) : NONE;
  const own = [...ofDays, ...ofRegisters].map((finding) => answered(finding, to.confirmed));
  findings.push(...own);
  if (own.some((finding) => finding.severity === 'error')) return null;
  const rolledOver = own
    .filter((finding) => finding.code === 'reading/rolled-over')
    .map((finding) => finding.path.at(-1) as RegisterId);
  return { from, to, period, rolledOver };
}

/** Whether a reading is dated after today; says so. */
export function isInFuture(reading: Reading, today: DayNumber | undefined, findings: Finding[]): boolean {
  if (today === undefined || reading.day <= today) return false;
  const values = { day: dayText(reading.day), today: dayText(today) };
  findings.push(readingFinding('reading/day-in-future', { path: [...reading.path, 'date'] }, values));
  return true;
}
