import {
  fillUnits,
  prepareAgain,
  prepareQuote,
  quoteDrawer,
  quoteSizes,
  readQuote,
  readTariff,
  workOutQuote,
  type PreparedQuote,
} from '@unitbook/engine';
import { readFileSync } from 'node:fs';
import { measure } from './measure.ts';
import { floatQuote, type FloatQuoteTerms } from './quote-float.ts';
import { buildQuoteSheet } from './quote-sheet.ts';

/** Nanoseconds of a quote and of what it is measured against. */
export interface QuoteReport {
  /** 600 bills of 25 years with their units, and the same in floats. */
  readonly bills: number;
  readonly float: number;
  /** Everything a quote says, bills and measures. */
  readonly whole: number;
  readonly sizes: number;
  /** A thousand draws. */
  readonly draws: number;
  /** The quote prepared again, as a slider asks for it, with other rises and with another own use. */
  readonly againRise: number;
  readonly againShare: number;
  readonly sheetRise: number;
  readonly sheetShare: number;
}

const TERMS: FloatQuoteTerms = {
  use: [520, 560, 480, 430, 420, 410, 400, 380, 390, 400, 420, 490],
  generation: [510, 505, 420, 380, 400, 430, 460, 440, 450, 480, 500, 545],
  share: 0.38,
  rise: 0.02,
  wear: 0.006,
  load: 4,
  years: 25,
};

const fileText = (path: string): string => readFileSync(path, 'utf8');

function demo(): { readonly prepared: PreparedQuote; readonly draw: (block: number) => unknown } {
  const tariff = readTariff(fileText('tariffs-examples/tarumira/taresco-domestic/tariff.json')).value;
  const input = readQuote(fileText('tariffs-examples/quotes/rooftop-4-kilowatt.json')).value;
  if (tariff === null || input === null) throw new Error('the examples cannot be read');
  const prepared = prepareQuote(input, tariff).value;
  if (prepared === null) throw new Error('the quote cannot be billed');
  const drawer = quoteDrawer(prepared, tariff).value;
  if (drawer === null) throw new Error('the quote cannot be drawn');
  return { prepared, draw: drawer.draw };
}

/** The saving of all years, to be compared. */
function savingOf(prepared: PreparedQuote): number {
  return workOutQuote(prepared).years.reduce((sum, { saving }) => sum + saving, 0) / 100;
}

const room = () => ({
  before: new Float64Array(TERMS.years),
  after: new Float64Array(TERMS.years),
  surplus: new Float64Array(TERMS.years),
});

/** Floats and the sheet have to come to the same but for coins, or something else would be measured. */
function checkSame(prepared: PreparedQuote): void {
  const own = savingOf(prepared);
  const others = [floatQuote(TERMS, room()), buildQuoteSheet(TERMS).setRise(TERMS.rise)];
  for (const other of others) {
    if (!(Math.abs(other - own) < 1)) throw new Error(`${String(other)} is not ${String(own)}`);
  }
}

const BLOCKS = 10;

/** Another of five numbers each time it is asked, however few times in a row: a spreadsheet skips what is the same. */
function fiveInTurn(): () => number {
  let asked = 0;
  return () => {
    asked += 1;
    return asked % 5;
  };
}

/** The quote with its rises or its share of own use a little different. */
function changedInputs({ input }: PreparedQuote) {
  const { document } = input;
  const rises = Array.from({ length: 5 }, (_, at) => {
    const charges = Object.keys(document.escalation.charges).map((id) => [id, `2.${String(at)}`]);
    const escalation = {
      ...document.escalation,
      charges: Object.fromEntries(charges) as Record<string, string>,
    };
    return { ...input, document: { ...document, escalation } };
  });
  const shares = Array.from({ length: 5 }, (_, at) => ({
    ...input,
    share: { numerator: 38 - at, denominator: 100 },
  }));
  return { rises, shares };
}

/** What the first bill comes to in a quote that is prepared again by another one. */
function firstAgain(prepared: PreparedQuote, input: PreparedQuote['input'] | undefined): number {
  const again = input === undefined ? null : prepareAgain(prepared, input);
  if (again === null) throw new Error('the quote was not prepared again');
  return again.biller.bills.after[0] ?? 0;
}

/** Time a quote against a float loop and a spreadsheet, in one process. */
export function measureQuote(): QuoteReport {
  const { prepared, draw } = demo();
  checkSame(prepared);
  const sheet = buildQuoteSheet(TERMS);
  const years = room();
  const times = (run: (at: number) => number) => (count: number) => {
    let sum = 0;
    for (let at = 0; at < count; at += 1) sum += run(at);
    return sum;
  };
  const { input, biller, units, raises, share } = prepared;
  // A biller of its own: what it made last is not made anew.
  const slider = demo().prepared;
  const { rises, shares } = changedInputs(slider);
  const [ownRise, ownShare, sheetRise, sheetShare] = [fiveInTurn(), fiveInTurn(), fiveInTurn(), fiveInTurn()];
  const timings = measure([
    {
      name: 'bills',
      run: times(() => {
        fillUnits(input, share, units);
        biller.run(units, raises, 'both');
        return biller.bills.after[0] ?? 0;
      }),
    },
    { name: 'float', run: times((at) => floatQuote({ ...TERMS, share: at % 2 === 0 ? 0.38 : 0.37 }, years)) },
    {
      name: 'whole',
      run: times(() => {
        fillUnits(input, share, units);
        biller.run(units, raises, 'both');
        return workOutQuote(prepared).measures.lifeNet;
      }),
    },
    {
      name: 'sizes',
      run: times(() => quoteSizes(prepared, { from: 200, step: 200, count: 40 }).points.length),
    },
    {
      name: 'draws',
      run: times(() => {
        for (let block = 0; block < BLOCKS; block += 1) draw(block);
        return 1;
      }),
    },
    { name: 'againRise', run: times(() => firstAgain(slider, rises[ownRise()])) },
    { name: 'againShare', run: times(() => firstAgain(slider, shares[ownShare()])) },
    { name: 'sheetRise', run: times(() => sheet.setRise(0.02 + sheetRise() * 0.001)) },
    { name: 'sheetShare', run: times(() => sheet.setShare(0.38 - sheetShare() * 0.01)) },
  ]);
  const of = (name: string): number => timings.get(name) ?? NaN;
  return {
    bills: of('bills'),
    float: of('float'),
    whole: of('whole'),
    sizes: of('sizes'),
    draws: of('draws'),
    againRise: of('againRise'),
    againShare: of('againShare'),
    sheetRise: of('sheetRise'),
    sheetShare: of('sheetShare'),
  };
}
