import { readFileSync } from 'node:fs';
import { checkAccountBills, readCheck, readTariff, type CheckInput } from '@unitbook/engine';
import { measure, type Subject } from './measure.ts';

/** Nanoseconds for a wrong bill of two, each with all causes, pairs where none alone explains it. */
export interface CheckSpeed {
  /** A bill that two causes together explain. */
  readonly explained: number;
  /** A bill that nothing explains: pairs and threes are tried to their end. */
  readonly unexplained: number;
}

const BILLS = 'tariffs-examples/checks/two-bills.json';
const TARIFF = 'tariffs-examples/tarumira/taresco-domestic/tariff.json';

/** The bills of the example, with other amounts in two lines of the second. */
function oddBills({ bills }: Pick<CheckInput, 'bills'>): CheckInput['bills'] {
  const odd = new Map([
    ['line.energy', { numerator: 31_117, denominator: 100 }],
    ['line.fuel', { numerator: 9999, denominator: 100 }],
  ]);
  return bills.map((bill, at) =>
    at === 0 ? bill : { ...bill, figures: new Map([...bill.figures, ...odd]) },
  );
}

function exampleInput(): CheckInput {
  const tariff = readTariff(readFileSync(TARIFF, 'utf8')).value;
  const { account, readings, bills } = readCheck(readFileSync(BILLS, 'utf8')).value;
  if (tariff === null || account === null || readings === null || bills === null)
    throw new Error('the example cannot be read');
  return { account, tariff, readings, bills };
}

/** Measure the check of a bill that is wrong. */
export function measureCheck(): CheckSpeed {
  const input = exampleInput();
  const odd = { ...input, bills: oddBills(input) };
  const verdictsOf = (one: CheckInput): string =>
    checkAccountBills(one)
      .bills.map(({ explanations }) => String(explanations.length))
      .join();
  if (verdictsOf(input) !== '0,1' || verdictsOf(odd) !== '0,0')
    throw new Error('the bills are not as expected');
  const subject = (name: string, one: CheckInput): Subject => ({
    name,
    run: (count) => {
      let found = 0;
      for (let at = 0; at < count; at += 1) found += checkAccountBills(one).bills.length;
      return found;
    },
  });
  const timings = measure([subject('explained', input), subject('unexplained', odd)]);
  return { explained: timings.get('explained') ?? NaN, unexplained: timings.get('unexplained') ?? NaN };
}
