import { describe, expect, it } from 'vitest';
import networkText from '../../../../../tariffs-examples/india/tangedco-domestic-2022/tariff.json?raw';
import domesticText from '../../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import surchargesText from '../../../../../tariffs-examples/tarumira/taresco-monthly-surcharges/tariff.json?raw';
import lowerText from '../../../../../tariffs-examples/tarumira/taresco-surplus-lower-price/tariff.json?raw';
import { parseDay, type DayNumber, type Quotient } from '../../quantity/index.ts';
import { readTariff, type Charge, type TariffDocument } from '../../tariff/index.ts';
import type { Cause, CauseContext } from '../cause.ts';
import type { BillFacts } from '../facts.ts';
import { CREDIT_LAPSED_EARLY } from './credit-lapsed-early.ts';
import { FIXED_BY_OTHER_UNITS } from './fixed-by-other-units.ts';
import { KILOVOLT_AMPERE_HOURS_MIXED } from './kilovolt-ampere-hours-mixed.ts';
import { NETWORK_ON_ASSUMED_FACTOR } from './network-on-assumed-factor.ts';
import { RATES_OUT_OF_DATE } from './rates-out-of-date.ts';
import { SLABS_NOT_SCALED } from './slabs-not-scaled.ts';
import { SLAB_LIMITS_WRONG } from './slab-limits-wrong.ts';
import { SURPLUS_NOT_AS_DUE } from './surplus-not-as-due.ts';
import { SURCHARGE_ON_IMPORT } from './surcharge-on-import.ts';
import { TAX_BASE_WRONG } from './tax-base-wrong.ts';

const day = (text: string): DayNumber => parseDay(text) as DayNumber;
const money = (cents: number): Quotient => ({ numerator: cents, denominator: 100 });

function documentOf(text: string): TariffDocument {
  const { value } = readTariff(text);
  if (value === null) throw new Error('an example tariff cannot be read');
  return value.document;
}

const DOMESTIC = documentOf(domesticText);

/** The base month of the project reference. */
const BASE: BillFacts = {
  tariff: DOMESTIC,
  period: { from: day('2025-05-01'), to: day('2025-05-31') },
  registers: {},
  units: { import: 412_000, export: 278_000, generation: 580_000 },
  powers: { 'sanctioned-load': 4000, 'plant-capacity': 5000 },
  opening: { credit: 35_000 },
  surplus: { kind: 'as-due' },
  accountLines: [],
  shown: {},
};

const CONTEXT: CauseContext = {
  printed: new Map(),
  status: null,
  before: null,
  printedBefore: null,
  closingBefore: null,
  otherTariffs: [],
  connected: null,
  paidBefore: undefined,
  serials: {},
};

const ids = (cause: Cause, facts: BillFacts, context: Partial<CauseContext> = {}): readonly string[] =>
  cause.variants(facts, { ...CONTEXT, ...context }).map(({ id }) => id);

/** The base month under the tariff with one charge of every version changed. */
function withCharge(id: string, change: (charge: Charge) => Charge): BillFacts {
  const versions = DOMESTIC.versions.map((version) => ({
    ...version,
    charges: version.charges.map((charge) => (charge.id === id ? change(charge) : charge)),
  }));
  return { ...BASE, tariff: { ...DOMESTIC, versions } };
}

describe('causes that a tariff does not allow', () => {
  it.each([
    ['no fixed charge goes by units', FIXED_BY_OTHER_UNITS],
    ['nothing is counted in kVAh', KILOVOLT_AMPERE_HOURS_MIXED],
    ['nothing is charged for units made', NETWORK_ON_ASSUMED_FACTOR],
  ] as const)('have no variant where %s', (_why, cause) => {
    expect(ids(cause, BASE)).toEqual([]);
  });

  it('have none for days that nothing is scaled to, other than scaling them', () => {
    expect(ids(SLABS_NOT_SCALED, BASE)).toEqual(['near-month']);
  });
});

describe('variants of one tariff', () => {
  it('are the same document each time, so that it is prepared once', () => {
    const made = () => TAX_BASE_WRONG.variants(BASE, CONTEXT).map(({ facts }) => facts.tariff);
    const [first, again] = [made(), made()];
    expect(first.length).toBeGreaterThan(0);
    expect(first.every((tariff, at) => tariff === again[at])).toBe(true);
  });
});

describe('C21', () => {
  const printedBefore = (units: number) =>
    new Map([['closing.credit', { numerator: units, denominator: 1 }]]);

  it('is ruled out by a bill before that carries its credit forward', () => {
    expect(ids(CREDIT_LAPSED_EARLY, BASE, { printedBefore: printedBefore(35) })).toEqual(['now']);
  });

  it('is told by a bill before that carries nothing forward', () => {
    const [first] = CREDIT_LAPSED_EARLY.variants(BASE, { ...CONTEXT, printedBefore: printedBefore(0) });
    expect([first?.id, first?.signs?.map(({ speaks }) => speaks)]).toEqual(['before credit', ['for']]);
  });

  it('needs the end of a quarter where no bill before is known', () => {
    expect(ids(CREDIT_LAPSED_EARLY, BASE)).toEqual(['now']);
    const january = { ...BASE, period: { from: day('2025-01-01'), to: day('2025-02-01') } };
    expect(ids(CREDIT_LAPSED_EARLY, january)).toEqual(['before credit', 'now']);
  });
});

