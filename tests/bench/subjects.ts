import { readFileSync } from 'node:fs';
import {
  billPeriod,
  checkAccount,
  evaluate,
  givenFigure,
  makeConstants,
  measureEnergy,
  parseDay,
  preparedFor,
  prepareTariff,
  quantityVector,
  ratesOf,
  readReadings,
  readTariff,
  reprice,
  roundQuotient,
  settlePeriod,
  type Account,
  type Bill,
  type Constants,
  type Figure,
  type Period,
  type PreparedTariff,
  type ReadingRow,
  type UnitNettingRule,
} from '@unitbook/engine';
import { unitNetting } from '../support/passbook.ts';
import { makeRandom } from '../support/random.ts';
import { decimalDemoBill, decimalPlainBill } from './decimal-bill.ts';
import { floatDemoBill, floatPlainBill } from './float-bill.ts';
import type { Subject } from './measure.ts';
import { buildYearSheet } from './sheet-bill.ts';

const BILLS = 4096;
const MASK = BILLS - 1;
const MONTH = { from: parseDay('2025-04-01'), to: parseDay('2025-05-01') } as Period;
const TOTAL_STEP = 100;

/** Inputs of the same random bills in every form that a subject wants. */
interface Inputs {
  readonly units: Float64Array;
  readonly loads: Float64Array;
  readonly wattHours: Float64Array;
  readonly watts: Float64Array;
  readonly unitTexts: readonly string[];
  readonly loadTexts: readonly string[];
}

function makeInputs(seed: number, unitStep: number, wattStep: number): Inputs {
  const random = makeRandom(seed);
  const wattHours = Float64Array.from({ length: BILLS }, () => random.below(600_000 / unitStep) * unitStep);
  const watts = Float64Array.from({ length: BILLS }, () => (100 + random.below(9900 / wattStep)) * wattStep);
  return {
    wattHours,
    watts,
    units: wattHours.map((value) => value / 1000),
    loads: watts.map((value) => value / 1000),
    unitTexts: Array.from(wattHours, (value) => String(value / 1000)),
    loadTexts: Array.from(watts, (value) => String(value / 1000)),
  };
}

function readPrepared(path: string): PreparedTariff {
  const { value } = readTariff(readFileSync(path, 'utf8'));
  if (value === null) throw new Error(path);
  return prepareTariff(value);
}

function constantsOf(prepared: PreparedTariff): Constants {
  const version = prepared.tariff.versions.at(-1);
  if (version === undefined) throw new Error('no version');
  return preparedFor(prepared, { version, period: MONTH }, MONTH, { energyScale: 1 }).constants;
}

const BILLED = 0;
const SANCTIONED_LOAD = 6;

/** Exact bills without derivation, the total rounded to the rupee. */
function exactSubject(name: string, constants: Constants, inputs: Inputs): Subject {
  const vector = quantityVector();
  const amounts = new Float64Array(constants.lines.length);
  vector[vector.length - 1] = 1000;
  const run = (times: number): number => {
    let sum = 0;
    for (let at = 0; at < times; at += 1) {
      vector[BILLED] = inputs.wattHours[at & MASK] as number;
      vector[SANCTIONED_LOAD] = inputs.watts[at & MASK] as number;
      sum += roundQuotient(evaluate(constants, vector, amounts), TOTAL_STEP, 'half-up');
    }
    return sum;
  };
  return { name, run };
}

function floatSubject(name: string, bill: typeof floatPlainBill, inputs: Inputs): Subject {
  const lines = new Float64Array(8);
  const run = (times: number): number => {
    let sum = 0;
    for (let at = 0; at < times; at += 1) {
      sum += bill(inputs.units[at & MASK] as number, inputs.loads[at & MASK] as number, lines);
    }
    return sum;
  };
  return { name, run };
}

