import { ROUNDING_MODES, type Charge, type DayRule, type TariffDocument } from '@unitbook/engine';
import type { Random } from '../support/random.ts';
import { MONEY_LEDGERS, randomCharge, randomRounding } from './random-charge.ts';

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

type Seasons = NonNullable<TariffDocument['seasons']>;

/** One season inside the year, and one that may run over the new year; none ends on 28 February, which is refused. */
function seasonsOf(random: Random): Seasons {
  const day = (): string =>
    `${String(1 + random.below(12)).padStart(2, '0')}-${String(1 + random.below(27)).padStart(2, '0')}`;
  const [first, last] = [day(), day()].sort() as [string, string];
  return {
    warm: { clause: 'LAW 3', from: first, through: last },
    other: { clause: 'LAW 3', from: day(), through: day() },
  };
}

const clause = 'LAW 1';

/** Unit netting, or, where a credit has a ledger, the ledgers of money with units billed as they are taken. */
function settlementOf(charges: readonly Charge[]): TariffDocument['settlements'][number] {
  const hasLedger = charges.some((one) => one.kind === 'credit' && one.ledger !== undefined);
  if (!hasLedger) {
    const close = { clause, on: 'every-period', surplus: 'lapses' } as const;
    return { from: '2000-01-01', scheme: 'unit-netting', clause, close };
  }
  return {
    from: '2000-01-01',
    scheme: 'ledgers',
    clause,
    quantities: [{ is: 'sum', id: 'billed', label: 'Units billed', clause, of: ['import'] }],
    ledgers: MONEY_LEDGERS.map((id) => ({ id, label: id, clause, unit: 'money' as const })),
  };
}

/**
 * A tariff that nobody would enact: any charges in any order, with any bases and roundings.
 *
 * @param exactLines  whether lines are left unrounded, which is seldom and wants few percentages
 */
export function randomTariff(random: Random, exactLines: boolean): TariffDocument {
  const rules = random.chance(60) ? dayRules(random) : {};
  const seasons = random.chance(40) ? seasonsOf(random) : {};
  const charges: Charge[] = [];
  const count = exactLines ? 2 + random.below(3) : 2 + random.below(7);
  for (let index = 0; index < count; index += 1) {
    charges.push(
      randomCharge({
        random,
        id: `line-${String(index)}`,
        above: charges,
        rules: Object.keys(rules),
        seasons: Object.keys(seasons),
        exactLines,
      }),
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
    rounding: { clause: 'LAW 1', line: exactLines ? 'none' : randomRounding(random), total },
    seasons,
    dayRules: rules,
    versionChange: { rule: 'in-force-on-first-day', clause: 'LAW 1' },
    versions: [{ name: 'LAW', from: '2000-01-01', clause: 'LAW 1', charges }],
    settlements: [settlementOf(charges)],
  };
}
