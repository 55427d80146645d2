import { dayText, parseDay } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { sample } from '../../../../tests/laws/meter-files/obis-samples.ts';
import { bitwiseChecksum, frameTelegram } from '../../../../tests/laws/meter-files/print-obis.ts';
import {
  characters,
  codesOf,
  readPieces,
  readTelegrams,
  shownValues,
  telegramsOf,
} from '../../../../tests/laws/meter-files/read-obis.ts';

const HEAD = ['/XXX5MADE-UP', '', '1-3:0.2.8(50)', '0-0:1.0.0(250501183000S)'];

/** A telegram of some lines with its checksum. */
const telegram = (...lines: readonly string[]): string => frameTelegram([...HEAD, ...lines]);

describe('the published telegrams', () => {
  it.each([
    [
      'v4_2',
      ['1-0:1.8.1 001581.123', '1-0:1.8.2 001435.706', '1-0:2.8.1 000000.000', '1-0:2.8.2 000000.000'],
      '3960221976967177082151037881335713',
      '2016-11-13 1257',
      ['obis/rates-numbered'],
    ],
    [
      'v5',
      ['1-0:1.8.1 000004.426', '1-0:1.8.2 000002.399', '1-0:2.8.1 000002.444', '1-0:2.8.2 000000.000'],
      'K8EG004046395507',
      '2017-01-02 1160',
      ['obis/rates-numbered'],
    ],
    [
      'v5_hu',
      // 47.719 + 125.921 = 173.640; 401.829 + 225.348 = 627.177; 173.640 + 627.177 = 800.817
      [
        '1-0:1.8.0 000173.640',
        '1-0:1.8.1 000047.719',
        '1-0:1.8.2 000125.921',
        '1-0:1.8.3 000000.000',
        '1-0:1.8.4 000000.000',
        '1-0:2.8.0 000627.177',
        '1-0:2.8.1 000401.829',
        '1-0:2.8.2 000225.348',
        '1-0:2.8.3 000000.000',
        '1-0:2.8.4 000000.000',
        '1-0:15.8.0 000800.817',
      ],
      '890082200002160',
      '2023-07-24 907',
      ['obis/rates-numbered', 'obis/other-energy'],
    ],
  ] as const)('%s gives what is printed in it', (name, values, meter, moment, codes) => {
    const read = readTelegrams(sample(name));
    expect(shownValues(read)).toEqual(values);
    expect(new Set(read.values.map(({ stream }) => stream.meter))).toEqual(new Set([meter]));
    const moments = read.values.map(({ day, minute }) => `${dayText(day)} ${String(minute)}`);
    expect(new Set(moments)).toEqual(new Set([moment]));
    expect(codesOf(read)).toEqual(codes);
  });

  it('give quantity, rate and line of each register', () => {
    const { values } = readTelegrams(sample('v4_2'));
    const shown = values.map(({ stream, line, quality }) => [stream.quantity, stream.rate, line, quality]);
    expect(shown).toEqual([
      ['import', '1', 6, 'actual'],
      ['import', '2', 7, 'actual'],
      ['export', '1', 8, 'actual'],
      ['export', '2', 9, 'actual'],
    ]);
    expect(values[0]?.stream).toEqual({
      point: '',
      meter: '3960221976967177082151037881335713',
      register: '1-0:1.8.1',
      quantity: 'import',
      rate: '1',
      unit: 'kWh',
    });
  });

  it.each(['v4_2', 'v5', 'v5_hu'] as const)('are not used with one digit changed: %s', (name) => {
    const text = sample(name);
    const at = text.indexOf(':1.8.1(') + 12;
    const digit = text[at] === '9' ? '8' : '9';
    const read = readTelegrams(text.slice(0, at) + digit + text.slice(at + 1));
    expect(shownValues(read)).toEqual([]);
    expect(codesOf(read)).toEqual(['obis/checksum']);
  });

  it('are read with LF or CR alone, in a log, and with a mark of the byte order before', () => {
    const text = sample('v5');
    const expected = shownValues(readTelegrams(text));
    expect(shownValues(readTelegrams(text.replaceAll('\r\n', '\n')))).toEqual(expected);
    expect(shownValues(readTelegrams(text.replaceAll('\r\n', '\r')))).toEqual(expected);
    expect(shownValues(readTelegrams(`\ufeff${text}`))).toEqual(expected);
    const twice = readTelegrams(text + text);
    expect(shownValues(twice)).toEqual([...expected, ...expected]);
    expect(twice.values[0]?.stream).toBe(twice.values[4]?.stream);
  });

  it('have a clock that is local', () => {
    const reader = telegramsOf()({
      intervals: () => undefined,
      register: () => undefined,
      finding: () => undefined,
    });
    expect(reader.clock.offset).toBeNull();
  });
});

