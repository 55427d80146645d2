import type { FindingKind } from '@unitbook/engine';

const of = (v: Readonly<Record<string, string>>, key: string): string => v[key] ?? '';

/** What can be said of a register, in a telegram or in a list. */
export const REGISTER_FINDINGS = {
  'obis/nothing-read': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'passed') === '' ? of(v, 'what') : `${of(v, 'what')}, only ${of(v, 'passed')}`,
      expected: 'a register of import (1.8.0) or export (2.8.0)',
      remedy: 'Choose the file, or copy the screens, with the codes 1.8.x and 2.8.x.',
    }),
  },
  'obis/line-too-long': {
    severity: 'error',
    text: (v) => ({
      found: `a line of more than ${of(v, 'most')} characters, beginning "${of(v, 'line')}"`,
      expected: 'one register on a line',
      remedy: 'The line was not read. Break it, or choose the file that holds the registers.',
    }),
  },
  'obis/line-unclear': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'line')}"`,
      expected: of(v, 'form'),
      remedy: 'The line was not read, the others were. Correct it from the display of the meter.',
    }),
  },
  'obis/no-value': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'register')} without a value`,
      expected: 'what the register shows, such as 004342.1',
      remedy: 'Add the number from the display of the meter.',
    }),
  },
  'obis/not-a-number': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" for ${of(v, 'register')}`,
      expected: 'the digits that the register shows, such as 004342.1',
      remedy:
        of(v, 'offer') === ''
          ? 'Copy the digits from the display of the meter.'
          : `Did you mean ${of(v, 'offer')}?`,
    }),
  },
  'obis/below-zero': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} for ${of(v, 'register')}, below 0`,
      expected: 'a register that counts up from 0',
      remedy:
        'Take the minus sign off if the display shows none. Only 16.8.0, the net register, can have one.',
    }),
  },
  'obis/unit': {
    severity: 'error',
    text: (v) => ({
      found: `the unit "${of(v, 'unit')}" for ${of(v, 'register')}`,
      expected: 'kWh, Wh or MWh',
      remedy: 'The value was not used. Copy value and unit from the display of the meter.',
    }),
  },
  'obis/register-twice': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} for ${of(v, 'register')}, which on line ${of(v, 'line')} is ${of(v, 'first')}`,
      expected: `each register once in a ${of(v, 'kind')}`,
      remedy:
        of(v, 'kind') === 'telegram'
          ? 'Neither was used. Read the meter again.'
          : 'Neither was used. Keep the one that is right; of two days, write each day above its registers.',
    }),
  },
  'obis/rates-and-total': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')} is ${of(v, 'total')}, ${of(v, 'rates')} come to ${of(v, 'sum')}: ${of(v, 'difference')} ${of(v, 'side')}`,
      expected: 'a total that is the sum of its rates, but for the digits that a display leaves out',
      remedy: 'Is a rate left out, or a digit misread? Keep them if the display shows them so.',
    }),
  },
  'obis/other-energy': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'register')}, ${of(v, 'what')}`,
      expected: 'import (1.8.x) and export (2.8.x), which a bill is made of',
      remedy: 'Nothing to do: it is counted neither as import nor as export.',
    }),
  },
  'obis/past-value': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'register')}, the value at a billing reset before`,
      expected: 'what the register shows now: the code without * and a number, or with *255',
      remedy:
        'Such values were left out: the day they are of is not known. To use one, enter it with its day.',
    }),
  },
  'obis/rates-numbered': {
    severity: 'note',
    text: (v) => ({
      found: `registers of rates, such as ${of(v, 'register')}`,
      expected: 'to know which rate is the peak one',
      remedy:
        'The code only numbers the rates, and operators number them differently. Say which is which; the bill names them.',
    }),
  },
  'obis/too-many-registers': {
    severity: 'error',
    text: (v) => ({
      found: `more than ${of(v, 'most')} different registers`,
      expected: 'the registers of a household',
      remedy: 'The registers beyond were not read. Choose the file of one household.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
