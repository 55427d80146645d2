import { parseDay, type Finding } from '@unitbook/engine';
import { bitwiseChecksum, frameTelegram } from '../laws/meter-files/print-obis.ts';
import { readList, readTelegrams } from '../laws/meter-files/read-obis.ts';
import type { MessageCase } from './message-case.ts';

const HEAD = ['/XXX5MADE-UP', '', '1-3:0.2.8(50)', '0-0:1.0.0(250501183000S)'];
const DAY = parseDay('2025-05-01') ?? undefined;

/** A telegram of 1 May 2025: its first register stands on line 5. */
const telegram = (...lines: readonly string[]): string => frameTelegram([...HEAD, ...lines]);
const at = (time: string, line: string): string =>
  frameTelegram([...HEAD.slice(0, 3), `0-0:1.0.0(${time})`, line]);

const told = (text: string) => (): readonly Finding[] => readTelegrams(text).findings;
/** The findings of a list of 1 May 2025. */
const listed =
  (...lines: readonly string[]) =>
  (): readonly Finding[] =>
    readList(lines.join('\n'), DAY).findings;
const undated =
  (...lines: readonly string[]) =>
  (): readonly Finding[] =>
    readList(lines.join('\n')).findings;

const LINE_FORM = 'a register on each line, such as 1.8.0 004342.1 kWh, or a day, such as 2025-05-01';
const UNCLEAR = 'The line was not read, the others were. Correct it from the display of the meter.';
const SOUND = telegram('1-0:1.8.0(4342.1*kWh)', '1-0:2.8.0(2935.8*kWh)');
const CUT = SOUND.slice(0, SOUND.indexOf('!'));
const CHANGED = SOUND.replace('4342.1', '4343.1');

/** What a telegram with one digit changed comes to, bit by bit. */
const COUNTED = bitwiseChecksum(CHANGED.slice(0, CHANGED.indexOf('!') + 1));
const PRINTED = bitwiseChecksum(SOUND.slice(0, SOUND.indexOf('!') + 1));

