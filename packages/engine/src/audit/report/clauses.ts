import { addDays, type Period } from '../../quantity/index.ts';
import type { SettlementRule, TariffDocument } from '../../tariff/index.ts';
import type { BillFacts } from '../facts.ts';
import { groupOf, nameIn } from '../figure-names.ts';
import { chargeIn, inForceIn } from './in-force.ts';
import { clauseReference, type ClauseReference } from './source-of-clause.ts';

/** A clause and the first day it is in force, if it is dated. */
interface Dated {
  readonly clause: string;
  readonly from: string | null;
}

/** The settlement rule in force on the last day of a period. */
function ruleOf({ settlements }: TariffDocument, { to }: Period): SettlementRule | null {
  return inForceIn(settlements, { from: addDays(to, -1), to })[0] ?? null;
}

const undated = (clause: string): Dated => ({ clause, from: null });

/** The clause by which credit goes from one bill to the next. */
function creditClauses(rule: SettlementRule | null, ledgers: readonly string[]): readonly Dated[] {
  if (rule === null) return [];
  const { from } = rule;
  if (rule.scheme === 'unit-netting') return [{ clause: rule.carry?.clause ?? rule.clause, from }];
  const own = (rule.ledgers ?? []).filter(({ id }) => ledgers.includes(id));
  return own.length === 0 ? [{ clause: rule.clause, from }] : own.map(({ clause }) => ({ clause, from }));
}

/** The clauses of what surplus is paid. */
function surplusClauses(rule: SettlementRule | null): readonly Dated[] {
  if (rule === null) return [];
  const { from } = rule;
  if (rule.scheme === 'unit-netting') return [{ clause: rule.close.clause, from }];
  return (rule.ledgers ?? []).flatMap(({ payment }) =>
    payment === undefined ? [] : [{ clause: payment.clause, from }],
  );
}

function ruleClause(rule: SettlementRule | null): readonly Dated[] {
  return rule === null ? [] : [{ clause: rule.clause, from: rule.from }];
}

const isSame = (one: unknown, other: unknown): boolean =>
  one === other || JSON.stringify(one) === JSON.stringify(other);

/** The clauses of charges of the right tariff that a wrong one changes or leaves out. */
function chargeClauses(right: TariffDocument, wrong: TariffDocument, period: Period): readonly Dated[] {
  return inForceIn(right.versions, period).flatMap(({ charges, from }) =>
    charges
      .filter((charge) => !isSame(charge, chargeIn(wrong, charge.id, period)?.charge))
      .map(({ clause }) => ({ clause, from })),
  );
}

/** Rules of the whole document that a wrong one changes. */
function documentClauses(right: TariffDocument, wrong: TariffDocument): readonly Dated[] {
  const rules = [
    [right.units, wrong.units],
    [right.rounding, wrong.rounding],
    [right.versionChange, wrong.versionChange],
    ...Object.entries(right.dayRules ?? {}).map(([id, rule]) => [rule, wrong.dayRules?.[id]] as const),
  ] as const;
  return rules.filter(([one, other]) => !isSame(one, other)).map(([{ clause }]) => undated(clause));
}

function tariffClauses(right: TariffDocument, wrong: TariffDocument, period: Period): readonly Dated[] {
  if (right === wrong) return [];
  // Another category: what it says is beside the point, the clause of the right one is what counts.
  if (right.id !== wrong.id)
    return inForceIn(right.versions, period).map(({ clause, from }) => ({ clause, from }));
  const settled = isSame(right.settlements, wrong.settlements) ? [] : ruleClause(ruleOf(right, period));
  return [...chargeClauses(right, wrong, period), ...documentClauses(right, wrong), ...settled];
}

type Registers = BillFacts['registers'];

function readingsDiffer(one: Registers, other: Registers): boolean {
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].some((key) => {
    const [own, changed] = [one[key], other[key]];
    return (
      own?.previous !== changed?.previous ||
      own?.present !== changed?.present ||
      own?.passed !== changed?.passed
    );
  });
}

/** Whether what registers or units say differs. */
const unitsDiffer = (one: BillFacts, other: BillFacts): boolean =>
  !isSame(one.units, other.units) || readingsDiffer(one.registers, other.registers);

/** The clauses of what days do, where a bill goes by other days. */
function dayClauses({ tariff, period }: BillFacts, after: BillFacts): readonly Dated[] {
  const isOther = after.shown['days'] !== undefined || !isSame(period, after.period);
  return isOther ? Object.values(tariff.dayRules ?? {}).map(({ clause }) => undated(clause)) : [];
}

/** Each clause once, with its source. */
function referenced(clauses: readonly Dated[], { sources }: TariffDocument): readonly ClauseReference[] {
  const seen = new Set<string>();
  return clauses.flatMap(({ clause, from }) => {
    if (seen.has(clause)) return [];
    seen.add(clause);
    return [clauseReference(clause, sources, from)];
  });
}

/**
 * The clauses that a cause breaks: those of whatever it changes of the facts of a bill. They are the clauses of the
 * right tariff, the one that should have been applied.
 *
 * @param before  facts without the cause
 * @param after   facts with it
 */
export function brokenClauses(before: BillFacts, after: BillFacts): readonly ClauseReference[] {
  const { tariff, period } = before;
  const rule = ruleOf(tariff, period);
  const ledgers = Object.keys(before.opening).filter((id) => before.opening[id] !== after.opening[id]);
  const clauses = [
    ...(ledgers.length > 0 ? creditClauses(rule, ledgers) : []),
    ...(isSame(before.surplus, after.surplus) ? [] : surplusClauses(rule)),
    ...tariffClauses(tariff, after.tariff, period),
    ...dayClauses(before, after),
    ...(unitsDiffer(before, after) ? [undated(tariff.units.clause), ...ruleClause(rule)] : []),
  ];
  return referenced(clauses, tariff);
}

/**
 * The clause that a figure of a bill follows from: of the charge, the settlement rule, the rounding or the counting of
 * units. None of what stands in no tariff: arrears, a late fee.
 *
 * @param name  see {@link FIGURE}
 */
export function clausesOfFigure(
  name: string,
  tariff: TariffDocument,
  period: Period,
): readonly ClauseReference[] {
  const rule = ruleOf(tariff, period);
  const id = nameIn(name);
  const clauses = (): readonly Dated[] => {
    switch (groupOf(name)) {
      case 'reading':
        return [undated(tariff.units.clause)];
      case 'units':
        return name === 'units.billed' ? ruleClause(rule) : [undated(tariff.units.clause)];
      case 'credit':
        return creditClauses(rule, [id]);
      case 'line': {
        const own = chargeIn(tariff, id, period);
        if (own !== null) return [{ clause: own.charge.clause, from: own.from }];
        return id === 'surplus' ? surplusClauses(rule) : [];
      }
      case 'total':
        return [undated(tariff.rounding.clause)];
      case 'account':
      case 'other':
        return [];
    }
  };
  return referenced(clauses(), tariff);
}
