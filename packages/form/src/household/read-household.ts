import { documentFinding, type Finding, type Path } from '@unitbook/engine';
import { HOUSEHOLD_FORMAT, type Household } from './household.ts';

/** What a text that should be a saved household turned out to be. */
export type HouseholdText =
  | { readonly kind: 'household'; readonly household: Household }
  | { readonly kind: 'other-version'; readonly found: string }
  /** No document at all, and why, in words. */
  | { readonly kind: 'unreadable'; readonly reason: string }
  | { readonly kind: 'damaged'; readonly findings: readonly Finding[] };

type Fields = Readonly<Record<string, unknown>>;

/** What a value has to be: one of some texts (none named: any text), a list of one shape, or fields. */
type Shape =
  readonly string[] | { readonly each: Shape } | { readonly fields: Readonly<Record<string, Shape>> };

const TEXT: Shape = [];
const REGISTER: Shape = { fields: { digits: ['4', '5', '6', '7', '8'], decimals: ['0', '1', '2', '3'] } };
const METER = { serial: TEXT, multiplyingFactor: TEXT };

/** A name with a question mark may be left out. What is not named is kept and not looked at. */
const ACCOUNT: Shape = {
  fields: {
    format: ['unitbook-account-1'],
    id: TEXT,
    sanctionedLoad: TEXT,
    plantCapacity: TEXT,
    openingCredit: TEXT,
    'name?': TEXT,
    'locale?': TEXT,
    'confirmed?': { each: TEXT },
    meters: {
      fields: {
        grid: { fields: { ...METER, import: REGISTER, export: REGISTER } },
        'generation?': { fields: { ...METER, generation: REGISTER } },
      },
    },
  },
};
const ROW: Shape = {
  fields: {
    date: TEXT,
    import: TEXT,
    export: TEXT,
    'generation?': TEXT,
    'printedDays?': TEXT,
    'status?': ['actual', 'estimated'],
    'confirmed?': { each: TEXT },
  },
};
const HOUSEHOLD: Shape = {
  fields: { format: [HOUSEHOLD_FORMAT], account: ACCOUNT, readings: { each: ROW } },
};

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function wrong(value: unknown, path: Path, expected: string): Finding[] {
  const place = path.join('.') || 'the file';
  if (typeof value === 'number')
    return [documentFinding('document/number-not-text', { path }, { raw: `${place}: ${String(value)}` })];
  const found = value === undefined ? `nothing at ${place}` : `${place}: ${JSON.stringify(value)}`;
  return [documentFinding('document/wrong-value', { path }, { value: found, expected })];
}

/** Everything that is not as it should be, by path. */
function misfits(value: unknown, shape: Shape, path: Path): Finding[] {
  if ('each' in shape) {
    if (!Array.isArray(value)) return wrong(value, path, 'a list');
    return value.flatMap((item, index) => misfits(item, shape.each, [...path, index]));
  }
  if ('fields' in shape) {
    if (!isFields(value)) return wrong(value, path, 'an object');
    return Object.entries(shape.fields).flatMap(([name, inner]) => {
      const key = name.replace('?', '');
      const isLeftOut = key !== name && value[key] === undefined;
      return isLeftOut ? [] : misfits(value[key], inner, [...path, key]);
    });
  }
  if (typeof value !== 'string') return wrong(value, path, 'a text in quotation marks');
  if (shape.length === 0 || shape.includes(value)) return [];
  return wrong(value, path, shape.map((text) => `"${text}"`).join(', '));
}

function unreadable(text: string): HouseholdText {
  const reason =
    text.trim() === ''
      ? 'It is empty.'
      : /^\s*[{[]/.test(text)
        ? 'It is damaged or cut off.'
        : 'It is no book saved from this page.';
  return { kind: 'unreadable', reason };
}

/**
 * Read a saved household. Only its shape is checked: what was typed in it may be half-typed or wrong, and
 * stays as it is. The engine's own reader wants every number to be one, so it would refuse half of a book.
 *
 * @param text  the file, whole
 */
export function readHousehold(text: string): HouseholdText {
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return unreadable(text);
  }
  const { format, tariff } = isFields(document) ? document : {};
  if (typeof format === 'string' && format !== HOUSEHOLD_FORMAT)
    return { kind: 'other-version', found: format };
  const findings = misfits(document, HOUSEHOLD, []);
  if (isFields(document) && !isFields(tariff)) findings.push(...misfits(tariff, TEXT, ['tariff']));
  return findings.length > 0
    ? { kind: 'damaged', findings }
    : { kind: 'household', household: document as Household };
}
