import { describe, expect, it } from 'vitest';
import { tariffOf, valueOf } from '../../../tests/support/make.ts';
import { unexplained } from '../../../tests/support/recompute.ts';
import { keepPeriods } from './keep-periods.ts';
import type { UnitsPeriod } from './periods-document.ts';
import type { Charge, TariffDocument } from './tariff/index.ts';

const words = (id: string) => ({ id, label: id, clause: 'T 1' }) as const;
const CHARGES: readonly Charge[] = [
  { ...words('fixed'), kind: 'fixed', amount: '100' },
  {
    ...words('energy'),
    kind: 'slabs',
    on: 'billed',
    method: 'telescopic',
    slabs: [{ upTo: '100', rate: '3' }, { rate: '7' }],
  },
  { ...words('tax'), kind: 'percentage', percent: '10', of: ['fixed', 'energy'] },
];
const NETTING: TariffDocument['settlements'][number] = {
  from: '2024-01-01',
  scheme: 'unit-netting',
  clause: 'T 5',
  carry: { clause: 'T 5' },
  close: { clause: 'T 6', on: '12-31', surplus: 'lapses' },
};

const tariff = (trueUp?: TariffDocument['trueUp']) =>
  tariffOf(CHARGES, { settlements: [NETTING], ...(trueUp === undefined ? {} : { trueUp }) });

const EQUAL = { clause: 'T 8', spread: 'equal-parts', units: 'whole' } as const;

const month = (number: number, units: string, more: Partial<UnitsPeriod> = {}): UnitsPeriod => ({
  from: `2025-0${String(number)}-01`,
  to: `2025-0${String(number + 1)}-01`,
  quantities: { import: units, export: '0' },
  ...more,
});

const ESTIMATED = { provisional: true } as const;
const estimates = [1, 2, 3].map((number) => month(number, '120', ESTIMATED));

const bill = (periods: readonly UnitsPeriod[], trueUp: TariffDocument['trueUp'] = EQUAL) =>
  keepPeriods({ account: {}, tariff: tariff(trueUp), periods });

const lines = ({ value }: ReturnType<typeof bill>) =>
  Object.fromEntries(value.at(-1)?.bill.lines.map(({ figure }) => [figure.id, valueOf(figure)]) ?? []);

describe('provisional bills', () => {
  it('are set right line by line when the reading comes; the fixed charge is not credited twice', () => {
    const kept = bill([...estimates, month(1, '450', { to: '2025-04-01', replaces: '3' })]);
    expect(kept.findings).toEqual([]);
    // 120 units: 100 × 3 + 20 × 7 = 440. 150 units: 300 + 350 = 650. Three times 210 more, and 10 % of it.
    expect(kept.value.slice(0, 3).map((one) => valueOf(one.bill.payable))).toEqual(['594', '594', '594']);
    expect(lines(kept)).toEqual({ fixed: '0', energy: '630', tax: '63' });
    expect(kept.value.at(-1)?.bill.lines.flatMap(({ figure }) => unexplained(figure))).toEqual([]);
  });

  it('are credited where less was used than estimated', () => {
    const kept = bill([...estimates, month(1, '300', { to: '2025-04-01', replaces: '3' })]);
    // Three times 100 units: 300 each, 140 less.
    expect(lines(kept)).toEqual({ fixed: '0', energy: '-420', tax: '-42' });
  });

  it('come to nothing where the estimate was right', () => {
    const kept = bill([...estimates, month(1, '360', { to: '2025-04-01', replaces: '3' })]);
    expect(lines(kept)).toEqual({ fixed: '0', energy: '0', tax: '0' });
  });

  it('are followed by a month that is billed with them, whole', () => {
    const kept = bill([...estimates, month(1, '402', { to: '2025-05-01', replaces: '3' })]);
    // 402 over four: 101, 101, 100, 100. Energy 307 + 307 + 300 + 300 = 1214, of which 3 × 440 were billed.
    expect(lines(kept)).toEqual({ fixed: '100', energy: '-106', tax: '-0.6' });
  });

  it('can be spread by days', () => {
    const rule = { clause: 'T 8', spread: 'by-days', units: 'exact' } as const;
    const kept = bill([...estimates, month(1, '450', { to: '2025-04-01', replaces: '3' })], rule);
    // 450 over 31, 28 and 31 of 90 days: 155, 140, 155. 300 + 385, 300 + 280, 300 + 385 = 1950, less 1320.
    expect(lines(kept)).toEqual({ fixed: '0', energy: '630', tax: '63' });
  });

  it('hand on the credit that the right units leave', () => {
    const sunny = month(4, '0', { quantities: { import: '0', export: '50' } });
    const last = month(5, '60');
    const kept = bill([...estimates, month(1, '450', { to: '2025-04-01', replaces: '3' }), sunny, last]);
    expect(kept.value.at(-1)?.passbook?.billed).toMatchObject({ numerator: 10_000 });
  });

  it.each([
    [
      'without a rule',
      [...estimates, month(1, '450', { to: '2025-04-01', replaces: '3' })],
      undefined,
      'period/no-true-up-rule',
    ],
    [
      'of bills that were none',
      [month(1, '120'), month(1, '130', { replaces: '1' })],
      EQUAL,
      'period/not-provisional',
    ],
    [
      'of more bills than there are',
      [month(1, '120', ESTIMATED), month(1, '130', { replaces: '2' })],
      EQUAL,
      'period/not-provisional',
    ],
    [
      'of other days',
      [...estimates, month(2, '450', { to: '2025-04-01', replaces: '3' })],
      EQUAL,
      'period/not-the-same-days',
    ],
  ] as const)('are refused %s', (_, periods, rule, code) => {
    const kept = keepPeriods({ account: {}, tariff: tariff(rule), periods });
    expect(kept.findings.map((finding) => finding.code)).toEqual([code]);
  });
});
