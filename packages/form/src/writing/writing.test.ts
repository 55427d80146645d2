import { givenFigure, parseDay, type Figure } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { daysText, decimalOf, knownLocale, localDates, offerText, writingFor } from './writing.ts';

const money = (numerator: number, denominator: number): Figure =>
  givenFigure({ id: 'x', label: 'X', unit: 'money', numerator, denominator, clause: '' });

const indian = writingFor('en-IN', 'INR');

it('groups by lakh for India and by thousand for Britain, exactly', () => {
  expect(indian.number('11644412345678.9012')).toBe('1,16,44,41,23,45,678.9012');
  expect(writingFor('en-GB', 'INR').number('116444.5')).toBe('116,444.5');
  expect(writingFor('de-DE', 'EUR').number('116444.5')).toBe('116.444,5');
});

it('writes amounts in a column with the places of the coin', () => {
  expect(indian.amount(money(-3600, 100))).toBe('−36.00');
  expect(indian.amount(money(180, 1))).toBe('180.00');
  expect(indian.amount(money(229925, 1000))).toBe('229.925');
  expect(writingFor('en-GB', 'KWD').amount(money(1, 8))).toBe('0.125');
});

it('writes a sum without decimals only where it is whole', () => {
  expect(indian.sum(money(370331, 1))).toBe('₹3,70,331');
  expect(indian.sum(money(2295, 10))).toBe('₹229.50');
  expect(indian.sum(money(-180, 1))).toBe('−₹180');
});

it('rounds only fractions that do not end', () => {
  expect(decimalOf(money(190, 3), 2)).toBe('63.33');
  expect(decimalOf(money(1, 3200), 2)).toBe('0.0003125');
});

it('writes days in words, the same in every zone', () => {
  const day = parseDay('2025-04-03');
  expect(day === null ? '' : indian.day(day)).toBe('3 April 2025');
  expect(daysText(1)).toBe('1 day');
  expect(daysText(30)).toBe('30 days');
});

it('falls back to a known locale', () => {
  expect(knownLocale('no locale')).toBe('en-IN');
  expect(knownLocale(undefined)).toBe('en-IN');
  expect(writingFor('_', 'INR').number('100000')).toBe('1,00,000');
});

it('spells the dates of a sentence, and offers numbers in their grouping', () => {
  expect(localDates('2025-06-01, after 2025-02-30 (TO-2024 cl. 4)', indian)).toBe(
    '1 June 2025, after 2025-02-30 (TO-2024 cl. 4)',
  );
  expect(['4640.3', '2025-06-01', 'its full scale'].map((text) => offerText(text, indian))).toEqual([
    '4,640.3',
    '1 June 2025',
    'its full scale',
  ]);
});

it('keeps the decimals that a number of a sentence has', () => {
  const { printed } = writingFor('en-IN', 'INR');
  expect([printed('138931.60'), printed('1079.00'), printed('-4'), printed('4.6')]).toEqual([
    '1,38,931.60',
    '1,079.00',
    '−4',
    '4.6',
  ]);
  expect(writingFor('de-DE', 'EUR').printed('1234.50')).toBe('1.234,50');
});
