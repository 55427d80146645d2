import { describe, expect, it } from 'vitest';
import timeBlocksText from '../../../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';
import { accountText, demoTariff, goodTariff } from '../../../../tests/support/demo.ts';
import { valueOf } from '../../../../tests/support/make.ts';
import { unexplained } from '../../../../tests/support/recompute.ts';
import { keepBook, readAccount, type Account, type AccountDocument, type ReadingRow } from '../index.ts';

type Rates = NonNullable<AccountDocument['meters']['grid']['import']['rates']>;

const TWO: Rates = [{ id: '1' }, { id: '2' }];

function accountWith(taken: Rates = TWO, given: Rates = TWO, decimals: '0' | '1' = '0'): Account {
  const document = JSON.parse(accountText({ generationMeter: false, decimals })) as AccountDocument;
  const { grid } = document.meters;
  const meters = {
    grid: { ...grid, import: { ...grid.import, rates: taken }, export: { ...grid.export, rates: given } },
  };
  const { value, findings } = readAccount(JSON.stringify({ ...document, meters }));
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

const row = (
  date: string,
  taken: readonly string[],
  given: readonly string[],
  total?: string,
): ReadingRow => ({
  date,
  rates: {
    import: { '1': taken[0] ?? '', '2': taken[1] ?? '' },
    export: { '1': given[0] ?? '', '2': given[1] ?? '' },
  },
  ...(total === undefined ? {} : { import: total }),
});

const tariff = demoTariff();
const keep = (account: Account, readings: readonly ReadingRow[]) => keepBook({ account, tariff, readings });
const doubts = (findings: readonly { severity: string; code: string }[]): string[] =>
  findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code);

describe('registers of two rates', () => {
  it('make the units between them, each with its own full scale', () => {
    const { value, findings } = keep(accountWith(), [
      row('2025-04-01', ['99980', '500'], ['10', '20']),
      row('2025-05-01', ['00030', '610'], ['40', '25']),
    ]);
    expect(doubts(findings)).toEqual([]);
    // 50 past the full scale and 110; 30 and 5.
    const [month] = value.months;
    expect([month?.energy.import, month?.energy.export].map((one) => one && valueOf(one))).toEqual([
      '160',
      '35',
    ]);
    expect(month && unexplained(month.energy.import)).toEqual([]);
  });

  it('agree with a total to the digits that a display cuts off', () => {
    // 300.9 + 200.9 = 501.8: the display shows 300, 200 and 501.
    const readings = [
      row('2025-04-01', ['100', '100'], ['0', '0'], '201'),
      row('2025-05-01', ['300', '200'], ['0', '1'], '501'),
    ];
    const { value, findings } = keep(accountWith(), readings);
    expect(doubts(findings)).toEqual([]);
    // The total is billed where it was read: 501 − 201.
    expect(value.months.map(({ energy }) => valueOf(energy.import))).toEqual(['300']);
  });

  it.each([
    ['two steps more than the rates', '502', ['reading/rates-differ']],
    ['one step more', '501', []],
    ['one step less', '499', ['reading/rates-differ']],
    ['as much', '500', []],
  ] as const)('are checked against a total that is %s', (_, total, codes) => {
    const { findings } = keep(accountWith(), [
      row('2025-04-01', ['100', '100'], ['0', '0'], '200'),
      row('2025-05-01', ['300', '200'], ['0', '1'], total),
    ]);
    expect(doubts(findings)).toEqual(codes);
  });

  it('may begin later than the total: the same difference at both ends is no fault', () => {
    const { findings } = keep(accountWith(), [
      row('2025-04-01', ['100', '100'], ['0', '0'], '1200'),
      row('2025-05-01', ['300', '200'], ['0', '1'], '1500'),
    ]);
    expect(findings.map(({ code }) => code)).toEqual([
      'reading/rates-differ',
      'reading/rates-offset',
      'energy/self-consumption-unknown',
    ]);
  });

  it('are each asked for, and none besides', () => {
    const { findings } = keep(accountWith(), [
      { date: '2025-04-01', rates: { import: { '1': '5', '3': '6' }, export: { '1': '1', '2': '1' } } },
      row('2025-05-01', ['300', '200'], ['0', '1']),
    ]);
    expect(findings.map(({ code, path }) => [code, path.join('.')])).toEqual([
      ['reading/unknown-rate', 'readings.0.rates.import.3'],
      ['reading/missing-register', 'readings.0.rates.import.2'],
    ]);
  });
});

describe('rates that stand for time blocks', () => {
  const blocks: Rates = [
    { id: '1', block: 'peak' },
    { id: '2', block: 'normal' },
    { id: '3', block: 'solar' },
  ];
  const three = (date: string, taken: readonly string[], given: readonly string[]): ReadingRow => ({
    date,
    rates: {
      import: { '1': taken[0] ?? '', '2': taken[1] ?? '', '3': taken[2] ?? '' },
      export: { '1': given[0] ?? '', '2': given[1] ?? '', '3': given[2] ?? '' },
    },
  });
  // The units of the worked case "hot-and-rest" of this tariff, as registers that start anywhere.
  const readings = [
    three('2025-06-01', ['1000', '2000', '3000'], ['10', '20', '30']),
    three('2025-07-01', ['1060', '2120', '3020'], ['10', '40', '120']),
    three('2025-08-01', ['1110', '2220', '3100'], ['15', '140', '120']),
  ];
  const byBlocks = goodTariff(timeBlocksText);

  it('are billed one by one: peak 60, normal 100, solar hours 0, then 45, 0 and 10', () => {
    const { value, findings } = keepBook({
      account: accountWith(blocks, blocks),
      tariff: byBlocks,
      readings,
    });
    expect(doubts(findings)).toEqual([]);
    expect(value.months.map(({ bill }) => valueOf(bill.payable))).toEqual(['1040', '400']);
    expect(value.months.map(({ energy }) => valueOf(energy.import))).toEqual(['200', '230']);
    expect(value.months.flatMap(({ bill }) => unexplained(bill.payable))).toEqual([]);
  });

  it('are an error where the account does not say which block a rate is', () => {
    const unnamed: Rates = [{ id: '1', block: 'peak' }, { id: '2', block: 'day' }, { id: '3' }];
    const { findings } = keepBook({ account: accountWith(unnamed, blocks), tariff: byBlocks, readings });
    expect(findings.map(({ code, values }) => [code, values['register']])).toEqual([
      ['energy/rate-without-block', 'import rate 2'],
      ['energy/rate-without-block', 'import rate 3'],
    ]);
  });
});
