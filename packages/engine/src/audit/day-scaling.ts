import { decimalPlaces, decimalToWhole, periodDays } from '../quantity/index.ts';
import type { Charge, DayRule, TariffDocument } from '../tariff/index.ts';
import type { Variant } from './cause.ts';
import { changedCharges, tariffVariant } from './changed-tariff.ts';
import type { BillFacts } from './facts.ts';
import { inRow } from './in-row.ts';

/** A rule by the day has no month of which a bill could be taken. */
const SHORTEST_MONTH = 27;

interface Group {
  readonly id: string;
  readonly name: string;
  readonly has: (charge: Charge) => boolean;
}

/** What billing days scale, in the order of a bill. */
const GROUPS: readonly Group[] = [
  { id: 'slabs', name: 'limits of slabs', has: ({ kind }) => kind === 'slabs' || kind === 'slab-tables' },
  {
    id: 'fixed',
    name: 'fixed and minimum charges',
    has: ({ kind }) => kind === 'fixed' || kind === 'per-kilowatt' || kind === 'minimum',
  },
  { id: 'first-units', name: 'units of a subsidy', has: ({ kind }) => kind === 'per-unit' },
];

const isScaled = (charge: Charge): boolean => 'scaledBy' in charge && charge.scaledBy !== undefined;

/** A whole number of days that a day rule names, such as its divisor "30"; 0 where it names none. */
const daysOf = (text: string | undefined): number =>
  text === undefined || decimalPlaces(text) > 0 ? 0 : decimalToWhole(text, 0);

/** Whether a rule scales a period of so many days. */
function scales(rule: DayRule, days: number): boolean {
  const { unscaledFrom, unscaledThrough } = rule;
  const isWithin =
    unscaledFrom !== undefined && days >= daysOf(unscaledFrom) && days <= daysOf(unscaledThrough);
  if (isWithin) return false;
  return (
    rule.rule === 'calendar-months' ||
    (daysOf(rule.divisor) >= SHORTEST_MONTH && daysOf(rule.divisor) !== days)
  );
}

/** Whether the days of a bill change anything in it. */
export function isScaledByDays({ tariff, period }: Pick<BillFacts, 'tariff' | 'period'>): boolean {
  const days = periodDays(period);
  return Object.values(tariff.dayRules ?? {}).some((rule) => scales(rule, days));
}

/** Every choice of one or more of some things, small ones first. */
function choicesOf<Thing>(things: readonly Thing[]): readonly (readonly Thing[])[] {
  const all = Array.from({ length: 2 ** things.length }, (_, mask) =>
    things.filter((_thing, at) => Math.floor(mask / 2 ** at) % 2 === 1),
  );
  return all.slice(1).sort((one, other) => one.length - other.length);
}

const UNSCALED = 'unscaled';
/** More days than any bill has. */
const ALL_DAYS = '99999';

/**
 * Charges of some groups left as for one month, by a day rule that scales nothing: a charge without any rule would be
 * refused where a change of the order splits the period.
 */
function unscaled(document: TariffDocument, groups: readonly Group[]): TariffDocument | null {
  const changed = changedCharges(document, (charge) =>
    isScaled(charge) && groups.some(({ has }) => has(charge)) ? { ...charge, scaledBy: UNSCALED } : charge,
  );
  const [rule] = Object.values(document.dayRules ?? {});
  if (changed === null || rule === undefined) return null;
  const none: DayRule = {
    rule: 'days-over',
    clause: rule.clause,
    divisor: '30',
    unscaledFrom: '0',
    unscaledThrough: ALL_DAYS,
  };
  return { ...changed, dayRules: { ...document.dayRules, [UNSCALED]: none } };
}

/**
 * What is scaled to billing days left as for one month: slabs, fixed charges and subsidies, each alone and together.
 *
 * @param cause  the id of the cause
 * @returns      none where the days of the bill change nothing
 */
export function unscaledVariants(facts: BillFacts, cause: string): readonly Variant[] {
  if (!isScaledByDays(facts)) return [];
  const charges = facts.tariff.versions.flatMap((version) => version.charges).filter(isScaled);
  const present = GROUPS.filter(({ has }) => charges.some(has));
  return choicesOf(present).flatMap((groups) => {
    const id = groups.map((group) => group.id).join('+');
    const names = inRow(groups.map(({ name }) => name));
    const what = `Not scaled to ${periodDays(facts.period)} days: ${names}`;
    return tariffVariant(facts, { cause, id, what }, (document) => unscaled(document, groups));
  });
}
