import { describe, expect, it } from 'vitest';
import { placedIn, readNem13 } from '../../../../tests/support/nem.ts';

const HEAD = '100,NEM13,202401010900,SENDER,RECEIVER\n';
const END = '900\n';

interface Parts {
  readonly id?: string;
  readonly suffix?: string;
  readonly direction?: string;
  readonly previous?: string;
  readonly current?: string;
  readonly quantity?: string;
  readonly unit?: string;
}

/** A record 250; a read is "number,time,quality". */
const record = (parts: Parts = {}): string => {
  const { id = '1', suffix = '11', direction = 'E', quantity = '', unit = 'kWh' } = parts;
  const { previous = '00100.5,20231001093055,A', current = '00200.5,20231101000000,A' } = parts;
  const reads = `${previous},,,${current},,`;
  return `250,N1,11,${id},${suffix},D1,M1,${direction},${reads},${quantity},${unit},20240201,20240101,\n`;
};

const codesOf = (...records: readonly string[]): readonly string[] => {
  const text = HEAD + records.join('') + END;
  return placedIn(text, readNem13(text).findings);
};

describe('a record of NEM13', () => {
  it('gives two reads, their digits as written, with day and minute of market time', () => {
    const { registers, findings, chunks } = readNem13(HEAD + record({ quantity: '100' }) + END);
    expect([findings, chunks]).toEqual([[], []]);
    const stream = {
      point: 'N1',
      meter: 'M1',
      register: '11',
      quantity: 'import',
      rate: null,
      unit: 'kWh',
    };
    // 1 January 2024 is day 19723; 1 October 2023 is 92 days before it, 1 November 61.
    expect(registers).toEqual([
      { stream, day: 19631, minute: 570, value: '00100.5', quality: 'actual', line: 2 },
      { stream, day: 19662, minute: 0, value: '00200.5', quality: 'actual', line: 2 },
    ]);
  });

  it.each([
    ['E', 'kWh', 'import', '00200.5'],
    ['e', 'Wh', 'import', '00.2005'],
    ['I', 'MWh', 'export', '00200500'],
    ['I', 'kVArh', 'other', '00200.5'],
  ])('of direction %s in %s is %s', (direction, unit, quantity, value) => {
    const { registers, findings } = readNem13(HEAD + record({ direction, unit }) + END);
    expect(findings).toEqual([]);
    expect(registers.map(({ stream }) => stream.quantity)).toEqual([quantity, quantity]);
    expect(registers[1]?.value).toBe(value);
  });

  it.each([
    ['A', 'actual'],
    ['E64', 'estimated'],
    ['S14', 'substituted'],
    ['F14', 'substituted'],
  ])('with the quality %s is %s', (flag, quality) => {
    const current = `00200.5,20231101,${flag}`;
    const { registers, findings } = readNem13(HEAD + record({ current }) + END);
    expect(findings).toEqual([]);
    expect(registers[1]).toMatchObject({ quality, minute: null });
  });

  it('names the register by its id where there is no suffix', () => {
    const { registers } = readNem13(HEAD + record({ suffix: '', id: '7' }) + END);
    expect(registers[0]?.stream.register).toBe('7');
  });

  it('keeps the read that is right where the other is not', () => {
    const { registers } = readNem13(HEAD + record({ previous: 'x,20231001093055,A' }) + END);
    expect(registers.map(({ value }) => value)).toEqual(['00200.5']);
  });
});

describe('the quantity of a record of NEM13', () => {
  it.each(['', '100', '100.0', '0100'])('may be %j', (quantity) => {
    expect(codesOf(record({ quantity }))).toEqual([]);
  });

  it.each(['99.9', '100.1', '0'])('is asked about where it is %s', (quantity) => {
    expect(codesOf(record({ quantity }))).toEqual([`nem/quantity-differs 2 ${quantity}`]);
  });

  it('may be what a counter that passed its full scale counted', () => {
    const reads = { previous: '99950,20231001000000,A', current: '00020,20231101000000,A' };
    expect(codesOf(record({ ...reads, quantity: '70' }))).toEqual(['nem/rolled-over 2 00020']);
    expect(codesOf(record({ ...reads, quantity: '71' }))).toEqual(['nem/quantity-differs 2 71']);
    expect(codesOf(record(reads))).toEqual(['nem/current-below-previous 2 00020']);
  });
});

describe('the time of a read of NEM13', () => {
  it.each([
    ['20240101090000', 'E64', []],
    ['20240101090001', 'E64', ['nem/forward-estimate 2 20240101090001']],
    ['20240101090001', 'A', ['nem/read-after-file 2 20240101090001']],
    ['20240101', 'A', []],
    ['20240102', 'E64', ['nem/forward-estimate 2 20240102']],
  ])('%s with %s in a file of 1 January 2024, 09:00', (time, flag, codes) => {
    expect(codesOf(record({ current: `00200.5,${time},${flag}` }))).toEqual(codes);
  });

  it('goes on from one read to the next', () => {
    expect(codesOf(record({ current: '00200.5,20231001093055,A' }))).toEqual([]);
    expect(codesOf(record({ current: '00200.5,20231001093054,A' }))).toEqual([
      'nem/reads-out-of-order 2 20231001093054',
    ]);
  });
});

describe('records of NEM13 of the same register', () => {
  const next = (previous: string, others: Parts = {}): string =>
    record({ ...others, previous, current: '300,20231201000000,A' });

  it.each([
    ['200.50,20231101000000,A', []],
    ['200.50,20231101,A', []],
    ['00200.6,20231101000000,A', ['nem/register-gap 3 00200.6']],
    ['00200.4,20231101000000,A', ['nem/register-overlap 3 00200.4']],
    ['00200.5,20231101000001,A', ['nem/register-gap 3 00200.5']],
    ['00200.5,20231031235959,A', ['nem/register-overlap 3 00200.5']],
  ])('go on from 00200.5 of 1 November to %s', (previous, codes) => {
    expect(codesOf(record(), next(previous))).toEqual(codes);
  });

  it('are not compared with those of another register, or across a read that is not there', () => {
    const other = '277,20231101000000,A';
    expect(codesOf(record(), next(other, { id: '2' }), next(other, { suffix: '41' }))).toEqual([]);
    expect(codesOf(record({ current: ',20231101000000,N' }), next(other))).toEqual(['nem/no-read 2 ']);
  });
});

describe('the text of a NEM13 file', () => {
  const text = HEAD + record() + '550,N,"a, b",E,\n' + record({ id: '2', quantity: '1' }) + END;

  it('may be cut into pieces anywhere', () => {
    const whole = readNem13(text);
    expect([whole.registers.length, whole.findings.length]).toEqual([4, 1]);
    for (let at = 0; at <= text.length; at += 1)
      expect(readNem13(text.slice(0, at), text.slice(at))).toEqual(whole);
    expect(readNem13(...Array.from(text))).toEqual(whole);
    expect(readNem13(`\ufeff${text.replaceAll('\n', '\r\n')}`)).toEqual(whole);
  });
});
