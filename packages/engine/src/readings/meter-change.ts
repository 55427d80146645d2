import { dayText, periodDays, type Finding } from '../quantity/index.ts';
import type { Account } from './account.ts';
import { registerWords } from './check-advance.ts';
import { checkStretch, dayFindings } from './check-pair.ts';
import { readingFinding } from './findings.ts';
import { spanOn, type MeterSpan } from './meter-spans.ts';
import { shownBy, type Reading, type ReadingPair, type Stretch } from './reading.ts';
import type { Register } from './register.ts';

/** A period with readings of meters that end or begin inside it. */
export interface ChangedPeriod {
  readonly account: Account;
  readonly from: Reading;
  /** Last readings of meters taken off and first readings of others, in order of time. */
  readonly events: readonly Reading[];
  readonly to: Reading;
}

/** Where a meter counts from: a reading and the meters that it is of. */
interface Start {
  readonly reading: Reading;
  readonly span: MeterSpan;
}

/** Collects the stretches of a period. */
interface Walk {
  readonly account: Account;
  readonly stretches: Stretch[];
  readonly findings: Finding[];
}

const METERS = ['grid', 'generation'] as const;
type Meter = (typeof METERS)[number];

const isOf = (meter: Meter, { id }: Register): boolean => (id === 'generation') === (meter === 'generation');

const ownRegisters = (span: MeterSpan, meter: Meter): readonly Register[] =>
  span.counted.filter((register) => isOf(meter, register));

/** Whether a reading says anything of a meter. */
const isAbout = (reading: Reading, meter: Meter): boolean =>
  reading.event === null ||
  (meter === 'generation' ? reading.generation !== null : reading.import !== null || reading.rates !== null);

/** The registers of one meter from where it began to a reading. */
function close(walk: Walk, meter: Meter, start: Start, to: Reading): void {
  const { account } = walk;
  const { reading: from, span } = start;
  const days = periodDays({ from: from.day, to: to.day });
  const registers = ownRegisters(span, meter);
  const unread = registers.filter(
    (register) => shownBy(from, register) === null || shownBy(to, register) === null,
  );
  for (const register of unread) {
    const values = { register: registerWords(register), from: dayText(from.day), to: dayText(to.day) };
    walk.findings.push(readingFinding('reading/register-changed', { path: to.path }, values));
  }
  const read = registers.filter((register) => !unread.includes(register));
  const checked = checkStretch({ account, span, from, to, days }, read);
  walk.stretches.push(...checked.stretches);
  walk.findings.push(...checked.findings);
}

/** A meter begins: whether the account knows it, and whether days were counted by none. */
function beginFindings(account: Account, meter: Meter, first: Reading, last: Reading): Finding[] {
  const path = [...first.path, 'event'];
  const own = spanOn(account.spans, first.day);
  const isKnown = own.from === first.day && own.begun.includes(meter);
  const found: Finding[] = [];
  if (!isKnown) {
    const code = meter === 'generation' ? 'reading/begins-anew' : 'reading/meter-unknown';
    found.push(readingFinding(code, { path }, { day: dayText(first.day), meter: meterWords(meter) }));
  }
  if (first.day > last.day) {
    const values = { from: dayText(last.day), to: dayText(first.day), meter: meterWords(meter) };
    found.push(readingFinding('reading/unmetered-days', { path: [...first.path, 'date'] }, values));
  }
  const confirmed = new Set(first.confirmed);
  return found.map((finding) =>
    finding.severity === 'question' && confirmed.has(`${finding.code}:${String(finding.path.at(-1))}`)
      ? { ...finding, severity: 'note' as const }
      : finding,
  );
}

/** A meter in words. */
export function meterWords(meter: Meter): string {
  return meter === 'generation' ? 'generation' : 'two-way';
}

