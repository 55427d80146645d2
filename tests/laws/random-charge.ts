import { ROUNDING_MODES, type Charge, type Rounding } from '@unitbook/engine';
import type { Random } from '../support/random.ts';

const ENERGY = ['billed', 'import', 'export', 'generation', 'self-consumption', 'total-use'] as const;
const POWER = ['sanctioned-load', 'plant-capacity'] as const;

/** The ledgers of money that credits of generated tariffs can name. */
export const MONEY_LEDGERS = ['rewards', 'refunds'] as const;

/** Money per unit with 0 to 4 decimals, seldom below 0. */
function rate(random: Random): string {
  const places = random.below(5);
  const digits = String(random.below(10 ** Math.min(places + 1, 5))).padStart(places + 1, '0');
  const text = places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  const plain = text.replace(/^0+(?=\d)/, '');
  return random.chance(12) && /[1-9]/.test(plain) ? `-${plain}` : plain;
}

/** Ascending limits with up to three decimals; the last row has none. */
function rows<Row extends object>(
  random: Random,
  most: number,
  make: () => Row,
): (Row & { upTo?: string })[] {
  const count = 1 + random.below(most);
  let limit = 0;
  return Array.from({ length: count }, (_, index) => {
    limit += 1 + random.below(120);
    const decimals = random.chance(20) ? `.${String(1 + random.below(999)).padStart(3, '0')}` : '';
    return index === count - 1 ? make() : { ...make(), upTo: `${String(limit)}${decimals}` };
  });
}

/** A rounding of lines: to the hundredth and half-up mostly, as nearly all are. */
export const randomRounding = (random: Random): Rounding => ({
  step: random.pick(['0.01', '0.01', '0.1', '1', '0.05', '0.0001', '0.5']),
  mode: random.chance(70) ? 'half-up' : random.pick(ROUNDING_MODES),
});

/** What a charge is made from. */
export interface Making {
  readonly random: Random;
  readonly id: string;
  readonly above: readonly Charge[];
  readonly rules: readonly string[];
  readonly seasons: readonly string[];
  readonly exactLines: boolean;
}

/** What a charge of any kind can say. */
function anyCharge({ random, id, seasons, exactLines }: Making) {
  const own = !exactLines && random.chance(15) ? { rounding: randomRounding(random) } : {};
  const season = seasons.length > 0 && random.chance(20) ? { season: random.pick(seasons) } : {};
  const inTotal = random.chance(8) ? { inTotal: false as const } : {};
  return { id, label: id, clause: 'LAW 1', ...own, ...season, ...inTotal };
}

function common(making: Making) {
  const { random, rules } = making;
  const scaledBy = rules.length > 0 && random.chance(60) ? { scaledBy: random.pick(rules) } : {};
  return { ...anyCharge(making), ...scaledBy };
}

function unitCharge(making: Making): Charge {
  const { random } = making;
  const on = random.pick(ENERGY);
  const rated = (): { rate: string } => ({ rate: rate(random) });
  const chosenBy = random.chance(25) ? { chosenBy: random.pick(ENERGY) } : {};
  switch (random.below(4)) {
    case 0:
      return { ...common(making), kind: 'slabs', on, method: 'telescopic', slabs: rows(random, 5, rated) };
    case 1:
      return {
        ...common(making),
        kind: 'slabs',
        on,
        method: 'whole',
        ...chosenBy,
        slabs: rows(random, 5, rated),
      };
    case 2: {
      const tables = rows(random, 3, () => ({ slabs: rows(random, 4, rated) }));
      return { ...common(making), kind: 'slab-tables', on, ...chosenBy, tables };
    }
    default: {
      const firstUnits = random.chance(50) ? { firstUnits: String(1 + random.below(200)) } : {};
      return { ...common(making), kind: 'per-unit', on, ...rated(), ...firstUnits };
    }
  }
}

function powerCharge(making: Making): Charge {
  const { random } = making;
  const on = random.pick(POWER);
  const bands = rows(random, 4, () => ({ rate: rate(random) })).map((band, index) =>
    band.upTo === undefined ? band : { ...band, upTo: String(2 * (index + 1)) },
  );
  switch (random.below(3)) {
    case 0:
      return { ...common(making), kind: 'per-kilowatt', on, rate: rate(random) };
    case 1:
      return {
        ...common(making),
        kind: 'per-kilowatt',
        on,
        method: random.pick(['telescopic', 'whole']),
        bands,
      };
    default: {
      const slabs = rows(random, 3, () => ({ rate: rate(random) }));
      return {
        ...common(making),
        kind: 'per-kilowatt',
        on,
        method: 'whole',
        chosenBy: random.pick(ENERGY),
        bands: slabs,
      };
    }
  }
}

function fixedCharge(making: Making): Charge {
  const { random } = making;
  if (random.chance(50)) return { ...common(making), kind: 'fixed', amount: rate(random) };
  const steps = rows(random, 4, () => ({ amount: rate(random) }));
  return { ...common(making), kind: 'fixed', chosenBy: random.pick(ENERGY), steps };
}

