import { expect, it } from 'vitest';
import { findingMaker } from './finding.ts';

const make = findingMaker({
  'x/odd': {
    severity: 'question',
    text: (v) => ({ found: `${v['n'] ?? '?'} is odd`, expected: 'an even number', remedy: 'Add one.' }),
  },
});

it('makes a finding of its code, place, values and sentences', () => {
  expect(make('x/odd', { path: ['list', 2], offer: '4' }, { n: '3' })).toEqual({
    code: 'x/odd',
    severity: 'question',
    path: ['list', 2],
    offer: '4',
    values: { n: '3' },
    found: '3 is odd',
    expected: 'an even number',
    remedy: 'Add one.',
  });
});

it('makes a finding without values, and without an offer where there is none', () => {
  expect(make('x/odd', { path: [] })).toEqual({
    code: 'x/odd',
    severity: 'question',
    path: [],
    values: {},
    found: '? is odd',
    expected: 'an even number',
    remedy: 'Add one.',
  });
});
