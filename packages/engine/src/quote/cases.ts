import {
  addDays,
  calendarDay,
  dayNumber,
  dayText,
  decimalPlaces,
  decimalToWhole,
  parseDay,
  wholeToDecimal,
  type DayNumber,
} from '../quantity/index.ts';
import type { SettlementRule, TariffDocument } from '../tariff/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';
import {
  lossFactor,
  nearestDouble,
  percentFactor,
  timesFactor,
  yearFactors,
  type YearFactors,
} from './factors.ts';
import type { QuoteInput } from './quote-input.ts';
import { shareOf } from './check-quote.ts';

type Policy = NonNullable<QuoteDocument['policies']>[number];

/** What is different in a case; what is left out is as in the quote. */
export interface CaseChange {
  /** Percent that every rising charge rises by each year. */
  readonly rise?: string;
  /** Percentage points that every rising charge rises by more each year. */
  readonly risePoints?: string;
  /** Percent more or less generation in every month. */
  readonly generation?: string;
  /** Percent more or less use in every month. */
  readonly use?: string;
  /** Percent of wear each year, from the first on. */
  readonly degradation?: string;
  readonly isSubsidyRefused?: boolean;
  readonly isSurplusUnpaid?: boolean;
  /** Another settlement rule, and the year from whose beginning it holds. */
  readonly policy?: { readonly policy: Policy; readonly from: number };
}

/** A case of a quote: what is asked "what if". */
export interface QuoteCase {
  readonly id: string;
  readonly name: string;
  readonly change: CaseChange;
}

/** Factors times a percentage more: one product, so that units are rounded only once. */
function scaledFactors({ exact }: YearFactors, percent: string | undefined): YearFactors {
  if (percent === undefined) return { exact, doubles: Float64Array.from(exact, nearestDouble) };
  const times = percentFactor(percent);
  const scaled = exact.map((factor) => timesFactor(factor, times));
  return { exact: scaled, doubles: Float64Array.from(scaled, nearestDouble) };
}

/** Factors of another wear, from as much in the first year as before: of another size, that is not the whole. */
function rewornFactors({ years, generationFactors }: QuoteInput, percent: string): YearFactors {
  const first = generationFactors.exact[0] ?? { numerator: 1n, denominator: 1n };
  const exact = yearFactors(years, [lossFactor(percent)]).exact.map((factor) => timesFactor(factor, first));
  return { exact, doubles: Float64Array.from(exact, nearestDouble) };
}

/** What is paid for surplus where rates do not rise: it does not, either. */
function risenSurplus(
  { surplus }: QuoteDocument['escalation'],
  rise: string | undefined,
): Pick<QuoteDocument['escalation'], 'surplus'> {
  return rise === '0' || surplus === undefined ? {} : { surplus };
}

/** Two decimal texts added, exact. */
function sumText(one: string, other: string): string {
  const places = Math.max(decimalPlaces(one), decimalPlaces(other));
  return wholeToDecimal(decimalToWhole(one, places) + decimalToWhole(other, places), places);
}

/** The quote as it would be in a case. */
export function inputOfCase(input: QuoteInput, change: CaseChange): QuoteInput {
  const { rise, risePoints = '0', generation, use, degradation, policy } = change;
  const { document } = input;
  const { charges, basis } = document.escalation;
  const risen = Object.fromEntries(
    Object.keys(charges).map((id) => [id, rise ?? sumText(charges[id] ?? '0', risePoints)]),
  );
  const selfUse = policy?.policy.selfUse;
  const worn = degradation === undefined ? input.generationFactors : rewornFactors(input, degradation);
  return {
    ...input,
    document: {
      ...document,
      escalation: { charges: risen, basis, ...risenSurplus(document.escalation, rise) },
    },
    share: selfUse === undefined ? input.share : shareOf(selfUse),
    useFactors: scaledFactors(input.useFactors, use),
    generationFactors: scaledFactors(worn, generation),
  };
}

/** The first day of a year of the life, from 1 on. */
export function yearStart(start: DayNumber, year: number): DayNumber {
  const { year: first, month } = calendarDay(start);
  return dayNumber({ year: first + year - 1, month, day: 1 });
}

/**
 * A tariff with another settlement rule from a day on.
 *
 * @param settlement  as a document has it, without its first day
 */
