import { parseDay, readPlant, type DayNumber, type Plant } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { answerOf } from './answer-words.ts';
import { judgementWords } from './judgement-words.ts';
import { monthViews } from './month-views.ts';

const day = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);
const writing = writingFor('en-IN', 'INR');

function plantOf(parts: object): Plant {
  const { value } = readPlant(
    JSON.stringify({ format: 'unitbook-plant-1', capacity: [{ kWp: '4' }], ...parts }),
  );
  if (value === null) throw new Error('no plant');
  return value;
}

const plant = plantOf({ expected: { monthly: Array<string>(12).fill('400') } });

function told(wattHours: number, own = plant, isEstimated = false): readonly string[] {
  const period = { from: day('2025-04-01'), to: day('2025-05-01') };
  const [month] = monthViews([{ period, wattHours, isEstimated, generation: null }], own, []);
  if (month === undefined) throw new Error('no month');
  const { lead, text } = answerOf(month, writing);
  return [judgementWords(month), `${lead}: ${text}`];
}

// 400 units are expected and one sigma is 10 % of them: the limits are 360, 320 and 480.
it.each([
  [
    480_000,
    'fine',
    'Fine: the plant made 480 units, 120.0 % of the 400.0 expected, within what the weather brings about.',
  ],
  [
    360_000,
    'fine',
    'Fine: the plant made 360 units, 90.0 % of the 400.0 expected, within what the weather brings about.',
  ],
  [
    359_900,
    'watch',
    'Watch the next month: the plant made 359.9 units, 90.0 % of the 400.0 expected, about one healthy month in six is as low as this.',
  ],
  [
    320_000,
    'watch',
    'Watch the next month: the plant made 320 units, 80.0 % of the 400.0 expected, about one healthy month in six is as low as this.',
  ],
  [
    319_900,
    'look at it: low',
    'Look at it: the plant made 319.9 units, 80.0 % of the 400.0 expected, lower than the weather usually brings about.',
  ],
  [
    480_100,
    'look at it: high',
    'Look at it: the plant made 480.1 units, 120.0 % of the 400.0 expected, more than the weather usually brings about.',
  ],
])('says of %d Wh: %s', (wattHours, judgement, sentence) => {
  expect(told(wattHours)).toEqual([judgement, sentence]);
});

it('says why a month cannot be told, and how much it made', () => {
  expect(told(396_000, plantOf({}))).toEqual([
    'cannot be told',
    'It cannot be told: the plant made 396 units (3.30 per kWp and day), but nothing is expected of this plant. ' +
      'It takes a monthly table, or irradiation and a performance ratio, or earlier years.',
  ]);
  expect(told(396_000, plant, true)[1]).toContain('but a reading was estimated');
});
