import {
  checkFinding,
  parseDay,
  registersOf,
  type Account,
  type CheckInput,
  type Finding,
  type PrintedBill,
  type ReadingRow,
  type Tariff,
} from '@unitbook/engine';
import { emptyHousehold, isBlankRow } from '../../household/household.ts';
import { keptDay } from '../../plant/document/typed-texts.ts';
import { viewAccount } from '../../view/account-view.ts';
import { writingFor, type Writing } from '../../writing/writing.ts';
import type { BillForm } from '../document/bill-groups.ts';
import { allFields } from '../document/line-fields.ts';
import { readTypedBill, type ReadBill } from '../document/read-typed-bill.ts';
import { isBlankBill, type CheckGround, type TypedBill, type TypedCheck } from '../document/typed-check.ts';

/** One bill as the page shows it. */
export interface BillView extends TypedBill, ReadBill {
  readonly form: BillForm;
  readonly isBlank: boolean;
  /** Its place among the bills that are checked; -1 where it is not. */
  readonly at: number;
}

/** Everything that the page shows of a check before it is worked out. */
export interface CheckView {
  readonly writing: Writing;
  readonly bills: readonly BillView[];
  /** What is checked; null while it cannot be. */
  readonly input: CheckInput | null;
  /** Why nothing can be checked, a sentence each. */
  readonly wanted: readonly string[];
  /** About the day on which the plant was connected. */
  readonly findings: readonly Finding[];
}

/** What a view is made of. */
export interface ViewInput {
  readonly check: TypedCheck;
  readonly ground: CheckGround;
  /** null while no tariff is open. */
  readonly tariff: Tariff | null;
  readonly others: readonly Tariff[];
}

/** The account of a ground, read as the book reads it; null while it cannot be used. */
function accountOf({ account, readings }: CheckGround): Account | null {
  return viewAccount({ ...emptyHousehold('en-IN'), account, readings }).account;
}

/** Readings of somebody who types: without rows that are still blank, and without a meter that is not there. */
function rowsOf({ readings, account }: CheckGround): readonly ReadingRow[] {
  const rows = readings.filter((row) => !isBlankRow(row));
  if (account.meters.generation !== undefined) return rows;
  return rows.map((row) => ((row.generation ?? '') === '' ? row : { ...row, generation: '' }));
}

function wantedOf(
  tariff: Tariff | null,
  account: Account | null,
  bills: readonly BillView[],
): readonly string[] {
  return [
    ...(tariff === null ? ['Choose the tariff in the book: the right bill is made by it.'] : []),
    ...(account === null
      ? ['Type the sanctioned load and the meters in the book: what is still missing is said there.']
      : []),
    ...(bills.every(({ isBlank }) => isBlank)
      ? ['Type both reading dates off the bill, and whatever else it prints.']
      : []),
  ];
}

/** Bills as they are read, those that can be checked numbered. */
function viewBills(input: ViewInput, account: Account | null): readonly BillView[] {
  const registers = account === null ? [] : registersOf(account);
  let next = 0;
  return input.check.bills.map((typed): BillView => {
    const form = { bill: typed.bill, tariff: input.tariff, registers };
    const read = readTypedBill(typed.bill, allFields(form), next);
    const at = read.printed === null ? -1 : next;
    if (at >= 0) next += 1;
    return { ...typed, ...read, form, isBlank: isBlankBill(typed.bill), at };
  });
}

function connectedOf({
  connected,
}: TypedCheck): Pick<CheckInput, 'connected'> & { readonly findings: readonly Finding[] } {
  const plain = keptDay(connected);
  const day = parseDay(plain);
  const isWrong = plain !== '' && day === null;
  return {
    connected: day,
    findings: isWrong ? [checkFinding('check/no-such-day', { path: ['connected'] }, { value: plain })] : [],
  };
}

/**
 * Everything the page shows of printed bills before they are checked, and what they are checked with.
 */
export function viewCheck(input: ViewInput): CheckView {
  const { check, ground, tariff, others } = input;
  const account = accountOf(ground);
  const bills = viewBills(input, account);
  const printed = bills.map((one) => one.printed).filter((one): one is PrintedBill => one !== null);
  const { connected = null, findings } = connectedOf(check);
  const isReady = tariff !== null && account !== null && printed.length > 0;
  return {
    writing: writingFor(ground.account.locale, tariff?.document.currency ?? 'INR'),
    bills,
    input: isReady
      ? {
          account,
          tariff,
          otherTariffs: others,
          readings: rowsOf(ground),
          bills: printed,
          connected,
          isOpeningKnown: check.isOpeningKnown,
        }
      : null,
    wanted: isReady ? [] : wantedOf(tariff, account, bills),
    findings,
  };
}
