import { dayText, periodDays, type DayNumber, type Finding, type Path } from '../quantity/index.ts';
import type { Account } from './account.ts';
import {
  advanceFindings,
  askAbove,
  isPlainAdvance,
  possibleAdvance,
  registerWords,
  type PairContext,
} from './check-advance.ts';
import { readingFinding } from './findings.ts';
import {
  confirmationKey,
  isUsualBill,
  shownBy,
  type Reading,
  type ReadingPair,
  type Stretch,
} from './reading.ts';
import { readingText } from './register-text.ts';
import type { Register, RegisterId } from './register.ts';

const NONE: readonly never[] = [];

/** The registers that an account is billed by now, in the order of the form. */
export function registersOf(account: Account): readonly Register[] {
  return account.spans.at(-1)?.counted ?? NONE;
}

/** Import and export of two readings, where both were read in all. */
interface Grid {
  readonly from: { readonly import: number; readonly export: number };
  readonly to: { readonly import: number; readonly export: number };
}

/** Import and export in all; null where rates are read in their place. */
function gridOf({ from, to }: PairContext): Grid | null {
  const [taken, given, takenNow, givenNow] = [from.import, from.export, to.import, to.export];
  if (taken === null || given === null || takenNow === null || givenNow === null) return null;
  return { from: { import: taken, export: given }, to: { import: takenNow, export: givenNow } };
}

/** Import and export that each go on from the other's reading before. */
function swapped(context: PairContext): Finding[] {
  const grid = gridOf(context);
  if (grid === null) return [];
  const { from, to } = grid;
  const { import: taken } = context.span.totals;
  const far = (value: number, before: number): number => Math.abs(value - before);
  const closer =
    far(to.import, from.export) < far(to.import, from.import) &&
    far(to.export, from.import) < far(to.export, from.export);
  const forward = to.import >= from.export && to.export >= from.import;
  if (!closer || !forward || to.export - from.import > askAbove(taken, context)) return [];
  return [readingFinding('reading/registers-swapped', { path: [...context.to.path, 'import'] })];
}

/** The NET screen shows import less export: with export added it goes on from the import before. */
function netScreen(context: PairContext): Finding[] {
  const grid = gridOf(context);
  if (grid === null) return [];
  const { from, to } = grid;
  const whole = to.import + to.export;
  const advance = whole - from.import;
  if (
    to.import >= from.import ||
    advance < 0 ||
    advance > possibleAdvance(context.span.totals.import, context)
  ) {
    return [];
  }
  const offer = readingText(whole);
  const place = { path: [...context.to.path, 'import'], offer };
  return [readingFinding('reading/net-screen', place, { value: readingText(to.import), offer })];
}

/** Numbers far below the readings before: units of the month instead of the register. */
function unitsNotReadings(context: PairContext): Finding[] {
  const { from, to, span } = context;
  const registers = span.counted;
  const small = registers.every((register) => {
    const before = shownBy(from, register) ?? 0;
    const value = shownBy(to, register) ?? 0;
    return value < before / 2 && value <= possibleAdvance(register, context);
  });
  const nearTop = registers.some((register) => (shownBy(from, register) ?? 0) > 0.9 * register.fullScale);
  if (!small || nearTop) return [];
  const offer = registers
    .map((register) => {
      const sum = (shownBy(from, register) ?? 0) + (shownBy(to, register) ?? 0);
      return `${registerWords(register)} ${readingText(sum)}`;
    })
    .join(', ');
  return [readingFinding('reading/units-not-readings', { path: to.path, offer }, { offer })];
}

/** The import and export of last time again, which the "last bill" screen shows. */
function sameAsBefore(context: PairContext): Finding[] {
  const grid = gridOf(context);
  if (grid === null) return [];
  const { from, to } = grid;
  return (['import', 'export'] as const)
    .filter((id) => to[id] === from[id] && to[id] > 0)
    .map((id) => {
      const place = { path: [...context.to.path, id] };
      return readingFinding('reading/same-as-before', place, { value: readingText(to[id]) });
    });
}

/** What is to be said of the days between two readings that a bill lies between. */
export function dayFindings(
  from: Reading,
  to: Reading,
  daysBefore: number | null = null,
): readonly Finding[] {
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
  if (!isUsualBill(days)) return [readingFinding('reading/days-unusual', { path }, { days: String(days) })];
  if (daysBefore === null || !isUsualBill(daysBefore) || days * 10 < daysBefore * MISSED_TENTHS) return NONE;
  const values = { days: String(days), before: String(daysBefore) };
  return [readingFinding('reading/cycle-missed', { path }, values)];
}

