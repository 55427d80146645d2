import { render, type TemplateResult } from 'lit';
import { page } from 'vitest/browser';
import { expect, it } from 'vitest';
import { renderBills } from '../../packages/form/src/quote/charts/bills.ts';
import { renderCashFlow } from '../../packages/form/src/quote/charts/cash-flow.ts';
import {
  amountOf,
  type Amount,
  type BillsData,
  type CashFlowData,
  type CashFlowYear,
  type ChartView,
  type SensitivityData,
  type SizeCurveData,
} from '../../packages/form/src/quote/charts/chart-data.ts';
import { renderSensitivity } from '../../packages/form/src/quote/charts/sensitivity.ts';
import { renderSizeCurve } from '../../packages/form/src/quote/charts/size-curve.ts';
import { quoteChartStyles } from '../../packages/form/src/quote/charts/styles.ts';
import { paperStyles } from '../../packages/form/src/styles/paper.ts';
import { writingFor } from '../../packages/form/src/writing/writing.ts';
import { expectAccessible } from './mount.ts';

const writing = writingFor('en-IN', 'INR');
const money = (value: number): Amount => amountOf(String(value), writing.money);
const kwp = (value: number): Amount => amountOf(String(value), (text) => `${writing.number(text)} kWp`);

const yearOf = (year: number, scale = 1): CashFlowYear => ({
  year,
  label: String(year),
  value: money((30_750 * year - 182_500) * scale),
  band: {
    low: money((22_400 * year - 182_500) * scale),
    middle: money((29_000 * year - 182_500) * scale),
    high: money((36_100 * year - 182_500) * scale),
  },
});

const cashFlow: CashFlowData = {
  title: 'Money spent and saved, by year',
  says: 'The line begins at −₹1,82,500, crosses zero in the sixth year and ends above five lakh.',
  unit: '₹',
  years: Array.from({ length: 26 }, (_, year) => yearOf(year)),
  lineName: 'as quoted',
  payback: { year: 5.93, label: 'paid back after 5 years and 11 months' },
};

const MONTHS = ['Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec', 'Jan', 'Feb', 'Mar'];
const bills: BillsData = {
  title: 'The bill of each month, without solar and with it',
  says: 'Without solar the bill is highest in May; with solar no month comes to more than ₹810.',
  unit: '₹',
  months: MONTHS.map((short, at) => ({
    label: `${short} 2026`,
    short,
    before: money(1500 + 130 * ((at * 5) % 12)),
    after: money(700 - 130 * ((at * 7) % 7)),
  })),
  beforeName: 'without solar',
  afterName: 'with solar',
};

const sizeCurve: SizeCurveData = {
  title: 'What a plant saves in a year, by its size',
  says: 'The saving grows fast up to 4 kWp and slowly beyond it.',
  unit: '₹',
  sizeUnit: 'kWp',
  sizeName: 'size of the plant',
  valueName: 'saved in the first year',
  points: [1, 2, 3, 4, 5, 6, 8].map((size) => ({
    size: kwp(size),
    value: money(8200 * Math.min(size, 4) + 1900 * Math.max(0, size - 4)),
  })),
  chosen: { size: kwp(3), label: 'the quoted plant, 3 kWp' },
  surplusFrom: { size: kwp(4), label: 'from 4 kWp on another unit earns only the surplus rate' },
};

const sensitivity: SensitivityData = {
  title: 'What matters most to the saving over 25 years',
  says: 'How much dearer a unit becomes matters most.',
  base: money(382_400),
  baseName: 'as quoted',
  inputs: [
    ['Price of the plant', '₹1,60,000', 404_900, '₹2,10,000', 354_900] as const,
    ['How much dearer a unit becomes each year', '2 % a year', 192_300, '7 % a year', 689_150] as const,
    ['An inverter replaced', 'never', 382_400, 'in year 11', 344_400] as const,
  ].map(([label, low, lowResult, high, highResult]) => ({
    label,
    low: { input: low, result: money(lowResult) },
    high: { input: high, result: money(highResult) },
  })),
};

type Draw = (view: ChartView) => TemplateResult;

/** Each chart as usual, and with what is hard to fit. */
const CHARTS: readonly (readonly [string, Draw])[] = [
  ['money by year', (view) => renderCashFlow(cashFlow, view)],
  [
    'money by year, in crores, paid back late',
    (view) =>
      renderCashFlow(
        {
          ...cashFlow,
          years: cashFlow.years.slice(0, 7).map(({ year }) => yearOf(year, 1000)),
          payback: { year: 5.93, label: 'paid back after 5 years and 11 months, if nothing becomes dearer' },
        },
        view,
      ),
  ],
  ['money of one year', (view) => renderCashFlow({ ...cashFlow, years: [yearOf(1)], payback: null }, view)],
  ['bills', (view) => renderBills(bills, view)],
  [
    'bills of nothing',
    (view) =>
      renderBills(
        { ...bills, months: bills.months.map((month) => ({ ...month, before: money(0), after: money(0) })) },
        view,
      ),
  ],
  ['sizes', (view) => renderSizeCurve(sizeCurve, view)],
  [
    'sizes with marks at the end',
    (view) =>
      renderSizeCurve(
        {
          ...sizeCurve,
          chosen: { size: kwp(7.5), label: 'the quoted plant, 7.5 kWp, which is rather large' },
          surplusFrom: { size: kwp(8), label: 'from 8 kWp on another unit earns only the surplus rate' },
        },
        view,
      ),
  ],
  ['what matters most', (view) => renderSensitivity(sensitivity, view)],
  [
    'what matters most, in many words',
    (view) =>
      renderSensitivity(
        {
          ...sensitivity,
          inputs: sensitivity.inputs.map(({ label, low, high }) => ({
            label: `${label}, by what was written down in the years before this quote was made`,
            low: { input: `${low.input}, or a little less`, result: money(-12_345_678.5) },
            high,
          })),
        },
        view,
      ),
  ],
];

