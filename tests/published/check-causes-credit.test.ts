import { CAUSES, parseDay, readTariff, runBill, type BillFacts, type DayNumber } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import punjabText from '../../tariffs-examples/india/pspcl-kvah/tariff.json?raw';
import marchText from '../../tariffs-examples/india/uppcl-net-metering-2019/tariff.json?raw';
import sameBlockText from '../../tariffs-examples/tarumira/taresco-netting-same-block-only/tariff.json?raw';
import {
  checkCase,
  checkLast,
  explainedBy,
  FROM_NOTHING,
  NOTHING_KNOWN,
  paper,
  textOf,
  type Case,
} from './cause-bills.ts';

// Examples of "Why a net-metered bill is wrong, or right but surprising" (project reference, 2025), section 2.3, and
// C43 of 2.5: units billed, what is to be paid and the difference are those printed there. Lines are worked out here
// from the tariff of its section 2.1. Right in the base month: 99 billed, Rs 613.

interface Example extends Case {
  readonly code: string;
  readonly says: string;
  readonly cause: string;
  readonly variant: string;
  readonly billed: string;
  readonly payable: string;
  readonly difference: string;
}

const MARCH_WITH_640 = {
  from: '2025-03-01',
  to: '2025-04-01',
  units: { import: '100', export: '100', billed: '0' },
  opening: { credit: '640' },
  closing: { credit: '0' },
  payable: '240',
};
const APRIL_OF_NONE = {
  from: '2025-04-01',
  to: '2025-05-01',
  units: { import: '100', export: '100' },
  opening: '0',
};
const FIXED_ALONE = { fixed: '240.00', energy: '0.00' };

