import { readTariff, type Finding } from '@unitbook/engine';
import { changed } from '../support/demo.ts';
import { LEDGER_TARIFF } from '../support/ledgers.ts';
import type { MessageCase } from './message-case.ts';

/** What is found in the tariff of ledgers once places of it are changed. */
const found =
  (...changes: readonly (readonly [from: string, to: string])[]) =>
  (): readonly Finding[] =>
    readTariff(changes.reduce((text, [from, to]) => changed(text, from, to), LEDGER_TARIFF)).findings;

const ROUTES = '"routes": "any"';
const BANK = '"adds": "net.export",';
const CREDIT_LEFT = '"left": "carried"';
const AGAINST = '"against": ["energy"],';
const CLOSE = '"close": { "clause": "TR 5.3", "on": ["03-31"], "surplus": "paid" }';
const PAYMENT =
  '"payment": { "clause": "TR 5.4", "label": "Surplus units", "rate": "2.50", "inBill": "same" }';
const MONEY = '"unit": "money", "clause": "TR 5.5"';

/** Another definition before the netting. */
const defined = (definition: string) =>
  found(['"quantities": [', `"quantities": [\n${definition},`] as const);
const words = (id: string): string => `"id": "${id}", "label": "${id}", "clause": "TR 9"`;
/** Another charge before the fixed one. */
const charged = (charge: string) => found(['"charges": [', `"charges": [\n${charge},`] as const);
/** Prices, in front of the versions. */
const priced = (prices: string) =>
  found(['"versions": [', `"prices": {\n${prices}\n}, "versions": [`] as const);

/** A measure with a window, in front of the versions. */
const measured = (window: string) =>
  found([
    '"versions": [',
    `"measures": { "netted": { "label": "Netted", "unit": "kWh", "window": ${window} } }, "versions": [`,
  ] as const);

const UNKNOWN = 'Correct the name, declare it under "measures", or work it out above this place.';
const PRICE = 'Write a number, correct the name, or add the price above those that use it.';
const ADD_REST = { expected: '"carried" or "lapses" for what is not paid', remedy: 'Add "rest".' } as const;
const DAY = { expected: 'a day of the calendar', remedy: 'Correct the date.' } as const;

