import {
  checkAccount,
  makeRegister,
  readingFinding,
  readNumberText,
  type Account,
  type AccountDocument,
  type Finding,
  type Path,
  type Register,
} from '@unitbook/engine';
import type { Household } from '../household/household.ts';

/** The account as far as it can be understood. */
export interface AccountView {
  /** null while a number is missing or cannot be used. */
  readonly account: Account | null;
  readonly findings: readonly Finding[];
  /** Plain decimal texts of the numbers typed, by field such as "sanctionedLoad"; null where unreadable. */
  readonly read: Readonly<Record<string, string | null>>;
}

interface NumberField {
  readonly what: string;
  readonly path: readonly string[];
  /** What a blank field counts as; null where it has to be typed. */
  readonly blank: string | null;
}

const NUMBER_FIELDS: readonly NumberField[] = [
  { what: 'the sanctioned load', path: ['sanctionedLoad'], blank: null },
  { what: 'the plant capacity', path: ['plantCapacity'], blank: null },
  { what: 'the opening credit', path: ['openingCredit'], blank: '0' },
  { what: 'the multiplying factor', path: ['meters', 'grid', 'multiplyingFactor'], blank: '1' },
  { what: 'the multiplying factor', path: ['meters', 'generation', 'multiplyingFactor'], blank: '1' },
];

type Branch = Record<string, unknown>;

function at(document: AccountDocument, path: readonly string[]): unknown {
  return path.reduce<unknown>((value, key) => (value as Branch | undefined)?.[key], document);
}

function put(document: AccountDocument, path: readonly string[], text: string): void {
  const holder = at(document, path.slice(0, -1)) as Branch;
  holder[path.at(-1) ?? ''] = text;
}

function numberFinding(field: NumberField, typed: string): Finding | null {
  const path: Path = field.path;
  const read = readNumberText(typed);
  switch (read.kind) {
    case 'number':
      return null;
    case 'empty':
      return readingFinding('account/not-above-zero', { path }, { what: field.what, value: 'not typed yet' });
    case 'letter':
      return readingFinding(
        'reading/letter',
        { path, offer: read.offer },
        { value: typed, offer: read.offer },
      );
    case 'comma-unclear':
      return readingFinding(
        'reading/comma-unclear',
        { path },
        { value: typed, grouped: read.grouped, decimal: read.decimal },
      );
    default:
      return readingFinding(`reading/${read.kind}`, { path }, { value: typed });
  }
}

/**
 * Understand what was typed for the account: "3 kW" and "3,3" are read like numbers on a meter, a blank
 * factor counts as 1 and a blank credit as 0.
 */
export function viewAccount({ account: typed }: Household): AccountView {
  const document = structuredClone(typed);
  const read: Record<string, string | null> = {};
  const unread: Finding[] = [];
  for (const field of NUMBER_FIELDS) {
    const value = at(document, field.path);
    if (typeof value !== 'string') continue;
    const text = value.trim() === '' && field.blank !== null ? field.blank : value;
    const number = readNumberText(text);
    read[field.path.join('.')] = number.kind === 'number' ? number.text : null;
    const finding = numberFinding(field, text);
    if (finding === null) put(document, field.path, number.kind === 'number' ? number.text : text);
    else {
      unread.push(finding);
      put(document, field.path, '1');
    }
  }
  const checked = checkAccount(document);
  const findings = [...unread, ...checked.findings];
  return { account: unread.length === 0 ? checked.value : null, findings, read };
}

/** The registers of an account in the order of the form, whether or not the rest of it can be used. */
export function registersTyped(document: AccountDocument): readonly Register[] {
  const { grid, generation } = document.meters;
  const multiplyingFactor = '1';
  return [
    makeRegister({ id: 'import', ...grid.import, multiplyingFactor }),
    makeRegister({ id: 'export', ...grid.export, multiplyingFactor }),
    ...(generation === undefined
      ? []
      : [makeRegister({ id: 'generation', ...generation.generation, multiplyingFactor })]),
  ];
}