const SIZES = [
  { width: 360, size: 'narrow' },
  { width: 1000, size: 'wide' },
] as const;

const CASES = CHARTS.flatMap(([name, draw]) => SIZES.map((at) => ({ name, draw, ...at })));

/** Draw a chart in a shadow root, as an element would. */
async function mount(draw: Draw, { width, size }: (typeof SIZES)[number]): Promise<ShadowRoot> {
  await page.viewport(width, 900);
  const host = document.createElement('div');
  document.body.replaceChildren(host);
  const root = host.attachShadow({ mode: 'open' });
  const style = document.createElement('style');
  style.textContent = `${paperStyles}${quoteChartStyles}:host { background: var(--paper); }`;
  const place = document.createElement('div');
  root.append(style, place);
  render(draw({ id: 'chart', size, writing }), place);
  return root;
}

function pictureOf(root: ShadowRoot): SVGSVGElement {
  const picture = root.querySelector<SVGSVGElement>('svg.quote-chart');
  if (picture === null) throw new Error('No chart was drawn.');
  return picture;
}

/** The texts of a picture whose boxes leave it. */
function clipped(picture: SVGSVGElement): readonly string[] {
  const { width, height } = picture.viewBox.baseVal;
  return [...picture.querySelectorAll('text')]
    .filter((text) => {
      const box = text.getBBox();
      return (
        box.x < -0.5 || box.y < 0 || box.x + box.width > width + 0.5 || box.y + box.height > height + 0.5
      );
    })
    .map((text) => text.textContent.trim());
}

/** Pairs of texts that lie on each other; lines of text are nearer than the boxes of their faces are high. */
function overlapping(picture: SVGSVGElement): readonly string[] {
  const texts = [...picture.querySelectorAll('text')].map((text) => ({
    name: text.textContent.trim(),
    box: text.getBBox(),
  }));
  return texts.flatMap(({ name, box }, at) =>
    texts
      .slice(at + 1)
      .filter(
        ({ box: other }) =>
          box.x < other.x + other.width &&
          other.x < box.x + box.width &&
          box.y + 3 < other.y + other.height &&
          other.y + 3 < box.y + box.height,
      )
      .map((other) => `${name} / ${other.name}`),
  );
}

it.each(CASES)(
  'draws $name at $width pixels: nothing is cut off, nothing overlaps',
  async ({ draw, ...at }) => {
    const root = await mount(draw, at);
    const picture = pictureOf(root);
    expect(clipped(picture)).toEqual([]);
    expect(overlapping(picture)).toEqual([]);
    expect(document.documentElement.scrollWidth <= at.width).toBe(true);
    const [text] = picture.querySelectorAll('text');
    const scale = picture.getBoundingClientRect().width / picture.viewBox.baseVal.width;
    expect(12 * scale >= 11 && text !== undefined).toBe(true);
  },
);

it.each(CASES)('says $name at $width pixels to those who do not see it', async ({ draw, ...at }) => {
  const root = await mount(draw, at);
  const names = pictureOf(root).getAttribute('aria-labelledby')?.split(' ') ?? [];
  expect(names.map((id) => root.getElementById(id)?.tagName)).toEqual(['title', 'desc']);
  expect(names.every((id) => root.getElementById(id)?.textContent !== '')).toBe(true);
  await expectAccessible();
  const fold = root.querySelector('details');
  expect(fold?.open).toBe(false);
  if (fold !== null) fold.open = true;
  expect(root.querySelectorAll('table tbody tr th[scope="row"]').length > 0).toBe(true);
  expect(document.documentElement.scrollWidth <= at.width).toBe(true);
  await expectAccessible();
});

it('says that there is nothing to draw', async () => {
  const root = await mount((view) => renderCashFlow({ ...cashFlow, years: [] }, view), SIZES[0]);
  expect(root.querySelector('svg')).toBe(null);
  expect(root.querySelector('figure')?.textContent).toContain('nothing to draw');
  await expectAccessible();
});

it('has every number of the chart in its table', async () => {
  const root = await mount((view) => renderSensitivity(sensitivity, view), SIZES[1]);
  const cells = [...root.querySelectorAll('tbody tr')].map((row) =>
    [...row.children].map((cell) => cell.textContent.trim()),
  );
  expect(cells[0]).toEqual([
    'How much dearer a unit becomes each year',
    '2 % a year',
    '₹1,92,300.00',
    '7 % a year',
    '₹6,89,150.00',
  ]);
  expect(root.querySelector('.notes')?.textContent).toContain('as quoted: ₹3,82,400.00');
});