const NAMES: readonly MessageCase[] = [
  {
    code: 'tariff/unknown-quantity',
    when: 'a charge names none of the quantities',
    make: found(['"on": "net.import"', '"on": "net.imports"']),
    at: '26:17',
    found: 'the quantity "net.imports"',
    expected: `a quantity known here: "net.import", "import", "net.export", "export", "net.bank", "net", "generation", "sanctioned-load", "self-consumption", "total-use", "plant-capacity", "shared" …`,
    remedy: UNKNOWN,
  },
  {
    code: 'tariff/unknown-quantity',
    when: 'a quantity is worked out from one that stands below it',
    make: defined(`{ "is": "sum", ${words('all')}, "of": ["net.import", "1"] }`),
    at: '56:70',
    found: 'the quantity "net.import"',
    expected: `a quantity known here: "import", "export", "generation", "sanctioned-load", "self-consumption", "total-use", "plant-capacity", "shared", "days", "bank"`,
    remedy: UNKNOWN,
  },
  {
    code: 'tariff/unknown-quantity',
    when: 'a quantity of a time block is named where there is none',
    make: defined(`{ "is": "excess", ${words('all')}, "of": ["import@peak", "export"] }`),
    at: '56:73',
    found: 'the quantity "import@peak"',
    expected: `a quantity known here: "import", "export", "self-consumption", "generation", "total-use", "sanctioned-load", "plant-capacity", "shared", "days", "bank"`,
    remedy: UNKNOWN,
  },
  {
    code: 'tariff/unknown-quantity',
    when: 'a ledger keeps what nothing gives',
    make: found(['"keeps": "net.bank"', '"keeps": "net.banks"']),
    at: '73:20',
    found: 'the quantity "net.banks"',
    expected: `a quantity known here: "net.bank", "bank", "net", "net.export", "net.import", "sanctioned-load", "generation", "plant-capacity", "import", "export", "self-consumption", "total-use" …`,
    remedy: UNKNOWN,
  },
  {
    code: 'tariff/unknown-quantity',
    when: 'a payment is limited by what nothing gives',
    make: found([PAYMENT, PAYMENT.replace(' }', ', "most": "limit", "rest": "lapses" }')]),
    at: '75:112',
    found: 'the quantity "limit"',
    expected: `a quantity known here: "import", "net.import", "plant-capacity", "export", "generation", "self-consumption", "total-use", "sanctioned-load", "shared", "days", "bank", "net" …`,
    remedy: UNKNOWN,
  },
  {
    code: 'tariff/quantity-twice',
    when: 'a quantity has the name of a ledger',
    make: defined(`{ "is": "sum", ${words('bank')}, "of": ["import", "export"] }`),
    at: '56:22',
    found: 'a second quantity or ledger named "bank"',
    expected: 'each name once',
    remedy: 'Give this one another name.',
  },
  {
    code: 'tariff/unknown-quantity',
    when: 'a charge is on "billed" under ledgers',
    make: found(['"on": "net.import"', '"on": "billed"']),
    at: '26:17',
    found: 'the quantity "billed"',
    expected: `a quantity known here: "shared", "sanctioned-load", "import", "export", "generation", "self-consumption", "total-use", "plant-capacity", "days", "bank", "net", "net.export" …`,
    remedy: 'Under "ledgers" charge what a netting leaves, such as "net.import".',
  },
  {
    code: 'tariff/quantity-twice',
    when: 'a ledger has the name of a channel',
    make: found(['"id": "rewards"', '"id": "import"'], ['"ledger": "rewards"', '"ledger": "import"']),
    at: '77:17',
    found: 'a second quantity or ledger named "import"',
    expected: 'each name once',
    remedy: 'Give this one another name.',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a ledger that a netting uses keeps all of its balance',
    make: found(['"keeps": "net.bank"', '"label": "Bank"'], ['"label": "Bank of units"', '"unit": "kWh"']),
    at: '67:9',
    found: '"bank" in the supply of "net", and no "keeps"',
    expected: 'what the netting leaves of the balance',
    remedy: 'Write "keeps": "net.bank".',
    isAmongOthers: true,
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'units that a netting sets off come into a ledger',
    make: found(['"adds": "net.export"', '"adds": "export"']),
    at: '72:19',
    found: '"export" coming in whole, which "net" sets off',
    expected: 'what the netting leaves of it',
    remedy: 'Write "adds": "net.export".',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a netting has one route twice',
    make: found([
      '"routes": "any"',
      '"routes": [{ "from": "bank", "to": "import" }, { "from": "bank", "to": "import" }]',
    ]),
    at: '63:58',
    found: 'the same route a second time',
    expected: 'each way once',
    remedy: 'Take one of the two out.',
  },
  {
    code: 'tariff/window-hours',
    when: 'a window of hours without an end',
    make: measured('{ "of": "import", "less": "export", "within": "day-hours", "from": "09:00" }'),
    at: '14:73',
    found: 'hours of the day from 09:00 to no time',
    expected: '"from" and "to" of hours of the day, two different times from 00:00 to 24:00',
    remedy: 'Give both times, or net within the whole "day".',
  },
  {
    code: 'tariff/window-hours',
    when: 'a window of no hours',
    make: measured(
      '{ "of": "import", "less": "export", "within": "day-hours", "from": "09:00", "to": "09:00" }',
    ),
    at: '14:73',
    found: 'hours of the day from 09:00 to 09:00',
    expected: '"from" and "to" of hours of the day, two different times from 00:00 to 24:00',
    remedy: 'Give both times, or net within the whole "day".',
  },
  {
    code: 'tariff/window-hours',
    when: 'a window that ends at no time of the clock',
    make: measured(
      '{ "of": "import", "less": "export", "within": "day-hours", "from": "09:00", "to": "24:30" }',
    ),
    at: '14:73',
    found: 'hours of the day from 09:00 to 24:30',
    expected: '"from" and "to" of hours of the day, two different times from 00:00 to 24:00',
    remedy: 'Give both times, or net within the whole "day".',
  },
  {
    code: 'tariff/quantity-twice',
    when: 'two ledgers have one name',
    make: found(['"id": "rewards"', '"id": "bank"'], ['"ledger": "rewards"', '"ledger": "bank"']),
    at: '77:17',
    found: 'a second quantity or ledger named "bank"',
    expected: 'each name once',
    remedy: 'Give this one another name.',
  },
  {
    code: 'tariff/units-mixed',
    when: 'units and a power are added',
    make: defined(`{ "is": "sum", ${words('all')}, "of": ["import", "sanctioned-load", "days"] }`),
    at: '56:1',
    found: '"all" made of kWh and kW and count',
    expected: 'quantities of one unit',
    remedy: 'Name quantities of one unit, or bring one to the other with "product" or "quotient".',
  },
  {
    code: 'tariff/not-a-power',
    when: 'a charge per kilowatt is on units',
    make: charged(`{ "kind": "per-kilowatt", ${words('load')}, "on": "import", "rate": "2" }`),
    at: '20:82',
    found: 'a charge per kilowatt on "import", which is counted in kWh',
    expected: 'a power, in kW or kVA',
    remedy: 'Name a power, or charge units with the kind "per-unit".',
  },
  {
    code: 'tariff/unknown-season',
    when: 'a charge has a season that there is not',
    make: charged(`{ "kind": "fixed", ${words('heat')}, "amount": "2", "season": "winter" }`),
    at: '20:94',
    found: 'the season "winter"',
    expected: 'one of the seasons: none',
    remedy: 'Add it under "seasons" or correct the name.',
  },
  {
    code: 'tariff/no-such-day',
    when: 'a season begins on a day that there is not',
    make: found([
      '"versions": [',
      '"seasons": { "cold": { "from": "11-31", "through": "02-29" } }, "versions": [',
    ]),
    at: '14:34',
    found: '"11-31"',
    ...DAY,
  },
  {
    code: 'tariff/season-leap-day',
    when: 'a season ends on 28 February',
    make: found([
      '"versions": [',
      '"seasons": { "cold": { "from": "11-01", "through": "02-28" } }, "versions": [',
    ]),
    at: '14:54',
    found: 'a season that ends on 02-28, so that 29 February is in no season',
    expected: '"02-29", which is the 28th in a common year, or a season that begins on that day',
    remedy: 'Write "02-29".',
  },
];

