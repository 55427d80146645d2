import { shareOut } from '../quantity/index.ts';
import { countAdvance } from '../energy/index.ts';
import type { RegisterId } from '../readings/index.ts';
import type { BillFacts, RegisterFacts, RegisterKey } from './facts.ts';

/** What a mistake makes of a register: numbers in thousandths as displayed. */
export type RegisterChange = Partial<Pick<RegisterFacts, 'register' | 'previous' | 'present' | 'passed'>>;

/** Thousandths of one counted unit, by the decimals that a tariff counts. */
const STEPS = { '0': 1000, '1': 100, '2': 10, '3': 1 } as const;

/** Thousandths in the smallest number of units that a tariff counts. */
export const countedStep = ({ tariff }: Pick<BillFacts, 'tariff'>): number => STEPS[tariff.units.decimals];

/** Thousandths cut down to what a tariff counts. */
export function cutToStep(facts: Pick<BillFacts, 'tariff'>, thousandths: number): number {
  const step = countedStep(facts);
  return Math.trunc(thousandths / step) * step;
}

/**
 * The units that a register counted, in thousandths, as the tariff of the bill counts them.
 */
export function countedBy(
  { register, previous, present, passed }: RegisterFacts,
  { tariff }: Pick<BillFacts, 'tariff'>,
): number {
  const to = passed ? present + register.fullScale : present;
  return countAdvance({ previous, present: to }, register, tariff.units);
}

/** The registers of some channels that are known at both ends. */
export function registersOfChannels(
  { registers }: BillFacts,
  channels: readonly RegisterId[],
): readonly RegisterFacts[] {
  return Object.values(registers).filter(({ register }) => channels.includes(register.id));
}

/**
 * Units of a channel and of its time blocks where the channel counts so much: blocks are scaled with it, to the last
 * thousandth, so that they still sum to it.
 *
 * @param total  thousandths
 */
export function scaledUnits(
  { units, tariff }: BillFacts,
  channel: RegisterId,
  total: number,
): Record<string, number> {
  const blocks = Object.keys(units).filter((name) => name.startsWith(`${channel}@`));
  if (blocks.length === 0) return { [channel]: total };
  const known = blocks.map((name) => Math.max(0, units[name] ?? 0));
  // Where nothing was counted in any block nothing tells them apart: all of it stands in the first one.
  const weights = known.some((weight) => weight > 0) ? known : known.map((_, at) => (at === 0 ? 1 : 0));
  const step = countedStep({ tariff });
  const shares = [...shareOut(total, weights, step)];
  const left = total - shares.reduce((sum, share) => sum + share, 0);
  shares[0] = (shares[0] ?? 0) + left;
  return { [channel]: total, ...Object.fromEntries(blocks.map((name, at) => [name, shares[at] ?? 0])) };
}

/**
 * Facts whose own use follows from generation and export, below 0 too: whoever is billed for more given than made is
 * billed by a program that only subtracts.
 */
function withOwnUse(facts: BillFacts): BillFacts {
  const { 'self-consumption': own = 0, ...units } = facts.units;
  const { export: given, generation: made } = units;
  if (given === undefined || made === undefined) return facts;
  if (made >= given) return own < 0 ? { ...facts, units } : facts;
  return { ...facts, units: { ...units, 'self-consumption': made - given } };
}

/** Facts in which a channel counts so much, in thousandths. */
export function withChannel(facts: BillFacts, channel: RegisterId, total: number): BillFacts {
  return withOwnUse({ ...facts, units: { ...facts.units, ...scaledUnits(facts, channel, total) } });
}

/**
 * Facts in which some registers counted otherwise, whatever they show: channel and time block change by as much.
 *
 * @param counts  thousandths by register
 */
export function withCounts(facts: BillFacts, counts: Readonly<Record<RegisterKey, number>>): BillFacts {
  let changed = facts;
  for (const [key, count] of Object.entries(counts)) {
    const own = facts.registers[key];
    if (own === undefined) continue;
    const { id, block } = own.register;
    const more = count - countedBy(own, facts);
    const total = (changed.units[id] ?? 0) + more;
    const name = `${id}@${block ?? ''}`;
    const inBlock = changed.units[name];
    changed =
      inBlock === undefined
        ? withChannel(changed, id, total)
        : withOwnUse({ ...changed, units: { ...changed.units, [id]: total, [name]: inBlock + more } });
  }
  return changed;
}

/**
 * Facts in which some registers show something else, with the units that they then counted.
 *
 * @param changes  by register; what is left out stays
 */
export function withReadings(
  facts: BillFacts,
  changes: Readonly<Record<RegisterKey, RegisterChange>>,
): BillFacts {
  const registers = { ...facts.registers };
  const counts: Record<RegisterKey, number> = {};
  for (const [key, change] of Object.entries(changes)) {
    const own = facts.registers[key];
    if (own === undefined) continue;
    const changed = { ...own, ...change };
    registers[key] = changed;
    counts[key] = countedBy(changed, facts);
  }
  return { ...withCounts(facts, counts), registers };
}

/** Whether no channel and no block counts less than nothing: a bill cannot be made of that. */
export function isPossible({ units }: BillFacts): boolean {
  return Object.entries(units).every(
    ([name, count]) => count >= 0 || !/^(?:import|export|generation)(?:@|$)/.test(name),
  );
}
