import { describe, expect, it } from 'vitest';
import { accountText, demoTariff } from '../../../../tests/support/demo.ts';
import { valueOf } from '../../../../tests/support/make.ts';
import { unexplained } from '../../../../tests/support/recompute.ts';
import { keepBook, readAccount, type Account, type AccountDocument, type ReadingRow } from '../index.ts';

const register = { digits: '5', decimals: '1' } as const;

/** The base household, with a two-way meter that took the place of the first on 16 April. */
function accountWith(later: NonNullable<AccountDocument['meters']['grid']['later']>): Account {
  const document = JSON.parse(accountText({ openingCredit: '35' })) as AccountDocument;
  const { meters } = document;
  const text = JSON.stringify({ ...document, meters: { ...meters, grid: { ...meters.grid, later } } });
  const { value, findings } = readAccount(text);
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

const LATER = {
  from: '2025-04-16',
  serial: 'P-2',
  multiplyingFactor: '1',
  import: register,
  export: register,
} as const;
const tariff = demoTariff();

const row = (date: string, taken: string, given: string, made: string): ReadingRow => ({
  date,
  import: taken,
  export: given,
  generation: made,
});
const event = (kind: 'final' | 'first', taken: string, given: string, date = '2025-04-16'): ReadingRow => ({
  date,
  event: kind,
  import: taken,
  export: given,
});
const FROM = row('2025-04-01', '12480', '8310', '15225');
const TO = row('2025-05-01', '209', '138', '15805');

const billed = (account: Account, readings: readonly ReadingRow[]) => {
  const { value, findings } = keepBook({ account, tariff, readings });
  const [month] = value.months;
  const codes = findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code);
  return { month, codes };
};

describe('a meter replaced inside a period', () => {
  // Worked out by a script outside the project: 210 + 202 taken, 140 + 138 given, credit 35: 99 billed, 613.
  const change = [FROM, event('final', '12690', '8450'), event('first', '00007', '0'), TO];

  it('is billed from both: the last of the old, the first of the new', () => {
    const { month, codes } = billed(accountWith([LATER]), change);
    expect(codes).toEqual([]);
    expect(
      [month?.energy.import, month?.energy.export, month?.energy.generation].map(
        (one) => one && valueOf(one),
      ),
    ).toEqual(['412', '278', '580']);
    expect(month && valueOf(month.bill.payable)).toBe('613');
    expect(month && unexplained(month.energy.import)).toEqual([]);
    expect(month?.energy.import.inputs.map(({ inputs }) => inputs.map(valueOf))).toEqual([
      ['12690', '12480'],
      ['209', '7'],
    ]);
  });

  it('counts each with its own factor, rounded once where the rule rounds the difference', () => {
    const account = accountWith([{ ...LATER, multiplyingFactor: '1.5' }]);
    const rule = ['"roundedAt": "reading"', '"roundedAt": "difference"'] as const;
    const { value } = keepBook({ account, tariff: demoTariff(rule), readings: change });
    // 210 + 202 × 1.5 = 513; 140 + 138 × 1.5 = 347.
    expect(value.months.map(({ energy }) => [valueOf(energy.import), valueOf(energy.export)])).toEqual([
      ['513', '347'],
    ]);
    const halves = [FROM, event('final', '12690.3', '8450'), event('first', '7', '0'), TO];
    const [half] = keepBook({ account, tariff: demoTariff(rule), readings: halves }).value.months;
    // 210.3 + 303 = 513.3, cut once.
    expect(half && valueOf(half.energy.import)).toBe('513');
    expect(half && unexplained(half.energy.import)).toEqual([]);
  });

  it.each([
    ['no readings of the change', [FROM, TO], ['reading/meter-changed']],
    ['the old meter alone', [FROM, event('final', '12690', '8450'), TO], ['reading/final-without-first']],
    ['the new meter alone', [FROM, event('first', '7', '0'), TO], ['reading/first-without-final']],
    [
      'days between the two',
      [FROM, event('final', '12690', '8450', '2025-04-14'), event('first', '7', '0'), TO],
      ['reading/unmetered-days'],
    ],
    [
      'a change on another day than the account says',
      [FROM, event('final', '12690', '8450', '2025-04-17'), event('first', '7', '0', '2025-04-17'), TO],
      ['reading/meter-changed', 'reading/meter-unknown'],
    ],
    ['nothing after it', [FROM, event('final', '12690', '8450')], ['reading/none', 'reading/change-at-end']],
    [
      'a register left out',
      [FROM, { date: '2025-04-16', event: 'final', import: '12690' }, event('first', '7', '0'), TO],
      ['reading/missing-register', 'reading/first-without-final'],
    ],
  ] as const)('is not billed from %s', (_, readings, codes) => {
    expect(billed(accountWith([LATER]), readings).codes).toEqual(codes);
  });

  it('needs no readings where a factor changes on the day of a reading', () => {
    const account = accountWith([{ ...LATER, serial: 'P-1', from: '2025-05-01', multiplyingFactor: '20' }]);
    const readings = [
      FROM,
      row('2025-05-01', '12892', '8588', '15805'),
      row('2025-06-01', '12902', '8590', '16200'),
    ];
    const { value, findings } = keepBook({ account, tariff, readings });
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(value.months.map(({ energy }) => valueOf(energy.import))).toEqual(['412', '200']);
  });
});

