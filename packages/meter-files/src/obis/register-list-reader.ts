import type { DayNumber } from '@unitbook/engine';
import type { MeterReader, MeterSink } from '../stream.ts';
import { lineSplitter, type Line } from './lines.ts';
import { makeBlocks, type Blocks } from './list-block.ts';
import { readHead } from './list-head.ts';
import { listLine, type DayLine, type RegisterLine } from './list-line.ts';
import { LINE_FORM, readRegister } from './list-register.ts';
import { obisMeaning } from './meaning.ts';
import { addEntry, groupOf } from './readout.ts';
import { makeRegisters, type Registers } from './registers.ts';
import { LONGEST_LINE } from './telegram.ts';
import { makeTeller, named, shown, type Teller } from './teller.ts';

const LOCAL_CLOCK = { offset: null } as const;
const DAY_FORM = '2025-05-01';
const MOST_PASSED = 9;

/** What the reader of one list goes by. */
interface Reading {
  readonly teller: Teller;
  readonly registers: Registers;
  readonly blocks: Blocks;
  /** Words that were said to be taken for a code. */
  readonly words: Set<string>;
  /** Codes of no counted energy, for a list in which there is nothing else. */
  readonly passed: string[];
  isEmpty: boolean;
}

function takeDay({ day, minute, text, at, number }: DayLine, { blocks, teller }: Reading): void {
  const place = { line: number, column: at + 1 };
  if (day === null) teller.tell('obis/no-such-day', place, { value: shown(text), form: DAY_FORM });
  else blocks.dayLine(day, minute, text, place);
}

/** Say once of each word what it was taken for. */
function tellWord({ word, text, number, at }: RegisterLine, { teller, words }: Reading): void {
  if (word === null || words.has(text.toLowerCase())) return;
  words.add(text.toLowerCase());
  const { register, quantity, code } = word;
  const taken = code === null ? 'the register of the generation meter' : `${register}, ${quantity}`;
  teller.tell('obis/word', { line: number, column: at + 1 }, { word: text, taken });
}

function takeRegister(line: RegisterLine, reading: Reading): void {
  const { teller, blocks, passed } = reading;
  const place = { line: line.number, column: line.at + 1 };
  if (line.code !== null) {
    if (readHead(line, line.code, blocks, teller)) return;
    const { isEnergy, isPast } = obisMeaning(line.code);
    if (!isEnergy && passed.length < MOST_PASSED) passed.push(line.text);
    if (isEnergy && isPast) teller.tellOnce('obis/past-value', place, { register: line.text });
    if (!isEnergy || isPast) return;
  }
  const entry = readRegister(line, teller);
  if (entry === null) {
    const code = line.word?.code ?? line.code;
    if (code !== null) blocks.readout().spoilt.add(groupOf(code));
    return;
  }
  tellWord(line, reading);
  addEntry(blocks.readout(), entry, 'list', teller);
}

function takeLine(line: Line, reading: Reading): void {
  const { teller, blocks } = reading;
  const start = { line: line.number, column: 1 };
  if (line.isCut) {
    reading.isEmpty = false;
    teller.tell('obis/line-too-long', start, { line: shown(line.text), most: String(LONGEST_LINE) });
    return;
  }
  const read = listLine(line);
  if (read.kind !== 'nothing') reading.isEmpty = false;
  if (read.kind === 'header') blocks.close();
  if (read.kind === 'day') takeDay(read, reading);
  if (read.kind === 'register') takeRegister(read, reading);
  if (read.kind === 'bare') {
    const place = { line: line.number, column: read.at + 1 };
    teller.tell('obis/bare-code', place, { value: read.text, offer: read.offer }, read.offer);
  }
  if (read.kind === 'unclear')
    teller.tell('obis/line-unclear', start, { line: shown(line.text.trim()), form: LINE_FORM });
}

function endFile({ blocks, teller, registers, isEmpty, passed }: Reading): void {
  blocks.close();
  if (registers.count() > 0 || teller.hasErrors()) return;
  const what = isEmpty ? 'an empty list' : 'no register of energy';
  teller.tell('obis/nothing-read', { line: 1, column: 1 }, { what, passed: named(passed) });
}

/**
 * Make a reader of plain lists of OBIS registers: what a person copies from a display, and readouts of
 * IEC 62056-21.
 *
 * One register stands on a line: "1.8.0 004342.1", "1-0:1.8.0;4342,1 kWh", "2.8.0(002935.8*kWh)", "IMP 4342.1".
 * The day stands above its registers, or is the meter's own (0.9.2). Registers are handed on in kWh, digit
 * for digit; a line that cannot be read gets a finding, and the others are read.
 *
 * @param sink     takes registers and findings
 * @param options  `day`: the day of registers for which the list gives none; without it a finding asks
 * @returns        a reader; it throws RangeError when it is written to after its end
 */
export function registerListReader(sink: MeterSink, options: { readonly day?: DayNumber } = {}): MeterReader {
  const teller = makeTeller(sink);
  const registers = makeRegisters(sink, teller);
  const blocks = makeBlocks(registers, teller, options.day ?? null);
  const reading: Reading = { teller, registers, blocks, words: new Set(), passed: [], isEmpty: true };
  const splitter = lineSplitter(LONGEST_LINE, (line) => {
    takeLine(line, reading);
  });
  return {
    clock: LOCAL_CLOCK,
    write: splitter.write,
    end: () => {
      splitter.end();
      endFile(reading);
    },
  };
}
