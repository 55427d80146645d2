import type { QuoteDocument, TariffDocument } from '@unitbook/engine';

/** A settlement rule as a case of a quote has it: without the days that it is in force. */
export type CaseRule = NonNullable<NonNullable<QuoteDocument['policies']>[number]['settlement']>;

/** A rule that a case can have, and where it is from. */
export interface KnownRule {
  readonly key: string;
  readonly rule: CaseRule;
  /** The name of the tariff whose rule it is, or of the case that it came with. */
  readonly from: string;
  /** First day in force; '' for one that came with the quote. */
  readonly since: string;
}

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A value with its fields in one order, so that the same rule has the same text. */
function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (!isFields(value)) return value;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, item]) => [key, ordered(item)]));
}

/** The text by which rules are told apart. */
const textOf = (rule: CaseRule): string => JSON.stringify(ordered(rule));

/** A rule without the days that it is in force. */
function undated(rule: TariffDocument['settlements'][number]): CaseRule {
  return Object.fromEntries(Object.entries(rule).filter(([key]) => key !== 'from' && key !== 'through'));
}

/** Every settlement rule of a tariff, the latest first: that is the one in force. */
export function rulesOf({ id, name, settlements }: TariffDocument): readonly KnownRule[] {
  return settlements
    .map((rule, at) => ({ key: `${id} ${String(at)}`, rule: undated(rule), from: name, since: rule.from }))
    .reverse();
}

/** The rules that came with a quote, each once: of several cases with the same the first names it. */
export function ownRules({ policies = [] }: QuoteDocument): readonly KnownRule[] {
  const known = new Map<string, KnownRule>();
  policies.forEach(({ name, settlement: rule }, at) => {
    if (rule === undefined || known.has(textOf(rule))) return;
    known.set(textOf(rule), { key: `own ${String(at)}`, rule, from: name, since: '' });
  });
  return [...known.values()];
}

/** The rule of a case among those that are known; null: it is none of them. */
export function knownRule(rule: CaseRule, known: readonly KnownRule[]): KnownRule | null {
  const text = textOf(rule);
  return known.find((one) => textOf(one.rule) === text) ?? null;
}
