import { expect, it } from 'vitest';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import chosenText from '../../tariffs-examples/tarumira/taresco-chosen-day/tariff.json?raw';
import { openDemo, openQuote } from './open-quote.ts';

it('says on paper all that a quote has to say', async () => {
  // At once: what is worked out when the page is idle is finished first.
  const { quote } = await openDemo();
  await quote.press('See the quote as it is printed');
  const items = [...quote.root.querySelectorAll<HTMLElement>('.sheet [data-item]')];
  const numbers = items.map((item) => Number(item.dataset['item'])).sort((a, b) => a - b);
  expect(numbers).toEqual(Array.from({ length: 16 }, (_, at) => at + 1));
  const said = (item: number): string => quote.text(`.sheet [data-item="${String(item)}"]`);
  expect(said(1)).toContain('12 Lagoon Street');
  expect(said(2)).toContain('5,300 kWh');
  expect(said(2)).toContain('Tariff Order 2024');
  expect(said(2)).toContain('in force since 1 April 2024');
  expect(said(2)).toContain('Net Metering Regulations 2021');
  expect(said(2)).toContain('Units given set off against units taken');
  expect(said(2)).toContain(
    'Surplus is settled 31 March; paid with the next bill Paid for surplus ₹2.60 / kWh',
  );
  expect(said(4)).toContain('5,520 kWh (P50), 1,380 units for each kWp');
  // 5,520 × (1 − 1.28155 × 0.078) = 4,968; with 3.9 % from year to year 4,903.
  expect(said(4)).toContain('4,968 units in the mean of the years, 4,903 in a single one (P90');
  expect(quote.rows('.sheet [data-item="6"]')[3]).toContain('July 2025 | 430 | 380');
  expect(said(7)).toContain('₹240.00 to ₹398.88');
  expect(said(8)).toContain('₹1,079.00');
  expect(said(8)).toContain('Paid as surplus 415 kWh × ₹2.60; 31 March');
  // 5,520 ÷ 5,300 = 1.0415.
  expect(said(8)).toContain('makes 104 % of what is used');
  expect(said(9)).toContain('₹2,08,000.00');
  expect(said(9)).toContain('If it is refused, paid back after: 6.1 years');
  expect(said(9)).toContain('Cleaning in the upkeep Insurance not in the upkeep');
  expect(said(10)).toContain('₹31,213.38');
  // 2,16,000 + 31,213.38; 34,273.88 ÷ 12 = 2,856.16; less 2,520.22.
  expect(said(10)).toContain('Price in cash ₹2,16,000.00 Price with the loan ₹2,47,213.38');
  expect(said(10)).toContain('Saved a month, after upkeep ₹2,856.16 Left after the instalment ₹335.94');
  expect(said(11)).toContain('Mean of the last two orders');
  expect(said(12)).toContain('8,38,507.01');
  expect(said(13)).toContain('Subsidy not received');
  expect(said(14)).toContain('no bill becomes zero');
  expect(said(15)).toContain('Five years of workmanship');
  expect(said(15)).toContain('Whom to call Workshop of the seller, 3 Harbour Road');
  expect(said(16)).toContain('understood what it assumes');
});

/** The demo under a tariff that lets the account choose the day of its settlement, with nothing said of upkeep. */
function chosenDay(): string {
  const demo = JSON.parse(quoteText) as Record<string, unknown>;
  const upkeep = { perYear: '2400', growth: '4', replacements: [] };
  return JSON.stringify({
    ...demo,
    offer: { date: '2025-02-10' },
    upkeep,
    escalation: { charges: {}, basis: '' },
    tariff: { id: 'taresco-chosen-day' },
    policies: undefined,
    uncertainty: undefined,
  });
}

it('asks for the settlement day that a tariff lets the account choose, and says it on paper', async () => {
  const tariffs = [{ id: 'taresco-chosen-day', name: 'Chosen day', load: () => Promise.resolve(chosenText) }];
  const { quote } = await openQuote({ demo: chosenDay(), tariffs });
  await expect.poll(() => quote.text('#quote-wanted')).toContain('A quote without "settlementDay"');
  await quote.unfold();
  await quote.type('quote-settlementDay', '09-31');
  expect(quote.findings('quote-settlementDay')).toContain('no day of the calendar');
  await quote.type('quote-settlementDay', '09-30');
  await expect.poll(() => quote.text('#quote-answer-payback')).toContain('years');
  // Five months take more than they give; in September 267 − 247 = 20 units are left over, at 2.50.
  expect(quote.rows('#quote-months')[5]?.endsWith('50.00')).toBe(true);
  await quote.choose('quote-upkeep-insurance', 'included');
  await quote.press('See the quote as it is printed');
  const said = (item: number): string => quote.text(`.sheet [data-item="${String(item)}"]`);
  expect(said(2)).toContain(
    'Surplus is settled 30 September; paid with the same bill Paid for surplus ₹2.50 / kWh',
  );
  expect(said(8)).toContain('Paid as surplus 20 kWh × ₹2.50; 30 September');
  // What is not said is said to be not said.
  expect(said(4)).toContain('Low case not said');
  expect(said(9)).toContain('Cleaning not said Insurance in the upkeep');
  expect(said(15)).toContain('Whom to call not said');
});
