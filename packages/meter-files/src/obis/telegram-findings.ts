import type { FindingKind } from '@unitbook/engine';

const of = (v: Readonly<Record<string, string>>, key: string): string => v[key] ?? '';

/** The registers that were lost with a telegram, in words. */
const lost = (v: Readonly<Record<string, string>>): string =>
  of(v, 'registers') === '' ? 'No register stood in it.' : `Not used: ${of(v, 'registers')}.`;

/** What can be said of a meter telegram. */
export const TELEGRAM_FINDINGS = {
  'obis/checksum': {
    severity: 'error',
    text: (v) => ({
      found: `a telegram with the checksum "${of(v, 'printed')}", where its text comes to ${of(v, 'counted')}`,
      expected: 'the same checksum',
      remedy: `The telegram was changed or damaged on the way. ${lost(v)} Read the meter again.`,
    }),
  },
  'obis/no-checksum': {
    severity: 'question',
    text: (v) => ({
      found: `a telegram of version ${of(v, 'version')} without a checksum behind "!"`,
      expected: 'four digits there, as telegrams have from version 4 on',
      remedy: 'Was it taken off? Its registers were read; nothing shows that no digit was changed.',
    }),
  },
  'obis/cut-off': {
    severity: 'error',
    text: (v) => ({
      found: 'a telegram that does not end',
      expected: 'a line that begins with "!" at its end',
      remedy: `${lost(v)} Record the telegram to its end.`,
    }),
  },
  'obis/no-beginning': {
    severity: 'error',
    text: (v) => ({
      found: `lines of a telegram without its beginning, first "${of(v, 'line')}"`,
      expected: 'a line that begins with "/" before them',
      remedy: `${lost(v)} Record the telegram from its beginning.`,
    }),
  },
  'obis/between-telegrams': {
    severity: 'note',
    text: (v) => ({
      found: `"${of(v, 'line')}" outside of a telegram`,
      expected: 'telegrams, each from "/" to "!"',
      remedy: 'Nothing to do: such lines are passed over, times on them too.',
    }),
  },
  'obis/telegram-too-long': {
    severity: 'error',
    text: (v) => ({
      found: `a telegram of more than ${of(v, 'most')} characters`,
      expected: 'a telegram of a meter, which has a few thousand at most',
      remedy: 'It was not used. Is the line that begins with "!" missing? Record the telegram again.',
    }),
  },
  'obis/no-time': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'found'),
      expected: 'the line 0-0:1.0.0 with the time of the meter',
      remedy: `${lost(v)} Enter them by hand with the day on which they were read.`,
    }),
  },
  'obis/no-such-time': {
    severity: 'error',
    text: (v) => ({
      found: `the time "${of(v, 'time')}"`,
      expected: 'YYMMDDhhmmss of a day there is, and S for summer time or W',
      remedy: `${lost(v)} Check the clock of the meter, or record the telegram again.`,
    }),
  },
  'obis/no-unit': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} for ${of(v, 'register')}, without a unit`,
      expected: 'kWh, Wh or MWh behind a star, such as 004342.100*kWh',
      remedy: 'The value was not used. Read the meter again.',
    }),
  },
  'obis/goes-down': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'value')} for ${of(v, 'register')}, after ${of(v, 'before')} in the telegram before`,
      expected: 'a register that counts up',
      remedy: 'Was the meter changed or set back, or did the register pass its last number? Keep it if so.',
    }),
  },
  'obis/time-goes-back': {
    severity: 'question',
    text: (v) => ({
      found: `the time ${of(v, 'time')}, after ${of(v, 'before')} in the telegram before`,
      expected: 'telegrams in the order of time',
      remedy: 'Was the clock of the meter set, or were files put together out of order? Keep it if so.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
