import {
  checkAccountBills,
  readAccount,
  readCheck,
  readPrintedBill,
  readTariff,
  type Finding,
  type PrintedBill,
  type PrintedBillDocument,
} from '@unitbook/engine';
import { consistencyFindings, otherCurrencyFindings, unknownLineFindings } from '@unitbook/engine';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { allFields } from '../../packages/form/src/check/document/line-fields.ts';
import { readTypedBill } from '../../packages/form/src/check/document/read-typed-bill.ts';
import type { MessageCase } from './message-case.ts';

const register = { digits: '5', decimals: '0' };
const ACCOUNT = {
  format: 'unitbook-account-1',
  id: 'TAR-40-00001',
  sanctionedLoad: '4',
  plantCapacity: '5',
  openingCredit: '35',
  meters: {
    grid: { serial: 'PB-77120', multiplyingFactor: '1', import: register, export: register },
    generation: { serial: 'GN-40316', multiplyingFactor: '1', generation: register },
  },
};
const DAYS = { from: '2025-05-01', to: '2025-05-31' };
const APRIL: PrintedBillDocument = { from: '2025-04-01', to: '2025-05-01' };

function printed(document: PrintedBillDocument): PrintedBill {
  const { value } = readPrintedBill(document, ['bills', 1]);
  if (value === null) throw new Error('the bill cannot be read');
  return value;
}

const read = (document: PrintedBillDocument) => (): readonly Finding[] =>
  readPrintedBill(document, ['bills', 0]).findings;

/** What is found of a bill as people type it. */
const typed = (document: PrintedBillDocument) => (): readonly Finding[] =>
  readTypedBill(document, allFields({ bill: document, tariff: null, registers: [] }), 0).findings;

/** What is found of a bill that is set beside the right one. */
const checkedAlone = (document: PrintedBillDocument) => (): readonly Finding[] => {
  const { value: bill } = readPrintedBill(document, ['bills', 0]);
  const { value: account } = readAccount(JSON.stringify(ACCOUNT));
  const { value: taresco } = readTariff(tariffText);
  if (bill === null || account === null || taresco === null) throw new Error('the bill cannot be read');
  const { bills } = checkAccountBills({ account, tariff: taresco, readings: [], bills: [bill] });
  return bills.flatMap(({ findings }) => findings).filter(({ code }) => code === 'check/too-large');
};

/** A check document in lines, so that findings have a place to point to. */
const whole =
  (...bills: readonly PrintedBillDocument[]) =>
  (): readonly Finding[] =>
    readCheck(
      [
        '{"format": "unitbook-check-1", "tariff": "taresco-domestic",',
        `"account": ${JSON.stringify(ACCOUNT)},`,
        `"bills": [${bills.map((bill) => JSON.stringify(bill)).join(',\n')}]}`,
      ].join('\n'),
    ).findings;

const alone = (document: Partial<PrintedBillDocument>) => (): readonly Finding[] =>
  consistencyFindings(printed({ ...DAYS, ...document }));

const after =
  (before: Partial<PrintedBillDocument>, document: Partial<PrintedBillDocument>) => (): readonly Finding[] =>
    consistencyFindings(printed({ ...DAYS, ...document }), printed({ ...APRIL, ...before }));

const ofAccount = (document: Partial<PrintedBillDocument>) => (): readonly Finding[] =>
  consistencyFindings(printed({ ...DAYS, ...document }), null, readAccount(JSON.stringify(ACCOUNT)).value);

function tariff() {
  const { value } = readTariff(tariffText);
  if (value === null) throw new Error('the tariff cannot be read');
  return value.document;
}