describe('a checksum', () => {
  it('can be in small letters, and can be of a telegram with LF alone', () => {
    const lines = [...HEAD, '1-0:1.8.0(004342.100*kWh)'];
    const small = frameTelegram(lines).replace(/![0-9A-F]{4}/, (mark) => mark.toLowerCase());
    expect(shownValues(readTelegrams(small))).toEqual(['1-0:1.8.0 004342.100']);
    // A meter that sends LF alone counts LF alone.
    const checksum = bitwiseChecksum(`${lines.join('\n')}\n!`);
    expect(shownValues(readTelegrams(frameTelegram(lines, { lineEnd: '\n', checksum })))).toEqual([
      '1-0:1.8.0 004342.100',
    ]);
    expect(codesOf(readTelegrams(frameTelegram(lines, { checksum })))).toEqual(['obis/checksum']);
  });

  it.each([
    ['50', ['obis/no-checksum']],
    ['40', ['obis/no-checksum']],
    ['39', []],
    ['30', []],
    ['4', []],
  ])('that is missing in version %s: %j', (version, codes) => {
    const lines = [...HEAD.slice(0, 2), `1-3:0.2.8(${version})`, ...HEAD.slice(3), '1-0:1.8.0(4342.1*kWh)'];
    const read = readTelegrams(frameTelegram(lines, { checksum: '' }));
    expect(codesOf(read)).toEqual(codes);
    expect(shownValues(read)).toEqual(['1-0:1.8.0 4342.1']);
  });

  it('is missed by the version line of Belgian telegrams, too', () => {
    const lines = [...HEAD.slice(0, 2), '0-0:96.1.4(50217)', ...HEAD.slice(3), '1-0:1.8.0(4342.1*kWh)'];
    expect(codesOf(readTelegrams(frameTelegram(lines, { checksum: '' })))).toEqual(['obis/no-checksum']);
  });
});

describe('a telegram of version 2.2 or 3.0', () => {
  const OLD = [
    '/XXX5MADE-UP',
    '',
    '0-0:96.1.1(4B384547)',
    '1-0:1.8.1(00001.001*kWh)',
    '1-0:2.8.1(00002.002*kWh)',
    '0-1:24.3.0(161107190000)(00)(60)(1)(0-1:24.2.1)(m3)',
    '(00003.003)',
    '',
  ];
  const text = frameTelegram(OLD, { checksum: '' });
  const day = parseDay('2025-05-01') ?? undefined;

  it('has no time: the day is asked for, or is the one that was given', () => {
    expect(codesOf(readTelegrams(text))).toEqual(['obis/no-time']);
    const read = readTelegrams(text, day);
    expect(shownValues(read)).toEqual(['1-0:1.8.1 00001.001', '1-0:2.8.1 00002.002']);
    expect(read.values.map((value) => [value.day, value.minute])).toEqual([
      [day, null],
      [day, null],
    ]);
    expect(codesOf(read)).toEqual(['obis/rates-numbered']);
  });

  it('can be given a day once: another is of a later moment', () => {
    const read = readTelegrams(text + text, day);
    expect(read.values.length).toBe(2);
    expect(codesOf(read)).toEqual(['obis/rates-numbered', 'obis/no-time']);
    expect(read.findings[1]?.found).toBe('one more telegram without a time');
  });

  it('does not pass a value in brackets on its own line behind a register', () => {
    const read = readTelegrams(frameTelegram([...HEAD, '1-0:1.8.0(1*kWh)', '(2)'], { checksum: '' }));
    expect(codesOf(read)).toEqual(['obis/line-unclear', 'obis/no-checksum']);
  });
});

