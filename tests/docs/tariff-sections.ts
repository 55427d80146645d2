import { ROUNDING_MODES } from '@unitbook/engine';
import { quoted } from './schema-words.ts';

/** A table of a page: an object of the document. */
export interface Section {
  /** Names its fields in the words. */
  readonly name: string;
  readonly title: string;
  /** The way to it in the schema: "*" for any entry, a number for a variant. */
  readonly path: string;
  readonly text: string;
  /** Its variants have tables of their own: the key that tells them apart. */
  readonly kinds?: string;
  /** Stands before the name of a variant in the words; left out: nothing. */
  readonly prefix?: string;
}

/** One page of the reference. */
export interface ReferencePage {
  readonly name: string;
  readonly intro: string;
  readonly sections: readonly Section[];
  readonly end: readonly string[];
}

const MADE =
  '\nThis page is made from the JSON Schema of the engine: change it there, then run\n' +
  '`node tests/support/run.mjs tests/support/write-tariff-reference.ts`.';

const CHARGES = 'versions.*.charges.*';
const UNIT_NETTING = 'settlements.*.0';
const LEDGERS = 'settlements.*.1';

const DOCUMENT_PAGE: ReferencePage = {
  name: 'reference/tariff.md',
  intro: `# The tariff document

Every field of a tariff file: here the document, then [charges](tariff-charges.md), [times and
prices](tariff-prices.md), [quantities](tariff-quantities.md), [settlement](tariff-settlement.md).
${MADE}
How to write a tariff, step by step: [writing a tariff](../writing-a-tariff.md). A document with \`extends\` says only
what differs from another: [extending](../extending-a-tariff.md).

A *decimal* is a number written as text: digits, one point at most, no grouping and no exponent, such as \`"3.10"\` or
\`"-1.50"\`. Money is in the tariff's currency, with at most 8 decimals. Limits have at most 3. 1 unit is 1 kWh. A
*clause* is a text that begins with the key of one of the sources. A *quantity* is a name: see
[quantities](tariff-quantities.md#names-of-quantities). A *price* is the name of [one](tariff-prices.md#a-price).
Keys that are not listed are errors. Nothing that changes money has a default: what a field that is left out means,
stands beside it. Below a table stands an example; our tests read it in its place. \`id\`, \`label\` and \`clause\` are
left out of it.`,
  sections: [
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
      text: 'What happens when one billing period lies in two versions. With `split-by-days`, seasons and changes of the account\nsplit it, too.',
    },
    {
      name: 'true-up',
      title: 'Provisional bills set right',
      path: 'trueUp',
      text: 'What was billed on estimated units is billed again on those read at last; the bill is the difference, line by line.',
    },
    { name: 'version', title: 'A version', path: 'versions.*', text: 'The charges of some time.' },
  ],
  end: [
    '',
    '## Names',
    '',
    `Ways to round: ${quoted(ROUNDING_MODES.slice(0, 5))},`,
    `${quoted(ROUNDING_MODES.slice(5))}.`,
    '',
    'The half modes, `up` and `down` look at the size of a number: −2.5 half-up is −3. `floor`, `ceiling`, `half-ceiling`',
    'and `half-floor` look at its sign: −2.5 floor is −3, ceiling −2.',
  ],
};

const CHARGES_PAGE: ReferencePage = {
  name: 'reference/tariff-charges.md',
  intro: `# The charges of a tariff

The lines of a bill.
${MADE}
Words: [the tariff document](tariff.md). Step by step: [writing a tariff](../writing-a-tariff.md).`,
  sections: [
    {
      name: 'charge',
      title: 'A charge',
      path: CHARGES,
      text: 'One line of the bill. `kind` names one of the kinds below; every kind has these fields and its own.',
      kinds: 'kind',
    },
    {
      name: 'slab',
      title: 'Rows of slabs, tables, bands and steps',
      path: `${CHARGES}.0.slabs.*`,
      text: 'A slab:',
    },
    { name: 'table', title: 'A table', path: `${CHARGES}.1.tables.*`, text: '' },
    { name: 'band', title: 'A band', path: `${CHARGES}.3.bands.*`, text: '' },
    { name: 'fixed-step', title: 'A step of a fixed charge', path: `${CHARGES}.4.steps.*`, text: '' },
    { name: 'percent-step', title: 'A step of a percentage', path: `${CHARGES}.5.steps.*`, text: '' },
    {
      name: 'base',
      title: 'A base charged again',
      path: `${CHARGES}.5.of.*.1`,
      text: 'In `of` of a percentage, in the place of the id of a line.',
    },
  ],
  end: [],
};

