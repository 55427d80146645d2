import {
  amountsOf,
  dayText,
  keepPeriods,
  prepareTariff,
  wholeToDecimal,
  type UnitsPeriod,
} from '@unitbook/engine';
import { exampleYears, type ExampleYear } from '../support/example-years.ts';
import { makeRandom } from '../support/random.ts';
import { floatYear } from './float-scheme.ts';
import { measure, type Subject } from './measure.ts';

const VARIANTS = 64;
const MONTHS = 12;
const MEASURING = { warmUpMs: 80, sampleMs: 4, samples: 11 };
const COUNTED = ['import', 'export', 'generation'];

/** The same year with more or less energy: every month times something from a half to one and a half. */
function variantsOf({ input, units }: ExampleYear): readonly Float64Array[] {
  const random = makeRandom(23);
  const columns = input.names.length;
  return Array.from({ length: VARIANTS }, (_, variant) => {
    const factors = Array.from({ length: MONTHS }, () => (variant === 0 ? 1000 : 500 + random.below(1000)));
    return Float64Array.from(units, (value, at) => {
      const name = input.names[at % columns]?.split('@')[0] ?? '';
      const factor = factors[Math.floor(at / columns)] ?? 1000;
      return COUNTED.includes(name) ? Math.floor((value * factor) / 1_000_000) * 1000 : value;
    });
  });
}

/** Bills, and those in which floats fall on the wrong side and are more than a cent apart. */
interface Agreement {
  readonly bills: number;
  readonly floatWrong: number;
}

/** More wrong bills than floats can be blamed for: the loop is not that of the tariff. */
const TOO_MANY_WRONG = 0.05;

function checkSameYears(year: ExampleYear, variants: readonly Float64Array[]): Agreement {
  const amounts = amountsOf(prepareTariff(year.tariff), year.input);
  const float = floatYear(year);
  const result = amounts.makeResult();
  const payables = new Float64Array(MONTHS);
  let floatWrong = 0;
  for (const units of variants) {
    if (amounts.run(units, result).length > 0 || !result.isQuick) throw new Error(`${year.name}: not quick`);
    float(
      units.map((value) => value / 1000),
      payables,
    );
    payables.forEach((value, at) => {
      const exact = (result.payables[at] ?? NaN) / (result.payableGrids[at] ?? NaN);
      if (!(Math.abs(value - exact) <= 0.01 + 1e-6)) floatWrong += 1;
    });
  }
  if (floatWrong > variants.length * MONTHS * TOO_MANY_WRONG) {
    throw new Error(
      `${year.name}: ${String(floatWrong)} bills of the float loop are not those of the tariff`,
    );
  }
  return { bills: variants.length * MONTHS, floatWrong };
}

const textsOf = ({ input }: ExampleYear, units: Float64Array): readonly UnitsPeriod[] =>
  input.periods.map(({ from, to }, row) => ({
    from: dayText(from),
    to: dayText(to),
    quantities: Object.fromEntries(
      input.names.map((name, column) => [
        name,
        wholeToDecimal(units[row * input.names.length + column] ?? 0, 3),
      ]),
    ),
  }));

function subjects(year: ExampleYear, variants: readonly Float64Array[]): readonly Subject[] {
  const prepared = prepareTariff(year.tariff);
  const amounts = amountsOf(prepared, year.input);
  const result = amounts.makeResult();
  const float = floatYear(year);
  const floats = variants.map((units) => units.map((value) => value / 1000));
  const payables = new Float64Array(MONTHS);
  const texts = variants.slice(0, 4).map((units) => textsOf(year, units));
  const { account } = year.input;
  const once =
    (step: (turn: number) => number) =>
    (times: number): number => {
      let sum = 0;
      for (let turn = 0; turn < times; turn += 1) sum += step(turn);
      return sum;
    };
  return [
    {
      name: 'amounts',
      run: once((turn) => {
        amounts.run(variants[turn % VARIANTS] as Float64Array, result);
        return result.payables[MONTHS - 1] as number;
      }),
    },
    { name: 'float', run: once((turn) => float(floats[turn % VARIANTS] as Float64Array, payables)) },
    {
      name: 'traced',
      run: once((turn) => {
        const periods = texts[turn % texts.length] as readonly UnitsPeriod[];
        const kept = keepPeriods({ account, tariff: prepared, periods, withSavings: false });
        return (kept.value.at(-1)?.bill.payable.numerator as number | undefined) ?? NaN;
      }),
    },
  ];
}

/** The speed of a year of bills under one example tariff, in nanoseconds for the year. */
export interface ExampleSpeed {
  readonly name: string;
  readonly amounts: number;
  readonly float: number;
  readonly traced: number;
  /** Amounts ÷ float loop, and traced bills ÷ float loop. */
  readonly ratio: number;
  readonly tracedRatio: number;
}

/** The speed of a year of bills under every example tariff. */
export interface SchemeReport extends Agreement {
  /** The slowest beside its float loop first. */
  readonly examples: readonly ExampleSpeed[];
  /** Tariffs without a float loop, with the reason. */
  readonly left: readonly string[];
}

/**
 * Measure a year of monthly bills under every example tariff, exact and without figures, against a float
 * loop written for that tariff alone; and the same traced, for information.
 */
export function measureSchemes(): SchemeReport {
  const { years, without } = exampleYears();
  const left = without.map((name) => `${name}: no year that it covers`);
  const examples: ExampleSpeed[] = [];
  let [bills, floatWrong] = [0, 0];
  for (const year of years) {
    try {
      floatYear(year);
    } catch (error) {
      left.push(`${year.name}: ${error instanceof Error ? error.message : ''}`);
      continue;
    }
    const variants = variantsOf(year);
    const same = checkSameYears(year, variants);
    bills += same.bills;
    floatWrong += same.floatWrong;
    const timings = measure(subjects(year, variants), MEASURING);
    const [amounts = NaN, float = NaN, traced = NaN] = ['amounts', 'float', 'traced'].map((name) =>
      timings.get(name),
    );
    const ratios = { ratio: amounts / float, tracedRatio: traced / float };
    examples.push({ name: year.name, amounts, float, traced, ...ratios });
  }
  examples.sort((a, b) => b.ratio - a.ratio);
  return { examples, left, bills, floatWrong };
}
