import { expect, it } from 'vitest';
import { unexplained } from '../../../tests/support/recompute.ts';
import { readPrintedBill, type PrintedBillDocument } from './audit/index.ts';
import { billsLetter, billsMemo } from './audit/index.ts';
import { checkAccountBills } from './check-account.ts';
import { checkResultDocument, reportBills } from './check-report.ts';
import { addDays, dayText, parseDay, type DayNumber } from './quantity/index.ts';
import { readAccount } from './readings/index.ts';
import { readTariff, type Tariff } from './tariff/index.ts';

const TARIFFS = Object.entries(
  import.meta.glob<string>('../../../tariffs-examples/*/*/tariff.json', {
    query: '?raw',
    import: 'default',
    eager: true,
  }),
).flatMap(([path, text]) => {
  const { value } = readTariff(text);
  return value === null ? [] : [[path.split('/').slice(-3, -1).join('/'), value] as const];
});

const NOTATION = {
  number: (text: string) => text,
  money: (text: string) => `$${text}`,
  moneyPlaces: 2,
  day: (text: string) => text,
};
const register = { digits: '5', decimals: '0' };
const account = readAccount(
  JSON.stringify({
    format: 'unitbook-account-1',
    id: 'any',
    sanctionedLoad: '4',
    plantCapacity: '5',
    openingCredit: '0',
    meters: {
      grid: { serial: 'G-1', multiplyingFactor: '1', import: register, export: register },
      generation: { serial: 'M-1', multiplyingFactor: '1', generation: register },
    },
  }),
).value;

/** Two bills in a row, 412 taken and 278 given on each, whose first line and total are out of the air. */
function billsOf({ document }: Tariff): readonly PrintedBillDocument[] {
  const blocks = (document.timeBlocks?.blocks ?? []).map(({ id }) => id);
  const units: Record<string, string> = { import: '412', export: '278', generation: '580' };
  blocks.forEach((block, at) => {
    units[`import@${block}`] = at === 0 ? String(412 - 50 * (blocks.length - 1)) : '50';
    units[`export@${block}`] = at === 0 ? String(278 - 50 * (blocks.length - 1)) : '50';
  });
  const begin = parseDay(document.versions.at(-1)?.from ?? '') as DayNumber;
  const charge = document.versions.at(-1)?.charges[0]?.id ?? '';
  const ledgers = document.settlements.flatMap((rule) =>
    rule.scheme === 'unit-netting' ? ['credit'] : (rule.ledgers ?? []).map(({ id }) => id),
  );
  const closing = Object.fromEntries(ledgers.map((id) => [id, '7']));
  return [60, 90].map((days) => ({
    from: dayText(addDays(begin, days)),
    to: dayText(addDays(begin, days + 30)),
    units,
    lines: [{ charge, amount: '1234.56' }],
    closing,
    payable: '777.77',
    paid: { on: dayText(addDays(begin, days + 40)), amount: '777.77' },
  }));
}

function makeReport(tariff: Tariff) {
  if (account === null) throw new Error('the account of the test cannot be read');
  const bills = billsOf(tariff).flatMap((bill, at) => readPrintedBill(bill, ['bills', at]).value ?? []);
  const checked = checkAccountBills({ account, tariff, readings: [], bills }, { most: 20 });
  const on = addDays(bills.at(-1)?.period.to as DayNumber, 100);
  return { checked, report: reportBills({ account, tariff, checked, on }) };
}

const MADE = new Map<Tariff, ReturnType<typeof makeReport>>();

/** The report of a tariff, made once. */
function reportOn(tariff: Tariff) {
  const made = MADE.get(tariff) ?? makeReport(tariff);
  MADE.set(tariff, made);
  return made;
}

// What a memo, a letter or a document says has to be said of every tariff, also of one with ledgers of money, time
// blocks or charges of kinds that the examples of the memo do not have.
it.each(TARIFFS)('tells of bills under %s', (_, tariff) => {
  const { checked, report } = reportOn(tariff);
  expect(report.findings.length + report.right.length + report.undecided.length).toBe(2);
  const computed = report.findings.flatMap(({ lines, handedOn }) => [
    ...lines.flatMap((line) => line.computed ?? []),
    ...handedOn.map(({ right }) => right),
  ]);
  expect(computed.flatMap(unexplained)).toEqual([]);
  expect(report.findings.every(({ lines }) => lines.some(({ clauses }) => clauses.length > 0))).toBe(true);
  expect(report.findings.flatMap(({ lines }) => lines).filter(({ label }) => label === '')).toEqual([]);
  expect(report.findings.flatMap(({ clauses }) => clauses).filter(({ source }) => source === null)).toEqual(
    [],
  );
  const said = JSON.stringify([billsMemo(report, NOTATION), billsLetter(report, NOTATION)]);
  expect(said).not.toMatch(/undefined|NaN|\[object|null/);
  expect(JSON.stringify(checkResultDocument(report, checked))).not.toMatch(/undefined|NaN/);
});

it('finds the bills of most of them wrong', () => {
  const wrong = TARIFFS.filter(([, tariff]) => reportOn(tariff).report.findings.length > 0);
  expect(wrong.length * 2).toBeGreaterThan(TARIFFS.length);
});
