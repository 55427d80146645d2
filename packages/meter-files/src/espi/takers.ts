import type { Directory, Header } from './directory.ts';
import type { EntryLinks } from './links.ts';
import type { Tell } from './log.ts';
import { planOf } from './plan.ts';
import { takerOf, type TakeContext, type Taker } from './take.ts';

/** Takes readings; 'unusable' where their ReadingType is known and is no use, which has been told. */
export type KnownTaker = Taker | 'unusable';

/** Say of a feed with net energy and import or export that net is not to be counted again. */
function tellNetBesideFlows(all: readonly Taker[], tell: Tell): void {
  const net = all.find(({ plan }) => plan.quantity === 'net');
  const isBeside = all.some(({ plan: { quantity } }) => quantity === 'import' || quantity === 'export');
  if (net !== undefined && isBeside) tell('espi/net-beside-flows', net.plan.flowAt);
}

/** The takers of the MeterReadings of a feed. */
export interface Takers {
  /** By the links of an IntervalBlock; null while MeterReading or ReadingType have not come. */
  readonly of: (links: EntryLinks) => KnownTaker | null;
  /** The feed has ended. */
  readonly end: () => void;
}

/** Make the takers of MeterReadings as their blocks come, each once. */
export function takers(directory: Directory, context: TakeContext): Takers {
  const made = new Map<Header, KnownTaker>();
  const make = (header: Header): KnownTaker | null => {
    const type = directory.typeOf(header);
    if (type === null) return null;
    const plan = planOf(type, context.tell);
    if (plan === null) return 'unusable';
    return takerOf(
      plan,
      { point: directory.pointOf(header), register: directory.registerOf(header) },
      context,
    );
  };
  return {
    of: (links) => {
      const header = directory.meterReadingOf(links);
      if (header === null) return null;
      const taker = made.get(header) ?? make(header);
      if (taker !== null) made.set(header, taker);
      return taker;
    },
    end: () => {
      const all = [...made.values()].filter((taker) => taker !== 'unusable');
      for (const taker of all) taker.end();
      tellNetBesideFlows(all, context.tell);
    },
  };
}
