import type { MeterSink } from '../stream.ts';
import type { Position } from './elements.ts';
import { espiFinding, type EspiFindingCode } from './findings.ts';

/** Say something about a place in the feed. */
export type Tell = (
  code: EspiFindingCode,
  position: Position,
  values?: Readonly<Record<string, string>>,
) => void;

/** Findings of one code that are told one by one; the others are counted. */
const MOST_OF_ONE_CODE = 100;

/**
 * Tell findings, of each code only so many: a fault that is in every reading of a year would otherwise be
 * told tens of thousands of times.
 */
export function findingLog(sink: MeterSink): { readonly tell: Tell; readonly end: () => void } {
  const counts = new Map<EspiFindingCode, { count: number; firstLeftOut: Position | null }>();
  const hand = (
    code: EspiFindingCode,
    position: Position,
    values: Readonly<Record<string, string>>,
  ): void => {
    sink.finding({ ...espiFinding(code, { path: [] }, values), position });
  };
  return {
    tell: (code, position, values = {}) => {
      const told = counts.get(code) ?? { count: 0, firstLeftOut: null };
      counts.set(code, told);
      told.count += 1;
      if (told.count <= MOST_OF_ONE_CODE) hand(code, position, values);
      else told.firstLeftOut ??= position;
    },
    end: () => {
      for (const [code, { count, firstLeftOut }] of counts) {
        if (firstLeftOut === null) continue;
        const more = { code, count: String(count - MOST_OF_ONE_CODE), most: String(MOST_OF_ONE_CODE) };
        hand('espi/more', firstLeftOut, more);
      }
    },
  };
}