describe('a register', () => {
  it.each([
    ['1-0:1.8.0(004342.1*kWh)', '1-0:1.8.0 004342.1'],
    ['1-0:1.8.0*255(004342.1*kWh)', '1-0:1.8.0*255 004342.1'],
    ['1-0:1.8.0(0004342100*Wh)', '1-0:1.8.0 0004342.100'],
    ['1-0:1.8.0(4.3421*MWh)', '1-0:1.8.0 4342.1'],
    ['1-0:16.8.0(-0000012.5*kWh)', '1-0:16.8.0 -0000012.5'],
    ['1-1:2.8.0(7*kWh)', '1-1:2.8.0 7'],
    ['1-0:1.8.0(12345678901234567890*kWh)', '1-0:1.8.0 12345678901234567890'],
  ])('%s is handed on in kWh, digit for digit', (line, value) => {
    const read = readTelegrams(telegram(line));
    expect(shownValues(read)).toEqual([value]);
    expect(codesOf(read)).toEqual([]);
  });

  it.each([
    ['1-0:1.7.0(00.244*kW)'],
    ['1-0:1.6.0(250501183000S)(02.000*kW)'],
    ['1-0:3.8.0(000000.123*kvarh)'],
    ['0-1:24.2.1(250501180000S)(00981.443*m3)'],
    ['7-0:3.0.0(00981.443*m3)'],
    ['0-0:98.1.0(250401000000S)(000040.777*kWh)'],
    ['0-0:96.13.0(303132)'],
    // The meter wrote it so, and no register can be meant by it.
    ['1-0:99:97.0(2)'],
  ])('%s is passed over without a word', (line) => {
    const read = readTelegrams(telegram('1-0:1.8.0(1*kWh)', line));
    expect(shownValues(read)).toEqual(['1-0:1.8.0 1']);
    expect(codesOf(read)).toEqual([]);
  });

  it.each([
    ['1-0:1.8.0(4342.1)', 'obis/no-unit'],
    ['1-0:1.8.0(4342,1*kWh)', 'obis/not-a-number'],
    ['1-0:1.8.0(4342.*kWh)', 'obis/not-a-number'],
    ['1-0:1.8.0(1e3*kWh)', 'obis/not-a-number'],
    ['1-0:1.8.0(123456789012345678901*kWh)', 'obis/not-a-number'],
    ['1-0:1.8.0(-1*kWh)', 'obis/below-zero'],
    ['1-0:1.8.0(1*kvarh)', 'obis/unit'],
    ['1-0:1.8.0(1*)', 'obis/unit'],
    ['1-0:1.8.0()', 'obis/no-value'],
    ['1-0:1.8.0(250501183000S)(1*kWh)', 'obis/line-unclear'],
    ['1-0:1:8.0(1*kWh)', 'obis/line-unclear'],
    ['1-0:1.8.0*1(1*kWh)', 'obis/past-value'],
  ])('%s is not used: %s', (line, code) => {
    const read = readTelegrams(telegram('1-0:2.8.0(1*kWh)', line));
    expect(shownValues(read)).toEqual(['1-0:2.8.0 1']);
    expect(codesOf(read)).toEqual([code]);
  });

  it('that stands there twice is used where both are the same number', () => {
    const same = readTelegrams(telegram('1-0:1.8.0(001.50*kWh)', '1-0:1.8.0(1.5*kWh)'));
    expect(shownValues(same)).toEqual(['1-0:1.8.0 001.50']);
    const other = readTelegrams(telegram('1-0:1.8.0(1*kWh)', '1-0:2.8.0(3*kWh)', '1-0:1.8.0*255(2*kWh)'));
    expect(shownValues(other)).toEqual(['1-0:2.8.0 3']);
    expect(codesOf(other)).toEqual(['obis/register-twice']);
  });
});

