import {
  checkCase,
  prepareTariff,
  type CheckedCase,
  type Figure,
  type PreparedTariff,
  type UnitsMonth,
  type WorkedCase,
} from '@unitbook/engine';
import { unexplained } from '../support/recompute.ts';
import { EXAMPLE_FOLDERS, readFolder, type ReadFolder } from './example-folders.ts';

/** A worked case of the examples, with the tariff it is billed under. */
export interface FolderCase {
  readonly country: string;
  readonly folder: string;
  readonly tariff: PreparedTariff;
  readonly one: WorkedCase;
}

/** A worked case with what came out of it. */
export interface WorkedResult extends FolderCase {
  readonly checked: CheckedCase;
  /** Everything that keeps it from being reproduced; empty when nothing does. */
  readonly problems: readonly string[];
}

/** Folders that were read, and everything that is wrong with their files. */
export const READ_FOLDERS: readonly ReadFolder[] = EXAMPLE_FOLDERS.map(readFolder);

/** Every worked case of the examples. */
export function folderCases(): readonly FolderCase[] {
  return READ_FOLDERS.flatMap(({ folder, tariff, cases }) => {
    if (tariff === null || cases === null) return [];
    const prepared = prepareTariff(tariff);
    return cases.cases.map((one) => ({
      country: folder.country,
      folder: folder.name,
      tariff: prepared,
      one,
    }));
  });
}

/** Bill a worked case: it is reproduced when every period is billed and every figure comes out. */
export function runWorked(folderCase: FolderCase): WorkedResult {
  const { tariff, one } = folderCase;
  const checked = checkCase(tariff, one);
  const differing = checked.checks
    .filter(({ isSame }) => !isSame)
    .map(
      ({ period, what, expected, got }) =>
        `period ${period + 1}, ${what}: expected ${expected}, got ${got ?? 'nothing'}`,
    );
  const errors = checked.findings
    .filter(({ severity }) => severity === 'error')
    .map(({ path, found, expected }) => `${path.join('.')}: ${found}, not ${expected}`);
  const nothing = checked.checks.length === 0 ? ['nothing is expected'] : [];
  return { ...folderCase, checked, problems: [...errors, ...differing, ...nothing] };
}

const COLUMNS = ['opening', 'added', 'used', 'paid', 'lapsed', 'closing'] as const;

function figuresOf({ bill, quantities, ledgers, passbook }: UnitsMonth): readonly Figure[] {
  return [
    ...bill.lines.map(({ figure }) => figure),
    bill.sum,
    bill.payable,
    ...Object.values(quantities),
    ...ledgers.flatMap((entry) => COLUMNS.map((column) => entry[column])),
    ...(passbook === null ? [] : [passbook.billed, passbook.setOff, passbook.closing]),
  ];
}

/** The figures of lines, quantities and ledgers whose value does not follow from what they show. */
export function unexplainedOf({ months }: CheckedCase): readonly string[] {
  return months.flatMap((month, index) =>
    figuresOf(month).flatMap((figure) =>
      unexplained(figure).map(({ id, operation }) => `period ${index + 1}, ${figure.id}: ${id} ${operation}`),
    ),
  );
}
