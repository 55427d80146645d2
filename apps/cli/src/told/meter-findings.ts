import type { findingMaker } from '@unitbook/engine';
import { of } from './values.ts';

/** What a command says of a meter file besides its reader, by code. */
export const COMMAND_METER_FINDINGS = {
  'command/columns-doubt': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'detected')}: ${of(v, 'evidence')}`,
      expected: 'a table that leaves no doubt',
      remedy: `Check it before you confirm.${of(v, 'else') === '' ? '' : ` It could be ${of(v, 'else')}.`}`,
    }),
  },
  'command/other-table': {
    severity: 'note',
    text: () => ({
      found: 'a table with none of the columns of a list of readings',
      expected: '--columns FILE with any other table',
      remedy: 'Type unitbook readings FILE --propose: it prints what the columns may be, to be checked.',
    }),
  },
  'command/needs-columns': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'why')}, and nothing that says what its columns are`,
      expected: '--columns FILE, a document that says it and that a person has confirmed',
      remedy: of(v, 'remedy'),
    }),
  },
  'command/days-not-whole': {
    severity: 'question',
    text: (v) => ({
      found:
        of(v, 'count') === '1'
          ? `1 day that is not whole: ${of(v, 'first')}`
          : `${of(v, 'count')} days that are not whole, the first ${of(v, 'first')}, the last ${of(v, 'last')}`,
      expected: 'values of every register for all of each day',
      remedy: 'The sums hold what is there. Do not take them for all of those days.',
    }),
  },
  'command/no-whole-period': {
    severity: 'error',
    text: (v) => ({
      found: `interval values from ${of(v, 'from')} to ${of(v, 'to')}, and no whole billing period in them`,
      expected: `a period from day ${of(v, 'day')} of a month to the same day of the next`,
      remedy: 'Use a file of more days, or give the day on which the meter is read by --cycle-day.',
    }),
  },
  'command/days-left-over': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'days')} ${of(v, 'days') === '1' ? 'day' : 'days'} ${of(v, 'side')} the billing periods, from ${of(v, 'from')} to ${of(v, 'to')}`,
      expected: 'whole billing periods',
      remedy: 'They are not billed.',
    }),
  },
  'command/units-as-metered': {
    severity: 'note',
    text: (v) => ({
      found: `sums of intervals to the thousandth of a unit, where the tariff counts units with ${of(v, 'decimals')} ${of(v, 'decimals') === '1' ? 'decimal' : 'decimals'}`,
      expected: 'units as the tariff counts them, off the readings of a register',
      remedy:
        'They are billed as metered: what is taken and what is given can each differ from the printed bill by less than one step of what the tariff counts.',
    }),
  },
  'command/profile-channels': {
    severity: 'error',
    text: (v) => ({
      found: `a profile without ${of(v, 'missing')}`,
      expected: 'intervals of import, which is what a house without a plant uses, and of generation',
      remedy: 'Put both into one table and say which columns they are, or leave the profile out.',
    }),
  },
  'command/no-generation': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'what'),
      expected: 'readings of a generation meter, or generation by interval or day',
      remedy: 'Without them nothing can be said of what the plant made.',
    }),
  },
  'command/no-plant': {
    severity: 'error',
    text: () => ({
      found: 'no plant in the household file',
      expected: 'a plant in it, or --plant FILE',
      remedy: 'Add --plant FILE: its capacity, and what it is expected to make.',
    }),
  },
  'command/day-below-zero': {
    severity: 'note',
    text: (v) => ({
      found:
        of(v, 'count') === '1'
          ? `less than 0 units of generation on ${of(v, 'first')}`
          : `less than 0 units of generation on ${of(v, 'count')} days, the first ${of(v, 'first')}, the last ${of(v, 'last')}`,
      expected: '0 or more',
      remedy: 'Taken for 0: an inverter draws a little where it makes nothing.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