describe('a total and its rates', () => {
  const sums = (...lines: readonly string[]): readonly string[] =>
    codesOf(readTelegrams(telegram(...lines))).filter((code) => code === 'obis/rates-and-total');
  const three = (total: string): readonly string[] =>
    sums(`1-0:1.8.0(${total}*kWh)`, '1-0:1.8.1(1.0*kWh)', '1-0:1.8.2(2.0*kWh)', '1-0:1.8.3(3.0*kWh)');
  const QUESTION = ['obis/rates-and-total'];

  // Three rates that leave out digits: the total can be up to 2 in the last digit above 6.0, and rounded 1 below.
  it.each([
    ['5.8', QUESTION],
    ['5.9', []],
    ['6.0', []],
    ['6.2', []],
    ['6.3', QUESTION],
    ['16.0', QUESTION],
  ])('%s beside 1.0, 2.0 and 3.0: %j', (total, expected) => {
    expect(three(total)).toEqual(expected);
  });

  it.each([
    // The last digit of the coarser display is 1: one rate may leave out less than 1, and rounding add 1.
    ['6', '6.9', []],
    ['6', '7.0', []],
    ['6', '7.1', QUESTION],
    ['6', '5.1', []],
    ['6', '5.0', QUESTION],
  ])('%s beside one rate of %s: %j', (total, rate, expected) => {
    expect(sums(`1-0:1.8.0(${total}*kWh)`, `1-0:1.8.1(${rate}*kWh)`)).toEqual(expected);
  });

  it('in MWh leave out more', () => {
    // The last digit of 0.01 MWh is 10 kWh.
    expect(sums('1-0:1.8.0(4.34*MWh)', '1-0:1.8.1(4349.9*kWh)')).toEqual([]);
    expect(sums('1-0:1.8.0(4.34*MWh)', '1-0:1.8.1(4350.1*kWh)')).toEqual(QUESTION);
  });

  it('belong together by direction and channel, and say nothing where a rate could not be read', () => {
    expect(sums('1-0:1.8.0(9*kWh)', '1-0:2.8.1(1*kWh)')).toEqual([]);
    expect(sums('1-0:1.8.0(9*kWh)', '1-1:1.8.1(1*kWh)')).toEqual([]);
    expect(sums('1-0:1.8.0(9*kWh)', '1-0:1.8.1(1*kWh)', '1-0:1.8.2(8)')).toEqual([]);
    expect(sums('1-0:1.8.0(9*kWh)', '1-0:1.8.1(1*kWh)', '1-0:1.8.2(8*kWh)(')).toEqual([]);
    expect(sums('1-0:1.8.0(9*kWh)', '1-0:1.8.1(1*kWh)', '1-0:1.8.2(3*kWh)', '1-0:1.8.2(8*kWh)')).toEqual([]);
  });
});