const PRICES: readonly MessageCase[] = [
  {
    code: 'tariff/unknown-price',
    when: 'a charge names a price that there is not',
    make: found(['"rate": "5.00"', '"rate": "energy-price"']),
    at: '27:19',
    found: 'the price "energy-price"',
    expected: 'a number, or one of the prices: none',
    remedy: PRICE,
  },
  {
    code: 'tariff/unknown-price',
    when: 'a ledger is paid at a price that there is not',
    make: found(['"rate": "2.50"', '"rate": "surplus"']),
    at: '75:78',
    found: 'the price "surplus"',
    expected: 'a number, or one of the prices: none',
    remedy: PRICE,
  },
  {
    code: 'tariff/unknown-price',
    when: 'a price names one below it',
    make: priced(
      '"all": { "is": "sum", "clause": "TR 9", "of": ["base", "1"] },\n"base": { "is": "sum", "clause": "TR 9", "of": ["2"] }',
    ),
    at: '15:48',
    found: 'the price "base"',
    expected: 'a number, or one of the prices: none',
    remedy: PRICE,
  },
  {
    code: 'tariff/unknown-price',
    when: 'a mean is of a price that is no series',
    make: priced(
      '"base": { "is": "sum", "clause": "TR 9", "of": ["2"] },\n"mean": { "is": "mean", "clause": "TR 9", "of": "base", "months": "12", "through": "this-month", "rounding": { "step": "0.01", "mode": "half-up" } }',
    ),
    at: '16:49',
    found: 'the price "base"',
    expected: 'a number, or one of the prices: none',
    remedy: PRICE,
  },
  {
    code: 'tariff/days-not-ascending',
    when: 'a price has two values of one day',
    make: priced(
      '"fuel": { "is": "series", "clause": "TR 9", "inForce": "first-day", "values": [\n{ "from": "2024-04-01", "rate": "1" },\n{ "from": "2024-04-01", "rate": "2" }] }',
    ),
    at: '17:11',
    found: '2024-04-01 after 2024-04-01',
    expected: 'days in order of time, each once',
    remedy: 'Put them in order.',
  },
  {
    code: 'tariff/no-such-day',
    when: 'a price begins on a day that there is not',
    make: priced(
      '"fuel": { "is": "series", "clause": "TR 9", "inForce": "first-day", "values": [{ "from": "2024-02-30", "rate": "1" }] }',
    ),
    at: '15:90',
    found: '"2024-02-30"',
    ...DAY,
  },
  {
    code: 'tariff/no-such-day',
    when: 'a price ends on a day that there is not',
    make: priced(
      '"fuel": { "is": "series", "clause": "TR 9", "inForce": "first-day", "values": [{ "from": "2024-02-29", "rate": "1" }], "through": "2024-06-31" }',
    ),
    at: '15:131',
    found: '"2024-06-31"',
    ...DAY,
  },
  {
    code: 'tariff/ends-before-it-begins',
    when: 'a price ends before its last value begins',
    make: priced(
      '"fuel": { "is": "series", "clause": "TR 9", "inForce": "first-day", "values": [{ "from": "2024-02-29", "rate": "1" }], "through": "2024-02-28" }',
    ),
    at: '15:9',
    found: 'in force from 2024-02-29 through 2024-02-28',
    expected: 'a last day on or after the first',
    remedy: 'Correct one of the two dates.',
  },
];

