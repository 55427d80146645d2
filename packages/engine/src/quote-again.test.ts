import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { demoTariff } from '../../../tests/support/demo.ts';
import { prepareAgain, prepareQuote, type PreparedQuote } from './quote-prepare.ts';
import { workOutQuote } from './quote-work-out.ts';
import { checkQuote, type QuoteDocument, type QuoteInput } from './quote/index.ts';

const DOCUMENT: QuoteDocument = { ...(JSON.parse(quoteText) as QuoteDocument), tariff: undefined };
const TARIFF = demoTariff();

interface Numbers {
  readonly share: number;
  readonly rise: string;
  /** Units used in January. */
  readonly use: number;
  readonly growth: string;
}

const FIRST: Numbers = { share: 38, rise: '2', use: 400, growth: '0' };

function inputOf({ share, rise, use, growth }: Numbers): QuoteInput {
  const { value, findings } = checkQuote({
    ...DOCUMENT,
    selfUse: { share: String(share), basis: 'tried' },
    use: { ...DOCUMENT.use, growth, months: { ...DOCUMENT.use.months, '01': String(use) } },
    escalation: { charges: { energy: rise, fixed: '2', fuel: rise, minimum: '2' }, basis: 'tried' },
  });
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

function anew(numbers: Numbers): PreparedQuote {
  const { value, findings } = prepareQuote(inputOf(numbers), TARIFF);
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

/** What every year comes to. */
function years(prepared: PreparedQuote | null) {
  if (prepared === null) throw new Error('not prepared again');
  return workOutQuote(prepared).years;
}

const NUMBERS: fc.Arbitrary<Numbers> = fc.record({
  share: fc.constantFrom(0, 20, 38, 80),
  rise: fc.constantFrom('2', '2.5', '-1'),
  use: fc.constantFrom(400, 900),
  growth: fc.constantFrom('0', '1'),
});

describe('a quote whose numbers changed', () => {
  it('comes to what it comes to from the beginning, in whatever order they change', () => {
    fc.assert(
      fc.property(fc.array(NUMBERS, { minLength: 1, maxLength: 6 }), fc.boolean(), (steps, isFromFirst) => {
        const first = anew(FIRST);
        let before = first;
        for (const numbers of steps) {
          const again = prepareAgain(isFromFirst ? first : before, inputOf(numbers));
          expect(years(again)).toEqual(years(anew(numbers)));
          before = again ?? before;
        }
      }),
      { numRuns: 30 },
    );
  });

  it('keeps its bills without the plant where only own use changed', () => {
    const before = anew(FIRST);
    prepareAgain(before, inputOf(FIRST));
    before.biller.bills.before.fill(-1);
    const again = prepareAgain(before, inputOf({ ...FIRST, share: 20 }));
    expect(new Set(again?.biller.bills.before)).toEqual(new Set([-1]));
    expect(again?.biller.bills.after[0]).toBeGreaterThan(0);
  });

  it('makes them anew after draws or cases billed by the same biller', () => {
    const before = anew(FIRST);
    prepareAgain(before, inputOf(FIRST));
    const paid = [...before.biller.bills.before];
    before.biller.run(anew({ ...FIRST, use: 900 }).units, before.raises, 'both');
    expect([...before.biller.bills.before]).not.toEqual(paid);
    prepareAgain(before, inputOf(FIRST));
    expect([...before.biller.bills.before]).toEqual(paid);
  });

  it('is prepared from the beginning where another charge rises', () => {
    expect(prepareAgain(anew(FIRST), inputOf({ ...FIRST, rise: '0' }))).toBeNull();
  });
});
