import {
  checkAccount,
  makeRegister,
  plainAccount,
  type Account,
  type AccountDocument,
  type Finding,
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

/**
 * Understand what was typed for the account. That a blank factor counts as 1 and a blank credit as 0 needs
 * no note here: the line beneath the field says how it is read.
 */
export function viewAccount({ account }: Household): AccountView {
  const { value, findings } = checkAccount(account);
  const told = findings.filter(({ code }) => code !== 'account/blank');
  return { account: value, findings: told, read: plainAccount(account).read };
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
