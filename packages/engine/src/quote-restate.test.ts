import { expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { demoTariff, goodTariff } from '../../../tests/support/demo.ts';
import { givenFigure } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import type { EnergyPeriod } from './energy/index.ts';
import { prepareQuote, type PreparedQuote } from './quote-prepare.ts';
import { checkPromise } from './quote-promise.ts';
import { checkQuote, type QuoteDocument } from './quote/index.ts';

const DOCUMENT = JSON.parse(quoteText) as QuoteDocument;
const TARIFF = demoTariff();

function prepared(change: Partial<QuoteDocument>): PreparedQuote {
  const { value } = checkQuote({ ...DOCUMENT, ...change });
  const made = value === null ? null : prepareQuote(value, TARIFF).value;
  if (made === null) throw new Error('the quote cannot be billed');
  return made;
}

/** What meters show of the first months of a quote, all as quoted. */
function asQuoted({ biller, units }: PreparedQuote, months: number): readonly EnergyPeriod[] {
  return biller.periods.slice(0, months).map((period, at) => {
    const [use, made, own] = [units.use[at] ?? 0, units.generation[at] ?? 0, units.selfUse[at] ?? 0];
    const parts = {
      import: use - own,
      export: made - own,
      generation: made,
      selfConsumption: own,
      totalUse: use,
    };
    const figures = Object.entries(parts).map(([id, numerator]) => {
      return [id, givenFigure({ id, label: id, unit: 'kWh', numerator, denominator: 1000, clause: '' })];
    });
    return { period, ...Object.fromEntries(figures) } as EnergyPeriod;
  });
}

const RISEN = new Map([
  ['3.00', '3.30'],
  ['4.80', '5.28'],
  ['6.50', '7.15'],
  ['8.00', '8.80'],
]);

/** The tariff with a new order from the second year on: its energy charge is 10 % higher. */
function withOrder(): Tariff {
  const { document } = TARIFF;
  const last = document.versions.at(-1);
  if (last === undefined) throw new Error('no version');
  const charges = last.charges.map((charge) =>
    charge.kind === 'slabs' && charge.id === 'energy'
      ? { ...charge, slabs: charge.slabs.map((slab) => ({ ...slab, rate: RISEN.get(slab.rate) ?? '' })) }
      : charge,
  );
  const before = document.versions.map((version) =>
    version === last ? { ...version, through: '2026-03-31' } : version,
  );
  const versions = [...before, { ...last, name: 'TO-2026', from: '2026-04-01', charges }];
  return goodTariff(JSON.stringify({ ...document, versions }));
}

it('counts what rose until now once: rates of a new order rise from its year on', () => {
  const quote = prepared({ escalation: { charges: { energy: '10' }, basis: 'past orders' } });
  const { value } = checkPromise(quote, { tariff: withOrder(), energies: asQuoted(quote, 24) });
  const { promised, restAsQuoted, ifItGoesOn } = value?.payback ?? {};
  expect([restAsQuoted, ifItGoesOn]).toEqual([promised, promised]);
  expect(value?.parts.map(({ saving }) => saving)).toEqual([0, 0, 0, 0, 0]);
});
