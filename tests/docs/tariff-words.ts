import type { FieldWords } from './field-words.ts';
import { SCHEME_WORDS } from './scheme-words.ts';

/** What a kind of charge, price, definition or settlement is. */
export const KIND_WORDS: Readonly<Record<string, string>> = {
  slabs: 'Units at rates by slab.',
  'slab-tables': 'One of several lists of slabs, chosen by the whole quantity.',
  'per-unit': 'One rate for every unit, or for the first so many. Its day rule scales `firstUnits` only.',
  'per-kilowatt': 'Money per kW of load or plant. Either `rate`, or `bands` with `method`.',
  fixed: 'An amount. Either `amount`, or `steps` with `chosenBy`.',
  percentage: 'A percentage of lines above. Either `percent`, or `steps` with `chosenBy`.',
  minimum: 'The least that some lines above have to come to.',
  credit:
    'Money earned for units given, set against other lines; the amount is below 0. The balance of the ledger is used first.',
  'price-series': 'A list by date.',
  'price-sum': 'Of several; `difference`: the first less the others.',
  'price-percent': 'So many percent of the sum of several.',
  'price-mean': 'The mean of the values that a series has on the first of each of so many calendar months.',
  'definition-sum':
    'Of several. `difference`: the first less the others, also below 0. `excess`: the same, but never below 0. All but\n`sum` take two or more.',
  'definition-quotient': 'One divided by another, which has to be above 0.',
  'definition-percent': 'So many percent of the sum of several.',
  'definition-part': 'What lies between two limits.',
  'definition-choice': 'One of several, by the step that a quantity reaches.',
  'definition-running-total':
    'The sum of a quantity over periods. Either `since`, or `periods`; with neither, since the account began.',
  'definition-mean': 'The mean of a quantity over periods.',
  'definition-days-share': 'What falls on so many days, if units come evenly.',
  'definition-netting':
    'What is set off: units of the supply against the demand. `id.name` is what it leaves of each that it names.',
  'unit-netting':
    'Units set off against units over the billing period, with one bank: the commonest scheme, in few words.',
  ledgers: 'Any scheme: quantities worked out one by one, and ledgers.',
};

const LIMIT = 'units, or kW where a power chooses';

