import type { DayNumber, Period } from './quantity/index.ts';
import type { TariffDocument } from './tariff/index.ts';
import {
  registersOf,
  shownBy,
  type Account,
  type Reading,
  type ReadingPair,
  type Register,
  type Stretch,
} from './readings/index.ts';
import { countAdvance, countBlocks, measureEnergy } from './energy/index.ts';
import {
  FIGURE,
  thousandthsOf,
  type BillFacts,
  type PrintedBill,
  type RegisterFacts,
} from './audit/index.ts';

/** Where a figure of a bill's facts is from. */
export type FactSource = 'own' | 'printed';

/** The facts of a bill as far as they are known. */
export interface KnownFacts {
  readonly facts: Omit<BillFacts, 'opening'>;
  /** By "import", "export" and "generation": whose readings or units they are. */
  readonly sources: Readonly<Record<string, FactSource>>;
}

type Registers = Record<string, RegisterFacts>;

const powersOf = ({ sanctionedLoad, plantCapacity }: Account): Record<string, number> => ({
  'sanctioned-load': sanctionedLoad,
  'plant-capacity': plantCapacity,
});

const base = (
  tariff: TariffDocument,
  period: Period,
  account: Account,
): Omit<BillFacts, 'opening' | 'registers' | 'stretches' | 'units'> => ({
  tariff,
  period,
  powers: powersOf(account),
  surplus: { kind: 'as-due' },
  accountLines: [],
  shown: {},
});

/** What the registers of a pair showed, meter by meter; what one that began anew counted before is not known. */
function shownByPair({ from, to, rolledOver, stretches, span }: ReadingPair): readonly RegisterFacts[] {
  const parts: readonly Stretch[] =
    stretches ??
    span.counted.map((register) => {
      return { register, from, to, passed: rolledOver.includes(register.id), beganAnew: false };
    });
  return parts.flatMap(({ register, from: first, to: last, passed, beganAnew }) => {
    const [previous, present] = [shownBy(first, register), shownBy(last, register)];
    return previous === null || present === null || beganAnew
      ? []
      : [{ register, previous, present, passed }];
  });
}

/** Registers that counted from the one reading to the other, and those whose meter was changed in between. */
function registersOfPair(pair: ReadingPair): Pick<BillFacts, 'registers' | 'stretches'> {
  const shown = shownByPair(pair);
  const isWhole = ({ register: { key } }: RegisterFacts): boolean =>
    shown.filter(({ register }) => register.key === key).length === 1;
  const whole = shown.filter(isWhole);
  const stretches = shown.filter((one) => !isWhole(one));
  const registers = Object.fromEntries(whole.map((one) => [one.register.key, one]));
  return stretches.length === 0 ? { registers } : { registers, stretches };
}

/** The facts of a period between two own readings. */
export function factsOfPair(pair: ReadingPair, account: Account, tariff: TariffDocument): KnownFacts {
  const blocks = (tariff.timeBlocks?.blocks ?? []).map(({ id }) => id);
  const inBlocks = countBlocks(pair, tariff.units, blocks).value ?? {};
  const { value: energy } = measureEnergy(pair, account, tariff.units, blocks.length > 0);
  const units: Record<string, number> = {
    import: energy.import.numerator as number,
    export: energy.export.numerator as number,
    ...(energy.generation === null ? {} : { generation: energy.generation.numerator as number }),
  };
  for (const [name, figure] of Object.entries(inBlocks)) units[name] = figure.numerator as number;
  const sources = Object.fromEntries(Object.keys(units).map((name) => [name, 'own' as const]));
  const facts = { ...base(tariff, pair.period, account), ...registersOfPair(pair), units };
  return { facts, sources };
}

/** A counter wraps only near its full scale: a small step back is no wrap. */
const hasPassed = (previous: number, present: number, { fullScale }: Register): boolean =>
  present < previous && previous * 10 > fullScale * 9;

interface End {
  readonly value: number;
  readonly source: FactSource;
}

/** What a register showed on a day: by an own reading, or else as printed. */
function endOf(
  register: Register,
  own: Reading | undefined,
  printed: PrintedBill,
  end: 'previous' | 'present',
): End | null {
  const read = own === undefined ? null : shownBy(own, register);
  if (read !== null) return { value: read, source: 'own' };
  const value = thousandthsOf(printed.figures.get(FIGURE.reading(register.key, end)));
  return value === null ? null : { value, source: 'printed' };
}

/** Own readings by their day. */
export type ReadingsByDay = ReadonlyMap<DayNumber, Reading>;

function registersOfBill(printed: PrintedBill, account: Account, own: ReadingsByDay) {
  const registers: Registers = {};
  const sources: Record<string, FactSource> = {};
  for (const register of registersOf(account)) {
    const previous = endOf(register, own.get(printed.period.from), printed, 'previous');
    const present = endOf(register, own.get(printed.period.to), printed, 'present');
    if (previous === null || present === null) continue;
    const passed = hasPassed(previous.value, present.value, register);
    registers[register.key] = { register, previous: previous.value, present: present.value, passed };
    sources[register.key] = previous.source === 'own' && present.source === 'own' ? 'own' : 'printed';
  }
  return { registers, sources };
}

/** Units that registers counted. */
function countedUnits(registers: Registers, { units: rule }: TariffDocument): Record<string, number> {
  const units: Record<string, number> = {};
  for (const { register, previous, present, passed } of Object.values(registers)) {
    const to = passed ? present + register.fullScale : present;
    const counted = countAdvance({ previous, present: to }, register, rule);
    units[register.id] = (units[register.id] ?? 0) + counted;
    if (register.block !== null) units[`${register.id}@${register.block}`] = counted;
  }
  return units;
}

/** Printed units, in thousandths; those of finer parts are left out. */
function printedUnits({ figures }: PrintedBill): Record<string, number> {
  const units: Record<string, number> = {};
  for (const [name, figure] of figures) {
    const [, channel] = /^units\.((?:import|export|generation)(?:@.*)?)$/.exec(name) ?? [];
    const value = thousandthsOf(figure);
    if (channel !== undefined && value !== null) units[channel] = value;
  }
  return units;
}

/** The facts of a printed bill: own readings where there are some on its days, else what it prints itself. */
export function factsOfBill(
  printed: PrintedBill,
  {
    account,
    tariff,
    own,
  }: { readonly account: Account; readonly tariff: TariffDocument; readonly own: ReadingsByDay },
): KnownFacts {
  const { registers, sources } = registersOfBill(printed, account, own);
  const counted = countedUnits(registers, tariff);
  const shown = printedUnits(printed);
  const units: Record<string, number> = { ...shown, ...counted };
  for (const name of Object.keys(shown)) sources[name] ??= 'printed';
  const facts = { ...base(tariff, printed.period, account), registers, units };
  return { facts, sources };
}
