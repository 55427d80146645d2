import {
  addDays,
  exactText,
  parseDay,
  type Figure,
  type Finding,
  type Outcome,
  type Path,
} from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import { groupMembers, sharePool, type GroupDocument } from './settlement/index.ts';
import { prepareTariff, type PreparedTariff } from './bill/index.ts';
import { keepPeriods } from './keep-periods.ts';
import type { UnitsMonth } from './keeper.ts';
import { periodFinding } from './period-findings.ts';
import type { UnitsAccount, UnitsPeriod } from './periods-document.ts';
import { readQuantities, workOut, type Given } from './read-units.ts';

/** One account of a group with its periods. */
export interface GroupAccount {
  readonly account: UnitsAccount;
  readonly periods: readonly UnitsPeriod[];
}

/** What a group is billed from. */
export interface GroupInput {
  readonly group: GroupDocument;
  /** With a `sharing` rule in its settlement. */
  readonly tariff: Tariff | PreparedTariff;
  /** The host and every member, by account; all have the same periods. */
  readonly accounts: Readonly<Record<string, GroupAccount>>;
}

/** A group that was billed. */
export interface KeptGroup {
  readonly accounts: Readonly<Record<string, readonly UnitsMonth[]>>;
  /** What was shared in each period: pool = shares + what stays in it. */
  readonly pools: readonly {
    readonly pool: Figure;
    readonly shares: readonly { readonly id: string; readonly figure: Figure }[];
    readonly keptInPool: Figure;
  }[];
}

type Pool = KeptGroup['pools'][number];

class Sharer {
  readonly pools: Pool[] = [];
  readonly findings: Finding[] = [];
  /** Units that each account gets in each period, as text. */
  readonly shared = new Map<string, string[]>();
  private readonly input: GroupInput;
  private readonly prepared: PreparedTariff;

  constructor(input: GroupInput, prepared: PreparedTariff) {
    this.input = input;
    this.prepared = prepared;
  }

  /** The quantities of an account in a period, with what follows from them. */
  private given(id: string, at: number): Given {
    const one = this.input.accounts[id];
    const path: Path = ['accounts', id, 'periods', at, 'quantities'];
    const reading = { known: this.prepared.quantities, registers: one?.account.registers ?? {} };
    const read = readQuantities(one?.periods[at]?.quantities ?? {}, reading, path);
    const blocks = (this.prepared.tariff.document.timeBlocks?.blocks ?? []).map((block) => block.id);
    workOut(read.given, blocks);
    return read.given;
  }

  /** Share the pool of one period; false where it cannot be. */
  share(at: number): boolean {
    const { group } = this.input;
    const { tariff } = this.prepared;
    const to = parseDay(this.input.accounts[group.host]?.periods[at]?.to ?? '');
    const last = to === null ? null : addDays(to, -1);
    const rule = tariff.settlements.find(
      ({ period }) => last !== null && period.from <= last && last < period.to,
    )?.item;
    const sharing = rule?.scheme === 'ledgers' ? rule.sharing : undefined;
    if (sharing === undefined) {
      this.findings.push(periodFinding('period/no-sharing-rule', { path: [] }));
      return false;
    }
    const pool = this.given(group.host, at)[sharing.of];
    if (pool === undefined) {
      const path = ['accounts', group.host, 'periods', at, 'quantities'];
      this.findings.push(periodFinding('period/no-pool', { path }, { name: sharing.of, host: group.host }));
      return false;
    }
    const needs = group.members.map(({ account }) => {
      const taken = this.given(account, at)['import'];
      return [account, (taken?.numerator as number | undefined) ?? 0] as const;
    });
    const before = this.pools.at(-1)?.keptInPool;
    const whole = before === undefined || before.numerator === 0 ? pool : together(pool, before);
    const members = groupMembers(group, new Map(needs));
    const result = sharePool(sharing, whole, members, ['members']);
    this.findings.push(...result.findings);
    if (result.value === null) return false;
    this.pools.push({ pool: whole, ...result.value });
    for (const { id, figure } of result.value.shares) {
      const texts = this.shared.get(id) ?? [];
      texts[at] = exactText(figure.numerator, figure.denominator);
      this.shared.set(id, texts);
    }
    return true;
  }
}

/** Whether an account has the periods of the host, none of them provisional: a pool is shared once. */
function isEven({ periods }: GroupAccount, host: GroupAccount): boolean {
  const isSame = periods.length === host.periods.length;
  return (
    isSame &&
    periods.every(({ from, to, provisional, replaces }, at) => {
      const own = host.periods[at];
      return own?.from === from && own.to === to && provisional === undefined && replaces === undefined;
    })
  );
}

/** The pool of a period with what the one before left in it. */
function together(pool: Figure, kept: Figure): Figure {
  const numerator = (pool.numerator as number) + (kept.numerator as number);
  const words = { id: 'pool', label: 'Units to share', operation: 'sum' } as const;
  return { ...pool, ...words, numerator, inputs: [pool, kept], parameters: [], rounding: null, clause: '' };
}

/**
 * Bill the accounts of a group: share what the host gives, period by period, and bill every account with
 * its share as the quantity `shared`.
 *
 * The pool is a quantity that the host is given, such as its export: the tariff must not credit it to the
 * host a second time. What stays in the pool is shared in the next period.
 *
 * @returns the months of every account and the pools, with every finding
 */
export function keepGroup(input: GroupInput): Outcome<KeptGroup> {
  const prepared = 'prepared' in input.tariff ? input.tariff : prepareTariff(input.tariff);
  const { group, accounts } = input;
  const ids = [...new Set([group.host, ...group.members.map(({ account }) => account)])];
  const absent = ids.filter((id) => accounts[id] === undefined);
  const findings: Finding[] = absent.map((id) =>
    periodFinding('period/no-account', { path: ['accounts'] }, { id }),
  );
  if (absent.length > 0) return { value: { accounts: {}, pools: [] }, findings };
  const uneven = ids.filter(
    (id) => !isEven(accounts[id] as GroupAccount, accounts[group.host] as GroupAccount),
  );
  findings.push(
    ...uneven.map((id) =>
      periodFinding('period/group-uneven', { path: ['accounts', id, 'periods'] }, { id }),
    ),
  );
  if (uneven.length > 0) return { value: { accounts: {}, pools: [] }, findings };
  const sharer = new Sharer(input, prepared);
  const count = accounts[group.host]?.periods.length ?? 0;
  for (let at = 0; at < count; at += 1) if (!sharer.share(at)) break;
  const usable = sharer.pools.length;
  const kept = ids.map((id) => {
    const own = accounts[id] as GroupAccount;
    const periods = own.periods.slice(0, usable).map((period, at) => {
      const shared = sharer.shared.get(id)?.[at];
      return shared === undefined ? period : { ...period, quantities: { ...period.quantities, shared } };
    });
    const billed = keepPeriods({ account: own.account, tariff: prepared, periods });
    findings.push(
      ...billed.findings.map((finding) => ({ ...finding, path: ['accounts', id, ...finding.path] })),
    );
    return [id, billed.value] as const;
  });
  return {
    value: { accounts: Object.fromEntries(kept), pools: sharer.pools },
    findings: [...sharer.findings, ...findings],
  };
}