/** So many tenths of the period before look like two periods in one. */
const MISSED_TENTHS = 17;

/** The register that a finding is about, as an answer names it. */
function placeOf(path: Path): string {
  const at = path.indexOf('rates');
  if (at >= 0) return path.slice(at + 1).join('-');
  const place = path.at(-1);
  return place === 'date' || place === 'export' || place === 'generation' ? place : 'import';
}

/** A question that was answered stays as a note. */
function answered(finding: Finding, confirmed: readonly string[]): Finding {
  if (finding.severity !== 'question') return finding;
  const register = placeOf(finding.path);
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
  const advances = context.span.counted.flatMap((register) => advanceFindings(register, context));
  const back = advances.some(({ code }) => code === 'reading/below-before' || code === 'reading/began-anew');
  const explained = back ? explanations(context) : NONE;
  // What explains a step back stands in for it: no bill can be made of such numbers.
  return explained.length === 0 ? [...advances, ...sameAsBefore(context)] : [...explained];
}

/** Whether there is nothing to say of the registers: the short way for nearly all months. */
function isUnremarkable(context: PairContext): boolean {
  const { from, to, span } = context;
  const { import: taken, export: given, generation } = span.totals;
  const moved = to.import !== from.import && to.export !== from.export;
  if (!moved || !isPlainAdvance(taken, context) || !isPlainAdvance(given, context)) return false;
  return generation === null || isPlainAdvance(generation, context);
}

const stretchOf = (
  register: Register,
  { from, to }: PairContext,
  codes: ReadonlyMap<string, string>,
): Stretch => ({
  register,
  from,
  to,
  passed: codes.get(register.key) === 'reading/rolled-over',
  beganAnew: codes.get(register.key) === 'reading/began-anew',
});

/** What each register counted from one reading of it to another, with what is to be said. */
export function checkStretch(
  context: PairContext,
  registers: readonly Register[],
): { readonly stretches: readonly Stretch[]; readonly findings: readonly Finding[] } {
  const codes = new Map<string, string>();
  const findings = registers.flatMap((register) => {
    const own = advanceFindings(register, context);
    for (const { code } of own) codes.set(register.key, code);
    return own;
  });
  return {
    stretches: registers.map((register) => stretchOf(register, context, codes)),
    findings: findings.map((finding) => answered(finding, context.to.confirmed)),
  };
}

/**
 * Check two readings in a row against each other.
 *
 * @param pair      whose readings
 * @param findings  receives what there is to say, with the way to set each right
 * @returns         the pair, or null when no bill can be made of it
 */
export function checkPair(pair: Omit<PairContext, 'days'>, findings: Finding[]): ReadingPair | null {
  const { span, from, to } = pair;
  const period = { from: from.day, to: to.day };
  const days = periodDays(period);
  const context = { ...pair, days };
  const ofDays = dayFindings(from, to, pair.daysBefore);
  const isPlain = span.counted.every(({ rate }) => rate === null);
  if (isPlain && ofDays.length === 0 && isUnremarkable(context))
    return { from, to, period, rolledOver: NONE, stretches: null, span };
  const ofRegisters = days > 0 ? registerFindings(context) : NONE;
  const own = [...ofDays, ...ofRegisters].map((finding) => answered(finding, to.confirmed));
  findings.push(...own);
  if (own.some((finding) => finding.severity === 'error')) return null;
  const passed = own.filter(({ code }) => code === 'reading/rolled-over');
  const isSimple = isPlain && own.every(({ code }) => code !== 'reading/began-anew');
  return {
    from,
    to,
    period,
    rolledOver: passed.map(({ path }) => path.at(-1) as RegisterId),
    stretches: isSimple ? null : checkStretch(context, span.counted).stretches,
    span,
  };
}

/** Whether a reading is dated after today; says so. */
export function isInFuture(reading: Reading, today: DayNumber | undefined, findings: Finding[]): boolean {
  if (today === undefined || reading.day <= today) return false;
  const values = { day: dayText(reading.day), today: dayText(today) };
  findings.push(readingFinding('reading/day-in-future', { path: [...reading.path, 'date'] }, values));
  return true;
}