describe('a log of telegrams', () => {
  const at = (time: string, ...lines: readonly string[]): string =>
    frameTelegram(['/XXX5MADE-UP', '', '1-3:0.2.8(50)', `0-0:1.0.0(${time})`, ...lines]);
  const codes = (...telegrams: readonly string[]): readonly string[] =>
    codesOf(readTelegrams(telegrams.join('')));

  it('asks where a register goes down, once', () => {
    expect(
      codes(
        at('250501000000S', '1-0:1.8.0(10*kWh)'),
        at('250502000000S', '1-0:1.8.0(9.999*kWh)'),
        at('250503000000S', '1-0:1.8.0(9.999*kWh)'),
      ),
    ).toEqual(['obis/goes-down']);
  });

  it('asks where time goes back, and then not about the registers', () => {
    const log = [
      at('250502000000S', '1-0:1.8.0(10*kWh)'),
      at('250501000000S', '1-0:1.8.0(9*kWh)'),
      at('250503000000S', '1-0:1.8.0(11*kWh)'),
    ];
    expect(codes(...log)).toEqual(['obis/time-goes-back']);
    expect(readTelegrams(log.join('')).values.length).toBe(3);
  });

  it('asks nothing at the end of summer time, in the net register, in energy of intervals or of another meter', () => {
    expect(
      codes(
        at('241027025959S', '1-0:1.8.0(10*kWh)', '1-0:16.8.0(5*kWh)'),
        at('241027020000W', '1-0:1.8.0(10*kWh)', '1-0:16.8.0(-5*kWh)'),
      ),
    ).toEqual([]);
    expect(codes(at('250501000000S', '1-0:1.29.0(5*kWh)'), at('250502000000S', '1-0:1.29.0(4*kWh)'))).toEqual(
      ['obis/other-energy'],
    );
    expect(
      codes(
        at('250502000000S', '0-0:96.1.1(41)', '1-0:1.8.0(10*kWh)'),
        at('250501000000S', '0-0:96.1.1(42)', '1-0:1.8.0(9*kWh)'),
      ),
    ).toEqual([]);
  });

  it('says what was lost of telegrams without beginning or end, and reads the others', () => {
    const whole = at('250501000000S', '1-0:1.8.0(10*kWh)');
    const half = whole.slice(0, whole.indexOf('!'));
    const read = readTelegrams(`1-0:2.8.0(1*kWh)\r\n!1234\r\n${half}${whole}${half}`);
    expect(codesOf(read)).toEqual(['obis/no-beginning', 'obis/cut-off', 'obis/cut-off']);
    expect(shownValues(read)).toEqual(['1-0:1.8.0 10']);
    expect(read.findings.map(({ position }) => position?.line)).toEqual([1, 3, 14]);
  });

  it('tells of each piece without a beginning where it ends', () => {
    const whole = at('250501000000S', '1-0:1.8.0(10*kWh)');
    const piece = '1-0:2.8.0(1*kWh)\r\n!1234\r\n';
    const read = readTelegrams(`${piece}${piece}1-0:2.8.0(1*kWh)\r\n${whole}${whole.slice(0, 20)}`);
    const beginnings = ['obis/no-beginning', 'obis/no-beginning', 'obis/no-beginning'];
    expect(codesOf(read)).toEqual([...beginnings, 'obis/cut-off']);
    expect(read.findings.map(({ position }) => position?.line)).toEqual([1, 3, 5, 12]);
  });

  it('finds a header in the middle of a line that was cut off', () => {
    const whole = at('250501000000S', '1-0:1.8.0(10*kWh)');
    const read = readTelegrams(`${whole.slice(0, -9)}${whole}${whole.trimEnd()}${whole}`);
    expect(codesOf(read)).toEqual(['obis/cut-off']);
    expect(shownValues(read)).toEqual(['1-0:1.8.0 10', '1-0:1.8.0 10', '1-0:1.8.0 10']);
  });
});

describe('the meter of a telegram', () => {
  it.each([
    [['0-0:96.1.1(4B384547)', '0-0:42.0.0(58)', '0-0:96.1.0(59)'], 'K8EG'],
    [['0-0:42.0.0(58)', '0-0:96.1.0(59)'], 'Y'],
    [['0-0:42.0.0(58)'], 'X'],
    [['0-0:96.1.1()', '0-0:42.0.0(58)'], 'X'],
    // Characters that cannot be printed, and an odd number of digits: kept as they stand.
    [['0-0:96.1.1(00)'], '00'],
    [['0-0:96.1.1(7F)'], '7F'],
    [['0-0:96.1.1(7E)'], '~'],
    [['0-0:96.1.1(4B3)'], '4B3'],
    // Of the gas meter.
    [['0-1:96.1.1(58)'], ''],
    [[], ''],
  ])('%j is %j', (lines, meter) => {
    const { values } = readTelegrams(telegram(...lines, '1-0:1.8.0(1*kWh)'));
    expect(values.map(({ stream }) => stream.meter)).toEqual([meter]);
  });
});

