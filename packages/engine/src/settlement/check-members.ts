import {
  decimalPlaces,
  decimalToWhole,
  exactText,
  isDecimalText,
  type Finding,
  type Path,
} from '../quantity/index.ts';
import type { SharingRule } from '../tariff/index.ts';
import { sharingFinding } from './sharing-findings.ts';

/** What an account brings into a group: what its share is measured by. */
interface MemberBasis {
  /** The account. */
  readonly id: string;
  /** Its part of the pool, as the group agreed. */
  readonly percent?: string | undefined;
  /** Its capacity in kW. */
  readonly capacity?: string | undefined;
}

/** A member of a pool in one period. */
export interface PoolMember extends MemberBasis {
  /** What it took from the grid in the period, in whole watt-hours. */
  readonly need?: number | undefined;
  /** Whether its plant fills the pool. */
  readonly isHost?: boolean | undefined;
}

/** The most decimals a percentage can have, and its largest value there. */
const PERCENT = { places: 8, most: 100 * 10 ** 8 } as const;
/** Whole watts, and a gigawatt: more than any group has. */
const CAPACITY = { places: 3, most: 10 ** 9 } as const;

/** Digits that a whole number of the last place can hold. */
const LONGEST = 14;

/** A decimal as a whole number of its last place; null where it is finer or larger than its grid takes. */
function onGrid(text: string, { places, most }: typeof PERCENT | typeof CAPACITY): number | null {
  if (!isDecimalText(text) || text.startsWith('-') || decimalPlaces(text) > places) return null;
  const [whole = ''] = text.split('.');
  if (whole.length + places > LONGEST) return null;
  const value = decimalToWhole(text, places);
  return value <= most ? value : null;
}

/** A percentage in 10⁻⁸ percent, or null. */
export function percentParts(text: string): number | null {
  return onGrid(text, PERCENT);
}

/** A capacity in watts, or null. */
export function capacityWatts(text: string): number | null {
  const watts = onGrid(text, CAPACITY);
  return watts === 0 ? null : watts;
}

/** What is wrong with the percentage and the capacity of one member, where it states them. */
function numberFindings({ id, percent, capacity }: MemberBasis, at: Path): Finding[] {
  const findings: Finding[] = [];
  if (percent !== undefined && percentParts(percent) === null) {
    const place = { path: [...at, 'percent'] };
    findings.push(sharingFinding('settlement/share-percent-out-of-range', place, { member: id, percent }));
  }
  if (capacity !== undefined && capacityWatts(capacity) === null) {
    const place = { path: [...at, 'capacity'] };
    findings.push(
      sharingFinding('settlement/share-capacity-not-above-zero', place, { member: id, capacity }),
    );
  }
  return findings;
}

/** Percentages have to come to 100: said only once every member has one that can be counted. */
function sumFindings(members: readonly MemberBasis[], path: Path): Finding[] {
  const parts = members.map(({ percent }) => (percent === undefined ? null : percentParts(percent)));
  if (parts.includes(null)) return [];
  const sum = parts.reduce<number>((total, part) => total + (part ?? 0), 0);
  if (sum === PERCENT.most) return [];
  const gap = exactText(Math.abs(sum - PERCENT.most), 10 ** PERCENT.places);
  const values = {
    sum: exactText(sum, 10 ** PERCENT.places),
    gap,
    side: sum < PERCENT.most ? 'little' : 'much',
  };
  return [sharingFinding('settlement/share-not-hundred', { path }, values)];
}

/**
 * Check the members of a group by themselves: that there are any, each once, with usable numbers, and with
 * percentages that come to 100 where every one states its own.
 *
 * @param path  of the list of members
 * @example
 * basisFindings([{ id: 'A', percent: '60' }, { id: 'B', percent: '40' }], []).length //=> 0
 */
export function basisFindings(members: readonly MemberBasis[], path: Path): Finding[] {
  if (members.length === 0) return [sharingFinding('settlement/share-no-members', { path })];
  const seen = new Set<string>();
  const each = members.flatMap((member, index) => {
    const at = [...path, index];
    const again = seen.has(member.id)
      ? [sharingFinding('settlement/share-same-member', { path: at }, { member: member.id })]
      : [];
    seen.add(member.id);
    return [...again, ...numberFindings(member, at)];
  });
  return [...each, ...sumFindings(members, path)];
}

const MEANINGS = {
  percentage: [
    'percent',
    'the part of the pool that the group agreed on, since the rule shares by percentage',
  ],
  capacity: ['capacity', 'its capacity in kW, since the rule shares by capacity'],
} as const;

/** What a rule needs of a member that the member does not state. */
function missingFindings(rule: SharingRule, member: PoolMember, at: Path): Finding[] {
  const findings: Finding[] = [];
  if (rule.by === 'percentage' || rule.by === 'capacity') {
    const [key, meaning] = MEANINGS[rule.by];
    const values = { member: member.id, key, meaning };
    if (member[key] === undefined) {
      findings.push(sharingFinding('settlement/share-basis-missing', { path: [...at, key] }, values));
    }
  }
  const byPriority = rule.by === 'priority';
  if ((byPriority || rule.unused === 'returns-to-pool') && member.need === undefined) {
    const reason = byPriority
      ? 'members are filled up to what they need'
      : 'what a member does not need returns to the pool';
    const values = { member: member.id, reason };
    findings.push(sharingFinding('settlement/share-need-unknown', { path: at }, values));
  }
  return findings;
}

/** One member has to be the host where the units left over go to it. */
function hostFindings({ remainder }: SharingRule, members: readonly PoolMember[], path: Path): Finding[] {
  if (remainder !== 'host' || members.length === 0) return [];
  const [first, ...others] = members.flatMap(({ id, isHost }, index) =>
    isHost === true ? [{ id, index }] : [],
  );
  if (first === undefined) return [sharingFinding('settlement/share-no-host', { path })];
  return others.map(({ id, index }) =>
    sharingFinding('settlement/share-two-hosts', { path: [...path, index] }, { member: id, other: first.id }),
  );
}

/**
 * Check the members of a pool for what a sharing rule needs of them, every problem at once. A number that
 * the rule does not look at is checked, too: it would be wrong in the next period.
 *
 * @param rule     of the tariff
 * @param members  in the order named
 * @param path     of the list of members
 */
export function memberFindings(rule: SharingRule, members: readonly PoolMember[], path: Path): Finding[] {
  return [
    ...basisFindings(members, path),
    ...members.flatMap((member, index) => missingFindings(rule, member, [...path, index])),
    ...hostFindings(rule, members, path),
  ];
}
