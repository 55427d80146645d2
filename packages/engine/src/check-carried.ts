import { countAdvance } from './energy/index.ts';
import { FIGURE, thousandthsOf, type BillFacts, type Figures, type RegisterFacts } from './audit/index.ts';

/** Balances as the bill before printed them. */
function openingOf({ opening }: BillFacts, printedBefore: Figures): BillFacts['opening'] {
  const own = { ...opening };
  for (const id of Object.keys(own))
    own[id] = thousandthsOf(printedBefore.get(FIGURE.closing(id))) ?? own[id] ?? 0;
  return own;
}

/**
 * Registers that begin where the bill before printed that they ended; null where one of them would have run back: a
 * reading that was too high is put right otherwise than by the next one.
 */
function registersOf({ registers }: BillFacts, printedBefore: Figures): Record<string, RegisterFacts> | null {
  const own: Record<string, RegisterFacts> = {};
  for (const [key, facts] of Object.entries(registers)) {
    const previous = thousandthsOf(printedBefore.get(FIGURE.reading(key, 'present'))) ?? facts.previous;
    // A wrap is one of the right chain: it stays, unless the reading before was already printed behind it.
    const passed = facts.passed && facts.present < previous;
    if (facts.present < previous && !passed) return null;
    own[key] = { ...facts, previous, passed };
  }
  return own;
}

const endOf = ({ present, passed, register }: RegisterFacts): number =>
  passed ? present + register.fullScale : present;

/** Units with what changed registers count in place of what they counted before. */
function unitsOf(facts: BillFacts, registers: Readonly<Record<string, RegisterFacts>>): BillFacts['units'] {
  const units: Record<string, number> = { ...facts.units };
  const { units: rule } = facts.tariff;
  const count = (one: RegisterFacts): number =>
    countAdvance({ previous: one.previous, present: endOf(one) }, one.register, rule);
  for (const [key, own] of Object.entries(registers)) {
    const before = facts.registers[key];
    if (before === undefined || before.previous === own.previous) continue;
    const more = count(own) - count(before);
    const { id, block } = own.register;
    for (const name of block === null ? [id] : [id, `${id}@${block}`])
      if (units[name] !== undefined) units[name] += more;
  }
  return units;
}

/**
 * The facts of a bill as the books of the utility hand them on: it begins with the readings and the credit that the
 * bill before printed, stale or estimated as they may be.
 *
 * @param printedBefore  figures of the bill that was printed just before; null: there is none
 * @returns              null where nothing is handed on otherwise than by the right chain
 */
export function carriedFacts(facts: BillFacts, printedBefore: Figures | null): BillFacts | null {
  if (printedBefore === null) return null;
  const opening = openingOf(facts, printedBefore);
  const registers = registersOf(facts, printedBefore) ?? facts.registers;
  const isSame =
    Object.keys(opening).every((id) => opening[id] === facts.opening[id]) &&
    Object.keys(registers).every((key) => registers[key]?.previous === facts.registers[key]?.previous);
  return isSame ? null : { ...facts, opening, registers, units: unitsOf(facts, registers) };
}
