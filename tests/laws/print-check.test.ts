import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  checkCase,
  decimalToWhole,
  exactText,
  keepPeriods,
  readCases,
  readTariff,
  type Tariff,
  type UnitsMonth,
  type WorkedCase,
} from '@unitbook/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const read = (path: string): string => readFileSync(`${root}${path}`, 'utf8');
const below = (folder: string): string[] =>
  readdirSync(`${root}${folder}`).map((name) => `${folder}/${name}`);

/** Every folder of an example tariff with worked cases. */
const FOLDERS = below('tariffs-examples')
  .filter((folder) => !folder.endsWith('.json'))
  .flatMap(below)
  .filter((folder) => existsSync(`${root}${folder}/cases.json`))
  .sort();

const exact = (figure: { readonly numerator: number | bigint; readonly denominator: number }): string =>
  exactText(figure.numerator, figure.denominator);

/** Everything that a bill prints, as a case that expects it. */
function printed({
  bill,
  ledgers,
  quantities,
}: UnitsMonth): NonNullable<WorkedCase['periods'][number]['expected']> {
  const once = bill.lines.filter(
    ({ figure }) => bill.lines.filter((line) => line.figure.id === figure.id).length === 1,
  );
  return {
    payable: exact(bill.payable),
    sum: exact(bill.sum),
    lines: Object.fromEntries(once.map(({ figure }) => [figure.id, exact(figure)])),
    quantities: Object.fromEntries(Object.entries(quantities).map(([name, figure]) => [name, exact(figure)])),
    ledgers: Object.fromEntries(
      ledgers.map(({ id, opening, added, used, paid, lapsed, closing }) => [
        id,
        {
          opening: exact(opening),
          added: exact(added),
          used: exact(used),
          paid: exact(paid),
          lapsed: exact(lapsed),
          closing: exact(closing),
        },
      ]),
    ),
  };
}

/** The case with other units: every quantity of its periods times some thousandths, cut to thousandths. */
function otherUnits(one: WorkedCase, thousandths: number): WorkedCase {
  const changed = (text: string): string =>
    exactText(Math.floor((decimalToWhole(text, 3) * thousandths) / 1000), 1000);
  const periods = one.periods.map(({ from, to, quantities }) => ({
    from,
    to,
    quantities: Object.fromEntries(Object.entries(quantities).map(([name, text]) => [name, changed(text)])),
  }));
  return { ...one, periods };
}

function tariffIn(folder: string): Tariff {
  const { value, findings } = readTariff(read(`${folder}/tariff.json`));
  expect(findings).toEqual([]);
  return value as Tariff;
}

describe('what is printed and checked', () => {
  it.each(FOLDERS)('has no difference: %s', (folder) => {
    const tariff = tariffIn(folder);
    const cases = readCases(read(`${folder}/cases.json`)).value?.cases ?? [];
    fc.assert(
      fc.property(fc.constantFrom(...cases), fc.constantFrom(1000, 500, 1337), (one, thousandths) => {
        const other = otherUnits(one, thousandths);
        const kept = keepPeriods({ account: other.account ?? {}, tariff, periods: other.periods });
        const periods = other.periods
          .slice(0, kept.value.length)
          .map((period, at) => ({ ...period, expected: printed(kept.value[at] as UnitsMonth) }));
        fc.pre(periods.length > 0);
        const text = JSON.stringify({ format: 'unitbook-cases-1', cases: [{ ...other, periods }] });
        const again = readCases(text);
        expect(again.findings).toEqual([]);
        const checked = checkCase(tariff, again.value?.cases[0] as WorkedCase);
        expect(checked.checks.filter(({ isSame }) => !isSame)).toEqual([]);
        expect(checked.isReproduced).toBe(true);
      }),
      { numRuns: 12 },
    );
  });
});
