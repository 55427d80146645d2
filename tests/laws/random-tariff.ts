import {
  ROUNDING_MODES,
  type Charge,
  type DayRule,
  type Rounding,
  type TariffDocument,
} from '@unitbook/engine';
import type { Random } from '../support/random.ts';

const ENERGY = ['billed', 'import', 'export', 'generation', 'self-consumption', 'total-use'] as const;
const POWER = ['sanctioned-load', 'plant-capacity'] as const;

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

const rounding = (random: Random): Rounding => ({
  step: random.pick(['0.01', '0.01', '0.1', '1', '0.05', '0.0001', '0.5']),
  mode: random.chance(70) ? 'half-up' : random.pick(ROUNDING_MODES),
});

interface Making {
  readonly random: Random;
  readonly id: string;
  readonly above: readonly Charge[];
  readonly rules: readonly string[];
  readonly exactLines: boolean;
}

function common({ random, id, rules, exactLines }: Making) {
  const scaledBy = rules.length > 0 && random.chance(60) ? { scaledBy: random.pick(rules) } : {};
  const own = !exactLines && random.chance(15) ? { rounding: rounding(random) } : {};
  return { id, label: id, clause: 'LAW 1', ...own, ...scaledBy };
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
  const { random, above } = making;
  const { id, label, clause, ...rest } = common(making);
  const own = 'rounding' in rest ? { rounding: rest.rounding } : {};
  const of = countedOnce(above.filter(() => random.chance(50))).map((charge) =>
    RECOMPUTABLE.has(charge.kind) && random.chance(25)
      ? { line: charge.id, recomputedOn: random.pick(ENERGY) }
      : charge.id,
  );
  const first = above[0]?.id ?? '';
  const base = { id, label, clause, ...own, kind: 'percentage' as const, of: of.length > 0 ? of : [first] };
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
  const free = as === 'floor' ? countedOnce(above) : above;
  const of = countedOnce(free.filter(() => random.chance(60))).map((charge) => charge.id);
  return { ...common(making), kind: 'minimum', amount, of: of.length > 0 ? of : [free[0]?.id ?? ''], as };
}

function charge(making: Making): Charge {
  const dice = making.random.below(making.above.length === 0 ? 6 : 10);
  if (dice < 4) return unitCharge(making);
  if (dice === 4) return powerCharge(making);
  if (dice === 5) return fixedCharge(making);
  return dice < 9 ? percentageCharge(making) : minimumCharge(making);
}

function dayRules(random: Random): Record<string, DayRule> {
  const span = random.chance(50) ? { unscaledFrom: '27', unscaledThrough: '33' } : {};
  const factor = random.chance(50)
    ? { factor: { step: random.pick(['0.01', '0.0001']), mode: 'half-up' as const } }
    : {};
  const limits = random.chance(40) ? { limits: { step: '1', mode: 'half-up' as const } } : {};
  const shared = { clause: 'LAW 2', ...span, ...factor, ...limits };
  return {
    days: { rule: 'days-over', divisor: random.pick(['30', '31', '1']), ...shared },
    months: { rule: 'calendar-months', rounded: random.pick(['each-month', 'sum']), ...shared },
  };
}

/**
 * A tariff that nobody would enact: any charges in any order, with any bases and roundings.
 *
 * @param exactLines  whether lines are left unrounded, which is seldom and wants few percentages
 */
export function randomTariff(random: Random, exactLines: boolean): TariffDocument {
  const rules = random.chance(60) ? dayRules(random) : {};
  const charges: Charge[] = [];
  const count = exactLines ? 2 + random.below(3) : 2 + random.below(7);
  for (let index = 0; index < count; index += 1) {
    charges.push(
      charge({ random, id: `line-${String(index)}`, above: charges, rules: Object.keys(rules), exactLines }),
    );
  }
  const total = random.chance(20)
    ? 'none'
    : { step: random.pick(['1', '0.05', '0.01']), mode: random.pick(ROUNDING_MODES) };
  return {
    format: 'unitbook-tariff-1',
    id: 'law',
    name: 'law',
    supplier: 'nobody',
    currency: 'INR',
    sources: { LAW: { title: 'Generated', publisher: 'this test', year: '2026' } },
    units: { clause: 'LAW 1', decimals: '3', rounding: 'down', roundedAt: 'difference' },
    rounding: { clause: 'LAW 1', line: exactLines ? 'none' : rounding(random), total },
    dayRules: rules,
    versionChange: { rule: 'in-force-on-first-day', clause: 'LAW 1' },
    versions: [{ name: 'LAW', from: '2000-01-01', clause: 'LAW 1', charges }],
    settlements: [
      {
        from: '2000-01-01',
        scheme: 'unit-netting',
        clause: 'LAW 1',
        close: { clause: 'LAW 1', on: 'every-period', surplus: 'lapses' },
      },
    ],
  };
}