export function withSettlement(
  document: TariffDocument,
  settlement: Readonly<Record<string, unknown>>,
  from: DayNumber,
): TariffDocument {
  const before = document.settlements
    .filter((rule) => (parseDay(rule.from) ?? from) < from)
    .map((rule) => {
      const isPast = rule.through !== undefined && (parseDay(rule.through) ?? from) < from;
      return isPast ? rule : { ...rule, through: dayText(addDays(from, -1)) };
    });
  const added = { ...settlement, from: dayText(from) } as unknown as SettlementRule;
  return { ...document, settlements: [...before, added] };
}

/** What no rate is assumed to rise by in a year, in percent. */
const MOST_RISE = '40';

/** The most that charges rise in the document, doubled: a case of fast rises; null where none is faster. */
function doubled(charges: Readonly<Record<string, string>>): string | null {
  const most = Object.values(charges).reduce((high, text) => (isMore(text, high) ? text : high), '0');
  const twice = ratioText(timesFactor({ numerator: 2n, denominator: 1n }, parseRatio(most)));
  const fast = isMore(twice, MOST_RISE) ? MOST_RISE : twice;
  return isMore(fast, most) ? fast : null;
}

const parseRatio = (text: string) => {
  const { numerator, denominator } = percentFactor(text);
  return { numerator: numerator - denominator, denominator };
};

const isMore = (one: string, other: string): boolean => {
  const [a, b] = [parseRatio(one), parseRatio(other)];
  return a.numerator * b.denominator > b.numerator * a.denominator;
};

/** A part of one as percent text. */
function ratioText({
  numerator,
  denominator,
}: {
  readonly numerator: bigint;
  readonly denominator: bigint;
}): string {
  const thousandths = (numerator * 100_000n) / denominator;
  const [whole, decimals] = [thousandths / 1000n, thousandths % 1000n];
  const text = `${whole.toString()}.${decimals.toString().padStart(3, '0')}`;
  return text.replace(/\.?0+$/, '');
}

const WORST = { rise: '0', generation: '-10' } as const;

function policyCases(policies: readonly Policy[]): readonly QuoteCase[] {
  return policies.flatMap((policy, at) => {
    const from = Number.parseInt(policy.from, 10);
    const own = { id: `policy-${String(at + 1)}`, name: policy.name, change: { policy: { policy, from } } };
    if (from === 1) return [own];
    const early = { policy: { policy, from: 1 } };
    return [
      own,
      { id: `policy-${String(at + 1)}-now`, name: `${policy.name}: already from year 1`, change: early },
    ];
  });
}

/**
 * The cases that every quote answers: rises, generation, use, wear, a refused subsidy, unpaid surplus, each
 * policy, and all bad ones together.
 */
export function usualCases({ document }: QuoteInput): readonly QuoteCase[] {
  const { escalation, subsidy, policies = [] } = document;
  const fast = doubled(escalation.charges);
  const [first] = policies;
  const worst =
    first === undefined ? {} : { policy: { policy: first, from: Number.parseInt(first.from, 10) } };
  return [
    { id: 'rise-0', name: 'Rates do not rise', change: { rise: '0' } },
    ...(fast === null
      ? []
      : [{ id: 'rise-twice', name: `Rates rise ${fast} % a year`, change: { rise: fast } }]),
    { id: 'generation-less', name: '10 % less generation', change: { generation: '-10' } },
    { id: 'use-less', name: '20 % less use', change: { use: '-20' } },
    { id: 'use-more', name: '20 % more use', change: { use: '20' } },
    { id: 'degradation', name: 'Wear of 1 % a year', change: { degradation: '1' } },
    ...(subsidy === undefined
      ? []
      : [{ id: 'subsidy-refused', name: 'Subsidy not received', change: { isSubsidyRefused: true } }]),
    { id: 'surplus-unpaid', name: 'Surplus not paid', change: { isSurplusUnpaid: true } },
    ...policyCases(policies),
    { id: 'all-bad', name: 'All bad together', change: { ...WORST, ...worst } },
  ];
}

/**
 * A quote with the rises of those charges that a tariff has.
 *
 * @returns  the quote, and the charges that the tariff does not have
 */
export function chargesThatRise(
  input: QuoteInput,
  { versions }: TariffDocument,
): { readonly input: QuoteInput; readonly unknown: readonly string[] } {
  const known = new Set(versions.flatMap(({ charges }) => charges.map(({ id }) => id)));
  const { document } = input;
  const { charges } = document.escalation;
  const unknown = Object.keys(charges).filter((id) => !known.has(id));
  if (unknown.length === 0) return { input, unknown };
  const rising = Object.fromEntries(Object.entries(charges).filter(([id]) => known.has(id)));
  const escalation = { ...document.escalation, charges: rising };
  return { input: { ...input, document: { ...document, escalation } }, unknown };
}
