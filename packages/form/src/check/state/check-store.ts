import type { PrintedBillDocument } from '@unitbook/engine';
import type { Keep } from '../../keep.ts';
import { readCheckFile, type CheckFile } from '../document/check-file.ts';
import { addBill, putBill, takeBill, withoutItem } from '../document/edit-bills.ts';
import { BLANK_CHECK, isBlankBill, type CheckGround, type TypedCheck } from '../document/typed-check.ts';
import { loadCheck, saveCheck } from './kept-check.ts';

/** Which check lies open: the invented one or the reader's own. */
export type CheckSlot = 'demo' | 'own';

/** What a store is given, and whom it tells of changes. */
export interface StoreHost {
  readonly keep: Keep | null;
  readonly demo: (() => Promise<string>) | null;
  readonly requestUpdate: () => void;
}

/** What another check took the place of. */
interface Before {
  readonly slot: CheckSlot;
  readonly check: TypedCheck;
  readonly told: string;
}

interface TakenOut {
  /** Of the bill that it was taken out of, or that was taken out itself. */
  readonly key: string;
  readonly told: string;
  readonly putBack: (held: TypedCheck) => TypedCheck;
}

type Line = NonNullable<PrintedBillDocument['lines']>[number];

/** A check with a line in its place again. */
function withLine(
  check: TypedCheck,
  key: string,
  { line, at }: { readonly line: Line; readonly at: number },
): TypedCheck {
  const bill = check.bills.find((one) => one.key === key)?.bill;
  if (bill === undefined) return check;
  const lines = bill.lines ?? [];
  return putBill(check, key, { ...bill, lines: [...lines.slice(0, at), line, ...lines.slice(at)] });
}

/** Holds the check that lies open, keeps it, and opens others; what was taken out or replaced can be put back. */
export class CheckStore {
  check: TypedCheck = BLANK_CHECK;
  slot: CheckSlot = 'own';
  /** The key of the bill that lies open. */
  open = '1';
  before: Before | null = null;
  refused: { readonly name: string; readonly file: CheckFile } | null = null;
  isKept = true;
  /** Counts the checks that were opened: none yet is 0. */
  opened = 0;
  private takenOut: readonly TakenOut[] = [];
  private readonly host: StoreHost;

  constructor(host: StoreHost) {
    this.host = host;
  }

  /** What was taken out last, in a sentence; '' for nothing. */
  get removed(): string {
    return this.takenOut.at(-1)?.told ?? '';
  }

  private get takenKeys(): readonly string[] {
    return this.takenOut.map(({ key }) => key);
  }

  private lay(slot: CheckSlot, check: TypedCheck): void {
    this.slot = slot;
    this.check = check;
    // The last bill is the one that is asked about.
    this.open = check.bills.at(-1)?.key ?? '1';
    this.refused = null;
    this.takenOut = [];
    this.opened += 1;
    this.host.requestUpdate();
  }

  private change(check: TypedCheck): void {
    this.check = check;
    // The demo is there again at each visit; changes to it are for a look only.
    if (this.slot === 'own') this.isKept = saveCheck(this.host.keep, check);
    this.host.requestUpdate();
  }

  /** Open what is kept, else the demo, else a blank check. */
  async start(): Promise<void> {
    const kept = loadCheck(this.host.keep);
    if (kept !== null) this.lay('own', kept);
    else if (!(await this.layDemo())) this.lay('own', BLANK_CHECK);
  }

  private async layDemo(): Promise<boolean> {
    const text = await (this.host.demo ?? (() => Promise.resolve('')))().catch(() => '');
    const file = readCheckFile(text);
    if (file.kind !== 'check') return false;
    this.lay('demo', file.check);
    return true;
  }

  private putAside(told: string): void {
    const { slot, check } = this;
    const isBlank = check.bills.every(({ bill }) => isBlankBill(bill));
    // Own bills that wait to be put back stay so: the demo is there again at each visit.
    if (this.before?.slot === 'own' && (isBlank || slot === 'demo')) return;
    this.before = isBlank ? null : { slot, check, told };
  }

  /** Put aside what a file takes the place of: while the demo is shown that are the bills that are kept. */
  private putAsideFor(file: string): void {
    const kept = this.slot === 'demo' ? loadCheck(this.host.keep) : null;
    if (kept === null) this.putAside(`“${file}” took the place of the check before.`);
    else this.before = { slot: 'own', check: kept, told: `“${file}” took the place of your own bills.` };
  }

  readonly changeBill = (key: string, bill: PrintedBillDocument): void => {
    this.change(putBill(this.check, key, bill));
  };

  readonly changeGround = (change: Partial<Omit<TypedCheck, 'bills'>>): void => {
    this.change({ ...this.check, ...change });
  };

  /** Another tariff in the place of the one that came with the file. */
  readonly changeTariff = (tariff: CheckGround['tariff']): void => {
    const { ground } = this.check;
    if (ground !== null) this.changeGround({ ground: { ...ground, tariff } });
  };

  readonly openBill = (key: string): void => {
    this.open = key;
    this.host.requestUpdate();
  };

  readonly addBill = (): void => {
    const { check, key } = addBill(this.check, this.takenKeys);
    this.open = key;
    this.change(check);
  };

  readonly takeBill = (key: string, told: string): void => {
    const taken = takeBill(this.check, key, this.takenKeys);
    if (taken === null) return;
    this.takenOut = [...this.takenOut, { key, told, putBack: taken.putBack }];
    this.open = taken.check.bills.at(-1)?.key ?? '1';
    this.change(taken.check);
  };

  /** Take a line out that the tariff does not have. */
  readonly takeLine = (key: string, at: number, told: string): void => {
    const bill = this.check.bills.find((one) => one.key === key)?.bill;
    const line = bill?.lines?.[at];
    if (bill === undefined || line === undefined) return;
    const putBack = (held: TypedCheck): TypedCheck => withLine(held, key, { line, at });
    this.takenOut = [...this.takenOut, { key, told, putBack }];
    this.changeBill(key, withoutItem(bill, 'lines', at));
  };

  readonly undo = (): void => {
    const last = this.takenOut.at(-1);
    if (last === undefined) return;
    this.takenOut = this.takenOut.slice(0, -1);
    const check = last.putBack(this.check);
    // What came back is looked at: a line is in its bill, which may not be the one that lies open.
    if (check.bills.some(({ key }) => key === last.key)) this.open = last.key;
    this.change(check);
  };

  readonly startOwn = (): void => {
    this.putAside('The demo was closed.');
    this.lay('own', loadCheck(this.host.keep) ?? BLANK_CHECK);
  };

  readonly showDemo = (): void => {
    // A browser that keeps nothing cannot give them back later.
    if (this.slot === 'own' && !this.isKept) this.putAside('Your own bills were closed.');
    void this.layDemo();
  };

  readonly putBack = (): void => {
    const { before } = this;
    if (before === null) return;
    this.before = null;
    this.lay(before.slot, before.check);
    this.change(before.check);
  };

  readonly openFile = async (file: File): Promise<void> => {
    const read = readCheckFile(await file.text());
    if (read.kind === 'refused') {
      this.refused = { name: file.name, file: read };
      this.host.requestUpdate();
      return;
    }
    this.putAsideFor(file.name);
    this.lay('own', read.check);
    this.change(read.check);
  };
}
