import {
  checkAccount,
  plainAccount,
  type Account,
  type Finding,
  type MeterSpan,
  type Path,
} from '@unitbook/engine';
import type { Household } from '../household/household.ts';
import { datedAccount, typedSpans, type DatedAccount } from './typed-meters.ts';

/** The account as far as it can be understood. */
export interface AccountView {
  /** null while a number is missing or cannot be used. */
  readonly account: Account | null;
  readonly findings: readonly Finding[];
  /** Plain decimal texts of the numbers typed, by path such as "meters.grid.multiplyingFactor"; null where unreadable. */
  readonly read: Readonly<Record<string, string | null>>;
  /** The meters as they followed each other, whether or not the rest can be used. */
  readonly spans: readonly MeterSpan[];
}

/** A path of the account without some later meters, in the account as typed. */
function typedPath(path: Path, places: DatedAccount['places']): Path {
  const [meters, meter, later, at, ...rest] = path;
  if (later !== 'later' || typeof at !== 'number' || (meter !== 'grid' && meter !== 'generation'))
    return path;
  return [meters ?? '', meter, later, places[meter][at] ?? at, ...rest];
}

/**
 * Understand what was typed for the account. That a blank factor counts as 1 and a blank credit as 0 needs
 * no note here: the line beneath the field says how it is read.
 */
export function viewAccount(household: Household): AccountView {
  const { document, places } = datedAccount(household);
  const { value, findings } = checkAccount(document);
  const told = findings.filter(({ code }) => code !== 'account/blank');
  return {
    account: value,
    findings: told.map((finding) => ({ ...finding, path: typedPath(finding.path, places) })),
    read: plainAccount(household.account).read,
    spans: value === null ? typedSpans(document) : value.spans,
  };
}