const FORM_CASES: readonly MessageCase[] = [
  {
    code: 'check/no-such-day',
    when: 'the day of the bill',
    make: read({ ...DAYS, issued: '2025-06-31' }),
    at: 'bills.0.issued',
    found: '"2025-06-31", which is no day of the calendar',
    expected: 'a day as yyyy-mm-dd',
    remedy: 'Type the day as it is printed.',
  },
  {
    code: 'check/bills-out-of-order',
    when: 'the later bill first',
    make: whole(DAYS, APRIL),
    at: '4:9',
    found: 'a bill from 2025-04-01 below one from 2025-05-01',
    expected: 'bills in order of time',
    remedy: 'Put the bills in the order of their days.',
  },
  {
    code: 'check/no-bill',
    when: 'an empty list',
    make: whole(),
    at: '3:10',
    found: 'no printed bill',
    expected: 'at least the two days of one',
    remedy: 'Type the days of the readings off the bill, and whatever else it prints.',
  },
  {
    code: 'check/ends-before-it-begins',
    when: 'both days in each other’s place',
    make: read({ from: '2025-05-31', to: '2025-05-01' }),
    at: 'bills.0.to',
    found: 'a bill from 2025-05-31 to 2025-05-01',
    expected: 'a day of the reading now that is later than that of the reading before',
    remedy: 'Type both days as they are printed.',
  },
  {
    code: 'check/not-a-number',
    when: 'an amount as no document has it, typed on the page',
    make: typed({ ...DAYS, payable: 'about 546' }),
    at: 'payable',
    found: '"about 546" for to be paid',
    expected: 'a number, such as 1234.5',
    remedy: 'Type the number as it is printed.',
  },
  {
    code: 'check/number-too-fine',
    when: 'a reading of four decimals',
    make: read({ ...DAYS, readings: { import: { present: '4640.3125' } } }),
    at: 'bills.0.readings.import.present',
    found: '4640.3125 for present',
    expected: 'at most 3 decimals and 12 digits',
    remedy: 'Type the number as it is printed.',
  },
  {
    code: 'check/paid-below-zero',
    when: 'a payment with a minus',
    make: read({ ...DAYS, paid: { on: '2025-06-12', amount: '-546' } }),
    at: 'bills.0.paid.amount',
    found: 'a payment of -546',
    expected: 'what was paid, 0 or more',
    remedy: 'Type the amount of the receipt; leave it out where nothing is known of a payment.',
  },
  {
    code: 'check/too-large',
    when: 'a line with twelve digits before the point, beside one with eight behind it',
    make: checkedAlone({
      ...DAYS,
      units: { import: '412', export: '278' },
      lines: [
        { charge: 'energy', amount: '0.00000001' },
        { charge: 'fuel', amount: '999999999999' },
      ],
      sum: '999999999999',
      payable: '0.00000001',
    }),
    at: 'bills.0',
    found: 'numbers so large and so fine that they cannot be compared exactly',
    expected: 'amounts and units as a household has them',
    remedy: 'Look for a number with digits too many: on the bill, in the readings, in the tariff.',
  },
];