function decimalSubject(name: string, bill: typeof decimalPlainBill, inputs: Inputs): Subject {
  const run = (times: number): number => {
    let sum = 0;
    for (let at = 0; at < times; at += 1) {
      sum += bill(inputs.unitTexts[at & MASK] ?? '0', inputs.loadTexts[at & MASK] ?? '0').toNumber();
    }
    return sum;
  };
  return { name, run };
}

/** A bill of the year sheet: a twelfth of a recalculation. */
function sheetSubjects(inputs: Inputs): readonly Subject[] {
  const sheet = buildYearSheet();
  let turn = 0;
  const perBill = (change: () => number) => (times: number) => {
    let sum = 0;
    for (let at = 0; at < times; at += 12) {
      turn += 1;
      sum += change();
    }
    return sum;
  };
  const months = (): number[] => Array.from({ length: 12 }, (_, at) => inputs.units[(turn + at) & MASK] ?? 0);
  return [
    { name: 'spreadsheet, all units changed', run: perBill(() => sheet.recalculate(months())) },
    { name: 'spreadsheet, load changed', run: perBill(() => sheet.setLoad(inputs.loads[turn & MASK] ?? 1)) },
  ];
}

const tenths = (value: number): string => `${String(Math.trunc(value / 10))}.${String(value % 10)}`;

const FIRST_DAYS = Array.from({ length: 13 }, (_, month) => {
  const year = month < 9 ? 2025 : 2026;
  return `${String(year)}-${String(((month + 3) % 12) + 1).padStart(2, '0')}-01`;
});

/** Years of readings as text, thirteen rows each, of months that raise no question. */
function yearsOfReadings(): readonly (readonly ReadingRow[])[] {
  const random = makeRandom(3);
  return Array.from({ length: 64 }, (_, at) => {
    let [imported, exported, generation] = [40_000 + at, 30_000 + at, 70_000 + at];
    return FIRST_DAYS.map((date): ReadingRow => {
      const row = {
        date,
        import: tenths(imported),
        export: tenths(exported),
        generation: tenths(generation),
      };
      const given = 1 + random.below(2500);
      imported += 1 + random.below(4000);
      exported += given;
      generation += given + random.below(1500);
      return row;
    });
  });
}

interface Household {
  readonly account: Account;
  readonly prepared: PreparedTariff;
  readonly rule: UnitNettingRule;
  readonly opening: Figure;
  readonly load: Figure;
}

function demoHousehold(prepared: PreparedTariff): Household {
  const text = readFileSync('tariffs-examples/households/demo.json', 'utf8');
  const { account } = JSON.parse(text) as { account: Account['document'] };
  const checked = checkAccount(account).value;
  const rule = unitNetting(prepared.tariff.settlements[0]?.item);
  if (checked === null) throw new Error('demo household');
  const given = (id: string, unit: 'kWh' | 'kW', numerator: number): Figure =>
    givenFigure({ id, label: id, unit, numerator, denominator: 1000, clause: 'bench' });
  return {
    account: checked,
    prepared,
    rule,
    opening: given('opening', 'kWh', 0),
    load: given('load', 'kW', 3000),
  };
}

/** From a year of reading texts to twelve bills of which every line can be unfolded. */
function billsFromText(rows: readonly ReadingRow[], household: Household): readonly Bill[] {
  const { account, prepared, rule, opening, load } = household;
  const unitsRule = prepared.tariff.document.units;
  return readReadings(rows, account).value.map((pair) => {
    const energy = measureEnergy(pair, account, unitsRule).value;
    const entry = settlePeriod(energy, { rule, opening, unitsRule, path: [] }).value;
    if (entry === null) throw new Error('no entry');
    const { billed, imported, exported } = entry;
    const quantities = { billed, import: imported, export: exported, 'sanctioned-load': load };
    const bill = billPeriod(prepared, { period: energy.period, quantities, payments: [], path: [] }).value;
    if (bill === null) throw new Error('no bill');
    return bill;
  });
}

