import type { DayNumber } from '@unitbook/engine';
import type { Writing } from '../writing/writing.ts';

const DAY = 1440;
const HOUR = 60;

const two = (value: number): string => String(value).padStart(2, '0');

/** "00:15"; 1440 is "24:00". */
function clockText(minute: number): string {
  return `${two(Math.floor(minute / HOUR))}:${two(minute % HOUR)}`;
}

/** When a register was read: "1 May 2025, 00:15", or the day alone. */
export function readingMoment(day: DayNumber, minute: number | null, { day: words }: Writing): string {
  return minute === null ? words(day) : `${words(day)}, ${clockText(minute)}`;
}

/** When an interval begins. */
export function startMoment(minute: number, { day: words }: Writing): string {
  const day = Math.floor(minute / DAY);
  return `${words(day as DayNumber)}, ${clockText(minute - day * DAY)}`;
}

/** When an interval ends: at midnight the day that ends, not the one that begins. */
export function endMoment(minute: number, { day: words }: Writing): string {
  const day = Math.ceil(minute / DAY) - 1;
  return `${words(day as DayNumber)}, ${clockText(minute - day * DAY)}`;
}

/** From when to when an interval goes; the day once where it is one. */
export function intervalMoment(start: number, end: number, writing: Writing): string {
  const [from, to] = [startMoment(start, writing), endMoment(end, writing)];
  const isOneDay = Math.floor(start / DAY) === Math.ceil(end / DAY) - 1;
  return `${from} to ${isOneDay ? to.slice(to.lastIndexOf(' ') + 1) : to}`;
}

/** A clock as people write it: "UTC", "UTC+10:00". */
export function offsetWords(offset: number): string {
  if (offset === 0) return 'UTC';
  return `UTC${offset < 0 ? '−' : '+'}${clockText(Math.abs(offset))}`;
}