const PRICES_PAGE: ReferencePage = {
  name: 'reference/tariff-prices.md',
  intro: `# Times and prices of a tariff

Seasons, hours of the day, and what a rate can be.
${MADE}
Words: [the tariff document](tariff.md). Step by step: [any settlement scheme](../writing-a-tariff-3.md).`,
  sections: [
    {
      name: 'season',
      title: 'A season',
      path: 'seasons.*',
      text: 'A part of every year, by name. Charges and the calendar of time blocks name it. Seasons may overlap.',
    },
    {
      name: 'time-blocks',
      title: 'Time blocks',
      path: 'timeBlocks',
      text: 'Hours of the day that are metered or priced apart, on the local clock.',
    },
    { name: 'block', title: 'A block', path: 'timeBlocks.blocks.*', text: '' },
    {
      name: 'entry',
      title: 'An entry of the calendar',
      path: 'timeBlocks.calendar.*',
      text: 'For every minute of every day exactly one entry has to apply; gaps and overlaps are errors.',
    },
    { name: 'holidays', title: 'Holidays', path: 'timeBlocks.holidays', text: '' },
    {
      name: 'price',
      title: 'A price',
      path: 'prices.*',
      text: 'A number by name, under `prices`. Any rate, amount or percentage can be one. It names prices above it. One that does\nnot end within 8 decimals needs a rounding.',
      kinds: 'is',
      prefix: 'price',
    },
    {
      name: 'price-value',
      title: 'A value of a series',
      path: 'prices.*.0.values.*',
      text: '',
    },
  ],
  end: [],
};

const QUANTITIES_PAGE: ReferencePage = {
  name: 'reference/tariff-quantities.md',
  intro: `# The quantities of a tariff

What charges and settlements are counted on.
${MADE}
Words: [the tariff document](tariff.md). Step by step: [any settlement scheme](../writing-a-tariff-3.md).

## Names of quantities

| Name | What it is |
|---|---|
| \`import\`, \`export\`, \`generation\`, \`self-consumption\`, \`total-use\` | units taken, given, made, used from the roof, used in all |
| \`import@peak\` | its part in the time block \`peak\`; so for all five |
| \`billed\` | import less what is set off; under \`unit-netting\` only |
| \`sanctioned-load\`, \`plant-capacity\` | kW, of the account |
| \`days\` | the days of the period |
| \`shared\` | units from a pool; 0 where none are given |
| the name of a measure | what is given under it |
| the id of a ledger of units | its balance brought forward |
| the id of a definition | what it comes to |
| \`net.import\` | what the netting \`net\` leaves of \`import\`; so for all of its supply and demand |`,
  sections: [
    {
      name: 'measure',
      title: 'A measure',
      path: 'measures.*',
      text: 'A quantity that meter, bill or account give, and that no tariff knows of itself. Under `measures`, by name.',
    },
    {
      name: 'window',
      title: 'A window of a measure',
      path: 'measures.*.window',
      text: 'Netting inside a period. It is worked out from interval data; without them, give the measure itself.',
    },
    {
      name: 'definition',
      title: 'A definition',
      path: `${LEDGERS}.quantities.*`,
      text: 'A quantity that is worked out, from those above it. Under `quantities` of a [settlement](tariff-settlement.md), in\norder. Results are whole thousandths: what comes out finer needs a rounding.',
      kinds: 'is',
      prefix: 'definition',
    },
    { name: 'choice-step', title: 'A step of a choice', path: `${LEDGERS}.quantities.*.4.steps.*`, text: '' },
    { name: 'route', title: 'A route of a netting', path: `${LEDGERS}.quantities.*.8.routes.1.*`, text: '' },
  ],
  end: [],
};

const SETTLEMENT_PAGE: ReferencePage = {
  name: 'reference/tariff-settlement.md',
  intro: `# Settlement of a tariff

What becomes of units given to the grid.
${MADE}
Words: [the tariff document](tariff.md). Step by step: [any settlement scheme](../writing-a-tariff-3.md).`,
  sections: [
    {
      name: 'settlement',
      title: 'A settlement rule',
      path: 'settlements.*',
      text: 'The rule in force on the last day of a period settles the whole of it. `scheme` names one of two.',
      kinds: 'scheme',
    },
    {
      name: 'plant-limit',
      title: 'The largest plant',
      path: `${UNIT_NETTING}.plantLimit`,
      text: 'Of either scheme. With both limits, the lower one counts.',
    },
    { name: 'cap', title: 'A cap', path: `${UNIT_NETTING}.cap`, text: 'Of `unit-netting`.' },
    { name: 'carry', title: 'Carrying', path: `${UNIT_NETTING}.carry`, text: 'Of `unit-netting`.' },
    {
      name: 'close',
      title: 'The close of the bank',
      path: `${UNIT_NETTING}.close`,
      text: 'Of `unit-netting`.',
    },
    {
      name: 'ledger',
      title: 'A ledger',
      path: `${LEDGERS}.ledgers.*`,
      text: 'An account of units or money. In a period: opening + added = used + paid + lapsed + closing.',
    },
    { name: 'life', title: 'The life of what is in a ledger', path: `${LEDGERS}.ledgers.*.life`, text: '' },
    { name: 'ledger-close', title: 'The close of a ledger', path: `${LEDGERS}.ledgers.*.close`, text: '' },
    { name: 'payment', title: 'The payment of a balance', path: `${LEDGERS}.ledgers.*.payment`, text: '' },
    {
      name: 'sharing',
      title: 'Sharing',
      path: `${LEDGERS}.sharing`,
      text: 'How the units of a pool are shared over accounts. The [group](cases.md#a-group) says who they are.',
    },
  ],
  end: [],
};

/** The pages in the order in which they are read. */
export const PAGES: readonly ReferencePage[] = [
  DOCUMENT_PAGE,
  CHARGES_PAGE,
  PRICES_PAGE,
  QUANTITIES_PAGE,
  SETTLEMENT_PAGE,
];
