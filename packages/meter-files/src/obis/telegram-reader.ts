import type { DayNumber } from '@unitbook/engine';
import type { MeterReader, MeterSink } from '../stream.ts';
import { leadingObis } from './code.ts';
import { lineSplitter, type Line } from './lines.ts';
import { MOST_REGISTERS } from './readout.ts';
import { makeRegisters } from './registers.ts';
import { registersOn, startOf, takeTelegram, type Reading } from './take-telegram.ts';
import { LARGEST_TELEGRAM, telegramFrames } from './telegram-frames.ts';
import { registerOn } from './telegram.ts';
import { makeTeller, named, shown } from './teller.ts';

const LOCAL_CLOCK = { offset: null } as const;

/** Say what was lost with lines whose beginning is missing. */
function endStray(reading: Reading): void {
  const { stray, teller } = reading;
  reading.stray = null;
  if (stray === null) return;
  teller.tell('obis/no-beginning', stray.place, { line: stray.line, registers: named([...stray.names]) });
}

/** A line outside of a telegram: of one that was begun before the file was, or something else. */
function takeStray(line: Line, reading: Reading): void {
  const text = line.text.trim();
  if (text === '') return;
  reading.isEmpty = false;
  const found = leadingObis(line.text);
  if (found !== null && line.text[found.length] === '(') {
    reading.stray ??= { place: startOf(line), line: shown(line.text), names: new Set() };
    const name = registerOn(line);
    if (name !== null && reading.stray.names.size < MOST_REGISTERS) reading.stray.names.add(name);
  } else if (reading.stray === null)
    reading.teller.tellOnce('obis/between-telegrams', startOf(line), { line: shown(text) });
  else if (text.startsWith('!')) endStray(reading);
}

function endFile(reading: Reading): void {
  const { teller, registers, isEmpty, passed } = reading;
  endStray(reading);
  if (registers.count() > 0 || teller.hasErrors()) return;
  const what = isEmpty ? 'an empty file' : 'no register of energy';
  teller.tell('obis/nothing-read', { line: 1, column: 1 }, { what, passed: named(passed) });
}

/**
 * Make a reader of meter telegrams as in the open Dutch smart-meter requirements, one or many in a file.
 *
 * Registers of import (1.8.x), export (2.8.x) and net energy (16.8.x) are handed on in kWh, digit for digit,
 * at the local day and minute of the telegram. A telegram with a wrong checksum, without an end or without
 * a time is not used, and a finding names the registers that were lost with it.
 *
 * @param sink     takes registers and findings
 * @param options  `day`: the day of the one telegram without a time (versions 2.2 and 3.0 have none)
 * @returns        a reader; it throws RangeError when it is written to after its end
 */
export function telegramReader(sink: MeterSink, options: { readonly day?: DayNumber } = {}): MeterReader {
  const teller = makeTeller(sink);
  const reading: Reading = {
    teller,
    registers: makeRegisters(sink, teller),
    day: options.day ?? null,
    wasUntimed: false,
    stray: null,
    passed: [],
    isEmpty: true,
  };
  const frames = telegramFrames({
    begin: () => {
      reading.isEmpty = false;
      endStray(reading);
    },
    telegram: (lines, mark) => {
      takeTelegram(lines, mark, reading);
    },
    cutOff: (lines) => {
      const [header] = lines;
      if (header !== undefined)
        teller.tell('obis/cut-off', startOf(header), { registers: registersOn(lines) });
    },
    tooLong: (header) => {
      teller.tell('obis/telegram-too-long', startOf(header), { most: String(LARGEST_TELEGRAM) });
    },
    stray: (line) => {
      takeStray(line, reading);
    },
  });
  const splitter = lineSplitter(LARGEST_TELEGRAM, frames.take);
  return {
    clock: LOCAL_CLOCK,
    write: splitter.write,
    end: () => {
      splitter.end();
      frames.end();
      endFile(reading);
    },
  };
}
