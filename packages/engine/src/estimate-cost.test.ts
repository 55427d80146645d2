import { describe, expect, it } from 'vitest';
import { accountOf, demoTariff } from '../../../tests/support/demo.ts';
import { valueOf } from '../../../tests/support/make.ts';
import { editRow, keepBook, type ReadingRow } from './index.ts';
import { estimateCosts, type Compared } from './estimate-cost.ts';

const account = accountOf({ sanctionedLoad: '4', openingCredit: '35' });
const tariff = demoTariff();

const row = (date: string, taken: string, given: string, made: string): ReadingRow => ({
  date,
  import: taken,
  export: given,
  generation: made,
});
const FIRST = row('2025-04-01', '12480', '8310', '15225');
const LAST = row('2025-05-31', '13257', '8900', '16400');

/** Estimated, right and the difference, as exact texts. */
const texts = ({ estimated, right, difference }: Compared) => [estimated, right, difference].map(valueOf);

describe('what an estimate cost', () => {
  // Worked out by a script of decimal arithmetic outside the project: an estimate of 430 units taken and none
  // given, then an actual reading; a photo of the day of the estimate shows 12892 and 8588.
  const estimate: ReadingRow = { ...row('2025-05-01', '12910', '8310', '15805'), status: 'estimated' };
  const photo = [
    { register: 'import', value: '12892', method: 'own-reading' },
    { register: 'export', value: '8588', method: 'own-reading' },
    { register: 'generation', value: '15805', method: 'own-reading' },
  ] as const;

  it('is cash turned into cheap units, where import alone was estimated high', () => {
    const readings = [FIRST, photo.reduce(editRow, estimate), LAST];
    const [cost] = estimateCosts({ account, tariff, readings }).value;
    expect(cost?.months.map((month) => texts(month.payable))).toEqual([
      ['2830', '613', '2217'],
      ['240', '360', '-120'],
    ]);
    expect(cost === undefined ? [] : texts(cost.payable)).toEqual(['3070', '973', '2097']);
    expect(cost?.credit == null ? [] : texts(cost.credit)).toEqual(['243', '0', '243']);
    expect([cost?.isByDays, cost?.isWhole]).toEqual([false, true]);
    expect(cost === undefined ? [] : texts(cost.import)).toEqual(['777', '777', '0']);
  });

  it('is told by days where nobody read the meter', () => {
    const [cost] = estimateCosts({ account, tariff, readings: [FIRST, estimate, LAST] }).value;
    // 777 units in 60 days are 388.5 in 30; 590 given are 295.
    expect(cost?.months.map((month) => [texts(month.import), texts(month.export)])).toEqual([
      [
        ['430', '388', '42'],
        ['0', '295', '-295'],
      ],
      [
        ['347', '389', '-42'],
        ['590', '295', '295'],
      ],
    ]);
    expect(cost?.isByDays).toBe(true);
  });

  it('cannot be told for the bill after an estimate that lies above the next reading', () => {
    const high: ReadingRow = { ...row('2025-05-01', '13300', '8588', '15805'), status: 'estimated' };
    const { value, findings } = estimateCosts({ account, tariff, readings: [FIRST, high, LAST] });
    expect(value.map(({ months, isWhole }) => [months.length, isWhole])).toEqual([[1, false]]);
    expect(findings.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toEqual([
      'reading/below-estimate',
    ]);
  });

  it('is nothing where nothing was estimated', () => {
    expect(estimateCosts({ account, tariff, readings: [FIRST, LAST] }).value).toEqual([]);
  });

  it('leaves the book as the rows say', () => {
    const edited = keepBook({ account, tariff, readings: [FIRST, photo.reduce(editRow, estimate), LAST] });
    expect(edited.value.months.map(({ bill }) => valueOf(bill.payable))).toEqual(['613', '360']);
  });
});