describe('changes of two meters', () => {
  const document = JSON.parse(accountText({ openingCredit: '35' })) as AccountDocument;
  const generation = { serial: 'G-1', multiplyingFactor: '1', generation: register };
  const accountOf = (day: string): Account => {
    const later = [{ ...generation, from: day, serial: 'G-2', multiplyingFactor: '2' }];
    const meters = { ...document.meters, generation: { ...generation, later } };
    const { value } = readAccount(JSON.stringify({ ...document, meters }));
    if (value === null) throw new Error('no account');
    return value;
  };

  it('are told apart: a new generation meter in the account is no new two-way meter', () => {
    const readings = [FROM, event('final', '12690', '8450'), event('first', '7', '0'), TO];
    expect(billed(accountOf('2025-04-16'), readings).codes).toEqual([
      'reading/meter-unknown',
      'reading/meter-changed',
    ]);
  });

  it('are asked for on their day: readings of another day do not stand in for them', () => {
    const readings: readonly ReadingRow[] = [
      FROM,
      { date: '2025-04-20', event: 'final', generation: '15505' },
      { date: '2025-04-20', event: 'first', generation: '0' },
      row('2025-05-01', '12892', '8588', '100'),
    ];
    expect(billed(accountOf('2025-04-10'), readings).codes).toEqual(['reading/meter-changed']);
    const { month, codes } = billed(accountOf('2025-04-20'), readings);
    // 280 by the old meter, 100 by the new one times 2.
    expect(codes).toEqual([]);
    expect(month?.energy.generation && valueOf(month.energy.generation)).toBe('480');
  });
});

describe('meters whose numbers nobody wrote down', () => {
  const { meters, ...document } = JSON.parse(accountText({ openingCredit: '35' })) as AccountDocument;
  const grid = { ...meters.grid, serial: '' };
  const unnamed = (later: readonly object[]): Account => {
    const text = JSON.stringify({ ...document, meters: { ...meters, grid: { ...grid, later } } });
    const { value, findings } = readAccount(text);
    if (value === null) throw new Error(JSON.stringify(findings));
    return value;
  };
  const same = { ...grid, from: '2025-04-16' };

  it('are two where the account says that the second began', () => {
    const change = [FROM, event('final', '12690', '8450'), event('first', '7', '0'), TO];
    expect(billed(unnamed([same]), change).codes).toEqual([]);
    expect(billed(unnamed([]), change).codes).toEqual(['reading/meter-unknown']);
  });

  it('are not taken for one: the readings of the change are asked for', () => {
    expect(billed(unnamed([same]), [FROM, row('2025-05-01', '12900', '8600', '15805')]).codes).toEqual([
      'reading/meter-changed',
    ]);
  });
});

describe('a generation counter that begins anew', () => {
  const account = accountWith([]);
  const reset = row('2025-05-01', '12892', '8588', '300');

  it('is asked about, and own use is not worked out', () => {
    const { month, codes } = billed(account, [FROM, reset]);
    expect(codes).toEqual(['reading/began-anew']);
    expect(month?.energy.selfConsumption).toBeNull();
    expect(month && valueOf(month.bill.payable)).toBe('613');
  });

  it('is counted whole where its last number is known', () => {
    const known: readonly ReadingRow[] = [
      FROM,
      { date: '2025-04-15', event: 'final', generation: '15505' },
      { date: '2025-04-15', event: 'first', generation: '0' },
      reset,
    ];
    const { month, codes } = billed(account, known);
    expect(codes).toEqual([]);
    expect(month?.energy.generation && valueOf(month.energy.generation)).toBe('580');
  });

  it('stays an error where the number is more than the plant can make', () => {
    const { codes } = billed(account, [FROM, row('2025-05-01', '12892', '8588', '15100')]);
    expect(codes).toEqual(['reading/below-before']);
  });
});

describe('registers of any width pass their full scale', () => {
  // Energy users' help pages of a retailer (a dial of five digits turns over at 100,000 kWh), and the same rule
  // for other widths.
  it.each([
    ['5', '0', '99950', '00120', '170'],
    ['6', '0', '999950', '000120', '170'],
    ['7', '0', '9999950', '0000120', '170'],
    ['5', '1', '99999.5', '00012.3', '13'],
  ] as const)('%s digits and %s decimals: %s to %s', (digits, decimals, before, after, units) => {
    const { value } = readAccount(accountText({ digits, decimals, generationMeter: false }));
    if (value === null) throw new Error('no account');
    const readings = [
      { date: '2025-04-01', import: before, export: '10' },
      { date: '2025-05-01', import: after, export: '20' },
    ];
    const [month] = keepBook({ account: value, tariff, readings }).value.months;
    expect(month && valueOf(month.energy.import)).toBe(units);
  });

  it('behind a factor with decimals: 99 999.7 to 00 000.4 is 0.7, times 1.5', () => {
    const { value } = readAccount(accountText({ multiplyingFactor: '1.5', generationMeter: false }));
    if (value === null) throw new Error('no account');
    const readings = [
      { date: '2025-04-01', import: '99999.7', export: '10' },
      { date: '2025-05-01', import: '0.4', export: '20' },
    ];
    const { findings } = keepBook({ account: value, tariff, readings });
    expect(findings.map(({ code, values }) => [code, values['units']])[0]).toEqual([
      'reading/rolled-over',
      '1.1',
    ]);
  });
});
