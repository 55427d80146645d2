import { CAUSES, type PrintedBillDocument, type ReadingRow } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { checkBills, DOMESTIC, domesticWith, printed, text, type Paper } from './readings-cause-bills.ts';
import { BASE, EXAMPLES, RIGHT, withReadings, type Example } from './readings-cause-examples.ts';

// Figures: "Why a net-metered bill is wrong, or right but surprising" (project reference, 2025), section 2.2.

/** Causes that need more than what is billed and what is to be paid: what they are solved from, or what they change. */
const SOLVED: readonly string[] = [
  'estimated-reading',
  'another-meter',
  'phase-wise-registers',
  'digit-error',
  'step-back-as-rollover',
  'generation-meter-wrong',
];

/** A bill of which no more is printed than the reference tells, and what a solved cause is solved from. */
function bare({ cause, variant }: Example, whole: PrintedBillDocument): PrintedBillDocument {
  const { lines, sum, opening, closing, ...rest } = whole;
  expect([lines, sum, opening, closing]).not.toContain(undefined);
  if (SOLVED.includes(cause) || variant === 'printed') return rest;
  const { from, to, units = {}, payable } = rest;
  return { from, to, units: { billed: units['billed'] ?? '' }, payable };
}

describe.each(EXAMPLES)('$code', (example) => {
  const { known = BASE, tariff = DOMESTIC, paper, says, cause, variant, ties = [] } = example;
  const whole = printed(paper, tariff);

  it('prints what the reference says', () => {
    expect([whole.units?.['billed'], whole.payable]).toEqual(says.slice(0, 2));
  });

  it('is made of the right facts by its cause', () => {
    const only = CAUSES.filter(({ id }) => id === cause);
    const [checked] = checkBills(known, [bare(example, whole)], { causes: only });
    const made = checked?.explanations.map(({ attempt }) => attempt) ?? [];
    const own = made.find(({ steps }) => steps.map((step) => step.variant.id).join() === variant);
    expect(made.map(({ steps }) => steps.map((step) => step.variant.id).join())).toContain(variant);
    expect([text(own?.figures.get('units.billed')), text(own?.figures.get('payable'))]).toEqual(
      says.slice(0, 2),
    );
    expect(text(checked?.difference)).toBe(says[2]);
  });

  it('is explained by its cause first among all causes', () => {
    const [checked] = checkBills(known, [whole]);
    const found = checked?.explanations ?? [];
    expect([checked?.verdict, text(checked?.difference)]).toEqual(['wrong', says[2]]);
    expect(found.map(({ attempt }) => attempt.steps.map((step) => step.cause.id).join())).toEqual([
      cause,
      ...ties,
    ]);
    expect(found[0]?.attempt.steps[0]?.variant.id).toBe(variant);
  });
});

describe('C07 an estimate of import that is set right a month later', () => {
  // May printed 430 / 0; June goes on from there: 13,257 − 12,910 = 347 and 8,900 − 8,310 = 590, 243 carried forward.
  const june: ReadingRow = { date: '2025-06-30', import: '13257', export: '8900', generation: '16400' };
  const may = printed(
    {
      ...RIGHT,
      imported: 430,
      exported: 0,
      status: 'estimated',
      ...withReadings({ import: ['12480', '12910'], export: ['8310', '8310'] }),
    },
    DOMESTIC,
  );
  const next = printed(
    {
      from: '2025-05-31',
      to: '2025-06-30',
      readings: { import: ['12910', '13257'], export: ['8310', '8900'] },
      imported: 347,
      exported: 590,
      opening: 0,
    },
    DOMESTIC,
  );
  const [first, second] = checkBills({ ...BASE, readings: [...BASE.readings, june] }, [may, next]);

  it('costs 2,097 over both months', () => {
    expect([may.payable, next.payable]).toEqual(['2830', '240']);
    expect([first, second].map((one) => text(one?.right?.figures.get('payable')))).toEqual(['613', '360']);
    // 2,830 + 240 − 973 = 2,217 − 120.
    expect([text(first?.difference), text(second?.difference)]).toEqual(['2217', '-120']);
    expect(next.closing).toEqual({ credit: '243' });
  });

  it('is wrong in May by an estimate, and June follows from it', () => {
    const [found] = first?.explanations ?? [];
    expect(found?.attempt.steps.map(({ cause }) => cause.id)).toEqual(['estimated-reading']);
    expect(second?.verdict).toBe('follows');
  });
});

/** Six percent of the energy charge of everything imported: 0.06 × 3.00, 4.80, 6.50 and 8.00. */
const TAX_ON_IMPORT = {
  id: 'tax',
  label: 'Electricity tax',
  kind: 'slabs',
  clause: 'TO-2024 cl. 5.2',
  on: 'import',
  method: 'telescopic',
  slabs: [
    { upTo: '50', rate: '0.18' },
    { upTo: '150', rate: '0.288' },
    { upTo: '300', rate: '0.39' },
    { rate: '0.48' },
  ],
  scaledBy: 'month',
};

describe('C14 phases one by one, where gross units are billed', () => {
  const wrong: Paper = {
    ...RIGHT,
    imported: 532,
    exported: 398,
    ...withReadings({ import: ['12480', '13012'], export: ['8310', '8708'] }),
  };
  const bill = (tariff: string, payable: string) => {
    const { from, to, units = {}, readings } = printed(wrong, DOMESTIC);
    const { import: taken = '', export: given = '' } = units;
    return checkBills({ ...BASE, tariff }, [
      { from, to, readings, units: { import: taken, export: given }, payable },
    ])[0];
  };
  const sums = (checked: ReturnType<typeof bill>): readonly string[] => [
    text(checked?.right?.figures.get('sum')),
    text(checked?.explanations[0]?.attempt.figures.get('sum')),
    text(checked?.explanations[0]?.attribution?.parts[0]?.amount),
  ];

  it('makes 865.06 of fuel and tax on import 970.66', () => {
    const tariff = domesticWith((charge) => {
      if (charge['id'] === 'fuel') return { ...charge, on: 'import' };
      return charge['id'] === 'tax' ? TAX_ON_IMPORT : charge;
    });
    const checked = bill(tariff, '971');
    expect(checked?.explanations[0]?.attempt.steps[0]?.cause.id).toBe('phase-wise-registers');
    expect(sums(checked)).toEqual(['865.06', '970.66', '105.6']);
  });

  it('makes 2,119.06 under net billing 2,812.66', () => {
    const tariff = domesticWith(
      (charge) => (charge['on'] === 'billed' ? { ...charge, on: 'import' } : charge),
      [
        {
          id: 'given',
          label: 'Units given',
          kind: 'per-unit',
          clause: 'NMR-2021 r. 7.8',
          on: 'export',
          rate: '-3.10',
        },
      ],
    );
    const checked = bill(tariff, '2813');
    expect(checked?.explanations[0]?.attempt.steps[0]?.cause.id).toBe('phase-wise-registers');
    expect(sums(checked)).toEqual(['2119.06', '2812.66', '693.6']);
  });
});