/** What can be said of a register, in a telegram or in a list. */
const REGISTER_CASES: readonly MessageCase[] = [
  {
    code: 'obis/nothing-read',
    when: 'a file is empty',
    make: told(''),
    at: '1:1',
    found: 'an empty file',
    expected: 'a register of import (1.8.0) or export (2.8.0)',
    remedy: 'Choose the file, or copy the screens, with the codes 1.8.x and 2.8.x.',
  },
  {
    code: 'obis/nothing-read',
    when: 'a telegram has power only',
    make: told(telegram('1-0:1.7.0(00.244*kW)', '1-0:2.7.0(00.000*kW)')),
    at: '1:1',
    found: 'no register of energy, only 1-3:0.2.8, 1-0:1.7.0, 1-0:2.7.0',
    expected: 'a register of import (1.8.0) or export (2.8.0)',
    remedy: 'Choose the file, or copy the screens, with the codes 1.8.x and 2.8.x.',
  },
  {
    code: 'obis/nothing-read',
    when: 'a list is empty',
    make: listed('', ''),
    at: '1:1',
    found: 'an empty list',
    expected: 'a register of import (1.8.0) or export (2.8.0)',
    remedy: 'Choose the file, or copy the screens, with the codes 1.8.x and 2.8.x.',
  },
  {
    code: 'obis/line-too-long',
    when: 'a list has everything on one line',
    make: listed('2.8.0 1 kWh', '1.8.0 1 kWh '.repeat(171)),
    at: '2:1',
    // 171 × 12 = 2052 characters
    found:
      'a line of more than 2048 characters, beginning ' +
      '"1.8.0 1 kWh 1.8.0 1 kWh 1.8.0 1 kWh 1.8.0 1 kWh 1.8.0 1 kWh …"',
    expected: 'one register on a line',
    remedy: 'The line was not read. Break it, or choose the file that holds the registers.',
  },
  {
    code: 'obis/line-unclear',
    when: 'a line of a telegram without a checksum was damaged',
    make: told(
      frameTelegram([...HEAD.slice(0, 2), ...HEAD.slice(3), '1-0:1.8.0(4342.1*kWh', '1-0:2.8.0(1*kWh)'], {
        checksum: '',
      }),
    ),
    at: '4:1',
    found: '"1-0:1.8.0(4342.1*kWh"',
    expected: 'a code and its value in brackets, such as 1-0:1.8.1(004342.100*kWh)',
    remedy: UNCLEAR,
  },
  {
    code: 'obis/line-unclear',
    when: 'a number stands without its code',
    make: listed('1.8.0 4342.1 kWh', '  2935.8 kWh'),
    at: '2:1',
    found: '"2935.8 kWh"',
    expected: LINE_FORM,
    remedy: UNCLEAR,
  },
  {
    code: 'obis/no-value',
    when: 'a value is missing',
    make: listed('1.8.0 4342.1 kWh', '2.8.0 ='),
    at: '2:8',
    found: '2.8.0 without a value',
    expected: 'what the register shows, such as 004342.1',
    remedy: 'Add the number from the display of the meter.',
  },
  {
    code: 'obis/not-a-number',
    when: 'a meter shows stars',
    make: told(telegram('1-0:1.8.0(******.*kWh)')),
    at: '5:11',
    found: '"******." for 1-0:1.8.0',
    expected: 'the digits that the register shows, such as 004342.1',
    remedy: 'Copy the digits from the display of the meter.',
  },
  {
    code: 'obis/not-a-number',
    when: 'a letter stands in place of a digit',
    make: listed('1.8.0 l2892.4'),
    at: '1:7',
    found: '"l2892.4" for 1.8.0',
    expected: 'the digits that the register shows, such as 004342.1',
    remedy: 'Did you mean 12892.4?',
    offer: '12892.4',
  },
  {
    code: 'obis/below-zero',
    when: 'the import register has a minus sign',
    make: listed('1.8.0 -4342.1 kWh'),
    at: '1:7',
    found: '-4342.1 for 1.8.0, below 0',
    expected: 'a register that counts up from 0',
    remedy: 'Take the minus sign off if the display shows none. Only 16.8.0, the net register, can have one.',
  },
  {
    code: 'obis/unit',
    when: 'power stands in place of energy',
    make: listed('1.8.0 4.2 kW'),
    at: '1:7',
    found: 'the unit "kW" for 1.8.0',
    expected: 'kWh, Wh or MWh',
    remedy: 'The value was not used. Copy value and unit from the display of the meter.',
  },
  {
    code: 'obis/register-twice',
    when: 'a telegram contradicts itself',
    make: told(telegram('1-0:1.8.0(4342.1*kWh)', '1-0:1.8.0(4343.1*kWh)', '1-0:2.8.0(1*kWh)')),
    at: '6:11',
    found: '4343.1 for 1-0:1.8.0, which on line 5 is 4342.1',
    expected: 'each register once in a telegram',
    remedy: 'Neither was used. Read the meter again.',
  },
  {
    code: 'obis/register-twice',
    when: 'a list has two days and no day between',
    make: listed('1.8.0 4342.1 kWh', '1.8.0 4640.3 kWh'),
    at: '2:7',
    found: '4640.3 for 1.8.0, which on line 1 is 4342.1',
    expected: 'each register once in a list',
    remedy: 'Neither was used. Keep the one that is right; of two days, write each day above its registers.',
  },
  {
    code: 'obis/rates-and-total',
    when: 'a rate is left out',
    make: listed('1.8.0 4342.1 kWh', '1.8.1 1200.5 kWh'),
    isAmongOthers: true,
    severity: 'question',
    at: '1:7',
    // 4342.1 − 1200.5 = 3141.6
    found: '1.8.0 is 4342.1, 1.8.1 come to 1200.5: 3141.6 more',
    expected: 'a total that is the sum of its rates, but for the digits that a display leaves out',
    remedy: 'Is a rate left out, or a digit misread? Keep them if the display shows them so.',
  },
  {
    code: 'obis/rates-and-total',
    when: 'a digit was misread',
    make: told(telegram('1-0:2.8.0(0627.177*kWh)', '1-0:2.8.1(0401.829*kWh)', '1-0:2.8.2(0225.350*kWh)')),
    isAmongOthers: true,
    severity: 'question',
    at: '5:11',
    // 401.829 + 225.350 = 627.179; 627.179 − 627.177 = 0.002
    found: '1-0:2.8.0 is 0627.177, 1-0:2.8.1, 1-0:2.8.2 come to 627.179: 0.002 less',
    expected: 'a total that is the sum of its rates, but for the digits that a display leaves out',
    remedy: 'Is a rate left out, or a digit misread? Keep them if the display shows them so.',
  },
  {
    code: 'obis/other-energy',
    when: 'import and export are counted together',
    make: listed('1.8.0 1 kWh', '15.8.0 3 kWh'),
    severity: 'note',
    at: '2:8',
    found: '15.8.0, import and export added together',
    expected: 'import (1.8.x) and export (2.8.x), which a bill is made of',
    remedy: 'Nothing to do: it is counted neither as import nor as export.',
  },
  {
    code: 'obis/other-energy',
    when: 'energy is of an interval',
    make: listed('1.29.0 1 kWh'),
    severity: 'note',
    at: '1:8',
    found: '1.29.0, energy of one interval',
    expected: 'import (1.8.x) and export (2.8.x), which a bill is made of',
    remedy: 'Nothing to do: it is counted neither as import nor as export.',
  },
  {
    code: 'obis/past-value',
    when: 'values of past billing resets stand in a readout',
    make: listed('1.8.0(4342.1*kWh)', '1.8.0*1(4012.7*kWh)', '1.8.0*2(3804.0*kWh)'),
    severity: 'note',
    at: '2:1',
    found: '1.8.0*1, the value at a billing reset before',
    expected: 'what the register shows now: the code without * and a number, or with *255',
    remedy: 'Such values were left out: the day they are of is not known. To use one, enter it with its day.',
  },
  {
    code: 'obis/rates-numbered',
    when: 'a meter has two rates',
    make: told(telegram('1-0:1.8.1(1*kWh)', '1-0:1.8.2(2*kWh)')),
    severity: 'note',
    at: '5:11',
    found: 'registers of rates, such as 1-0:1.8.1',
    expected: 'to know which rate is the peak one',
    remedy:
      'The code only numbers the rates, and operators number them differently. ' +
      'Say which is which; the bill names them.',
  },
  {
    code: 'obis/too-many-registers',
    when: 'a list has more registers than a household',
    make: listed(
      ...Array.from({ length: 1_001 }, (_, count) => {
        const [channel, rate] = [Math.floor(count / 60), (count % 60) + 1];
        return `1-${String(channel)}:1.8.${String(rate)} 1 kWh`;
      }),
    ),
    isAmongOthers: true,
    // 1001 = 16 × 60 + 41: the line begins "1-16:1.8.41 "
    at: '1001:13',
    found: 'more than 1000 different registers',
    expected: 'the registers of a household',
    remedy: 'The registers beyond were not read. Choose the file of one household.',
  },
];

