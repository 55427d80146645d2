import {
  checkAccount,
  keepBook,
  readAccount,
  readReadings,
  type Account,
  type AccountDocument,
  type Finding,
  type ReadingRow,
} from '@unitbook/engine';
import timeBlocksText from '../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';
import { accountText, demoTariff, goodTariff } from '../support/demo.ts';
import type { MessageCase } from './message-case.ts';

type Json = Record<string, unknown>;

const REGISTER = { digits: '5', decimals: '1' };
const RATES = [{ id: '1' }, { id: '2' }];
const LATER = {
  from: '2025-05-15',
  serial: 'P-2',
  multiplyingFactor: '1',
  import: REGISTER,
  export: REGISTER,
};

/** The text of an account whose two-way meter has more to it. */
function textWith(more: Json, generationMeter = true): string {
  const document = JSON.parse(accountText({ generationMeter })) as { meters: { grid: Json } };
  document.meters.grid = { ...document.meters.grid, ...more };
  return JSON.stringify(document);
}

function accountWith(more: Json, generationMeter = true): Account {
  const { value, findings } = readAccount(textWith(more, generationMeter));
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

const ofAccount = (more: Json) => (): readonly Finding[] =>
  checkAccount(JSON.parse(textWith(more)) as AccountDocument).findings;

const row = (date: string, taken: string, given: string, made: string): ReadingRow => ({
  date,
  import: taken,
  export: given,
  generation: made,
});
const FROM = row('2025-05-01', '4342', '2935', '7318');
const TO = row('2025-06-01', '209', '138', '7689');
const FINAL: ReadingRow = { date: '2025-05-15', event: 'final', import: '4450', export: '3000' };
const BEGIN: ReadingRow = { date: '2025-05-15', event: 'first', import: '7', export: '0' };

const changed =
  (readings: readonly ReadingRow[], more: Json = { later: [LATER] }) =>
  (): readonly Finding[] =>
    readReadings(readings, accountWith(more)).findings;

const inRates = (date: string, taken: readonly [string, string], total?: string): ReadingRow => ({
  date,
  rates: { import: { '1': taken[0], '2': taken[1] } },
  export: '5',
  ...(total === undefined ? {} : { import: total }),
});

const rated = (readings: readonly ReadingRow[]) => (): readonly Finding[] =>
  readReadings(readings, accountWith({ import: { ...REGISTER, rates: RATES } }, false)).findings;

/** Everything that can be said of meters that are changed, of rates and of estimates. */
export const METER_CHANGE_CASES: readonly MessageCase[] = [
  {
    code: 'account/meters-not-in-order',
    when: 'two later meters of one day',
    make: ofAccount({ later: [LATER, { ...LATER, serial: 'P-3' }] }),
    at: 'meters.grid.later.1.from',
    found: 'a meter from 2025-05-15 after one from 2025-05-15',
    expected: 'meters in order of time, each from a day of its own',
    remedy: 'Correct the day, or put them in order.',
  },
  {
    code: 'account/no-such-day',
    when: 'a later meter',
    make: ofAccount({ later: [{ ...LATER, from: '2025-02-30' }] }),
    at: 'meters.grid.later.0.from',
    found: '"2025-02-30"',
    expected: 'a day of the calendar, as yyyy-mm-dd',
    remedy: 'Correct the date.',
  },
  {
    code: 'account/not-above-zero',
    when: 'the factor of a later meter',
    make: ofAccount({ later: [{ ...LATER, multiplyingFactor: '0' }] }),
    at: 'meters.grid.later.0.multiplyingFactor',
    found: 'the multiplying factor is 0',
    expected: 'a number above 0, at most 10000, with at most 3 decimals',
    remedy: 'Copy it from the bill, the sanction letter or the nameplate.',
  },
  {
    code: 'account/rate-twice',
    when: 'two rates of one name',
    make: ofAccount({ import: { ...REGISTER, rates: [{ id: '1' }, { id: '1' }] } }),
    at: 'meters.grid.import.rates.1.id',
    found: 'rate 1 a second time',
    expected: 'each rate of a register once',
    remedy: 'Name the rates as the display numbers them.',
  },
  {
    code: 'reading/unknown-rate',
    when: 'the account names other rates',
    make: rated([
      inRates('2025-05-01', ['1', '1']),
      { ...inRates('2025-06-01', ['9', '9']), rates: { import: { '1': '9', '2': '9', '3': '9' } } },
    ]),
    at: 'readings.1.rates.import.3',
    found: 'a reading of import rate 3',
    expected: 'one of the rates of the account: 1, 2',
    remedy: 'Correct the rate, or add it to the register in the account.',
  },
  {
    code: 'reading/unknown-rate',
    when: 'the account names none',
    make: changed(
      [{ ...FROM, rates: { export: { '1': '9' } } }, row('2025-06-01', '4400', '3000', '7689')],
      {},
    ),
    at: 'readings.0.rates.export.1',
    found: 'a reading of export rate 1',
    expected: 'no rates of export, since the account names none',
    remedy: 'Correct the rate, or add it to the register in the account.',
  },
  {
    code: 'reading/event-empty',
    when: 'a last reading without a number',
    isAmongOthers: true,
    make: changed([FROM, { date: '2025-05-15', event: 'final' }, BEGIN, TO]),
    at: 'readings.1.event',
    found: 'a last reading of a meter, without a number',
    expected: 'every register of the meter that is changed',
    remedy: 'Copy them from the replacement slip.',
  },
  {
    code: 'reading/meter-changed',
    when: 'the account changes the meter, the readings do not',
    make: changed([FROM, row('2025-06-01', '4500', '3100', '7689')]),
    at: 'readings.1',
    found: 'another two-way meter or factor from 2025-05-15, inside this period',
    expected: 'the last reading of the old one and the first of the new one on that day',
    remedy: 'Copy both from the replacement slip: every register of the meter.',
  },
  {
    code: 'reading/meter-unknown',
    when: 'the readings change the meter, the account does not',
    make: changed([FROM, FINAL, BEGIN, TO], {}),
    at: 'readings.2.event',
    found: 'a first reading of another two-way meter on 2025-05-15, of which the account knows nothing',
    expected: 'the new meter in the account, from that day, with its digits and multiplying factor',
    remedy: 'Add it under the two-way meter as a later one. A sealed meter is changed by the utility only.',
  },
  {
    code: 'reading/begins-anew',
    when: 'a generation counter began anew, and its last number is known',
    severity: 'note',
    make: changed(
      [
        FROM,
        { date: '2025-05-15', event: 'final', generation: '7500' },
        { date: '2025-05-15', event: 'first', generation: '0' },
        row('2025-06-01', '4500', '3100', '180'),
      ],
      {},
    ),
    at: 'readings.2.event',
    found: 'a first reading of the generation meter on 2025-05-15, where the account names no other meter',
    expected: 'a counter that began anew, or a meter that the account names',
    remedy: 'Nothing to do if it is the same meter. Was it changed? Add the new one to the account.',
  },
  {
    code: 'reading/began-anew',
    when: 'a generation counter began anew, and nobody noted its last number',
    severity: 'question',
    make: changed([FROM, row('2025-06-01', '4500', '3100', '180')], {}),
    at: 'readings.1.generation',
    found: '180, below the reading before, 7318: the counter seems to have begun anew at 0',
    expected: 'a register that counts up',
    remedy:
      'What it counted before that is not known, so own use is not worked out. If its last number is known, ' +
      'add it as the last reading of the old meter, and 0 as the first of the new one. A mistyped digit? Correct it.',
  },
  {
    code: 'reading/first-without-final',
    when: 'the new meter alone',
    make: changed([FROM, BEGIN, TO]),
    at: 'readings.1.event',
    found: 'a first reading of the two-way meter, without the last one of the meter before',
    expected: 'the last reading of the old meter, then the first of the new one',
    remedy: 'Add the last reading from the replacement slip.',
  },
  {
    code: 'reading/final-without-first',
    when: 'the old meter alone',
    make: changed([FROM, FINAL, TO]),
    at: 'readings.1.event',
    found: 'a last reading of the two-way meter, without the first one of the meter after it',
    expected: 'the last reading of the old meter, then the first of the new one',
    remedy: 'Add the first reading from the replacement slip; it is not always 0.',
  },
  {
    code: 'reading/register-changed',
    when: 'the new meter has no rates, the old had, and the row after it reads the rates',
    make: () =>
      readReadings(
        [
          inRates('2025-05-01', ['1', '1']),
          { date: '2025-05-15', event: 'final', rates: { import: { '1': '5', '2': '5' } }, export: '6' },
          { date: '2025-05-15', event: 'first', import: '0', export: '0' },
          { date: '2025-06-01', rates: { import: { '1': '9', '2': '9' } }, export: '5' },
        ],
        accountWith(
          {
            import: { ...REGISTER, rates: RATES },
            later: [
              LATER,
              { ...LATER, from: '2025-05-20', serial: 'P-3', import: { ...REGISTER, rates: RATES } },
            ],
          },
          false,
        ),
      ).findings,
    isAmongOthers: true,
    at: 'readings.3',
    found: 'no import reading at both ends, 2025-05-15 and 2025-06-01',
    expected: 'every register of a meter read when it begins and when it ends',
    remedy: 'Add what is missing.',
  },
  {
    code: 'reading/unmetered-days',
    when: 'the new meter begins a day later',
    severity: 'question',
    make: changed([FROM, { ...FINAL, date: '2025-05-14' }, BEGIN, TO]),
    at: 'readings.2.date',
    found: 'no two-way meter from 2025-05-14 to 2025-05-15',
    expected: 'the new meter on the day on which the old one is taken off',
    remedy: 'What was used in between is in no reading. Keep it if the slip says so.',
  },
  {
    code: 'reading/change-at-end',
    when: 'no reading after the change',
    make: changed([row('2025-04-01', '4120', '2655', '6890'), FROM, FINAL, BEGIN]),
    at: 'readings.2.event',
    found: 'a meter that ends or begins on 2025-05-15, and no reading after it',
    expected: 'a reading of all registers that closes the period',
    remedy: 'Add the next reading; the bill of this period is made from both meters.',
  },
  {
    code: 'reading/rates-differ',
    when: 'a total is two display steps above its rates',
    severity: 'question',
    make: rated([inRates('2025-05-01', ['1', '1']), inRates('2025-06-01', ['50.5', '40'], '90.7')]),
    isAmongOthers: true,
    at: 'readings.1.import',
    found: '90.7 for import in all, where rates 1 and 2 make 90.5',
    expected: 'a total that is the sum of its rates, but for the digits a display cuts off',
    remedy:
      'The difference is 0.2. Check the registers, such as 1.8.0 = 1.8.1 + 1.8.2. Keep it if they are right.',
  },
  {
    code: 'reading/rates-offset',
    when: 'the rates began later than the total',
    severity: 'note',
    make: rated([inRates('2025-05-01', ['1', '1'], '1002'), inRates('2025-06-01', ['50', '40'], '1090')]),
    isAmongOthers: true,
    at: 'readings.1.import',
    found: '1090 for import in all, where rates 1 and 2 make 90, as far apart as before',
    expected: 'a total that is the sum of its rates',
    remedy: 'Nothing to do: the registers of the rates began later. What they counted since agrees.',
  },
  {
    code: 'reading/cycle-missed',
    when: 'two months in one',
    severity: 'question',
    make: changed(
      [
        row('2025-04-01', '12480', '8310', '15225'),
        row('2025-05-01', '12892', '8588', '15805'),
        row('2025-06-30', '13500', '9100', '16900'),
      ],
      {},
    ),
    at: 'readings.2.date',
    found: '60 days since the reading before, after a period of 30',
    expected: 'periods about as long as the one before',
    remedy:
      'Is a reading missing in between? Add it: two short bills and one long bill differ where slabs or ' +
      'charges go by the month. Keep it if the utility billed both months in one.',
  },
  {
    code: 'reading/below-estimate',
    when: 'an estimate lies above the next reading',
    make: changed(
      [
        row('2025-04-01', '12480', '8310', '15225'),
        { ...row('2025-05-01', '13300', '8588', '15805'), estimated: ['import'] },
        row('2025-05-31', '13257', '8900', '16400'),
      ],
      {},
    ),
    isAmongOthers: true,
    at: 'readings.1.import',
    found: '13257, below the reading before, 13300, which was estimated',
    expected: 'an estimate that the next actual reading does not fall below',
    remedy:
      'The estimate was too high. Put 12868.5 in its place, a share by days, or your own photo of the meter; ' +
      'what was printed is kept beside it.',
    offer: '12868.5',
  },
  {
    code: 'reading/below-estimate',
    when: 'no actual reading stands before it',
    make: changed(
      [
        { ...row('2025-05-01', '13300', '8588', '15805'), status: 'estimated' },
        row('2025-05-31', '13257', '8900', '16400'),
      ],
      {},
    ),
    isAmongOthers: true,
    at: 'readings.0.import',
    found: '13257, below the reading before, 13300, which was estimated',
    expected: 'an estimate that the next actual reading does not fall below',
    remedy: 'The estimate was too high. Put a reading in its place: your own photo, or a share by days.',
  },
  {
    code: 'reading/estimated',
    when: 'one register alone',
    severity: 'note',
    make: changed([FROM, { ...row('2025-06-01', '4500', '3100', '7689'), estimated: ['import'] }], {}),
    at: 'readings.1.status',
    found: 'an estimated reading of import alone',
    expected: 'an actual one',
    remedy: 'The next actual reading corrects it; keep a photo of the meter from about this day.',
  },
  {
    code: 'energy/export-from-battery',
    when: 'a battery gave more than the plant made',
    severity: 'note',
    make: () => bookOf({ batteryCapacity: '10' }, row('2025-06-01', '4500', '3335', '7689')),
    at: 'readings.1.export',
    found: '400 units given to the grid and 371 made in the same days',
    expected: 'no more given than made, but for what a battery took before',
    remedy: 'A battery can give units that it took earlier. What the house used itself is not worked out.',
  },
  {
    code: 'energy/generation-at-least',
    when: 'a generation counter began anew',
    severity: 'note',
    isAmongOthers: true,
    make: () => bookOf({}, row('2025-06-01', '4500', '3100', '180')),
    at: 'readings.1.generation',
    found: '180 units made since the generation counter began anew',
    expected: 'all that the plant made in the period',
    remedy: 'At least so much was made. What the house used itself is not worked out.',
  },
  {
    code: 'energy/rate-without-block',
    when: 'a rate stands for no block',
    make: () => bookInBlocks([{ id: '1', block: 'peak' }, { id: '2', block: 'normal' }, { id: '3' }]),
    at: 'readings.1',
    found: 'import rate 3, without the time block that it stands for',
    expected: 'one of the time blocks of the tariff: peak, normal, solar',
    remedy:
      'Say in the account which block each rate counts. Rate 1 is not peak everywhere: ask the utility.',
  },
  {
    code: 'energy/rate-without-block',
    when: 'a rate stands for a block that the tariff does not have',
    make: () =>
      bookInBlocks([
        { id: '1', block: 'peak' },
        { id: '2', block: 'normal' },
        { id: '3', block: 'night' },
      ]),
    at: 'readings.1',
    found: 'import rate 3 for the time block "night", which the tariff does not have',
    expected: 'one of the time blocks of the tariff: peak, normal, solar',
    remedy:
      'Say in the account which block each rate counts. Rate 1 is not peak everywhere: ask the utility.',
  },
];

function bookInBlocks(rates: readonly Json[]): readonly Finding[] {
  const rateRow = (date: string, text: string): ReadingRow => ({
    date,
    rates: { import: { '1': text, '2': text, '3': text } },
    export: text,
  });
  return keepBook({
    account: accountWith({ import: { ...REGISTER, rates } }, false),
    tariff: goodTariff(timeBlocksText),
    readings: [rateRow('2025-06-01', '10'), rateRow('2025-07-01', '20')],
  }).findings;
}

function bookOf(more: Json, to: ReadingRow): readonly Finding[] {
  const text = JSON.stringify({ ...(JSON.parse(textWith({})) as Json), ...more });
  const { value } = readAccount(text);
  if (value === null) throw new Error('no account');
  return keepBook({ account: value, tariff: demoTariff(), readings: [FROM, to] }).findings;
}
