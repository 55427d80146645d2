import { parseDay, type ReportNotation } from '@unitbook/engine';
import type { Writing } from '../../writing/writing.ts';

/**
 * How the engine's sheets and sentences are written for a household: its numbers and money, and its days in words.
 *
 * @param writing  of the household
 * @example
 * notationOf(writingFor('en-IN', 'INR')).day('2025-05-01') //=> "1 May 2025"
 */
export function notationOf(writing: Writing): ReportNotation {
  return {
    ...writing,
    day: (text) => {
      const number = parseDay(text);
      return number === null ? text : writing.day(number);
    },
  };
}
