import { dayText, parseDay } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import {
  characters,
  codesOf,
  listsOf,
  readList,
  readPieces,
  shownValues,
  type ReadObis,
} from '../../../../tests/laws/meter-files/read-obis.ts';

const DAY = parseDay('2025-05-01') ?? undefined;
/** One line, of a day that is known. */
const line = (text: string): ReadObis => readList(text, DAY);

/** Day, minute and meter of each value. */
const moments = ({ values }: ReadObis): readonly string[] =>
  values.map(({ day, minute, stream }) => `${dayText(day)} ${String(minute)} ${stream.meter}`.trim());

describe('a register line', () => {
  it.each([
    ['1-0:1.8.0 4342.1 kWh', '1-0:1.8.0 4342.1'],
    ['1.8.0;4342,1 kWh', '1.8.0 4342.1'],
    ['1.8.0;4342,1;kWh;', '1.8.0 4342.1'],
    ['1.8.0,4342.1,kWh', '1.8.0 4342.1'],
    ['1-0:1.8.0*255(0004342.1*kWh)', '1-0:1.8.0*255 0004342.1'],
    ['1.8.0(004342.1*kWh)', '1.8.0 004342.1'],
    ['1.8.0 (004342,1 * kWh)', '1.8.0 004342.1'],
    ['1.8.0 = 4342.1 kWh', '1.8.0 4342.1'],
    ['1.8.0: 4342.1kWh', '1.8.0 4342.1'],
    ['1.8.0:4342.1 kWh', '1.8.0 4342.1'],
    ['1.8.0\t4342.1\tkWh', '1.8.0 4342.1'],
    ['1.8.0|4342.1|kWh', '1.8.0 4342.1'],
    ['1.8.0 kWh 4342.1', '1.8.0 4342.1'],
    ['  1.8.0   4342.1   kWh  ', '1.8.0 4342.1'],
    ['1.8(4342.1*kWh)', '1.8 4342.1'],
    ['1-0:1.8 4342.1 kWh', '1-0:1.8 4342.1'],
    ['1.0.1.8.0.255 4342.1 kWh', '1.0.1.8.0.255 4342.1'],
    ['1.8.0 4342100 Wh', '1.8.0 4342.100'],
    ['1.8.0 4,3421 MWh', '1.8.0 4342.1'],
    ['1.8.0 4342 units', '1.8.0 4342'],
    ['1.8.0 12 892,4 kWh', '1.8.0 12892.4'],
    ["1.8.0 12'892.4 kWh", '1.8.0 12892.4'],
    ['1.8.0 1,16,444 kWh', '1.8.0 116444'],
    ['1.8.0 12,892.4 kWh', '1.8.0 12892.4'],
    ['1.8.0 ४३४२.१ kWh', '1.8.0 4342.1'],
    ['15.8.0 7 kWh', '15.8.0 7'],
    ['16.8.0 -12.5 kWh', '16.8.0 -12.5'],
    ['16.8.0 −12.5 kWh', '16.8.0 -12.5'],
    ['2.8.2 002935.8 kWh', '2.8.2 002935.8'],
  ])('%j is read as %s', (text, value) => {
    const read = line(text);
    expect(shownValues(read)).toEqual([value]);
    expect(read.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  it.each([
    ['1.8.0 4342.1', 'obis/unit-left-out'],
    ['180: 4342.1', 'obis/bare-code'],
    ['1580: 4342.1', 'obis/bare-code'],
    ['1.8 4342.1', 'obis/bare-code'],
    ['1 8 0 4342.1', 'obis/bare-code'],
    ['1.8.0', 'obis/no-value'],
    ['1.8.0()', 'obis/no-value'],
    ['1.8.0(*kWh)', 'obis/no-value'],
    ['1.8.0 =', 'obis/no-value'],
    ['1.8.0 (4342.1', 'obis/line-unclear'],
    ['1.8.0 (1)(2)', 'obis/line-unclear'],
    [`1.8.0 ${'0'.repeat(101)}`, 'obis/line-unclear'],
    [`1.8.0 ${'0'.repeat(100)}`, 'obis/not-a-number'],
    ['12892.4', 'obis/line-unclear'],
    ['142.1 kWh', 'obis/line-unclear'],
    ['002 4342.1', 'obis/line-unclear'],
    ['total 4342.1', 'obis/line-unclear'],
    ['D.8.0 4342.1', 'obis/line-unclear'],
    ['1.8.0-4342.1', 'obis/line-unclear'],
    ['1.8.0/4342 kWh', 'obis/line-unclear'],
    ['!6796', 'obis/line-unclear'],
    ['1.8.0 4342 5 kWh', 'obis/not-a-number'],
    ['1.8.0 4342.1 5.3', 'obis/not-a-number'],
    ['1.8.0 =4342+1', 'obis/not-a-number'],
    ['1.8.0 Rs 4342', 'obis/not-a-number'],
    ['1.8.0 4342/-', 'obis/not-a-number'],
    ['1.8.0 l2892', 'obis/not-a-number'],
    ['1.8.0 1e3', 'obis/not-a-number'],
    ['1.8.0 ---', 'obis/not-a-number'],
    ['1.8.0 12,892 kWh', 'obis/comma-unclear'],
    ['1.8.0 -5 kWh', 'obis/below-zero'],
    ['1.8.0 5 kW', 'obis/unit'],
    ['1.8.0 5 kvarh', 'obis/unit'],
    ['1.8.0 5 mWh', 'obis/unit'],
    ['1.8.0(5*kvarh)', 'obis/unit'],
    ['1.8.0*1 4342.1 kWh', 'obis/past-value'],
    ['IMP 1 234.5 kWh', 'obis/not-a-number'],
  ])('%j is answered with %s', (text, code) => {
    expect(codesOf(line(`2.8.0 1 kWh\n${text}`))).toEqual([code]);
  });

  it.each([
    ['3.8.0 4342.1 kvarh'],
    ['1.7.0 0.244 kW'],
    ['F.F(00)'],
    ['C.7.0(0008)'],
    ['7-0:3.0.0 12 m3'],
    ['!'],
    ['\u0003X'],
    ['   '],
  ])('%j is passed over without a word', (text) => {
    const read = line(`2.8.0 1 kWh\n${text}`);
    expect(shownValues(read)).toEqual(['2.8.0 1']);
    expect(codesOf(read)).toEqual([]);
  });

  it.each([
    ['IMP', '1.8.0', 'import'],
    ['import', '1.8.0', 'import'],
    ['DEL', '1.8.0', 'import'],
    ['A+', '1.8.0', 'import'],
    ['forward', '1.8.0', 'import'],
    ['EXP', '2.8.0', 'export'],
    ['Export', '2.8.0', 'export'],
    ['REC', '2.8.0', 'export'],
    ['A-', '2.8.0', 'export'],
    ['A−', '2.8.0', 'export'],
    ['reverse', '2.8.0', 'export'],
    ['NET', '16.8.0', 'net'],
    ['generation', 'generation', 'generation'],
    ['GEN', 'generation', 'generation'],
  ])('that begins with %s is of %s', (word, register, quantity) => {
    const read = line(`${word}: 4342.1 kWh\n${word} 4342.1 kWh`);
    expect(read.values.map(({ stream, value }) => [stream.register, stream.quantity, value])).toEqual([
      [register, quantity, '4342.1'],
    ]);
    expect(codesOf(read)).toEqual(['obis/word']);
  });

  it('keeps the lines that can be read', () => {
    const read = line('1.8.0 10 kWh\n1.8.1 1 kWh\n1.8.2 x kWh\nnonsense\n2.8.0 5 kWh');
    expect(shownValues(read)).toEqual(['1.8.0 10', '1.8.1 1', '2.8.0 5']);
    // The total is not held against its rates: one of them could not be read.
    expect(codesOf(read)).toEqual(['obis/not-a-number', 'obis/line-unclear', 'obis/rates-numbered']);
  });

  it.each([
    [2_048, []],
    [2_049, ['obis/line-too-long']],
  ])('of %i characters', (length, codes) => {
    expect(codesOf(line(`2.8.0 1 kWh\nF.F${' '.repeat(length - 3)}\n`))).toEqual(codes);
  });
});

describe('the day of a list', () => {
  it.each([
    ['2025-05-01\n1.8.0 1 kWh', '2025-05-01 null'],
    ['date: 1 May 2025\n1.8.0 1 kWh', '2025-05-01 null'],
    ['Date = 2025/05/01\n1.8.0 1 kWh', '2025-05-01 null'],
    ['reading on 13.5.2025\n1.8.0 1 kWh', '2025-05-13 null'],
    ['2025-05-01 18:30\n1.8.0 1 kWh', '2025-05-01 1110'],
    ['2025-05-01T18:30:59\n1.8.0 1 kWh', '2025-05-01 1110'],
    ['0.9.1(183059)\n0.9.2(250501)\n1.8.0 1 kWh', '2025-05-01 1110'],
    ['1-0:0.9.1(183059)\n1-0:0.9.2(250501)\n1.8.0 1 kWh', '2025-05-01 1110'],
    ['0-0:1.0.0(250501183059S)\n1.8.0 1 kWh', '2025-05-01 1110'],
    // Behind the registers, too, where nothing was said before.
    ['1.8.0 1 kWh\n0.9.2(250501)\n0.9.1(183059)', '2025-05-01 1110'],
    ['2025-05-01\n2025-05-02\n1.8.0 1 kWh', '2025-05-02 null'],
    ['2025-05-01 18:30\n2025-05-02\n1.8.0 1 kWh', '2025-05-02 null'],
    // The day line counts, and the meter's own date is asked about.
    ['2025-05-01\n0.9.2(250502)\n1.8.0 1 kWh', '2025-05-01 null'],
    ['0.9.2(250502)\n2025-05-01\n1.8.0 1 kWh', '2025-05-01 null'],
    ['2025-05-01\n1.8.0 1 kWh\n0.9.2(250502)', '2025-05-01 null'],
  ])('%j', (text, moment) => {
    const read = readList(text);
    expect(moments(read)).toEqual([moment]);
    const codes = text.includes('250502') ? ['obis/two-days'] : [];
    expect(codesOf(read)).toEqual(codes);
  });

  it('is of the registers below it, up to the next', () => {
    const read = readList(
      '2025-05-01\n1.8.0 1 kWh\n2.8.0 2 kWh\n\n2025-06-01\n1.8.0 3 kWh\n1 July 2025\n1.8.0 4 kWh',
    );
    expect(shownValues(read)).toEqual(['1.8.0 1', '2.8.0 2', '1.8.0 3', '1.8.0 4']);
    expect(moments(read)).toEqual([
      '2025-05-01 null',
      '2025-05-01 null',
      '2025-06-01 null',
      '2025-07-01 null',
    ]);
    expect(read.values[0]?.stream).toBe(read.values[3]?.stream);
  });

  it('can be given, and is asked for where it is not', () => {
    expect(moments(line('1.8.0 1 kWh'))).toEqual(['2025-05-01 null']);
    expect(moments(readList('2025-06-01\n1.8.0 1 kWh', DAY))).toEqual(['2025-06-01 null']);
    const read = readList('1.8.0 1 kWh\n2025-05-01\n2.8.0 1 kWh');
    expect(shownValues(read)).toEqual(['2.8.0 1']);
    expect(codesOf(read)).toEqual(['obis/no-day']);
  });

  it.each([
    ['2025-02-30', 'obis/no-such-day'],
    ['date: soon', 'obis/no-such-day'],
    ['30 February 2025', 'obis/no-such-day'],
    ['0.9.2(250230)', 'obis/no-such-day'],
    ['0-0:1.0.0(250230183059S)', 'obis/no-such-day'],
    ['0.9.1(250000)', 'obis/no-such-hour'],
    ['1/5/2025', 'obis/day-or-month'],
    ['1.8.25', 'obis/day-or-month'],
    ['0.9.2(10.05.25)', 'obis/day-or-month'],
  ])('%j is answered with %s', (text, code) => {
    expect(codesOf(line(`${text}\n1.8.0 1 kWh`))).toEqual([code]);
  });
});

describe('readouts one after the other', () => {
  const readout = (meter: string, date: string, time: string, value: string): string =>
    `/XXX5MADE-UP\n\n\u0002F.F(00)\n0.0.0(${meter})\n0.9.1(${time})\n0.9.2(${date})\n1.8.0(${value}*kWh)\n!\n\u0003P\n`;

  it('each have their own meter, day and time', () => {
    const read = readList(readout('11', '250501', '183000', '10') + readout('12', '250502', '071500', '20'));
    expect(shownValues(read)).toEqual(['1.8.0 10', '1.8.0 20']);
    expect(moments(read)).toEqual(['2025-05-01 1110 11', '2025-05-02 435 12']);
    expect(codesOf(read)).toEqual([]);
  });

  it('are told apart without their headers', () => {
    const text = readout('11', '250501', '183000', '10') + readout('11', '250502', '071500', '20');
    const read = readList(text.replaceAll(/^\/.*$/gm, ''));
    expect(moments(read)).toEqual(['2025-05-01 1110 11', '2025-05-02 435 11']);
    expect(codesOf(read)).toEqual([]);
  });

  it('of two meters on one day share the day line', () => {
    const read = readList('2025-05-01 18:30\nC.1.0 111\n1.8.0 10 kWh\nC.1.0 222\n1.8.0 20 kWh');
    expect(moments(read)).toEqual(['2025-05-01 1110 111', '2025-05-01 1110 222']);
    expect(shownValues(read)).toEqual(['1.8.0 10', '1.8.0 20']);
  });

  it('share nothing once a header begins another', () => {
    const read = readList('/XXX5A\n0.9.2(250501)\n1.8.0 1 kWh\n/XXX5B\n1.8.0 2 kWh');
    expect(shownValues(read)).toEqual(['1.8.0 1']);
    expect(codesOf(read)).toEqual(['obis/no-day']);
  });

  it('are one where the same serial number stands again', () => {
    expect(codesOf(line('C.1.0 1\n1.8.0 1 kWh\nC.1.0 1\n1.8.0 2 kWh'))).toEqual(['obis/register-twice']);
  });

  it('keep the meter from one day to the next', () => {
    const read = readList('C.1.0: 111\n2025-05-01\n1.8.0 10 kWh\n2025-06-01\n1.8.0 20 kWh');
    expect(moments(read)).toEqual(['2025-05-01 null 111', '2025-06-01 null 111']);
  });

  it.each([
    ['0.0.0 7\nC.1.0 8', '8'],
    ['C.1.0 8\n0.0.0 7', '8'],
    ['0.0(7)', '7'],
    ['1-0:0.0.0*255(7)', '7'],
    // In full, as telegrams have it, two hexadecimal digits stand for a character.
    ['0-0:96.1.0(4B384547)', 'K8EG'],
    ['C.1.0(4B384547)', '4B384547'],
    // Of another meter.
    ['C.1.0(8)\n0-1:96.1.1(58)', '8'],
  ])('name the meter by %j: %s', (text, meter) => {
    expect(moments(line(`${text}\n1.8.0 1 kWh`))).toEqual([`2025-05-01 null ${meter}`]);
  });
});

describe('a list', () => {
  it('has each register once a day, in whatever way its code is written', () => {
    expect(shownValues(line('1.8.0 1.0 kWh\n1-0:1.8.0*255 1 kWh'))).toEqual(['1.8.0 1.0']);
    const read = line('1.8.0 1 kWh\n1-0:1.8.0 2 kWh');
    expect(shownValues(read)).toEqual([]);
    expect(codesOf(read)).toEqual(['obis/register-twice']);
  });

  it('can be a telegram that a person copied: its checksum is not counted, and says so', () => {
    const read = readList('0-0:1.0.0(250501183000S)\n1-0:1.8.0(1*kWh)\n!6796');
    expect(shownValues(read)).toEqual(['1-0:1.8.0 1']);
    expect(codesOf(read)).toEqual(['obis/line-unclear']);
  });

  it('is the same in pieces of one character', () => {
    const text = '\ufeff2025-05-01\r\n1.8.0 1\r\n180: 5\r\n\r\nIMP 2\r\n';
    expect(readPieces(listsOf(), characters(text))).toEqual(readList(text));
  });

  it('gives quantity, rate, unit and line of each register', () => {
    const { values } = line('\n1-0:2.8.1;0004342,1 Wh');
    expect(values).toEqual([
      {
        stream: {
          point: '',
          meter: '',
          register: '1-0:2.8.1',
          quantity: 'export',
          rate: '1',
          unit: 'Wh',
        },
        day: DAY,
        minute: null,
        value: '0004.3421',
        quality: 'actual',
        line: 2,
      },
    ]);
  });
});