const EXAMPLES: readonly Example[] = [
  {
    code: 'C20',
    says: 'credit not brought forward',
    cause: 'credit-not-brought-forward',
    variant: 'credit',
    // 150.00 + 84 × 4.80 = 553.20; 134 × 0.40 = 53.60; 6 % = 33.19.
    bills: [
      paper({
        opening: '0',
        billed: '134',
        lines: { fixed: '240.00', energy: '553.20', fuel: '53.60', tax: '33.19', subsidy: '-75.00' },
        sum: '804.99',
        payable: '805',
      }),
    ],
    billed: '134',
    payable: '805',
    difference: '192',
  },
  {
    code: 'C21',
    says: 'a bank of 210 emptied on 31 December, in the bill of January',
    cause: 'credit-lapsed-early',
    variant: 'before credit',
    opening: '210',
    // 150.00 + 100 × 4.80 = 630.00; 60.00; 37.80; right 240, as 150 of 210 are used.
    bills: [
      paper({
        from: '2025-01-01',
        to: '2025-02-01',
        units: { import: '150', export: '0' },
        opening: '0',
        billed: '150',
        lines: { fixed: '240.00', energy: '630.00', fuel: '60.00', tax: '37.80', subsidy: '-75.00' },
        sum: '892.80',
        payable: '893',
      }),
    ],
    billed: '150',
    payable: '893',
    // 893 − 240.
    difference: '653',
  },
  {
    code: 'C22',
    says: 'credit used twice',
    cause: 'credit-used-twice',
    variant: 'credit',
    // 150.00 + 14 × 4.80 = 217.20; 64 × 0.40 = 25.60; 6 % = 13.03.
    bills: [
      paper({
        billed: '64',
        lines: { fixed: '240.00', energy: '217.20', fuel: '25.60', tax: '13.03', subsidy: '-75.00' },
        sum: '420.83',
        payable: '421',
      }),
    ],
    billed: '64',
    payable: '421',
    difference: '-192',
  },
  {
    code: '4.4',
    says: 'units given credited twice',
    cause: 'export-credited-twice',
    variant: 'twice',
    // "Billing mistakes on record" (project reference, 2025), 4.4, in the base month: 412 − 2 × 278 leaves 144 over.
    bills: [
      {
        ...paper({ billed: '0', lines: FIXED_ALONE, sum: '240.00', payable: '240' }),
        // 144 + 35.
        closing: { credit: '179' },
      },
    ],
    billed: '0',
    payable: '240',
    // 240 − 613.
    difference: '-373',
  },
  {
    code: 'C23',
    says: 'netting inside time blocks',
    cause: 'netted-by-block',
    variant: 'inside-blocks',
    // 180 + 140 = 320: 150.00 + 480.00 + 975.00 + 20 × 8.00 = 1,765.00; 128.00; 105.90.
    bills: [
      {
        ...paper({
          units: {
            import: '412',
            export: '278',
            'import@day': '92',
            'import@peak': '180',
            'import@normal': '140',
            'export@day': '278',
            'export@peak': '0',
            'export@normal': '0',
          },
          billed: '320',
          lines: { fixed: '240.00', energy: '1765.00', fuel: '128.00', tax: '105.90', subsidy: '-75.00' },
          sum: '2163.90',
          payable: '2164',
        }),
        // 186 more are parked: 35 + 278 − 92.
        closing: { credit: '221' },
      },
    ],
    billed: '320',
    payable: '2164',
    difference: '1551',
  },
  {
    code: 'C24',
    says: '412 at retail, less 278 × 3.10',
    cause: 'billed-as-net-billing',
    variant: 'net-billing 3.1',
    // 150.00 + 480.00 + 975.00 + 112 × 8.00 = 2,501.00; 164.80; 150.06; 861.80.
    bills: [
      paper({
        billed: '412',
        lines: {
          fixed: '240.00',
          energy: '2501.00',
          fuel: '164.80',
          tax: '150.06',
          subsidy: '-75.00',
          'export-value': '-861.80',
        },
        sum: '2119.06',
        payable: '2119',
      }),
    ],
    billed: '412',
    payable: '2119',
    difference: '1506',
  },
  {
    code: 'C24',
    says: 'gross: 714 used at retail, less 580 made at the rate of surplus',
    cause: 'billed-as-net-billing',
    variant: 'gross 2.6',
    // No figures there. 150.00 + 480.00 + 975.00 + 414 × 8.00 = 4,917.00; 285.60; 295.02; 580 × 2.60 = 1,508.00.
    bills: [
      paper({
        billed: '714',
        lines: {
          fixed: '240.00',
          energy: '4917.00',
          fuel: '285.60',
          tax: '295.02',
          subsidy: '-75.00',
          'export-value': '-1508.00',
        },
        sum: '4154.62',
        payable: '4155',
      }),
    ],
    billed: '714',
    payable: '4155',
    // 4,155 − 613.
    difference: '3542',
  },
  {
    code: 'C26',
    says: '640 units paid at 1.90 in place of 2.60',
    cause: 'surplus-not-as-due',
    variant: 'at 1.9',
    opening: '640',
    // 240.00 − 640 × 1.90; right 240.00 − 1,664.00 = −1,424.00.
    bills: [
      MARCH_WITH_640,
      paper({
        ...APRIL_OF_NONE,
        billed: '0',
        lines: { ...FIXED_ALONE, surplus: '-1216.00' },
        sum: '-976.00',
        payable: '-976',
      }),
    ],
    billed: '0',
    payable: '-976',
    difference: '448',
  },
  {
    code: 'C26',
    says: '640 units not paid at all',
    cause: 'surplus-not-as-due',
    variant: 'not-paid',
    opening: '640',
    bills: [
      MARCH_WITH_640,
      paper({ ...APRIL_OF_NONE, billed: '0', lines: FIXED_ALONE, sum: '240.00', payable: '240' }),
    ],
    billed: '0',
    payable: '240',
    // 240 + 1,424.
    difference: '1664',
  },
  {
    code: 'C26',
    says: '640 units paid a month late',
    cause: 'surplus-not-as-due',
    variant: 'late at 2.6',
    opening: '640',
    bills: [
      MARCH_WITH_640,
      paper({ ...APRIL_OF_NONE, billed: '0', lines: FIXED_ALONE, sum: '240.00', payable: '240' }),
      paper({
        ...APRIL_OF_NONE,
        from: '2025-05-01',
        to: '2025-06-01',
        billed: '0',
        lines: { ...FIXED_ALONE, surplus: '-1664.00' },
        sum: '-1424.00',
        payable: '-1424',
      }),
    ],
    billed: '0',
    payable: '-1424',
    difference: '-1664',
  },
  {
    code: 'U1',
    says: '35 units of March not credited in April',
    cause: 'surplus-not-as-due',
    variant: 'not-paid',
    tariff: marchText,
    opening: '35',
    // "Billing mistakes on record" (project reference, 2025), U1: 35 × 2.00 = 70 missing. 100 × 6.00 = 600.00.
    bills: [
      { ...MARCH_WITH_640, opening: { credit: '35' }, payable: '0' },
      paper({
        from: '2025-04-01',
        to: '2025-05-01',
        units: { import: '100', export: '0' },
        opening: '0',
        billed: '100',
        lines: { energy: '600.00' },
        sum: '600.00',
        payable: '600',
      }),
    ],
    billed: '100',
    payable: '600',
    difference: '70',
  },
];

describe('causes of netting and credit', () => {
  it.each(EXAMPLES)('$code makes the figures of its example: $says', (example) => {
    const cause = CAUSES.filter(({ id }) => id === example.cause);
    const alone = checkLast(example, cause);
    const [first, second] = alone.explanations;
    expect([first?.attempt.steps[0]?.variant.id, second]).toEqual([example.variant, undefined]);
    const figures = first?.attempt.figures;
    expect([textOf(figures?.get('units.billed')), textOf(figures?.get('payable'))]).toEqual([
      example.billed,
      example.payable,
    ]);
    expect(textOf(alone.difference)).toBe(example.difference);
  });

  it.each(EXAMPLES)('$code is found among all causes: $says', (example) => {
    const all = checkLast(example);
    expect(explainedBy(all)).toContain(example.cause);
    expect(all.explanations.every(({ attempt }) => attempt.steps.length === 1)).toBe(true);
  });
});

