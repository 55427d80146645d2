import { expect, inject, it } from 'vitest';

/** Minutes behind UTC on 1 January 2026, as `getTimezoneOffset` counts them. */
const BEHIND_UTC: Readonly<Record<string, number>> = {
  UTC: 0,
  'Asia/Kolkata': -330,
  'America/St_Johns': 210,
  'Pacific/Apia': -780,
};

it("runs in the time zone of the project's name", () => {
  expect(new Date(2026, 0, 1).getTimezoneOffset()).toBe(BEHIND_UTC[inject('timeZone')]);
});