const BILL_CASES: readonly MessageCase[] = [
  {
    code: 'check/lines-off-sum',
    when: 'a thousand too much',
    make: alone({
      lines: [
        { charge: 'fixed', amount: '240.00' },
        { charge: 'energy', amount: '593.42' },
      ],
      sum: '1833.42',
    }),
    at: 'bills.1.sum',
    found: 'lines that come to 833.42, and a sum of 1833.42: 1000 is in no line',
    expected: 'lines, arrears, fees and corrections that come to the sum',
    remedy:
      'Look whether every line of the bill is typed. If it is, the bill is wrong by its own figures: have this put right first.',
  },
  {
    code: 'check/rounding-off-payable',
    when: 'rounded by 9 paise and paid a rupee more',
    make: alone({ sum: '612.91', rounding: '0.09', payable: '614' }),
    at: 'bills.1.payable',
    found: '614 to be paid, and a sum of 612.91 with a rounding of 0.09',
    expected: 'sum and rounding that come to what is to be paid',
    remedy: 'Compare the three figures with the paper. If they stand there so, have this put right first.',
  },
  {
    code: 'check/payable-far-from-sum',
    when: 'lines that are not all typed',
    make: alone({ lines: [{ charge: 'fixed', amount: '240.00' }], payable: '613' }),
    at: 'bills.1.payable',
    severity: 'question',
    found: '613 to be paid, and lines that come to 240',
    expected: 'no more between them than a rounding, less than 1',
    remedy: 'Type the lines that are missing, and arrears, fees or corrections that the bill adds.',
  },
  {
    code: 'check/rate-off-amount',
    when: 'a surcharge on other units',
    make: alone({ lines: [{ charge: 'fuel', units: '99', rate: '0.40', amount: '164.80' }] }),
    at: 'bills.1.lines.0.amount',
    severity: 'question',
    found: '164.80 for fuel, and 99 × 0.40 = 39.6',
    expected: 'units times rate, rounded to the last digit of the amount',
    remedy:
      'Compare all three with the paper. A rate that is printed rounded, or scaled by days, can be why.',
  },
  {
    code: 'check/slabs-off-billed',
    when: 'slabs of all units imported',
    make: alone({ units: { billed: '99' }, slabs: [{ units: '50' }, { units: '100' }, { units: '262' }] }),
    at: 'bills.1.slabs',
    severity: 'question',
    found: 'parts of the energy charge for 412 units in all, and 99 units billed',
    expected: 'parts that come to the units billed',
    remedy: 'Look whether every part is typed. If it is, ask which units the energy charge was taken on.',
  },
  {
    code: 'check/units-off-readings',
    when: 'a factor that was left out',
    make: alone({
      factor: '20',
      readings: { import: { previous: '1210.5', present: '1236' } },
      units: { import: '25.5' },
    }),
    at: 'bills.1.units.import',
    severity: 'question',
    found: '25.5 units of import, and readings 25.5 apart times 20 = 510',
    expected: 'the difference of the readings times the factor',
    remedy:
      'Compare the readings and the factor with the paper. A meter that was replaced, or another factor, can be why.',
  },
  {
    code: 'check/reading-back',
    when: 'an estimate that was too high',
    make: alone({ readings: { import: { previous: '12960', present: '12892' } } }),
    at: 'bills.1.readings.import.present',
    severity: 'question',
    found: 'the register import at 12892, below 12960 before',
    expected: 'a reading that is not below the one before, but where the register passes its full scale',
    remedy: 'Compare both with the meter. An estimate that was too high, or another meter, can be why.',
  },
  {
    code: 'check/export-above-generation',
    when: 'one phase of the generation meter reversed',
    make: alone({ units: { export: '278', generation: '193' } }),
    at: 'bills.1.units.export',
    severity: 'question',
    found: '278 units given to the grid, and 193 made',
    expected: 'no more given than made, with 3 % for the difference of two meters',
    remedy:
      'Look whether import and export stand in each other’s place, and whether the generation meter counts all phases.',
  },
  {
    code: 'check/use-below-zero',
    when: 'much export of little generation, by readings',
    make: alone({
      readings: { import: { previous: '100', present: '140' } },
      units: { export: '278', generation: '193' },
    }),
    isAmongOthers: true,
    at: 'bills.1.readings.import.present',
    severity: 'question',
    found: 'a use of -45 units: 40 taken and 193 made, less 278 given',
    expected: 'a use of 0 or more',
    remedy: 'Compare the readings with the meters: one of the three cannot be right.',
  },
  {
    code: 'check/yield-implausible',
    when: 'ten times too much',
    make: ofAccount({ units: { generation: '5800' } }),
    at: 'bills.1.units.generation',
    severity: 'question',
    found: '5800 units made in 30 days by a plant of 5 kWp',
    expected: '0.3 to 7.5 units a day for each kWp',
    remedy: 'Compare the generation readings and their factor with the meter, and the size with the invoice.',
  },
  {
    code: 'check/credit-below-zero',
    when: 'a minus sign',
    make: alone({ closing: { credit: '-243' } }),
    at: 'bills.1.closing.credit',
    severity: 'question',
    found: 'a credit of -243 carried forward (credit)',
    expected: 'a credit of 0 or more',
    remedy:
      'If the minus sign only marks a credit on this bill, type it without; else ask what the household is said to owe.',
  },
  {
    code: 'check/credit-made-up',
    when: 'credit from nowhere',
    make: alone({
      opening: { credit: '35' },
      units: { import: '412', export: '278', billed: '64' },
      closing: { credit: '0' },
    }),
    at: 'bills.1.closing.credit',
    severity: 'question',
    found:
      'a credit of 0 carried forward, 35 more than 35 brought forward and 278 exported leave of 412 imported with 64 billed',
    expected: 'credit brought forward and export, less import, plus what is billed',
    remedy: 'Ask where the credit comes from, and keep its worth aside until that is answered.',
  },
  {
    code: 'check/credit-gone',
    when: 'a bank that is empty',
    make: alone({
      opening: { credit: '35' },
      units: { import: '180', export: '310', billed: '0' },
      closing: { credit: '0' },
    }),
    at: 'bills.1.closing.credit',
    severity: 'question',
    found:
      'a credit of 0 carried forward, 165 less than 35 brought forward and 310 exported leave of 180 imported with 0 billed',
    expected: 'credit brought forward and export, less import, plus what is billed',
    remedy: 'Ask whether the units were paid out or lapsed, by which clause and in which bill.',
  },
  {
    code: 'check/days-off-dates',
    when: 'four days more',
    make: alone({ days: '34' }),
    at: 'bills.1.days',
    severity: 'question',
    found: '34 days, and 30 from 2025-05-01 to 2025-05-31',
    expected: 'the days from the reading before to the reading now',
    remedy: 'Compare the dates and the days with the paper: slabs and fixed charges can go by the days.',
  },
  {
    code: 'check/arrears-inside',
    when: 'arrears and a late fee',
    make: alone({ arrears: '540', lateFee: '5.40' }),
    at: 'bills.1.arrears',
    severity: 'question',
    found: '545.4 of bills before inside the total',
    expected: 'the charges of this period alone',
    remedy: 'If the bills before are paid, take the receipt there; what is left is the bill of this period.',
  },
  {
    code: 'check/arrears-inside',
    when: 'a late fee alone',
    make: alone({ lateFee: '5.40' }),
    at: 'bills.1.lateFee',
    severity: 'question',
    found: '5.4 of bills before inside the total',
    expected: 'the charges of this period alone',
    remedy: 'If the bills before are paid, take the receipt there; what is left is the bill of this period.',
  },
];

