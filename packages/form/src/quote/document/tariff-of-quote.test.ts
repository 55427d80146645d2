import type { TariffDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { blankQuote } from './blank-quote.ts';
import { nameOf, otherTariffNamed, tariffOfQuote, withTariff } from './tariff-of-quote.ts';

const choices = ['north', 'south'].map((id) => ({
  id,
  name: `Invented ${id}`,
  load: () => Promise.resolve(''),
}));
const own = { id: 'own', name: 'Our own' } as TariffDocument;
const blank = blankQuote('en-IN', '');

it('names the tariff in the quote, by id and name', () => {
  expect(withTariff(blank, 'north', choices).tariff).toEqual({ id: 'north', name: 'Invented north' });
  expect(withTariff(blank, own, choices).tariff).toEqual({ id: 'own', name: 'Our own' });
  expect(withTariff(blank, 'unknown', choices).tariff).toEqual({ id: 'unknown' });
  expect(withTariff(blank, '', choices)).toBe(blank);
  expect([nameOf('south', choices), nameOf('', choices), nameOf(own, choices)]).toEqual([
    'Invented south',
    '',
    'Our own',
  ]);
});

it('opens a quote with the tariff that it names, where that is at hand', () => {
  const quote = withTariff(blank, 'north', choices);
  expect(tariffOfQuote(quote, choices, 'south')).toBe('north');
  expect(tariffOfQuote(quote, [], 'south')).toBe('south');
  expect(tariffOfQuote(blank, choices, 'south')).toBe('south');
  // A document of the same id lies open already: it may be that of a later year.
  expect(tariffOfQuote(withTariff(blank, own, choices), choices, own)).toBe(own);
});

it('says which tariff a quote names, where another lies open', () => {
  const quote = withTariff(blank, 'north', choices);
  expect(otherTariffNamed(quote, 'south')).toBe('Invented north');
  expect(otherTariffNamed(quote, 'north')).toBe('');
  expect(otherTariffNamed(blank, 'south')).toBe('');
  expect(otherTariffNamed({ ...blank, tariff: { id: 'bare' } }, own)).toBe('bare');
});