describe('C21 over the chain of bills', () => {
  const month = (from: string, to: string, taken: string, payable: string) => ({
    from,
    to,
    units: { import: taken, export: '0', billed: taken },
    opening: { credit: '0' },
    closing: { credit: '0' },
    payable,
  });
  const bills = checkCase({
    opening: '0',
    bills: [
      {
        from: '2024-12-01',
        to: '2025-01-01',
        units: { import: '100', export: '310', billed: '0' },
        opening: { credit: '0' },
        closing: { credit: '0' },
        payable: '240',
      },
      month('2025-01-01', '2025-02-01', '150', '893'),
      month('2025-02-01', '2025-03-01', '120', '728'),
      month('2025-03-01', '2025-04-01', '90', '564'),
    ],
  });

  it('finds the bank emptied in December, and nothing else wrong in the bills after it', () => {
    expect(bills.map(({ verdict }) => verdict)).toEqual(['wrong', 'follows', 'follows', 'right']);
    expect(bills.map(explainedBy)[0]).toEqual(['credit-lapsed-early']);
  });

  it('comes to 2,185 in place of 1,203', () => {
    const right = bills.slice(1).map((bill) => textOf(bill.right?.figures.get('payable')));
    expect(right).toEqual(['240', '399', '564']);
    // 653 + 329 + 0 = 982.
    expect(bills.slice(1).map(({ difference }) => textOf(difference))).toEqual(['653', '329', '0']);
  });
});

describe('C43', () => {
  const all = checkLast({
    bills: [
      paper({
        opening: '0',
        billed: '134',
        // 150.00 + 84 × 4.80 = 553.20; 412 × 0.40 = 164.80; 6 % of 553.20 = 33.19.
        lines: { fixed: '240.00', energy: '553.20', fuel: '164.80', tax: '33.19', subsidy: '-75.00' },
        sum: '916.19',
        payable: '916',
      }),
    ],
  });

  it('finds both causes and no other pair', () => {
    expect([all.verdict, textOf(all.difference)]).toEqual(['wrong', '303']);
    expect(explainedBy(all)).toEqual(['credit-not-brought-forward + surcharge-on-import']);
  });

  it('splits the difference in the order of the stages', () => {
    const { attribution } = all.explanations[0] ?? {};
    // 804.99 − 612.91 = 192.08 for the credit; 164.80 − 53.60 = 111.20 for the surcharge, not 125.20 as alone.
    expect(attribution?.parts.map(({ amount }) => textOf(amount))).toEqual(['192.08', '111.2']);
    // 303 − 303.28.
    expect([textOf(attribution?.rounding), textOf(attribution?.rest)]).toEqual(['-0.28', '0']);
  });
});

function factsOf(tariffText: string, units: Readonly<Record<string, number>>): BillFacts {
  const document = readTariff(tariffText).value?.document;
  if (document === undefined) throw new Error('the tariff of the test cannot be read');
  const [from, to] = [parseDay('2025-05-01'), parseDay('2025-05-31')] as [DayNumber, DayNumber];
  return {
    tariff: document,
    period: { from, to },
    registers: {},
    units: Object.fromEntries(Object.entries(units).map(([name, value]) => [name, value * 1000])),
    powers: {},
    opening: {},
    surplus: { kind: 'as-due' },
    accountLines: [],
    shown: {},
  };
}

/** What a bill of some facts comes to: right, and by each variant of a cause. */
function amounts(facts: BillFacts, id: string): Readonly<Record<string, string>> {
  const of = (own: BillFacts) => textOf(runBill(own, FROM_NOTHING)?.figures.get('payable'));
  const variants = CAUSES.find((cause) => cause.id === id)?.variants(facts, NOTHING_KNOWN) ?? [];
  return {
    right: of(facts),
    ...Object.fromEntries(variants.map((variant) => [variant.id, of(variant.facts)])),
  };
}

describe('causes that need other tariffs', () => {
  it('takes kWh given for kVAh', () => {
    // "Worked examples" (project reference, 2025), C8: 7,900 right, 8,000 by mixed units; at 6.00 each.
    const facts = factsOf(punjabText, { 'import-kvah': 10_000, 'export-kvah': 2100, export: 2000 });
    const made = amounts(facts, 'kilovolt-ampere-hours-mixed');
    expect([made['right'], made['export-kvah']]).toEqual(['47400', '48000']);
  });

  it('sets off over the whole period where the rule nets inside time blocks', () => {
    // Right: 40 − 0 at 8.00, 60 − 0 at 5.00, 20 − 90 at 4.00 leaves 70 that lapse: 320 + 300 = 620.
    // Over the period 90 are used in the order of the tariff: 40 peak, then 50 of 60 normal: 10 × 5.00 + 20 × 4.00 = 130.
    const facts = factsOf(sameBlockText, {
      'import@peak': 40,
      'import@normal': 60,
      'import@solar': 20,
      'export@peak': 0,
      'export@normal': 0,
      'export@solar': 90,
    });
    expect(amounts(facts, 'netted-by-block')).toEqual({ right: '620', any: '130' });
  });
});
