import {
  checkAccountBills,
  readAccount,
  readPrintedBill,
  type Account,
  type CheckedBill,
  type PrintedBillDocument,
  type ReadingRow,
  type Tariff,
} from '@unitbook/engine';
import { EXAMPLE_FOLDERS, readFolder } from '../../published/example-folders.ts';

/** Bills of an account under an example tariff, and the own readings beside them. */
export interface Papers {
  readonly account: Account;
  readonly tariff: Tariff;
  readonly otherTariffs?: readonly Tariff[];
  readonly readings: readonly ReadingRow[];
  readonly documents: readonly PrintedBillDocument[];
}

/** Check printed bills; what cannot be read is a fault of the law, and throws. */
export function checkPapers(
  { documents, ...papers }: Papers,
  options: Parameters<typeof checkAccountBills>[1] = {},
): readonly CheckedBill[] {
  const bills = documents.map((document, at) => {
    const { value, findings } = readPrintedBill(document, ['bills', at]);
    if (value === null) throw new Error(`bill ${String(at)}: ${findings[0]?.found ?? ''}`);
    return value;
  });
  const { bills: checked, findings } = checkAccountBills({ ...papers, bills }, options);
  const errors = findings.filter(({ severity }) => severity === 'error');
  // That there is no reading is an error of a book of readings; bills that print units need none.
  if (papers.readings.length > 0 && errors.length > 0)
    throw new Error(`own readings: ${errors[0]?.found ?? ''}`);
  return checked;
}

/** A day of a month, counted from the year 0 on. */
export function dayIn(month: number, date = 1): string {
  const ofYear = String((month % 12) + 1).padStart(2, '0');
  return `${String(Math.floor(month / 12))}-${ofYear}-${String(date).padStart(2, '0')}`;
}

const REGISTER = { digits: '6', decimals: '1' };

/** A home with both meters of one register each. */
export function homeAccount(own: {
  readonly since: string;
  readonly settlementDay: string;
  readonly openingCredit: string;
}): Account {
  const meter = { serial: 'PB-1', multiplyingFactor: '1' };
  const { value, findings } = readAccount(
    JSON.stringify({
      format: 'unitbook-account-1',
      id: 'law',
      sanctionedLoad: '4',
      plantCapacity: '5',
      ...own,
      meters: {
        grid: { ...meter, import: REGISTER, export: REGISTER },
        generation: { ...meter, serial: 'GN-1', generation: REGISTER },
      },
    }),
  );
  if (value === null) throw new Error(`the account of the law cannot be read: ${findings[0]?.found ?? ''}`);
  return value;
}

/** An example tariff, and months that it bills one after the other, counted from the year 0 on. */
export interface Example {
  readonly name: string;
  readonly tariff: Tariff;
  readonly blocks: readonly string[];
  readonly months: { readonly from: number; readonly count: number };
}

/** An example tariff that no month can be billed by, and what is missing. */
export interface Unbilled {
  readonly name: string;
  readonly found: readonly string[];
}

/** Months after the last version that are tried. */
const AFTER = 36;

function monthOf(day: string): number {
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number);
  return year * 12 + month - 1 + (date > 1 ? 1 : 0);
}

/** Units of a month, the same in each of its time blocks. */
function probeUnits(blocks: readonly string[]): Record<string, string> {
  const units: Record<string, string> = { import: '400', export: '200', generation: '500' };
  for (const block of blocks) {
    units[`import@${block}`] = String(400 / blocks.length);
    units[`export@${block}`] = String(200 / blocks.length);
  }
  return blocks.length === 3
    ? { ...units, ...Object.fromEntries(blocks.flatMap((block, at) => thirds(block, at))) }
    : units;
}

/** Thirds that sum to the whole. */
const thirds = (block: string, at: number): readonly (readonly [string, string])[] => [
  [`import@${block}`, at === 0 ? '200' : '100'],
  [`export@${block}`, at === 0 ? '100' : '50'],
];

/** The longest row of months in which each could be billed. */
function longestRow(isBilled: readonly boolean[]): { readonly from: number; readonly count: number } {
  let best = { from: 0, count: 0 };
  let count = 0;
  isBilled.forEach((billed, at) => {
    count = billed ? count + 1 : 0;
    if (count > best.count) best = { from: at - count + 1, count };
  });
  return best;
}

function probe(name: string, tariff: Tariff): Example | Unbilled {
  const { versions, timeBlocks } = tariff.document;
  const blocks = (timeBlocks?.blocks ?? []).map(({ id }) => id);
  const first = monthOf(versions[0]?.from ?? '');
  const units = probeUnits(blocks);
  const months = monthOf(versions.at(-1)?.from ?? '') - first + AFTER;
  const documents = Array.from({ length: months }, (_, at) => ({
    from: dayIn(first + at),
    to: dayIn(first + at + 1),
    units,
  }));
  const account = homeAccount({ since: dayIn(first), settlementDay: '09-30', openingCredit: '0' });
  const bills = checkPapers({ account, tariff, readings: [], documents }, { causes: [] });
  const { from, count } = longestRow(bills.map(({ right }) => right !== null));
  if (count === 0) return { name, found: (bills[0]?.findings ?? []).map(({ found }) => found) };
  return { name, tariff, blocks, months: { from: first + from, count } };
}

/** Every example tariff, tried with plain units month by month. */
const PROBED = EXAMPLE_FOLDERS.map((folder) => {
  const { tariff, problems } = readFolder(folder);
  if (tariff === null) throw new Error(problems.join('; '));
  return probe(`${folder.country}/${folder.name}`, tariff);
});

/** Example tariffs that can be billed from readings or from units. */
export const EXAMPLES: readonly Example[] = PROBED.filter((one) => 'tariff' in one);
/** Example tariffs that cannot. */
export const UNBILLED: readonly Unbilled[] = PROBED.filter((one) => 'found' in one);
