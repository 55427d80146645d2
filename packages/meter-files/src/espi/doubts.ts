import type { Position } from './elements.ts';
import type { EspiFindingCode } from './findings.ts';
import type { Tell } from './log.ts';
import { DOUBTS } from './quality.ts';

const CODES: readonly (readonly [number, EspiFindingCode])[] = [
  [DOUBTS.questionable, 'espi/questionable'],
  [DOUBTS.notMeasured, 'espi/not-measured'],
  [DOUBTS.unknown, 'espi/quality'],
];

/** Counts the values of a register of which there is something to ask: one question for all of them. */
export function doubtCounter(register: string): {
  readonly count: (doubts: number, at: Position) => void;
  readonly end: (tell: Tell) => void;
} {
  const counted = CODES.map(([bit, code]) => ({ bit, code, count: 0, first: null as Position | null }));
  return {
    count: (doubts, at) => {
      if (doubts === DOUBTS.none) return;
      for (const kind of counted) {
        if ((doubts & kind.bit) === 0) continue;
        kind.count += 1;
        kind.first ??= at;
      }
    },
    end: (tell) => {
      for (const { code, count, first } of counted)
        if (first !== null) tell(code, first, { count: String(count), register });
    },
  };
}