/** What can be said of a meter telegram. */
const TELEGRAM_CASES: readonly MessageCase[] = [
  {
    code: 'obis/checksum',
    when: 'a digit was changed',
    make: told(CHANGED),
    at: '7:1',
    found: `a telegram with the checksum "${PRINTED}", where its text comes to ${COUNTED}`,
    expected: 'the same checksum',
    remedy:
      'The telegram was changed or damaged on the way. Not used: 1-0:1.8.0, 1-0:2.8.0. Read the meter again.',
  },
  {
    code: 'obis/no-checksum',
    when: 'the checksum was taken off',
    make: told(SOUND.replace(PRINTED, '')),
    severity: 'question',
    at: '7:1',
    found: 'a telegram of version 5.0 without a checksum behind "!"',
    expected: 'four digits there, as telegrams have from version 4 on',
    remedy: 'Was it taken off? Its registers were read; nothing shows that no digit was changed.',
  },
  {
    code: 'obis/cut-off',
    when: 'the file ends in a telegram',
    make: told(CUT),
    at: '1:1',
    found: 'a telegram that does not end',
    expected: 'a line that begins with "!" at its end',
    remedy: 'Not used: 1-0:1.8.0, 1-0:2.8.0. Record the telegram to its end.',
  },
  {
    code: 'obis/cut-off',
    when: 'the next telegram begins in one that has no register yet',
    make: told(HEAD.slice(0, 2).join('\r\n') + SOUND),
    at: '1:1',
    found: 'a telegram that does not end',
    expected: 'a line that begins with "!" at its end',
    remedy: 'No register stood in it. Record the telegram to its end.',
  },
  {
    code: 'obis/no-beginning',
    when: 'the recording began in a telegram',
    make: told(SOUND.slice(SOUND.indexOf('1-0:1')) + SOUND),
    at: '1:1',
    found: 'lines of a telegram without its beginning, first "1-0:1.8.0(4342.1*kWh)"',
    expected: 'a line that begins with "/" before them',
    remedy: 'Not used: 1-0:1.8.0, 1-0:2.8.0. Record the telegram from its beginning.',
  },
  {
    code: 'obis/between-telegrams',
    when: 'a program wrote the time above each telegram',
    make: told(`2025-05-01 18:30\r\n${SOUND}2025-05-01 18:31\r\n${SOUND}`),
    severity: 'note',
    at: '1:1',
    found: '"2025-05-01 18:30" outside of a telegram',
    expected: 'telegrams, each from "/" to "!"',
    remedy: 'Nothing to do: such lines are passed over, times on them too.',
  },
  {
    code: 'obis/telegram-too-long',
    when: 'a telegram never ends',
    make: told(`${CUT}${'1-0:31.7.0(006*A)\r\n'.repeat(4_000)}`),
    at: '1:1',
    found: 'a telegram of more than 65536 characters',
    expected: 'a telegram of a meter, which has a few thousand at most',
    remedy: 'It was not used. Is the line that begins with "!" missing? Record the telegram again.',
  },
  {
    code: 'obis/no-time',
    when: 'a telegram has no time',
    make: told(frameTelegram([...HEAD.slice(0, 3), '1-0:1.8.0(4342.1*kWh)'])),
    at: '1:1',
    found: 'a telegram without a time',
    expected: 'the line 0-0:1.0.0 with the time of the meter',
    remedy: 'Not used: 1-0:1.8.0. Enter them by hand with the day on which they were read.',
  },
  {
    code: 'obis/no-time',
    when: 'a telegram has two times',
    make: told(telegram('0-0:1.0.0(250502183000S)', '1-0:1.8.0(4342.1*kWh)')),
    at: '4:11',
    found: 'the times 250501183000S, 250502183000S in one telegram',
    expected: 'the line 0-0:1.0.0 with the time of the meter',
    remedy: 'Not used: 1-0:1.8.0. Enter them by hand with the day on which they were read.',
  },
  {
    code: 'obis/no-such-time',
    when: 'the month is the 13th',
    make: told(at('251301183000S', '1-0:1.8.0(4342.1*kWh)')),
    at: '4:11',
    found: 'the time "251301183000S"',
    expected: 'YYMMDDhhmmss of a day there is, and S for summer time or W',
    remedy: 'Not used: 1-0:1.8.0. Check the clock of the meter, or record the telegram again.',
  },
  {
    code: 'obis/no-unit',
    when: 'a register has no unit',
    make: told(telegram('1-0:1.8.0(4342.1)')),
    at: '5:11',
    found: '4342.1 for 1-0:1.8.0, without a unit',
    expected: 'kWh, Wh or MWh behind a star, such as 004342.100*kWh',
    remedy: 'The value was not used. Read the meter again.',
  },
  {
    code: 'obis/goes-down',
    when: 'a register of a log goes down',
    make: told(at('250501183000S', '1-0:1.8.0(4342.1*kWh)') + at('250501184000S', '1-0:1.8.0(0000.0*kWh)')),
    severity: 'question',
    at: '11:11',
    found: '0000.0 for 1-0:1.8.0, after 4342.1 in the telegram before',
    expected: 'a register that counts up',
    remedy: 'Was the meter changed or set back, or did the register pass its last number? Keep it if so.',
  },
  {
    code: 'obis/time-goes-back',
    when: 'a log is out of order',
    make: told(at('250501183000S', '1-0:1.8.0(2*kWh)') + at('250501182959S', '1-0:1.8.0(1*kWh)')),
    severity: 'question',
    at: '10:11',
    found: 'the time 250501182959S, after 250501183000S in the telegram before',
    expected: 'telegrams in the order of time',
    remedy: 'Was the clock of the meter set, or were files put together out of order? Keep it if so.',
  },
];

