import type { DayNumber, Finding } from '@unitbook/engine';
import { registerListReader, telegramReader } from '../../../packages/meter-files/src/obis/index.ts';
import type { MeterReader, MeterSink, RegisterValue } from '../../../packages/meter-files/src/stream.ts';

/** What a reader made of a file. */
export interface ReadObis {
  readonly values: readonly RegisterValue[];
  readonly findings: readonly Finding[];
}

type MakeReader = (sink: MeterSink) => MeterReader;

/** Read pieces of a file one after the other. */
export function readPieces(make: MakeReader, pieces: readonly string[]): ReadObis {
  const values: RegisterValue[] = [];
  const findings: Finding[] = [];
  const reader = make({
    intervals: () => {
      throw new RangeError('a telegram and a list have no intervals');
    },
    register: (value) => values.push(value),
    finding: (finding) => findings.push(finding),
  });
  for (const piece of pieces) reader.write(piece);
  reader.end();
  return { values, findings };
}

/** A reader of telegrams, or of lists, with the day it is told. */
export const telegramsOf =
  (day?: DayNumber): MakeReader =>
  (sink) =>
    telegramReader(sink, day === undefined ? {} : { day });

/** A reader of lists with the day it is told. */
export const listsOf =
  (day?: DayNumber): MakeReader =>
  (sink) =>
    registerListReader(sink, day === undefined ? {} : { day });

/** Read a text as telegrams. */
export const readTelegrams = (text: string, day?: DayNumber): ReadObis =>
  readPieces(telegramsOf(day), [text]);

/** Read a text as a list of registers. */
export const readList = (text: string, day?: DayNumber): ReadObis => readPieces(listsOf(day), [text]);

/** A text in single characters: also a pair of surrogates is taken apart. */
export const characters = (text: string): readonly string[] =>
  Array.from({ length: text.length }, (_, at) => text.charAt(at));

/** Codes of findings, in order. */
export const codesOf = ({ findings }: ReadObis): readonly string[] => findings.map(({ code }) => code);

/** Registers and their values, in order: "1-0:1.8.1 004342.100". */
export const shownValues = ({ values }: ReadObis): readonly string[] =>
  values.map(({ stream, value }) => `${stream.register} ${value}`);