const CREDITS: readonly MessageCase[] = [
  {
    code: 'tariff/credit-incomplete',
    when: 'credit is carried nowhere',
    make: found(['"ledger": "rewards",\n', '\n']),
    at: '45:19',
    found: 'credit that is carried, without a "ledger"',
    expected: 'the money ledger that takes it',
    remedy: 'Add "ledger", or let what is left lapse.',
  },
  {
    code: 'tariff/credit-incomplete',
    when: 'credit of a ledger lapses',
    make: found([CREDIT_LEFT, '"left": "lapses"']),
    at: '45:19',
    found: 'credit of a ledger that lapses with every bill',
    expected: '"left": "carried", and a "close" in the ledger that says when it lapses',
    remedy: 'Write "carried", or take "ledger" out.',
  },
  {
    code: 'tariff/credit-incomplete',
    when: 'the ledger is one of units',
    make: found(['"ledger": "rewards"', '"ledger": "bank"']),
    at: '43:21',
    found: 'the ledger "bank"',
    expected: 'one of the ledgers of money: "rewards"',
    remedy: 'Declare it under "ledgers" of the settlement, or correct the name.',
  },
  {
    code: 'tariff/credit-incomplete',
    when: 'two credits have one ledger',
    make: charged(
      `{ "kind": "fixed", ${words('first')}, "amount": "2" }, { "kind": "credit", ${words('early')}, "ledger": "rewards", "against": ["first"], "left": "carried" }`,
    ),
    at: '44:21',
    found: 'a second credit of the ledger "rewards"',
    expected: 'one credit charge for each ledger',
    remedy: 'Name all the lines it may meet in one credit charge.',
  },
  {
    code: 'tariff/credit-incomplete',
    when: 'a line meets the credit that it earns',
    make: found([AGAINST, '"against": ["energy", "reward"],']),
    at: '42:22',
    found: '"reward" earning credit twice, or meeting itself',
    expected: 'each line earning one credit, against other lines',
    remedy: 'Name the line once.',
  },
  {
    code: 'tariff/credit-incomplete',
    when: 'a line is met twice',
    make: found([AGAINST, '"against": ["energy", "energy"],']),
    at: '44:33',
    found: '"energy", named twice',
    expected: 'lines of which there is something left to pay',
    remedy: 'Name the line once, the floor in its place, or the other credit beside it.',
  },
  {
    code: 'tariff/credit-incomplete',
    when: 'a credit of a ledger is no part of the sum',
    make: found([CREDIT_LEFT, '"left": "carried", "inTotal": false']),
    at: '45:41',
    found: 'a credit of a ledger that is no part of the sum',
    expected: 'a credit that the bill is less by',
    remedy: 'Take "inTotal" out.',
  },
  {
    code: 'tariff/credit-incomplete',
    when: 'nothing earns it',
    make: found(
      ['"earned": ["reward"],\n', '\n'],
      ['"ledger": "rewards",\n', '\n'],
      [CREDIT_LEFT, '"left": "lapses"'],
    ),
    at: '37:9',
    found: 'a credit that nothing earns',
    expected: '"earned", "ledger" or both',
    remedy: 'Name the lines that earn it.',
  },
  {
    code: 'tariff/credit-incomplete',
    when: 'it meets more than all of a line',
    make: found([CREDIT_LEFT, `"percent": "100.5", ${CREDIT_LEFT}`]),
    at: '45:22',
    found: '"percent" of 100.5',
    expected: 'a percentage from 0 to 100',
    remedy: 'Correct it.',
  },
  {
    code: 'tariff/inside-unclear',
    when: 'the percentage depends on steps',
    make: found([
      '"kind": "per-unit",\n          "id": "reward"',
      `"kind": "percentage", ${words('tax')}, "of": ["energy"], "inside": true, "chosenBy": "import", "steps": [{ "percent": "5" }] }, { "kind": "per-unit",\n          "id": "reward"`,
    ]),
    at: '30:108',
    found: '"inside" with steps',
    expected: 'one percentage above 0 and below 100',
    remedy: 'Write one "percent", or take "inside" out.',
  },
  {
    code: 'tariff/inside-unclear',
    when: 'the tax is all of its base',
    make: found([
      '"kind": "per-unit",\n          "id": "reward"',
      `"kind": "percentage", ${words('tax')}, "of": ["energy"], "inside": true, "percent": "100" }, { "kind": "per-unit",\n          "id": "reward"`,
    ]),
    at: '30:125',
    found: '"inside" with 100 percent',
    expected: 'one percentage above 0 and below 100',
    remedy: 'Write one "percent", or take "inside" out.',
  },
];

