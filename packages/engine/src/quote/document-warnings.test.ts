import type { QuoteDocument } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { workedQuote } from '../../../../tests/support/demo-quote.ts';
import { documentWarnings } from './document-warnings.ts';

const { document } = workedQuote().input;

const told = (sections: Partial<QuoteDocument>): readonly unknown[] =>
  documentWarnings({ ...document, ...sections }, '3336.72').map(
    ({ severity, path, found, expected, remedy }) => [
      `${severity} ${path.join('.')}`,
      found,
      expected,
      remedy,
    ],
  );

it('says nothing of the demo quote', () => {
  expect(told({})).toEqual([]);
});

describe('rises of rates', () => {
  const rising = (charges: Readonly<Record<string, string>>, basis = 'Past orders') =>
    told({ escalation: { charges, basis } });

  it.each([['3'], ['3.00'], ['0'], ['-2']])('by %s %% are not told', (percent) => {
    expect(rising({ energy: percent })).toEqual([]);
  });

  it('above 3 % are asked about, each charge for itself', () => {
    const remedy = 'Lower it, or show orders of the past that it follows from.';
    const expected = 'at most 3 % a year, with its basis';
    expect(rising({ energy: '3.001', fixed: '3', fuel: '40' })).toEqual([
      ['question escalation.charges.energy', 'a rise of "energy" by 3.001 % a year', expected, remedy],
      ['question escalation.charges.fuel', 'a rise of "fuel" by 40 % a year', expected, remedy],
    ]);
  });

  it('without a basis are asked about, also where they fall', () => {
    const asked = [
      [
        'question escalation.basis',
        'rates that change each year, and no reason',
        'the basis of the rises: past orders, or a forecast with its publisher',
        'Say why rates rise so much, or let them stay as they are.',
      ],
    ];
    expect(rising({ energy: '2' }, '')).toEqual(asked);
    expect(rising({ energy: '-0.5' }, '  ')).toEqual(asked);
  });

  it('that are none need no basis', () => {
    expect(rising({}, '')).toEqual([]);
    expect(rising({ energy: '0.0' }, '')).toEqual([]);
  });
});

describe('rises of what surplus is paid', () => {
  const rising = (percent: string, basis: string) =>
    told({ escalation: { charges: {}, surplus: { percent, step: '0.01' }, basis } });

  it('are asked about as those of charges are: how much, and why', () => {
    expect(rising('40', '')).toEqual([
      [
        'question escalation.surplus.percent',
        'a rise of "what surplus is paid" by 40 % a year',
        'at most 3 % a year, with its basis',
        'Lower it, or show orders of the past that it follows from.',
      ],
      [
        'question escalation.basis',
        'rates that change each year, and no reason',
        'the basis of the rises: past orders, or a forecast with its publisher',
        'Say why rates rise so much, or let them stay as they are.',
      ],
    ]);
  });

  it('within 3 % with a basis, and none at all, are not told', () => {
    expect(rising('3', 'Past orders')).toEqual([]);
    expect(rising('0', '')).toEqual([]);
  });
});

describe('what is replaced', () => {
  const { upkeep } = document;
  const inverter = { item: 'Inverter', year: '11', amount: '0.01' };
  const asked = (years: string) => [
    [
      'question upkeep.replacements',
      `a life of ${years} years in which nothing is replaced`,
      'a new inverter where the life is longer than 15 years',
      'Add what is replaced, in which year and at what price.',
    ],
  ];

  it('may be nothing in 15 years', () => {
    expect(told({ years: '15', upkeep: { ...upkeep, replacements: [] } })).toEqual([]);
  });

  it('is asked about in a longer life', () => {
    expect(told({ years: '16', upkeep: { ...upkeep, replacements: [] } })).toEqual(asked('16'));
  });

  it('costs something', () => {
    expect(told({ upkeep: { ...upkeep, replacements: [inverter] } })).toEqual([]);
    const gift = [{ ...inverter, amount: '0' }];
    expect(told({ upkeep: { ...upkeep, replacements: gift } })).toEqual(asked('25'));
  });
});

describe('wear', () => {
  it('of later years is asked about where there is none', () => {
    expect(told({ degradation: { first: '2', later: '0.0' } })).toEqual([
      [
        'question degradation.later',
        'a plant that loses nothing after its second year',
        'some loss each year: 0.5 to 0.6 % at the median of modules (Compendium of Photovoltaic Degradation Rates, Jordan, Kurtz, VanSant, Newmiller; NREL, 2016)',
        'Give the yearly loss from the sheet of the modules.',
      ],
    ]);
  });

  it('may be little, or none in the first year', () => {
    expect(told({ degradation: { first: '0', later: '0.001' } })).toEqual([]);
  });
});

describe('words', () => {
  const asked = (place: string, words: string) => [
    `question ${place}`,
    `the words ${words}`,
    'what is warranted, for how long and how it is measured',
    'Say it in figures: bills of 3336.72 stay in the first year.',
  ];

  it('that promise too much are asked about, text by text', () => {
    const offer = {
      ...document.offer,
      seller: 'Zero Bill Homes',
      installer: 'A crew that guarantees',
      promise: 'Zero bill, guaranteed',
    };
    const plant = { ...document.plant, modules: 'free', inverter: 'free', layout: 'free', shading: 'free' };
    const price = [
      { item: 'Plant', amount: '1' },
      { item: 'Meter, free', amount: '0' },
    ];
    expect(told({ offer, plant, price })).toEqual([
      asked('offer.seller', '"zero bill"'),
      asked('offer.installer', '"guarantees"'),
      asked('offer.promise', '"zero bill", "guaranteed"'),
      asked('plant.modules', '"free"'),
      asked('plant.inverter', '"free"'),
      asked('plant.layout', '"free"'),
      asked('plant.shading', '"free"'),
      asked('price.1.item', '"free"'),
    ]);
  });

  it('in names of people and places are names', () => {
    const offer = { ...document.offer, customer: 'Mr Free', site: '4 Free Lane', licence: 'FREE-1' };
    expect(told({ offer })).toEqual([]);
  });

  it('need not be there at all', () => {
    expect(told({ offer: { date: '2025-02-10' }, plant: { kWp: '4' } })).toEqual([]);
  });
});
