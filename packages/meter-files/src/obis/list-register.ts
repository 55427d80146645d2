import { obisMeaning } from './meaning.ts';
import type { RegisterLine } from './list-line.ts';
import { listUnit, readListNumber, splitValue, type ValueText } from './list-number.ts';
import { entryOf, type Entry } from './readout.ts';
import { shown, type Place, type Teller } from './teller.ts';
import { placesOf, shiftDecimal, type EnergyUnit } from './units.ts';

/** The form of a line, for messages. */
export const LINE_FORM = 'a register on each line, such as 1.8.0 004342.1 kWh, or a day, such as 2025-05-01';

/** What the register of a line is called. */
const nameOf = ({ word, text }: RegisterLine): string => word?.register ?? text;

/** The number of a value as plain decimal text, or null after saying what stands in the way. */
function numberOf(line: RegisterLine, { number }: ValueText, place: Place, teller: Teller): string | null {
  const register = nameOf(line);
  const value = shown(number);
  const read = readListNumber(number);
  // Behind a word, "1 234.5" can be rate 1 and a value.
  const isSpaced = line.word !== null && /\s/.test(number);
  if (read.kind === 'comma-unclear') {
    const { grouped, decimal } = read;
    teller.tell('obis/comma-unclear', place, { value, register, grouped, decimal });
  } else if (read.kind === 'not-a-number' || isSpaced) {
    const offer = read.kind === 'not-a-number' ? read.offer : '';
    teller.tell('obis/not-a-number', place, { value, register, offer }, offer === '' ? undefined : offer);
  } else if (read.text.startsWith('-') && quantityOf(line) !== 'net')
    teller.tell('obis/below-zero', place, { value, register });
  else return read.text;
  return null;
}

function quantityOf({ code, word }: RegisterLine): Entry['quantity'] {
  if (word !== null) return word.quantity;
  return code === null ? 'other' : obisMeaning(code).quantity;
}

/** The unit of a value; where it is left out, kWh. */
function unitOf(
  line: RegisterLine,
  { number, unit }: ValueText,
  place: Place,
  teller: Teller,
): EnergyUnit | null {
  const register = nameOf(line);
  if (unit === '') {
    teller.tellOnce('obis/unit-left-out', place, { value: shown(number), register });
    return { unit: 'kWh', shift: 0 };
  }
  const known = listUnit(unit);
  if (known === null) teller.tell('obis/unit', place, { unit: shown(unit), register });
  return known;
}

/** The register of a generation meter: no code is its own, a meter for generation shows it as its 1.8.0 or 2.8.0. */
function generationEntry(text: string, unit: EnergyUnit, place: Place): Entry {
  const name = 'generation';
  return {
    key: name,
    register: name,
    quantity: 'generation',
    rate: null,
    other: null,
    group: '',
    unit: unit.unit,
    value: shiftDecimal(text, unit.shift),
    places: placesOf(text) - unit.shift,
    ...place,
  };
}

/**
 * Read the value of a register line.
 *
 * @returns the register in kWh, or null after saying why it could not be read
 */
export function readRegister(line: RegisterLine, teller: Teller): Entry | null {
  const place = { line: line.number, column: line.valueAt + 1 };
  const register = nameOf(line);
  if (/^(?:\(\s*(?:\*[^()]*)?\))?$/.test(line.value)) {
    teller.tell('obis/no-value', place, { register });
    return null;
  }
  const split = splitValue(line.value);
  if (split === null) {
    teller.tell('obis/line-unclear', place, { line: shown(line.value), form: LINE_FORM });
    return null;
  }
  const text = numberOf(line, split, place, teller);
  const unit = text === null ? null : unitOf(line, split, place, teller);
  if (text === null || unit === null) return null;
  const code = line.word?.code ?? line.code;
  return code === null ? generationEntry(text, unit, place) : entryOf(code, register, { text, unit, place });
}
