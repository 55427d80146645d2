/** What the page says of a field beyond the schema. */
export interface FieldWords {
  readonly meaning?: string;
  readonly form?: string;
  readonly unit?: string;
}

/** A table of the page: an object of the document. */
export interface Section {
  /** Names its fields in the words below. */
  readonly name: string;
  readonly title: string;
  /** The way to it in the schema: "*" for any entry, a number for a variant. */
  readonly path: string;
  readonly text: string;
  readonly isAfterCharges?: boolean;
}

const CHARGES = 'versions.*.charges.*';

export const SECTIONS: readonly Section[] = [
  { name: 'document', title: 'The document', path: '', text: '' },
  {
    name: 'source',
    title: 'A source',
    path: 'sources.*',
    text: 'A document that the numbers were taken from.',
  },
  { name: 'units', title: 'Units', path: 'units', text: 'How a unit is counted.' },
  {
    name: 'rounding',
    title: 'Roundings of the bill',
    path: 'rounding',
    text: 'How lines and the payable amount are rounded.',
  },
  { name: 'one-rounding', title: 'A rounding', path: 'rounding.line.0', text: '' },
  {
    name: 'day-rule',
    title: 'A day rule',
    path: 'dayRules.*',
    text: 'A factor for the billing days. `scaledBy` of a charge names it.',
  },
  {
    name: 'version-change',
    title: 'A change of version',
    path: 'versionChange',
    text: 'What happens when one billing period lies in two versions.',
  },
  { name: 'version', title: 'A version', path: 'versions.*', text: 'The charges of some time.' },
  {
    name: 'slab',
    title: 'Rows of slabs, tables, bands and steps',
    path: `${CHARGES}.0.slabs.*`,
    text: 'A slab:',
    isAfterCharges: true,
  },
  { name: 'table', title: 'A table', path: `${CHARGES}.1.tables.*`, text: '', isAfterCharges: true },
  { name: 'band', title: 'A band', path: `${CHARGES}.3.bands.*`, text: '', isAfterCharges: true },
  {
    name: 'fixed-step',
    title: 'A step of a fixed charge',
    path: `${CHARGES}.4.steps.*`,
    text: '',
    isAfterCharges: true,
  },
  {
    name: 'percent-step',
    title: 'A step of a percentage',
    path: `${CHARGES}.5.steps.*`,
    text: '',
    isAfterCharges: true,
  },
  {
    name: 'base',
    title: 'A base charged again',
    path: `${CHARGES}.5.of.*.1`,
    text: 'In `of` of a percentage, in the place of the id of a line.',
    isAfterCharges: true,
  },
  {
    name: 'settlement',
    title: 'A settlement rule',
    path: 'settlements.*',
    text: 'What becomes of units given to the grid. The rule in force on the last day of a period settles it.',
    isAfterCharges: true,
  },
  { name: 'cap', title: 'A cap', path: 'settlements.*.cap', text: '', isAfterCharges: true },
  { name: 'carry', title: 'Carrying', path: 'settlements.*.carry', text: '', isAfterCharges: true },
  {
    name: 'close',
    title: 'The close of the bank',
    path: 'settlements.*.close',
    text: '',
    isAfterCharges: true,
  },
];

/** What a kind of charge is. */
export const CHARGE_WORDS: Readonly<Record<string, string>> = {
  slabs: 'Units at rates by slab.',
  'slab-tables': 'One of several lists of slabs, chosen by the whole quantity.',
  'per-unit': 'One rate for every unit, or for the first so many. Its day rule scales `firstUnits` only.',
  'per-kilowatt': 'Money per kW of load or plant. Either `rate`, or `bands` with `method`.',
  fixed: 'An amount. Either `amount`, or `steps` with `chosenBy`.',
  percentage: 'A percentage of lines above. Either `percent`, or `steps` with `chosenBy`.',
  minimum: 'The least that some lines above have to come to.',
};

const LIMIT = 'units, or kW where a power chooses';

/** By section and field; "*" for every section. */
export const FIELD_WORDS: Readonly<Record<string, FieldWords>> = {
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
    meaning: 'The rules for solar units, by date: [a rule](#a-settlement-rule)',
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
    meaning: 'The lines of the bill in order: [a charge](#a-charge)',
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
  'settlement.cap': { meaning: 'The most that may be set off: [a cap](#a-cap)' },
  'settlement.carry': {
    meaning: 'Left-over units go to the next period; needed unless the bank closes in every period',
  },
  'settlement.close': { meaning: 'When the bank closes and what then: [the close](#the-close-of-the-bank)' },
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