/** What can be said of a list of registers as a person writes it. */
const LIST_CASES: readonly MessageCase[] = [
  {
    code: 'obis/bare-code',
    when: 'the points are left out',
    make: listed('2.8.0 1 kWh', ' 180: 4342.1'),
    at: '2:2',
    found: '"180" in place of a code',
    expected: 'a code with its points, such as 1.8.0',
    remedy: 'Did you mean 1.8.0? Write it with points; the line was not read.',
    offer: '1.8.0',
  },
  {
    code: 'obis/bare-code',
    when: 'the last group is left out',
    make: listed('15.8 4342.1'),
    at: '1:1',
    found: '"15.8" in place of a code',
    expected: 'a code with its points, such as 1.8.0',
    remedy: 'Did you mean 15.8.0? Write it with points; the line was not read.',
    offer: '15.8.0',
  },
  {
    code: 'obis/comma-unclear',
    when: 'a comma can be read in two ways',
    make: listed('1.8.0;12,892'),
    at: '1:7',
    found: '"12,892" for 1.8.0, where the comma can group thousands or mark decimals',
    expected: 'a number that can be read in one way',
    remedy: 'Write 12892 or 12.892.',
  },
  {
    code: 'obis/word',
    when: 'a display says REC',
    make: listed('REC 2935.8 kWh', 'rec 2935.8 kWh'),
    severity: 'note',
    at: '1:1',
    found: '"REC", taken for 2.8.0, export',
    expected: 'a code such as 1.8.0 (import) or 2.8.0 (export)',
    remedy: 'Nothing to do if the meter means it so; else write the code in place of the word.',
  },
  {
    code: 'obis/word',
    when: 'the generation meter is named',
    make: listed('generation 7318.0 kWh'),
    severity: 'note',
    at: '1:1',
    found: '"generation", taken for the register of the generation meter',
    expected: 'a code such as 1.8.0 (import) or 2.8.0 (export)',
    remedy: 'Nothing to do if the meter means it so; else write the code in place of the word.',
  },
  {
    code: 'obis/unit-left-out',
    when: 'the unit is left out on two lines',
    make: listed('1.8.0 4342.1', '2.8.0 2935.8'),
    severity: 'note',
    at: '1:7',
    found: '4342.1 for 1.8.0, without a unit',
    expected: 'kWh, Wh or MWh; values without are taken for kWh',
    remedy: 'Nothing to do if the display shows kWh.',
  },
  {
    code: 'obis/no-day',
    when: 'no day is given',
    make: undated('1.8.0 4342.1 kWh', '2.8.0 2935.8 kWh'),
    at: '1:7',
    found: '1.8.0, 2.8.0 without the day of the reading',
    expected: 'a line with the day above the registers, such as 2025-05-01',
    remedy: 'On which day was the meter read? Write it above; nothing of these was used.',
  },
  {
    code: 'obis/no-such-day',
    when: 'February has 30 days',
    make: listed('date: 2025-02-30', '1.8.0 4342.1 kWh'),
    at: '1:7',
    found: 'the date "2025-02-30"',
    expected: 'a day of the calendar, such as 2025-05-01',
    remedy: 'Correct the date.',
  },
  {
    code: 'obis/no-such-day',
    when: 'the clock of the meter was never set',
    make: listed('0.9.2(000000)', '1.8.0 4342.1 kWh'),
    at: '1:6',
    found: 'the date "000000"',
    expected: 'a day of the calendar, such as 250501, the year first',
    remedy: 'Correct the date.',
  },
  {
    code: 'obis/no-such-hour',
    when: 'a time is past midnight',
    make: listed('0.9.1(243000)', '1.8.0 4342.1 kWh'),
    at: '1:6',
    found: 'the time "243000"',
    expected: 'hours, minutes and seconds of a day, such as 18:30 or 183000',
    remedy: 'Correct the time, or take it out: the day is enough.',
  },
  {
    code: 'obis/day-or-month',
    when: 'day and month can change places',
    make: listed('date: 1/5/2025', '1.8.0 4342.1 kWh'),
    severity: 'question',
    at: '1:7',
    found: '1/5/2025, read as 2025-05-01',
    expected: 'a date that can be read in one way',
    remedy: 'Keep it, or write 2025-01-05 if that is the day.',
  },
  {
    code: 'obis/two-days',
    when: 'the clock of the meter says another day',
    make: undated('2025-05-01', '0.9.2(250502)', '1.8.0 4342.1 kWh'),
    severity: 'question',
    at: '2:6',
    found: '2025-05-01 as the day, and 2025-05-02 on the clock of the meter',
    expected: 'the same day',
    remedy: '2025-05-01 was used. Is the clock of the meter wrong? Else correct the day.',
  },
];

/** Everything that can be said of meter telegrams and of lists of registers. */
export const OBIS_CASES: readonly MessageCase[] = [...REGISTER_CASES, ...TELEGRAM_CASES, ...LIST_CASES];
