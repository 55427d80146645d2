import * as z from 'zod/mini';
import type { Finding, Outcome } from './quantity/index.ts';
import {
  inFileOrder,
  locate,
  readDocument,
  readTariff,
  type SourceText,
  type Tariff,
} from './tariff/index.ts';
import {
  accountSchema,
  checkAccount,
  readingsSchema,
  type Account,
  type AccountDocument,
  type ReadingRow,
} from './readings/index.ts';
import { readPlant, type Plant } from './energy/index.ts';

const isObject = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const householdSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-household-1'),
  tariff: z.unknown().check(
    z.refine((value) => typeof value === 'string' || isObject(value)),
    z.describe('A tariff document, or the id of a tariff that the program brings along'),
  ),
  account: accountSchema,
  readings: readingsSchema.shape.readings,
  plant: z.optional(z.unknown().check(z.describe('A plant document'))),
});

interface HouseholdDocument {
  readonly tariff: unknown;
  readonly account: AccountDocument;
  readonly readings: readonly ReadingRow[];
}

/** A household in one file: its tariff, account and readings, each null when it cannot be used. */
export interface Household {
  /** The id of a tariff that the reader has to know, or the tariff itself. */
  readonly tariff: string | Tariff | null;
  readonly account: Account | null;
  readonly readings: readonly ReadingRow[] | null;
  /** What the plant should make and what was done to it; null where the file does not say. */
  readonly plant: Plant | null;
}

/** A household that was read, with its text: `locate` puts findings about its rows in their place. */
export interface ReadHousehold extends Outcome<Household> {
  readonly source: SourceText;
}

/** The value under a key of the outermost object, alone in an otherwise blank text: its places stay. */
export function blankAround({ text, root }: SourceText, key: string): string | null {
  const property = root?.children?.find((child) => child.children?.[0]?.value === key);
  const node = property?.children?.[1];
  if (node?.type !== 'object') return null;
  const before = text.slice(0, node.offset).replace(/[^\n]/g, ' ');
  return before + text.slice(node.offset, node.offset + node.length);
}

/** The tariff of a document that holds one, or names one by its id. */
export function tariffOf(
  source: SourceText,
  document: { readonly tariff: unknown } | null,
): Outcome<Household['tariff']> {
  const embedded = blankAround(source, 'tariff');
  if (embedded !== null) return readTariff(embedded);
  return { value: typeof document?.tariff === 'string' ? document.tariff : null, findings: [] };
}

/**
 * Read a household document: the one file that holds everything a bill is made of.
 *
 * @param text  the JSON file, whole
 * @returns     its parts and every finding about its form, its tariff and its account, with line and
 *              column, in file order
 * @example
 * readHousehold('{"format":"unitbook-household-1"}').value.account //=> null
 */
export function readHousehold(text: string): ReadHousehold {
  const read = readDocument<HouseholdDocument>(text, householdSchema);
  const tariff = tariffOf(read.source, read.mended);
  const checked = read.mended === null ? { value: null, findings: [] } : checkAccount(read.mended.account);
  const ofAccount = checked.findings.map((finding: Finding): Finding =>
    locate(read.source, { ...finding, path: ['account', ...finding.path] }),
  );
  // Read apart, as the tariff is: a number that is still to be typed in it holds no bill up.
  const ownPlant = blankAround(read.source, 'plant');
  const plant = ownPlant === null ? null : readPlant(ownPlant);
  const findings = inFileOrder([
    ...read.findings,
    ...tariff.findings,
    ...ofAccount,
    ...(plant?.findings ?? []),
  ]);
  const isWhole = read.value !== null;
  return {
    value: {
      tariff: tariff.value,
      account: isWhole ? checked.value : null,
      readings: isWhole ? read.value.readings : null,
      plant: plant?.value ?? null,
    },
    findings,
    source: read.source,
  };
}