/** The bases that are left once no amount is counted twice: a floor stands in for the lines it names. */
function countedOnce(charges: readonly Charge[]): readonly Charge[] {
  const covered = new Set(
    charges.flatMap((charge) => (charge.kind === 'minimum' && charge.as === 'floor' ? charge.of : [])),
  );
  return charges.filter((charge) => !covered.has(charge.id));
}

const RECOMPUTABLE = new Set(['slabs', 'slab-tables', 'per-unit']);

function percentageCharge(making: Making): Charge {
  const { random, above, exactLines } = making;
  const of = countedOnce(above.filter(() => random.chance(50))).map((charge) =>
    RECOMPUTABLE.has(charge.kind) && random.chance(25)
      ? { line: charge.id, recomputedOn: random.pick(ENERGY) }
      : charge.id,
  );
  const first = above[0]?.id ?? '';
  const base = { ...anyCharge(making), kind: 'percentage' as const, of: of.length > 0 ? of : [first] };
  // Left unrounded, a tax inside its base needs a denominator of its own; at 99 percent it is 99 times the rest.
  if (!exactLines && random.chance(15)) return { ...base, percent: share(random, 50), inside: true };
  if (random.chance(75)) return { ...base, percent: rate(random) };
  return {
    ...base,
    chosenBy: random.pick(ENERGY),
    steps: rows(random, 3, () => ({ percent: rate(random) })),
  };
}

function minimumCharge(making: Making): Charge {
  const { random, above } = making;
  const amount = String(random.below(400));
  const as = random.chance(70) ? 'shortfall' : 'floor';
  // One floor may stand in for a line, and a floor itself may be under another.
  const met = metLines(above);
  const free = as === 'floor' ? countedOnce(above).filter(({ id }) => !met.has(id)) : above;
  const of = countedOnce(free.filter(() => random.chance(60))).map((charge) => charge.id);
  const [first] = free;
  if (first === undefined) return fixedCharge(making);
  return { ...common(making), kind: 'minimum', amount, of: of.length > 0 ? of : [first.id], as };
}

/** A percentage from 0 to so much, some with decimals. */
function share(random: Random, most: number): string {
  const whole = random.below(most + 1);
  return whole < most && random.chance(30)
    ? `${String(whole)}.${String(random.below(100)).padStart(2, '0')}`
    : String(whole);
}

/** Lines that credits above meet. */
const metLines = (above: readonly Charge[]): ReadonlySet<string> =>
  new Set(above.flatMap((line) => (line.kind === 'credit' ? line.against : [])));

/** Lines above that a new credit may meet: paid for by nothing else. */
function meetable(above: readonly Charge[]): readonly string[] {
  const met = metLines(above);
  const earning = new Set(above.flatMap((line) => (line.kind === 'credit' ? (line.earned ?? []) : [])));
  return countedOnce(above)
    .map(({ id }) => id)
    .filter((id) => !met.has(id) && !earning.has(id));
}

/** Lines above that earn credit no other charge earns. */
function earningLines({ random, above }: Making): readonly string[] {
  const taken = new Set(above.flatMap((line) => (line.kind === 'credit' ? (line.earned ?? []) : [])));
  const met = metLines(above);
  return above.map(({ id }) => id).filter((id) => !taken.has(id) && !met.has(id) && random.chance(40));
}

function creditCharge(making: Making): Charge {
  const { random, above, exactLines } = making;
  const used = above.flatMap((line) => (line.kind === 'credit' ? (line.ledger ?? []) : []));
  const free = MONEY_LEDGERS.filter((ledger) => !used.includes(ledger));
  const [ledger] = random.chance(70) ? free : [];
  const earned = earningLines(making);
  const others = meetable(above).filter((id) => !earned.includes(id));
  const against = others.filter(() => random.chance(60));
  const target = against.length > 0 ? against : others.slice(0, 1);
  if (target.length === 0 || (ledger === undefined && earned.length === 0)) return fixedCharge(making);
  const { rounding: own, ...rest } = { rounding: undefined, ...anyCharge(making) };
  // Without a percentage nothing is rounded.
  const most =
    !exactLines && random.chance(50) ? { percent: share(random, 100), ...(own && { rounding: own }) } : {};
  const { inTotal: hidden, ...shown } = { inTotal: undefined, ...rest };
  return {
    ...shown,
    ...(hidden === undefined || ledger !== undefined ? {} : { inTotal: hidden }),
    ...most,
    kind: 'credit',
    ...(earned.length === 0 ? {} : { earned: [...earned] }),
    ...(ledger === undefined ? { left: 'lapses' } : { ledger, left: 'carried' }),
    against: [...target],
  };
}

/** Any charge, on any quantity, resting on any lines above it. */
export function randomCharge(making: Making): Charge {
  const dice = making.random.below(making.above.length === 0 ? 6 : 11);
  if (dice < 4) return unitCharge(making);
  if (dice === 4) return powerCharge(making);
  if (dice === 5) return fixedCharge(making);
  if (dice === 10) return creditCharge(making);
  return dice < 9 ? percentageCharge(making) : minimumCharge(making);
}