/** By section and field; "*" for every section. */
export const FIELD_WORDS: Readonly<Record<string, FieldWords>> = {
  ...SCHEME_WORDS,
  '*.clause': { meaning: 'Where the rule stands', form: 'clause' },
  '*.upTo': { unit: LIMIT },
  '*.chosenBy': { meaning: 'The quantity that chooses the row; left out: the quantity charged' },
  '*.scaledBy': {
    form: 'the name of a day rule',
    meaning: 'The day rule that scales it; left out: not scaled',
  },
  '*.slabs': { form: 'a list of slabs' },
  '*.rate': { unit: 'money per unit' },
  '*.amount': { unit: 'money' },
  '*.percent': { unit: 'percent' },
  '*.from': { form: 'day as `yyyy-mm-dd`', meaning: 'First day in force' },
  '*.through': { form: 'day as `yyyy-mm-dd`', meaning: 'Last day in force; left out: still in force' },
  'document.$schema': { meaning: 'The JSON Schema, for an editor; the engine does not look at it' },
  'document.format': { meaning: 'Says that this is a tariff, and in which form' },
  'document.id': {
    form: 'small letters, digits, hyphens',
    meaning: 'A short name; a household file can name a tariff by it',
  },
  'document.name': { meaning: 'The name of the category, as people call it' },
  'document.supplier': { meaning: 'Who sends the bill' },
  'document.currency': { meaning: 'The code of the currency in ISO 4217', form: 'three capital letters' },
  'document.invented': { meaning: '`true` for an example of no real place' },
  'document.sources': { meaning: 'The documents the numbers come from, each under a key without spaces' },
  'document.units': { meaning: 'How a unit is counted: [units](#units)' },
  'document.measures': {
    form: 'an object',
    meaning: 'What else is given, by name: [a measure](tariff-quantities.md#a-measure); left out: none',
  },
  'document.prices': {
    meaning: 'Numbers by name, dated or worked out: [a price](tariff-prices.md#a-price); left out: none',
  },
  'document.timeBlocks': {
    meaning: 'Hours of the day: [time blocks](tariff-prices.md#time-blocks); left out: none',
  },
  'document.seasons': {
    meaning: 'Parts of every year, by name: [a season](tariff-prices.md#a-season); left out: none',
  },
  'document.rounding': { meaning: 'How lines and total are rounded: [roundings](#roundings-of-the-bill)' },
  'document.dayRules': { meaning: 'Factors for the billing days, by name: [a day rule](#a-day-rule)' },
  'document.versionChange': {
    meaning: 'When a period lies in two versions: [a change](#a-change-of-version)',
  },
  'document.versions': {
    form: 'a list, at least one',
    meaning: 'The charges, by date: [a version](#a-version)',
  },
  'document.settlements': {
    form: 'a list, at least one',
    meaning: 'The rules for solar units, by date: [a rule](tariff-settlement.md#a-settlement-rule)',
  },
  'document.trueUp': {
    meaning:
      'How provisional bills are [set right](#provisional-bills-set-right); left out: a period that replaces others is refused',
  },
  'source.title': { meaning: 'As printed on it' },
  'source.publisher': { meaning: 'Who made the rules' },
  'source.year': { form: 'four digits, or `"n.d."`' },
  'source.note': { meaning: 'Anything a reader has to know: what was not stated, what was assumed' },
  'rounding.total': { meaning: 'The amount payable' },
  'rounding.differenceLabel': {
    meaning: 'What the bill prints beside what the rounding of the total adds; left out: "Rounding"',
  },
  'one-rounding.step': { unit: 'of what is rounded', meaning: 'Round to whole multiples of this, above 0' },
  'day-rule.rule': {
    meaning: '`days-over`: days ÷ divisor; `calendar-months`: days ÷ days of the month, summed',
  },
  'day-rule.divisor': { unit: 'days' },
  'day-rule.unscaledFrom': {
    unit: 'days',
    meaning: 'From so many days on nothing is scaled; together with the next',
  },
  'day-rule.unscaledThrough': { unit: 'days', meaning: 'Through so many days nothing is scaled' },
  'day-rule.factor': { form: 'a [rounding](#a-rounding)' },
  'day-rule.limits': { form: 'a [rounding](#a-rounding)' },
  'day-rule.rounded': {
    meaning: 'What the rounding of the factor is applied to: the part of each month, or their sum',
  },
  'version-change.rule': {
    meaning: 'Share the period out by days, or bill the whole of it by the version of one day',
  },
  'version-change.units': { meaning: 'Exact shares of units, or whole units each, by largest remainder' },
  'version-change.factor': {
    meaning: 'Day rules on the days of each part, or the factor of the period shared by days',
  },
  'version.name': { meaning: 'Tells versions apart on a bill' },
  'version.charges': {
    form: 'a list, at least one',
    meaning: 'The lines of the bill in order: [a charge](tariff-charges.md#a-charge)',
  },
  'charge.season': {
    form: 'the name of a season',
    meaning: 'The [season](tariff-prices.md#a-season) in which alone it is charged; left out: all year',
  },
  'charge.inTotal': {
    meaning: '`false`: worked out for other charges to name, but no part of the sum; left out: it counts',
  },
  'charge.rounding': { meaning: 'Of this line; left out: as `rounding.line` of the document says' },
  'percentage.inside': {
    meaning:
      '`true`: the base has the tax in it, so that the tax is base × percent ÷ (100 − percent); left out: it is added on top',
  },
  'credit.earned': {
    form: 'a list of ids',
    meaning:
      'Lines above whose amounts are the credit earned; they are no part of the sum. Left out: only the ledger is used',
  },
  'credit.ledger': {
    form: 'the id of a ledger of money',
    meaning: 'Its balance is used first, and it takes what the bill leaves; left out: nothing is carried',
  },
  'credit.against': { form: 'a list of ids', meaning: 'The lines above that the credit may meet' },
  'credit.percent': {
    unit: 'percent, 0 to 100',
    meaning: 'At most so much of those lines is met; left out: all',
  },
  'charge.id': { form: 'small letters, digits, hyphens' },
  'slab-tables.tables': { form: 'a list of tables' },
  'per-unit.firstUnits': { unit: 'units' },
  'per-kilowatt.rate': { unit: 'money per kW' },
  'per-kilowatt.bands': { form: 'a list of bands', meaning: 'Rates by kW, in ascending order of `upTo`' },
  'per-kilowatt.method': {
    meaning: 'Each kW at the rate of its band, or all at the rate of the band reached; needed with `bands`',
  },
  'fixed.steps': {
    form: 'a list of steps',
    meaning: 'Amounts by what is used, in ascending order of `upTo`',
  },
  'fixed.chosenBy': { meaning: 'The quantity that chooses the step; needed with `steps`' },
  'percentage.steps': {
    form: 'a list of steps',
    meaning: 'Percentages by what is used, in ascending order of `upTo`',
  },
  'percentage.chosenBy': { meaning: 'The quantity that chooses the step; needed with `steps`' },
  'percentage.of': { form: 'a list of ids, or of [bases](#a-base-charged-again)' },
  'minimum.of': { form: 'a list of ids', meaning: 'The lines above that count towards it' },
  'table.slabs': {
    form: 'a list of slabs',
    meaning: 'The slabs while the whole quantity is up to the limit',
  },
  'band.rate': { unit: 'money per kW' },
  'base.line': { form: 'an id', meaning: 'A line above on units, charged again for this base only' },
  'base.recomputedOn': { meaning: 'The quantity it is charged on' },
  'unit-netting.cap': { meaning: 'The most that may be set off: [a cap](#a-cap)' },
  'unit-netting.carry': {
    meaning: 'Left-over units go to the next period; needed unless the bank closes in every period',
  },
  'unit-netting.close': {
    meaning: 'When the bank closes and what then: [the close](#the-close-of-the-bank)',
  },
  'plant-limit.most': { unit: 'kW', meaning: 'So many kW of plant at most' },
  'plant-limit.percentOfLoad': { unit: 'percent', meaning: 'So much of the sanctioned load at most' },
  'cap.percent': { unit: 'percent', meaning: 'At most so much of the quantity is set off in a period' },
  'cap.of': { meaning: 'The quantity' },
  'cap.excess': { meaning: 'What becomes of units above the cap' },
  'close.on': {
    form: '`"every-period"`, or a day of the year as `"mm-dd"`',
    meaning: 'The period that holds this day closes the bank',
  },
  'close.surplus': { meaning: 'What becomes of the units left over at the close' },
  'close.rate': {
    unit: 'money per unit',
    meaning: 'What a unit is paid; needed if surplus is paid, else not allowed',
  },
  'close.inBill': {
    meaning:
      'The bill that pays: that of the period that closes, or the one after; needed if surplus is paid',
  },
  'close.label': { meaning: 'What the bill prints beside the payment; left out: "Surplus units paid"' },
};
