import { expect, it } from 'vitest';
import { clockWords } from './meter-head.ts';

it.each([
  [null, null, 'local time, as the file has it'],
  [null, 'Asia/Kolkata', 'local time, as the file has it'],
  [0, null, 'UTC'],
  [600, null, 'UTC+10:00 all year'],
  [-570, null, 'UTC−09:30 all year'],
  [330, 'Asia/Kolkata', 'UTC+05:30 all year in messages; below it is the time of Asia/Kolkata'],
])('says of the clock %j, in the zone %j: %s', (offset, zone, words) => {
  expect(clockWords({ offset }, zone)).toBe(words);
});
