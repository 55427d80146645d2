import { expect, it } from 'vitest';
import { comparableLink, linksAbove, linkTail } from './links.ts';

it.each([
  ['https://example.org:443/espi/ReadingType/07', '/espi/ReadingType/07'],
  ['/espi/ReadingType/07/', '/espi/ReadingType/07'],
  [' ReadingType/07 ', 'ReadingType/07'],
  ['https://example.org', ''],
  ['', ''],
])('compares %j as %j', (link, comparable) => {
  expect(comparableLink(link)).toBe(comparable);
});

it('knows the links above', () => {
  expect(linksAbove('MeterReading/01/IntervalBlock')).toEqual([
    'MeterReading/01/IntervalBlock',
    'MeterReading/01',
    'MeterReading',
  ]);
  expect(linksAbove('')).toEqual([]);
});

it('knows the end of a link', () => {
  expect([linkTail('/a/UsagePoint/01'), linkTail('01')]).toEqual(['UsagePoint/01', '01']);
});