function outOfTurn(reading: Reading, meter: Meter): Finding {
  const isFirst = reading.event === 'first';
  const code = isFirst ? 'reading/first-without-final' : 'reading/final-without-first';
  return readingFinding(code, { path: [...reading.path, 'event'] }, { meter: meterWords(meter) });
}

/** Follow one meter, and those that take its place, through a period. */
function follow(walk: Walk, { from, events, to }: ChangedPeriod, meter: Meter): void {
  const { account, findings } = walk;
  let start: Start | null = { reading: from, span: spanOn(account.spans, from.day) };
  let last = from;
  for (const event of events.filter((one) => isAbout(one, meter))) {
    if (event.event === 'final' && start !== null) {
      close(walk, meter, start, event);
      const changed = changeInside(account, { from: start.reading, to: event }, meter);
      if (changed !== null) findings.push(changed);
      start = null;
    } else if (event.event === 'first' && start === null) {
      findings.push(...beginFindings(account, meter, event, last));
      start = { reading: event, span: spanOn(account.spans, event.day) };
    } else {
      findings.push(outOfTurn(event, meter));
      return;
    }
    last = event;
  }
  if (start === null) {
    findings.push(outOfTurn(last, meter));
    return;
  }
  close(walk, meter, start, to);
  const changed = changeInside(account, { from: start.reading, to }, meter);
  if (changed !== null) findings.push(changed);
}

/** A meter or factor that the account changes inside a stretch, without readings on that day. */
export function changeInside(
  account: Account,
  { from, to }: { readonly from: Reading; readonly to: Reading },
  meter: Meter,
): Finding | null {
  const own = spanOn(account.spans, from.day);
  const changed = account.spans.find(
    (span) => span.from !== null && span.from > from.day && span.from <= to.day && differs(own, span, meter),
  );
  if (changed?.from == null) return null;
  // On the day of the reading itself the old meter is read once more: only its factor can change then, unless
  // the reading says that it is the last one of the meter.
  const isLast = to.event === 'final' || own.serials[meter] === changed.serials[meter];
  if (changed.from === to.day && isLast) return null;
  const values = { day: dayText(changed.from), meter: meterWords(meter) };
  return readingFinding('reading/meter-changed', { path: to.path }, values);
}

function differs(a: MeterSpan, b: MeterSpan, meter: Meter): boolean {
  const text = (span: MeterSpan): string =>
    ownRegisters(span, meter)
      .map(({ key, digits, decimals, factor }) => [key, digits, decimals, factor.text].join(' '))
      .join();
  // Two meters without a number on record are two meters where the account says that one began.
  const isUnnamed = b.serials[meter] === '' && b.begun.includes(meter);
  return isUnnamed || a.serials[meter] !== b.serials[meter] || text(a) !== text(b);
}

/**
 * Check a period in which a meter was changed or began anew.
 *
 * @param changed   its readings
 * @param findings  receives what there is to say
 * @returns         the pair with the stretches of every register, or null when no bill can be made of it
 */
export function checkChangedPeriod(changed: ChangedPeriod, findings: Finding[]): ReadingPair | null {
  const { account, from, to } = changed;
  const own: Finding[] = [...dayFindings(from, to)];
  const walk: Walk = { account, stretches: [], findings: own };
  const last = changed.events.at(-1);
  if (last !== undefined && last.day > to.day) {
    const values = { day: dayText(to.day), before: dayText(last.day) };
    own.push(readingFinding('reading/day-not-after', { path: [...to.path, 'date'] }, values));
  } else {
    for (const meter of METERS) {
      if (ownRegisters(spanOn(account.spans, to.day), meter).length > 0) follow(walk, changed, meter);
    }
  }
  findings.push(...own);
  if (own.some(({ severity }) => severity === 'error')) return null;
  const period = { from: from.day, to: to.day };
  return {
    from,
    to,
    period,
    rolledOver: [],
    stretches: walk.stretches,
    span: spanOn(account.spans, from.day),
  };
}