describe('the limits', () => {
  it('many headers on one line are told apart', () => {
    const read = readTelegrams(`${'/XXX5'.repeat(13_000)}\n`);
    expect(read.findings.length).toBe(13_000);
    expect(read.findings.at(-1)?.position).toEqual({ line: 1, column: 64_996 });
    expect(new Set(codesOf(read))).toEqual(new Set(['obis/cut-off']));
  });

  const filled = (length: number): string => `1-0:31.7.0(${'0'.repeat(length - 12)})`;

  it.each([
    [2_048, []],
    [2_049, ['obis/line-too-long']],
  ])('a line of %i characters', (length, codes) => {
    expect(filled(length).length).toBe(length);
    const read = readTelegrams(telegram('1-0:1.8.0(1*kWh)', filled(length)));
    expect(codesOf(read)).toEqual(codes);
    expect(shownValues(read)).toEqual(['1-0:1.8.0 1']);
  });

  it('a text message may be as long as its 1024 characters', () => {
    const read = readTelegrams(telegram('1-0:1.8.0(1*kWh)', `0-0:96.13.0(${'30'.repeat(1_024)})`));
    expect(codesOf(read)).toEqual([]);
  });

  it.each([
    [65_536, []],
    [65_537, ['obis/telegram-too-long']],
  ])('a telegram of %i characters before its mark', (size, codes) => {
    const lines = [...HEAD, '1-0:1.8.0(1*kWh)'];
    const room = (): number => size - lines.join('\r\n').length - 2;
    while (room() > 2_000) lines.push(filled(1_000));
    lines.push(filled(room() - 2));
    const text = frameTelegram(lines);
    expect(text.indexOf('!')).toBe(size);
    expect(codesOf(readTelegrams(text))).toEqual(codes);
    const noted = codesOf(readTelegrams(`${text}noise\r\n`));
    expect(noted).toEqual([...codes, 'obis/between-telegrams']);
    // The next telegram is read.
    expect(shownValues(readTelegrams(text + sample('v5'))).slice(-4)).toEqual(
      shownValues(readTelegrams(sample('v5'))),
    );
  });

  it('a thousand registers', () => {
    const lines = (count: number): readonly string[] =>
      Array.from({ length: count }, (_, at) => {
        const [channel, rate] = [Math.floor(at / 60), at % 60];
        return `1-${String(channel)}:1.8.${String(rate + 1)}(${String(at)}*kWh)`;
      });
    const full = readTelegrams(telegram(...lines(1_000)));
    expect([full.values.length, codesOf(full)]).toEqual([1_000, ['obis/rates-numbered']]);
    const over = readTelegrams(telegram(...lines(1_002)));
    expect([over.values.length, codesOf(over)]).toEqual([
      1_000,
      ['obis/too-many-registers', 'obis/rates-numbered'],
    ]);
    const meters = readTelegrams(
      telegram('0-0:96.1.1(41)', ...lines(999)) +
        telegram('0-0:96.1.1(42)', '1-0:1.8.0(1*kWh)', '1-0:2.8.0(1*kWh)') +
        telegram('0-0:96.1.1(43)', '1-0:1.8.0(1*kWh)'),
    );
    expect([meters.values.length, codesOf(meters)]).toEqual([
      1_000,
      ['obis/rates-numbered', 'obis/too-many-registers'],
    ]);
  });
});

describe('pieces', () => {
  it('of one character give the same as the whole', () => {
    const text = sample('v4_2') + sample('v5_hu');
    expect(readPieces(telegramsOf(), characters(text))).toEqual(readTelegrams(text));
  });
});