/** Ask for everything a figure follows from; returns how many steps that were. */
function unfold(figure: Figure): number {
  let steps = 1 + figure.parameters.length + (figure.rounding === null ? 0 : 1);
  for (const input of figure.inputs) steps += unfold(input);
  return steps;
}

/** Steps of all explanations of a bill. */
function unfoldBill({ payable, lines }: Bill): number {
  return lines.reduce((steps, line) => steps + unfold(line.figure), unfold(payable));
}

function textSubjects(prepared: PreparedTariff): readonly Subject[] {
  const household = demoHousehold(prepared);
  const years = yearsOfReadings();
  const perBill = (count: (bill: Bill) => number) => (times: number) => {
    let sum = 0;
    for (let at = 0; at < times; at += 12) {
      for (const bill of billsFromText(years[(at / 12) % years.length] ?? [], household)) sum += count(bill);
    }
    return sum;
  };
  return [
    { name: 'text to traced bill', run: perBill((bill) => bill.payable.numerator as number) },
    { name: 'text to traced bill, all unfolded', run: perBill(unfoldBill) },
  ];
}

function repriceSubject(constants: Constants): Subject {
  const own = makeConstants(constants.shape, constants.factors, 1);
  const rates = ratesOf(own);
  const raised = rates.map((rate) => rate + 1);
  const run = (times: number): number => {
    for (let at = 0; at < times; at += 1) reprice(own, at % 2 === 0 ? raised : rates);
    return own.lines.length;
  };
  return { name: 'repricing the demo tariff', run };
}

/** Everything that is measured, by name. */
export function allSubjects(): readonly Subject[] {
  const plain = constantsOf(readPrepared('tests/bench/plain-tariff.json'));
  const prepared = readPrepared('tariffs-examples/tarumira/taresco-domestic/tariff.json');
  const demo = constantsOf(prepared);
  const plainInputs = makeInputs(1, 100, 10);
  const demoInputs = makeInputs(2, 1000, 1000);
  return [
    floatSubject('plain tariff, float loop', floatPlainBill, plainInputs),
    exactSubject('plain tariff, exact', plain, plainInputs),
    decimalSubject('plain tariff, naive decimal.js', decimalPlainBill, plainInputs),
    ...sheetSubjects(plainInputs),
    floatSubject('demo tariff, float loop', floatDemoBill, demoInputs),
    exactSubject('demo tariff, exact', demo, demoInputs),
    decimalSubject('demo tariff, naive decimal.js', decimalDemoBill, demoInputs),
    ...textSubjects(prepared),
    repriceSubject(demo),
  ];
}

/** How often floats are wrong, and that the exact bill and decimal.js agree: what is compared is the same bill. */
export function checkSameBills(): { readonly bills: number; readonly floatWrong: number } {
  const plain = constantsOf(readPrepared('tests/bench/plain-tariff.json'));
  const inputs = makeInputs(1, 100, 10);
  const vector = quantityVector();
  const amounts = new Float64Array(plain.lines.length);
  const lines = new Float64Array(8);
  let floatWrong = 0;
  for (let at = 0; at < BILLS; at += 1) {
    vector[BILLED] = inputs.wattHours[at] ?? 0;
    vector[SANCTIONED_LOAD] = inputs.watts[at] ?? 0;
    const exact = roundQuotient(evaluate(plain, vector, amounts), TOTAL_STEP, 'half-up');
    const decimal = decimalPlainBill(inputs.unitTexts[at] ?? '', inputs.loadTexts[at] ?? '').toNumber();
    if (exact !== decimal) throw new Error(`bill ${String(at)}: ${String(exact)} and ${String(decimal)}`);
    floatPlainBill(inputs.units[at] ?? 0, inputs.loads[at] ?? 0, lines);
    if (amounts.some((amount, line) => Math.round((lines[line] ?? 0) * 100) !== amount)) floatWrong += 1;
  }
  return { bills: BILLS, floatWrong };
}