describe('C26', () => {
  const period = { from: day('2025-09-01'), to: day('2025-10-01') };
  const facts = { ...BASE, tariff: documentOf(lowerText), period, opening: { bank: 500_000 } };

  it('tries rates that were in force once where this very bill pays', () => {
    // 2.90, 3.40 are the values of the purchase cost; what is paid is the least of that and 3.10, a worked-out price.
    expect(ids(SURPLUS_NOT_AS_DUE, facts)).toContain('not-paid-now');
  });

  it('solves for the rate of a printed payment', () => {
    // 500 + 278 − 412 = 366 units; 366 × 1.25 = 457.50.
    const printed = new Map([['line.surplus', money(-45_750)]]);
    const made = SURPLUS_NOT_AS_DUE.variants(facts, { ...CONTEXT, printed });
    expect(made.find(({ id }) => id === 'now at 1.25')?.fitted).toEqual(['line.surplus']);
  });
});

describe('C30', () => {
  it('tries a dated price as it was before its last change', () => {
    const tariff = documentOf(surchargesText);
    const [name, price] = Object.entries(tariff.prices ?? {})[0] ?? [];
    const values = price?.is === 'series' ? price.values : [];
    const from = day(values[1]?.from ?? '');
    const facts = { ...BASE, tariff, opening: {}, period: { from, to: (from + 20) as DayNumber } };
    expect(ids(RATES_OUT_OF_DATE, facts)).toEqual([`price ${name ?? ''} ${values[1]?.from ?? ''}`]);
  });
});

describe('C31', () => {
  const printed = (energy: number) =>
    new Map([
      ['line.energy', money(energy)],
      ['units.billed', { numerator: 99, denominator: 1 }],
    ]);

  it('solves for no limit that is not whole, nor for the right one', () => {
    // 475.20 − 1.80 × L = 385.20 at L = 50, and 422.00 at L = 29.56.
    expect(ids(SLAB_LIMITS_WRONG, BASE, { printed: printed(38_520) })).toEqual(['whole']);
    expect(ids(SLAB_LIMITS_WRONG, BASE, { printed: printed(42_200) })).toEqual(['whole']);
  });

  it('solves for the limit of scaled slabs', () => {
    // 38 days, k = 38/30, first slab 30 × k = 38 of 99 units: 38 × 3.00 + 61 × 4.80 = 114.00 + 292.80 = 406.80.
    const facts = { ...BASE, period: { from: day('2025-05-01'), to: day('2025-06-08') } };
    expect(ids(SLAB_LIMITS_WRONG, facts, { printed: printed(40_680) })).toEqual(['whole', 'limit 1 30']);
  });

  it('turns slabs that are not telescopic the other way', () => {
    const facts = withCharge('energy', (charge) =>
      charge.kind === 'slabs' ? { ...charge, method: 'whole' } : charge,
    );
    expect(ids(SLAB_LIMITS_WRONG, facts)).toEqual(['telescopic']);
  });
});

describe('C36', () => {
  it('takes a tax that is due on gross import on units billed', () => {
    const facts = withCharge('tax', (charge) =>
      charge.kind === 'percentage' ? { ...charge, of: [{ line: 'energy', recomputedOn: 'import' }] } : charge,
    );
    expect(ids(TAX_BASE_WRONG, facts)).toContain('tax net');
    expect(ids(TAX_BASE_WRONG, facts)).not.toContain('tax gross');
  });
});

describe('C38', () => {
  it('solves for the factor where units made are worked out further and the rate is a price', () => {
    // 5 kW × 24 × 30 × 21 % = 756 units at 20 % of 1.27: 756 × 0.254 = 192.024.
    const facts = { ...BASE, tariff: documentOf(networkText), opening: {} };
    const printed = new Map([['line.network', money(19_202)]]);
    const made = NETWORK_ON_ASSUMED_FACTOR.variants(facts, { ...CONTEXT, printed });
    expect(made.map(({ id, fitted }) => [id, fitted])).toEqual([
      ['19', []],
      ['21', ['line.network']],
    ]);
    expect(made.map(({ facts: own }) => own.units['generation'])).toEqual([684_000, 756_000]);
  });
});

describe('a surcharge on gross import', () => {
  it('is one on what netting left, whatever the rule calls it', () => {
    expect(ids(SURCHARGE_ON_IMPORT, BASE)).toEqual(['fuel']);
    expect(ids(SURCHARGE_ON_IMPORT, { ...BASE, tariff: documentOf(surchargesText) })).toEqual(['fuel']);
  });

  it('is not the energy charge, and no subsidy', () => {
    const network: Charge = {
      id: 'network',
      label: 'Network',
      clause: 'TO-2024 cl. 4.2',
      kind: 'per-unit',
      on: 'generation',
      rate: '0.10',
    };
    const versions = DOMESTIC.versions.map((version) => ({
      ...version,
      charges: [network, ...version.charges],
    }));
    expect(ids(SURCHARGE_ON_IMPORT, { ...BASE, tariff: { ...DOMESTIC, versions } })).toEqual(['fuel']);
  });
});
