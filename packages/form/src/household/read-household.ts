import { documentFinding, type Finding, type Path } from '@unitbook/engine';
import { HOUSEHOLD_FORMAT, type Household } from './household.ts';

/** What a text that should be a saved household turned out to be. */
export type HouseholdText =
  | { readonly kind: 'household'; readonly household: Household }
  | { readonly kind: 'other-version'; readonly found: string }
  | { readonly kind: 'damaged'; readonly findings: readonly Finding[] };

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const DIGITS = ['4', '5', '6', '7', '8'];
const DECIMALS = ['0', '1', '2', '3'];
const STATUSES = ['actual', 'estimated'];

/** Collects what is wrong, all of it, by path. */
class Check {
  readonly findings: Finding[] = [];

  private wrong(path: Path, value: unknown, expected: string): void {
    const found =
      value === undefined ? `nothing at ${path.join('.')}` : `${path.join('.')}: ${JSON.stringify(value)}`;
    this.findings.push(documentFinding('document/wrong-value', { path }, { value: found, expected }));
  }

  text(value: unknown, path: Path, allowed?: readonly string[]): void {
    if (typeof value === 'number') {
      const raw = `${path.join('.')}: ${String(value)}`;
      this.findings.push(documentFinding('document/number-not-text', { path }, { raw }));
    } else if (typeof value !== 'string') this.wrong(path, value, 'a text in quotation marks');
    else if (allowed !== undefined && !allowed.includes(value))
      this.wrong(path, value, allowed.map((text) => `"${text}"`).join(', '));
  }

  optionalText(value: unknown, path: Path, allowed?: readonly string[]): void {
    if (value !== undefined) this.text(value, path, allowed);
  }

  texts(value: unknown, path: Path): void {
    if (value === undefined) return;
    if (Array.isArray(value))
      value.forEach((text, index) => {
        this.text(text, [...path, index]);
      });
    else this.wrong(path, value, 'a list of texts');
  }

  fields(value: unknown, path: Path): Fields {
    if (isFields(value)) return value;
    this.wrong(path, value, 'an object');
    return {};
  }

  rows(value: unknown, path: Path): readonly unknown[] {
    if (Array.isArray(value)) return value;
    this.wrong(path, value, 'a list of readings');
    return [];
  }
}

function checkRegister(check: Check, value: unknown, path: Path): void {
  const register = check.fields(value, path);
  check.text(register['digits'], [...path, 'digits'], DIGITS);
  check.text(register['decimals'], [...path, 'decimals'], DECIMALS);
}

function checkMeter(check: Check, value: unknown, path: Path, registers: readonly string[]): void {
  const meter = check.fields(value, path);
  check.text(meter['serial'], [...path, 'serial']);
  check.text(meter['multiplyingFactor'], [...path, 'multiplyingFactor']);
  for (const register of registers) checkRegister(check, meter[register], [...path, register]);
}

function checkAccountFields(check: Check, value: unknown): void {
  const account = check.fields(value, ['account']);
  check.text(account['format'], ['account', 'format'], ['unitbook-account-1']);
  for (const field of ['id', 'sanctionedLoad', 'plantCapacity', 'openingCredit'])
    check.text(account[field], ['account', field]);
  for (const field of ['name', 'locale']) check.optionalText(account[field], ['account', field]);
  const meters = check.fields(account['meters'], ['account', 'meters']);
  checkMeter(check, meters['grid'], ['account', 'meters', 'grid'], ['import', 'export']);
  const { generation } = meters;
  if (generation !== undefined)
    checkMeter(check, generation, ['account', 'meters', 'generation'], ['generation']);
}

function checkRow(check: Check, value: unknown, path: Path): void {
  const row = check.fields(value, path);
  for (const field of ['date', 'import', 'export']) check.text(row[field], [...path, field]);
  for (const field of ['generation', 'printedDays']) check.optionalText(row[field], [...path, field]);
  check.optionalText(row['status'], [...path, 'status'], STATUSES);
  check.texts(row['confirmed'], [...path, 'confirmed']);
}

function parsed(text: string): { value: unknown; findings: readonly Finding[] } {
  try {
    return { value: JSON.parse(text) as unknown, findings: [] };
  } catch (error) {
    const problem = error instanceof Error ? error.message : String(error);
    return { value: null, findings: [documentFinding('document/not-json', { path: [] }, { problem })] };
  }
}

/**
 * Read a saved household. Only its shape is checked: what was typed in it may be half-typed or wrong, and
 * stays as it is.
 *
 * @param text  the file, whole
 */
export function readHousehold(text: string): HouseholdText {
  const { value, findings } = parsed(text);
  if (findings.length > 0) return { kind: 'damaged', findings };
  const check = new Check();
  const document = check.fields(value, ['the file']);
  const { format, tariff } = document;
  if (typeof format === 'string' && format !== HOUSEHOLD_FORMAT)
    return { kind: 'other-version', found: format };
  check.text(format, ['format'], [HOUSEHOLD_FORMAT]);
  if (!isFields(tariff)) check.text(tariff, ['tariff']);
  checkAccountFields(check, document['account']);
  check.rows(document['readings'], ['readings']).forEach((row, index) => {
    checkRow(check, row, ['readings', index]);
  });
  check.texts(document['confirmed'], ['confirmed']);
  return check.findings.length > 0
    ? { kind: 'damaged', findings: check.findings }
    : { kind: 'household', household: document as unknown as Household };
}
