import { describe, expect, it } from 'vitest';
import tariffText from '../../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { periodOf } from '../../../../../tests/support/make.ts';
import { readTariff, type Charge, type TariffDocument } from '../../tariff/index.ts';
import { changedCharges } from '../changed-tariff.ts';
import { withShown, type BillFacts } from '../facts.ts';
import { brokenClauses, clausesOfFigure } from './clauses.ts';

const tariff = readTariff(tariffText).value?.document;
if (tariff === undefined) throw new Error('the example cannot be read');
const TARIFF: TariffDocument = tariff;
const MAY = periodOf('2025-05-01', '2025-06-01');
const FACTS: BillFacts = {
  tariff: TARIFF,
  period: MAY,
  registers: {},
  units: { import: 412_000, export: 278_000 },
  powers: { 'sanctioned-load': 4000 },
  opening: { credit: 35_000 },
  surplus: { kind: 'as-due' },
  accountLines: [],
  shown: {},
};
const charged = (change: (charge: Charge) => Charge | null): TariffDocument =>
  changedCharges(TARIFF, change) ?? TARIFF;

describe('the clauses that a cause breaks', () => {
  it.each<[string, Partial<BillFacts>, readonly string[]]>([
    ['nothing changed', {}, []],
    ['the credit', { opening: { credit: 0 } }, ['NMR-2021 r. 7.2']],
    ['what surplus is paid', { surplus: { kind: 'not-paid' } }, ['NMR-2021 r. 7.3']],
    ['units', { units: { import: 278_000, export: 412_000 } }, ['NMR-2021 r. 7.1']],
    ['the period', { period: periodOf('2025-04-28', '2025-06-01') }, ['TO-2024 cl. 4.3']],
    [
      'arrears, which no tariff knows',
      { accountLines: [{ id: 'arrears', label: 'Arrears', amount: { numerator: 540, denominator: 1 } }] },
      [],
    ],
    [
      'a charge left out',
      { tariff: charged((one) => (one.id === 'subsidy' ? null : one)) },
      ['TO-2024 cl. 5.3'],
    ],
    [
      'a charge on something else',
      {
        tariff: charged((one) =>
          one.id === 'fuel' && one.kind === 'per-unit' ? { ...one, on: 'import' } : one,
        ),
      },
      ['TO-2024 cl. 5.1'],
    ],
    [
      'rounding',
      { tariff: { ...TARIFF, rounding: { ...TARIFF.rounding, line: { step: '1', mode: 'up' } } } },
      ['TO-2024 cl. 6'],
    ],
    ['the category', { tariff: { ...TARIFF, id: 'tarumira-shop' } }, ['TO-2024 cl. 3.1']],
  ])('%s', (_, change, clauses) => {
    expect(brokenClauses(FACTS, { ...FACTS, ...change }).map(({ clause }) => clause)).toEqual(clauses);
  });

  it('are of the days rule where the days are printed otherwise', () => {
    const after = withShown(FACTS, { days: { numerator: 34, denominator: 1 } });
    expect(brokenClauses(FACTS, after).map(({ clause }) => clause)).toEqual(['TO-2024 cl. 4.3']);
  });

  it('come with title, publisher, year and the day since which they are in force', () => {
    expect(brokenClauses(FACTS, { ...FACTS, opening: { credit: 0 } })).toEqual([
      {
        clause: 'NMR-2021 r. 7.2',
        source: {
          title: 'Net Metering Regulations 2021',
          publisher: 'Tarumira Electricity Commission (invented)',
          year: '2021',
        },
        from: '2021-04-01',
      },
    ]);
  });
});

it.each([
  ['line.tax', ['TO-2024 cl. 5.2']],
  ['line.surplus', ['NMR-2021 r. 7.3']],
  ['line.green-fee', []],
  ['units.billed', ['NMR-2021 r. 7.1']],
  ['opening.credit', ['NMR-2021 r. 7.2']],
  ['payable', ['TO-2024 cl. 6']],
  ['reading.import.present', ['NMR-2021 r. 7.1']],
  ['arrears', []],
  ['days', []],
])('%s stands in %j', (name, clauses) => {
  expect(clausesOfFigure(name, TARIFF, MAY).map(({ clause }) => clause)).toEqual(clauses);
});

it('takes the version that is in force in the period', () => {
  const [tax] = clausesOfFigure('line.tax', TARIFF, periodOf('2024-02-01', '2024-03-01'));
  expect([tax?.clause, tax?.from]).toEqual(['TO-2023 cl. 5.2', '2023-04-01']);
});