const ROUNDED = '"rounding": { "step": "1", "mode": "down" }';
const routed = (routes: string) => found([ROUTES, `"routes": ${routes}`]);

const QUANTITIES: readonly MessageCase[] = [
  {
    code: 'tariff/settlement-incomplete',
    when: 'a route begins at no supply',
    make: routed('[{ "from": "import", "to": "import" }]'),
    at: '63:32',
    found: 'the route from "import"',
    expected: 'one of the supply: "export", "bank"',
    remedy: 'Name one of the supply.',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a route ends at no demand',
    make: routed('[{ "from": "export", "to": "total-use" }]'),
    at: '63:48',
    found: 'the route to "total-use"',
    expected: 'one of the demand: "import"',
    remedy: 'Name one of the demand.',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'units are worth less than a unit and nothing rounds them',
    make: routed('[{ "from": "export", "to": "import", "worth": "80" }]'),
    at: '63:22',
    found: 'units worth 80 percent, without a rounding',
    expected: '"rounding" beside the routes',
    remedy: 'Say how units are rounded, such as a step of "0.001".',
  },
  {
    code: 'tariff/step-not-positive',
    when: 'units are worth nothing',
    make: routed(`[{ "from": "export", "to": "import", "worth": "0.0" }], ${ROUNDED}`),
    at: '63:67',
    found: '"worth" is 0.0',
    expected: 'a number above 0',
    remedy: 'Correct the number.',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a netting names a quantity twice',
    make: found(['"demand": ["import"]', '"demand": ["import", "import"]']),
    at: '56:9',
    found: '"import" twice in a netting',
    expected: 'each of the supply and the demand once',
    remedy: 'Name it once.',
    isAmongOthers: true,
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a difference has nothing to take off',
    make: defined(`{ "is": "difference", ${words('all')}, "of": ["import"] }`),
    at: '56:1',
    found: '"difference" of one quantity',
    expected: 'two quantities or more',
    remedy: 'Add what is missing, or write "sum".',
  },
  {
    code: 'tariff/one-of-two',
    when: 'a running total counts since a day and over periods',
    make: defined(
      `{ "is": "running-total", ${words('year')}, "of": "import", "since": "04-01", "periods": "12", "through": "this-period" }`,
    ),
    at: '56:1',
    found: 'both "since" and "periods"',
    expected: '"since" or "periods"',
    remedy: 'Keep exactly one of the two.',
  },
  {
    code: 'tariff/no-such-day',
    when: 'a running total counts since a day that there is not',
    make: defined(
      `{ "is": "running-total", ${words('year')}, "of": "import", "since": "04-31", "through": "this-period" }`,
    ),
    at: '56:100',
    found: '"04-31"',
    ...DAY,
  },
  {
    code: 'tariff/finer-than-grid',
    when: 'a number that is added to units has four decimals',
    make: defined(`{ "is": "sum", ${words('all')}, "of": ["import", "0.0005"] }`),
    at: '56:80',
    found: '"0.0005", with 4 decimals',
    expected: 'at most 3 decimals here',
    remedy: 'Round it as the order does, or state it in another unit.',
  },
];

