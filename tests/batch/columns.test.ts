import { readTariff, runBill, type Tariff } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { batchColumn, columnNames } from '../../packages/engine/src/check-batch.ts';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { BASIS, factsOf, TARIFF_TEXTS } from '../support/every-tariff.ts';
import { runTable } from './table-run.ts';

const taresco = (): Tariff => {
  const { value } = readTariff(tariffText);
  if (value === null) throw new Error('the example tariff cannot be read');
  return value;
};

const REST = 'account,from,to,import,export,sanctioned-load,opening,printed.payable';
/** What is told of a table with one more column. */
const told = async (name: string): Promise<readonly string[]> => (await runTable(`${REST},${name}\n`)).told;

describe('the columns of a table', () => {
  const names = columnNames(taresco());

  it('are those that the tariff has', () => {
    const known = ['import', 'opening.credit', 'printed.opening.credit', 'printed.closing.credit'];
    const units = ['import', 'billed', 'self-consumption', 'total-use'].map(
      (unit) => `printed.units.${unit}`,
    );
    const lines = ['fixed', 'energy', 'fuel', 'tax', 'subsidy', 'surplus'].map((id) => `printed.line.${id}`);
    const readings = ['printed.reading.import.previous', 'printed.reading.export-1.present'];
    for (const name of [...known, ...units, ...lines, ...readings, 'printed.days', 'printed.late-fee'])
      expect([name, batchColumn(name, names)]).not.toEqual([name, null]);
  });

  it('are every figure that a bill of any example tariff has, and every balance that it is opened with', () => {
    const unknown: string[] = [];
    let seen = 0;
    for (const [path, text] of Object.entries(TARIFF_TEXTS)) {
      const { value: tariff } = readTariff(text);
      const run = tariff === null ? null : runBill(factsOf(tariff.document), BASIS);
      if (tariff === null || run === null) continue;
      const own = columnNames(tariff);
      const printed = [...run.figures.keys()].map((name) => `printed.${name}`);
      const opening = own.ledgers.map((id) => `opening.${id}`);
      seen += 1;
      unknown.push(
        ...[...printed, ...opening]
          .filter((name) => batchColumn(name, own) === null)
          .map((name) => path + name),
      );
    }
    expect(unknown).toEqual([]);
    expect(seen).toBeGreaterThan(50);
  });

  it('are not those that are spelt wrongly', () => {
    const wrong = [
      'imprt',
      'opening.credt',
      'printed.opening.credt',
      'printed.closing.credits',
      'printed.units.biled',
      'printed.line.enrgy',
      'printed.line.',
      'printed.reading.imprt.previous',
      'printed.reading.import.last',
      'printed.other-line.',
      'printed.other-line.energy',
      'printed.sums',
    ];
    for (const name of wrong) expect([name, batchColumn(name, names)]).toEqual([name, null]);
  });

  it('can be a line that the tariff does not have, where that is said', async () => {
    expect(batchColumn('printed.other-line.meter-rent', names)).toEqual({
      kind: 'printed',
      name: 'line.meter-rent',
    });
    // May of the scenario, 230 to be paid, with 25 for a meter besides: 255.
    const row = 'TAR-1,2025-05-01,2025-06-01,298,216,3,58,255,25.00';
    const { lines } = await runTable(`${REST},printed.other-line.meter-rent\n${row}\n`);
    expect(lines).toMatchObject([
      {
        verdict: 'wrong',
        difference: '25',
        differs: [
          { figure: 'payable', printed: '255', right: '230' },
          { figure: 'line.meter-rent', printed: '25', right: '0' },
        ],
      },
    ]);
  });

  it('are told of with what they may be', async () => {
    expect(await told('opening.credt')).toEqual([
      'rows.csv  A column "opening.credt". Expected "opening." and a ledger of the tariff: credit. Correct its name, or begin it with "note.", which is passed by. [batch/column-unknown]',
    ]);
    expect(await told('printed.line.enrgy')).toEqual([
      'rows.csv  A column "printed.line.enrgy". Expected "printed.line." and a line of the tariff: fixed, energy, minimum, fuel, tax, subsidy, surplus. Correct its name, or name it "printed.other-line.enrgy", if the tariff has no such line. [batch/column-unknown]',
    ]);
    expect(await told('printed.other-line.energy')).toEqual([
      'rows.csv  A column "printed.other-line.energy". Expected "printed.other-line." and a line that the tariff does not have. Correct its name, or name it "printed.line.energy". [batch/column-unknown]',
    ]);
    expect((await told('printed.units.biled'))[0]).toContain(
      'Expected "printed.units." and billed, self-consumption, total-use or a quantity of the tariff: import, export, generation,',
    );
  });
});
