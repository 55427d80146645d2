import type { Finding, Path } from '../quantity/index.ts';
import type { Account } from './account.ts';
import { rateFinding } from './check-rates.ts';
import { readingFinding } from './findings.ts';
import type { MeterSpan } from './meter-spans.ts';
import { confirmationKey, shownBy, type Reading, type ReadingRow } from './reading.ts';
import { plainReading, readRegisterText } from './register-text.ts';
import type { Register, RegisterId } from './register.ts';

const NONE: readonly never[] = [];

/** What one row is read against; findings are added to the list. */
export interface RowContext {
  readonly account: Account;
  /** The meters that the row is about. */
  readonly span: MeterSpan;
  /** The reading before, for commas that could be either mark. */
  readonly before: Reading | null;
  readonly path: Path;
  readonly findings: Finding[];
}

/** A question that whoever read the meter has answered stays as a note. */
export function answered(finding: Finding, place: string, row: ReadingRow): Finding {
  const isAnswered = row.confirmed?.includes(confirmationKey(finding.code, place)) ?? false;
  return isAnswered && finding.severity === 'question' ? { ...finding, severity: 'note' } : finding;
}

/** The text that a row holds for a register, and where it stands. */
function textOf(row: ReadingRow, { id, rate }: Register, path: Path): { text: string; path: Path } {
  if (rate === null) return { text: row[id] ?? '', path: [...path, id] };
  const rates = id === 'generation' ? undefined : row.rates?.[id];
  return { text: rates?.[rate] ?? '', path: [...path, 'rates', id, rate] };
}

function readRegister(row: ReadingRow, register: Register, context: RowContext): number | null {
  if (register.rate === null) {
    const plain = plainReading(row[register.id] ?? '', register);
    if (plain >= 0) return plain;
  }
  const { before, findings } = context;
  const { text, path } = textOf(row, register, context.path);
  const known = before === null ? null : shownBy(before, register);
  const read = readRegisterText(text, { register, before: known, path });
  for (const finding of read.findings) findings.push(answered(finding, register.key, row));
  return read.value;
}

/** The registers that a row has to hold: all, or those of the meters that an event is about. */
export function wantedRegisters(row: ReadingRow, span: MeterSpan): readonly Register[] {
  if (row.event === undefined) return span.counted;
  const isGiven = (register: Register): boolean => textOf(row, register, []).text.trim() !== '';
  const isOfGrid = ({ id }: Register): boolean => id !== 'generation';
  const meters = span.counted.filter(isGiven).map(isOfGrid);
  return span.counted.filter((register) => meters.includes(isOfGrid(register)));
}

/** Texts for registers that the account does not have. */
export function strayFindings(row: ReadingRow, span: MeterSpan, path: Path): Finding[] {
  const stray: Finding[] = [];
  if (span.totals.generation === null && (row.generation ?? '').trim() !== '')
    stray.push(readingFinding('reading/extra-register', { path: [...path, 'generation'] }));
  for (const [id, rates] of Object.entries(row.rates ?? {})) {
    const known = span.counted.flatMap((register) =>
      register.id === id && register.rate !== null ? [register.rate] : [],
    );
    for (const rate of Object.keys(rates ?? {}).filter((one) => !known.includes(one))) {
      const values = { register: id, rate, known: known.join(', ') };
      stray.push(readingFinding('reading/unknown-rate', { path: [...path, 'rates', id, rate] }, values));
    }
  }
  return stray;
}

/** Rates and, where it was read, the total that they make. */
function readRates(
  row: ReadingRow,
  shown: Shown,
  context: RowContext,
): Pick<Reading, 'import' | 'export' | 'rates'> {
  const { span, path, findings } = context;
  const totals: { import: number | null; export: number | null } = { import: null, export: null };
  const rates: Record<string, number> = {};
  for (const [register, value] of shown) {
    if (register.rate === null) {
      if (register.id !== 'generation') totals[register.id] = value;
    } else rates[register.key] = value;
  }
  for (const id of ['import', 'export'] as const) {
    const isInRates = span.counted.some((register) => register.id === id && register.rate !== null);
    if (!isInRates || (row[id] ?? '').trim() === '' || row.event !== undefined) continue;
    totals[id] = readRegister(row, span.totals[id], context);
    const finding = rateFinding(id, { totals, rates, span, before: context.before, path: [...path, id] });
    if (finding !== null) findings.push(answered(finding, id, row));
  }
  return { ...totals, rates };
}

/** What registers showed, each with its value. */
type Shown = readonly (readonly [Register, number])[];

/** Which of the registers of a row were estimated. */
export function estimatedIn(row: ReadingRow, wanted: readonly Register[]): readonly RegisterId[] {
  if (row.status === 'estimated') return [...new Set(wanted.map(({ id }) => id))];
  return row.estimated ?? NONE;
}

/** What every register of a row shows; null where one cannot be used. */
export function readShown(row: ReadingRow, wanted: readonly Register[], context: RowContext): Shown | null {
  const read = wanted.map((register) => [register, readRegister(row, register, context)] as const);
  const whole = read.filter((one): one is readonly [Register, number] => one[1] !== null);
  return whole.length === wanted.length ? whole : null;
}

/** What a reading holds, from what its registers showed. */
export function valuesOf(
  row: ReadingRow,
  shown: Shown,
  context: RowContext,
): Pick<Reading, 'import' | 'export' | 'generation' | 'rates'> {
  const value = (id: RegisterId): number | null =>
    shown.find(([register]) => register.id === id)?.[1] ?? null;
  const hasRates = context.span.counted.some(({ rate }) => rate !== null);
  const generation = value('generation');
  if (hasRates) return { ...readRates(row, shown, context), generation };
  return { import: value('import'), export: value('export'), generation, rates: null };
}