const LEDGERS: readonly MessageCase[] = [
  {
    code: 'tariff/settlement-incomplete',
    when: 'nothing comes into a ledger of units',
    make: found([BANK, '']),
    at: '67:9',
    found: 'a ledger of units without "adds"',
    expected: 'the quantity that comes in',
    remedy: 'Add "adds", and "keeps" where units of it are used.',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'units come into a ledger of money',
    make: found([MONEY, `${MONEY}, "adds": "export"`]),
    at: '77:9',
    found: 'a ledger of money with "adds" or "keeps"',
    expected: 'a credit charge that names the ledger',
    remedy: 'Take them out: the credit charge fills and uses it.',
    isAmongOthers: true,
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a balance is paid and nothing says how',
    make: found([`${CLOSE},`, CLOSE], [PAYMENT, '']),
    at: '67:9',
    found: 'a balance that is paid, without "payment"',
    expected: 'how it is paid',
    remedy: 'Add "payment".',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a payment has nothing to pay',
    make: found([CLOSE, CLOSE.replace('paid', 'lapses')]),
    at: '75:22',
    found: 'a payment, of a balance that is never paid',
    expected: 'a "close" whose surplus is "paid"',
    remedy: 'Take "payment" out, or write "surplus": "paid".',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a balance is paid in part and nothing says what becomes of the rest',
    make: found([PAYMENT, PAYMENT.replace(' }', ', "above": "50", "pays": "excess" }')]),
    at: '75:22',
    found: 'a balance that is paid in part, without "rest"',
    ...ADD_REST,
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a threshold stands alone',
    make: found([PAYMENT, PAYMENT.replace(' }', ', "above": "50", "rest": "carried" }')]),
    at: '75:22',
    found: 'only one of the threshold and "pays"',
    expected: 'the threshold, and whether the whole balance or the excess is paid',
    remedy: 'Add the other one.',
  },
  {
    code: 'tariff/one-of-two',
    when: 'a balance is paid above one threshold and from another on',
    make: found([
      PAYMENT,
      PAYMENT.replace(' }', ', "above": "50", "atLeast": "60", "pays": "whole", "rest": "carried" }'),
    ]),
    at: '75:22',
    found: 'both "above" and "atLeast"',
    expected: '"above" or "atLeast"',
    remedy: 'Keep exactly one of the two.',
  },
  {
    code: 'tariff/units-mixed',
    when: 'a power comes into a ledger of units',
    make: found(['"adds": "net.export"', '"adds": "sanctioned-load"']),
    at: '72:19',
    found: '"bank" made of kWh and kW',
    expected: 'quantities of one unit',
    remedy: 'Name quantities of one unit, or bring one to the other with "product" or "quotient".',
  },
  {
    code: 'tariff/step-not-positive',
    when: 'a threshold is 0',
    make: found([PAYMENT, PAYMENT.replace(' }', ', "above": "0", "pays": "excess", "rest": "carried" }')]),
    at: '75:113',
    found: '"above" is 0',
    expected: 'a number above 0',
    remedy: 'Correct the number.',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'units are paid without a rate',
    make: found([PAYMENT, PAYMENT.replace('"rate": "2.50", ', '')]),
    at: '75:22',
    found: 'units that are paid, without a "rate"',
    expected: 'the money per unit',
    remedy: 'Add "rate".',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'money is paid at a rate',
    make: found([MONEY, `${MONEY}, ${CLOSE}, ${PAYMENT}`] as const),
    at: '77:221',
    found: 'money that is paid, with a "rate"',
    expected: 'no rate: money is paid as it is',
    remedy: 'Take "rate" out.',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'units limit what is paid of money',
    make: found([
      MONEY,
      `${MONEY}, ${CLOSE}, ${PAYMENT.replace('"rate": "2.50"', '"most": "import", "rest": "carried"')}`,
    ]),
    at: '77:221',
    found: 'a limit of units on money',
    expected: 'no limit, or a ledger of units',
    remedy: 'Take "most" out.',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a ledger closes on two days of every second year',
    make: found(['"on": ["03-31"]', '"on": ["03-31", "09-30"], "everyYears": "2"']),
    at: '74:82',
    found: '"everyYears" beside several closing days',
    expected: 'one day of the year',
    remedy: 'Name one day, or take "everyYears" out.',
  },
  {
    code: 'tariff/no-such-day',
    when: 'a ledger closes on a day that there is not',
    make: found(['"on": ["03-31"]', '"on": ["04-31"]']),
    at: '74:49',
    found: '"04-31"',
    ...DAY,
  },
];

/** Everything that can be wrong with quantities, prices, credits and ledgers of a tariff. */
export const SCHEME_CASES: readonly MessageCase[] = [
  ...NAMES,
  ...PRICES,
  ...CREDITS,
  ...QUANTITIES,
  ...LEDGERS,
];