const CHAIN_CASES: readonly MessageCase[] = [
  {
    code: 'check/other-account',
    when: 'the number of a neighbour',
    make: ofAccount({ account: 'TAR-40-00002' }),
    at: 'bills.1.account',
    severity: 'question',
    found: 'a bill of the account TAR-40-00002',
    expected: 'the account TAR-40-00001',
    remedy: 'Take the bill out if it is of another account, or correct the number.',
  },
  {
    code: 'check/currency-changed',
    when: 'euros after rupees',
    make: after({ currency: 'INR' }, { currency: 'EUR' }),
    at: 'bills.1.currency',
    found: 'a bill in EUR after one in INR',
    expected: 'bills of one currency',
    remedy: 'Correct the currency, or take out the bill that is of another account.',
  },
  {
    code: 'check/other-currency',
    when: 'euros under a tariff of rupees',
    make: () => otherCurrencyFindings(printed({ ...DAYS, currency: 'EUR' }), tariff()),
    at: 'bills.1.currency',
    found: 'a bill in EUR',
    expected: 'INR, the currency of the tariff',
    remedy: 'Choose the tariff of this bill: its amounts cannot be set beside those of another currency.',
  },
  {
    code: 'check/bill-twice',
    when: 'the same number',
    make: after({ number: '17' }, { number: '17' }),
    at: 'bills.1.number',
    found: 'the bill 17 from 2025-05-01 to 2025-05-31 twice',
    expected: 'each bill once',
    remedy: 'Take one of the two out, or type the number of the other as it is printed.',
  },
  {
    code: 'check/bill-twice',
    when: 'the same paper without a number',
    make: after({ ...DAYS, payable: '613' }, { payable: '613.00' }),
    isAmongOthers: true,
    at: 'bills.1.from',
    found: 'the bill from 2025-05-01 to 2025-05-31 twice',
    expected: 'each bill once',
    remedy: 'Take one of the two out, or type the number of the other as it is printed.',
  },
  {
    code: 'check/other-meter',
    when: 'the meter of a neighbour',
    make: ofAccount({ serials: { grid: 'PB-77210' } }),
    at: 'bills.1.serials.grid',
    severity: 'question',
    found: 'the number PB-77210 for the grid meter',
    expected: 'PB-77120, as the account has it',
    remedy:
      'Compare the number on the meter itself: the bill may be of another meter, or the meter was replaced.',
  },
  {
    code: 'check/serial-changed',
    when: 'another number than on the bill before',
    make: after({ serials: { grid: 'PB-77120' } }, { serials: { grid: 'PB-90001' } }),
    at: 'bills.1.serials.grid',
    severity: 'question',
    found: 'the number PB-90001 for the grid meter, and PB-77120 on the bill before',
    expected: 'the same meter, unless it was replaced',
    remedy: 'If it was replaced, find the slip with the last and first readings of all registers.',
  },
  {
    code: 'check/days-overlap',
    when: 'four days twice',
    make: after({ to: '2025-05-05' }, {}),
    at: 'bills.1.from',
    severity: 'question',
    found: 'a bill from 2025-05-01, and the bill before to 2025-05-05: 4 days in both',
    expected: 'a bill that begins on the day on which the one before ends',
    remedy: 'Compare both dates with the paper: days that are billed twice raise what goes by days.',
  },
  {
    code: 'check/days-missing',
    when: 'three days left out',
    make: after({ to: '2025-04-28' }, {}),
    at: 'bills.1.from',
    severity: 'question',
    found: 'a bill from 2025-05-01, and the bill before to 2025-04-28: 3 days in neither',
    expected: 'a bill that begins on the day on which the one before ends',
    remedy: 'Type the bill in between too; if there is none, ask how those days are billed.',
  },
  {
    code: 'check/reading-not-handed-on',
    when: 'the reading of two bills ago',
    make: after(
      { readings: { import: { present: '12480' } } },
      { readings: { import: { previous: '12060', present: '12892' } } },
    ),
    at: 'bills.1.readings.import.previous',
    severity: 'question',
    found: 'the register import beginning at 12060, and ending at 12480 on the bill before',
    expected: 'a period that begins with the reading that the one before ended with',
    remedy: 'Lay both bills side by side: units in between are billed twice, or never.',
  },
  {
    code: 'check/credit-not-handed-on',
    when: 'credit that was lost on the way',
    make: after({ closing: { credit: '58' } }, { opening: { credit: '0' } }),
    at: 'bills.1.opening.credit',
    severity: 'question',
    found: '0 brought forward (credit), and 58 carried forward on the bill before',
    expected: 'what the bill before carried forward',
    remedy: 'Lay both bills side by side, and ask by which clause credit was taken off or added in between.',
  },
  {
    code: 'check/arrears-though-paid',
    when: 'a bill that was paid in full',
    make: after(
      { payable: '540', paid: { on: '2025-05-12', amount: '540' } },
      { arrears: '540', lateFee: '5.40' },
    ),
    at: 'bills.1.arrears',
    severity: 'question',
    found: '545.4 of bills before inside the total, and 540 paid on 2025-05-12',
    expected: 'no arrears of a bill that is paid',
    remedy: 'Show the receipt with its date and reference, and ask for the bill without them.',
  },
  {
    code: 'check/unknown-line',
    when: 'a line that no charge stands behind',
    make: () =>
      unknownLineFindings(printed({ ...DAYS, lines: [{ charge: 'duty', amount: '12.50' }] }), tariff()),
    at: 'bills.1.lines.0.charge',
    severity: 'question',
    found: 'a line "duty" of 12.50',
    expected: 'lines of the tariff: fixed, energy, minimum, fuel, tax, subsidy',
    remedy: 'Name the charge of the tariff that it is; if there is none, ask for the clause that allows it.',
  },
];

/** An input for every finding about printed bills. */
export const CHECK_CASES: readonly MessageCase[] = [...FORM_CASES, ...BILL_CASES, ...CHAIN_CASES];
