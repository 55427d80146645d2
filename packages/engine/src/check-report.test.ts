import { describe, expect, it } from 'vitest';
import disputeText from '../../../tariffs-examples/disputes/tarumira.json?raw';
import tariffText from '../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { dayOf } from '../../../tests/support/make.ts';
import { ACCOUNT, APRIL, MAY as MAY_BILL, READINGS } from '../../../tests/support/scenario-1.ts';
import { unexplained } from '../../../tests/support/recompute.ts';
import { readPrintedBill, type PrintedBillDocument } from './audit/index.ts';
import { billsLetter, billsMemo, readDispute, type BillsReport, type SheetPart } from './audit/index.ts';
import { checkAccountBills, type CheckedAccount } from './check-account.ts';
import { checkResultDocument, reportBills, type ReportInput } from './check-report.ts';
import { exactText, type Quotient } from './quantity/index.ts';
import { readAccount, type ReadingRow } from './readings/index.ts';
import { readTariff } from './tariff/index.ts';

const NOTATION = {
  number: (text: string) => text,
  money: (text: string) => `Rs ${text}`,
  moneyPlaces: 2,
  day: (text: string) => text,
};
const MAY = { ...MAY_BILL, number: '0517' };

const text = (value: Quotient | null | undefined): string =>
  value == null ? 'none' : exactText(value.numerator, value.denominator);

interface Told {
  readonly readings?: readonly ReadingRow[];
  readonly account?: Readonly<Record<string, unknown>>;
  readonly isOpeningKnown?: boolean;
  readonly more?: Partial<ReportInput>;
}

/** The base month of the causes: 412 in, 278 out, 35 brought forward, 4 kW. */
const BASE_MONTH: Told = {
  account: { sanctionedLoad: '4', plantCapacity: '5', openingCredit: '35' },
  readings: [
    { date: '2025-06-01', import: '12480', export: '8310', generation: '15225' },
    { date: '2025-07-01', import: '12892', export: '8588', generation: '15805' },
  ],
};

function reported(
  bills: readonly PrintedBillDocument[],
  { readings = READINGS, account: changes = {}, isOpeningKnown = true, more = {} }: Told = {},
): { readonly report: BillsReport; readonly checked: CheckedAccount } {
  const account = readAccount(JSON.stringify({ ...ACCOUNT, ...changes })).value;
  const tariff = readTariff(tariffText).value;
  if (account === null || tariff === null) throw new Error('the example cannot be read');
  const read = bills.flatMap((bill, at) => readPrintedBill(bill, ['bills', at]).value ?? []);
  const checked = checkAccountBills({ account, tariff, readings, bills: read, isOpeningKnown });
  const dispute = readDispute(disputeText).value;
  const report = reportBills({ account, tariff, checked, on: dayOf('2025-08-17'), dispute, ...more });
  return { report, checked };
}

const words = (part: SheetPart): readonly string[] =>
  part.kind === 'paragraph'
    ? [part.text]
    : part.kind === 'list'
      ? part.items
      : part.rows.map((row) => row.join(' | '));

/** Every line of a memo. */
const memoLines = (report: BillsReport): readonly string[] =>
  billsMemo(report, NOTATION).flatMap(({ title, parts }) => [title, ...parts.flatMap(words)]);

// Two acceptance scenarios, in an invented place (project reference, 2025), section 6.1, "Expected answer".
describe('a finding about the household of scenario 1', () => {
  const { report, checked } = reported([APRIL, MAY]);
  const [finding] = report.findings;
  if (finding === undefined) throw new Error('nothing was found');

  it('is of the one bill that is wrong', () => {
    expect(report.findings.map(({ id, bill, favour }) => [id, bill.number, bill.days, favour])).toEqual([
      ['F-01', '0517', 31, 'supplier'],
    ]);
    expect(report.right.map(({ bill }) => bill.period)).toEqual([
      { from: dayOf('2025-04-01'), to: dayOf('2025-05-01') },
    ]);
    expect([finding.account, finding.meter]).toEqual(['TAR-30-00417', 'PB-77120']);
  });

  it('sets the claim beside what follows from the readings, line by line', () => {
    expect(text(finding.difference)).toBe('316');
    expect(
      finding.lines.map(({ name, printed, computed, difference }) => [
        name,
        ...[printed, computed, difference].map(text),
      ]),
    ).toEqual([
      ['units.billed', '82', '24', '58'],
      ['opening.credit', '0', '58', '-58'],
      ['line.energy', '303.6', '72', '231.6'],
      ['line.fuel', '119.2', '9.6', '109.6'],
      ['line.tax', '18.22', '4.32', '13.9'],
      ['line.subsidy', '-75', '-36', '-39'],
      ['sum', '546.02', '229.92', '316.1'],
      ['payable', '546', '230', '316'],
    ]);
  });

  it('has a working of every right figure that can be worked out again', () => {
    const computed = finding.lines.flatMap((line) => line.computed ?? []);
    expect(computed.flatMap(unexplained)).toEqual([]);
    expect(computed.filter(({ inputs }) => inputs.length > 0).map(({ id }) => id)).toEqual([
      'billed',
      'energy',
      'fuel',
      'tax',
      'subsidy',
      'sum',
      'payable',
    ]);
  });

  it('names both causes with what each adds, and the rules they break', () => {
    expect(finding.explanations).toHaveLength(1);
    const [{ confidence, causes, rounding } = { confidence: null, causes: [], rounding: null }] =
      finding.explanations;
    expect(confidence).toBe('proven');
    expect(causes.map(({ id, amount }) => [id, text(amount)])).toEqual([
      ['credit-not-brought-forward', '229.7'],
      ['surcharge-on-import', '86.4'],
    ]);
    expect(text(rounding)).toBe('-0.1');
    expect(
      finding.clauses.map(({ clause, source, from }) => [clause, source?.title, source?.year, from]),
    ).toEqual([
      ['NMR-2021 r. 7.2', 'Net Metering Regulations 2021', '2021', '2021-04-01'],
      ['TO-2024 cl. 5.1', 'Tariff Order 2024', '2024', '2024-04-01'],
    ]);
    expect(finding.ruledOut).toContain('Import and export swapped');
    expect(finding.ruledOut).not.toContain('Credit not brought forward');
  });

  it('says what is held: both bills, the credit of the first, both readings, the payments', () => {
    expect(finding.evidence.held.map(({ kind }) => kind)).toEqual([
      'bill',
      'own-readings',
      'bill-before',
      'payment',
      'payment',
    ]);
    expect(finding.evidence.wanted).not.toContain('the closing credit of the bill before');
    expect(finding.evidence.wanted).toContain('the clause of the surcharge, which says what it is taken on');
  });

  it('asks back 316 with 4.68 of interest, in time until two years after the payment', () => {
    const { refund, limit } = finding;
    expect([text(refund?.refund), text(refund?.interest), text(refund?.withdraw)]).toEqual([
      '316',
      '4.68',
      '0',
    ]);
    expect([limit?.clause, limit?.isInTime, limit?.last]).toEqual([
      'SC-2020 cl. 8.6',
      true,
      dayOf('2027-06-18'),
    ]);
    expect([text(report.refund?.refund), text(report.refund?.interest)]).toEqual(['316', '4.68']);
  });

  it('hands on 0 units, since the 58 are used', () => {
    expect(finding.handedOn.map(({ ledger, printed, right }) => [ledger, printed, text(right)])).toEqual([
      ['credit', null, '0'],
    ]);
    expect(finding.recommendations.map(({ id }) => id)).toEqual([
      'revise-bill',
      'pay-back',
      'correct-credit',
      'correct-rules',
    ]);
  });

  it('is a memo that begins with the answer', () => {
    const lines = memoLines(report);
    expect(lines).toContain('To be paid: Rs 546.00 printed, Rs 230.00 right: Rs 316.00 too much.');
    expect(lines).toContain(
      'Credit not brought forward | Nothing is brought forward from the bill before | Rs 229.70',
    );
    expect(lines).toContain('Interest on it | Rs 4.68');
    expect(lines).toContain('Rs 316.00 × 9 % × 60 ÷ 365, from 2025-06-18 to 2025-08-17');
    expect(lines).toContain('Fuel surcharge: Rs 9.60 = 24 units × Rs 0.40 per unit (TO-2024 cl. 5.1)');
    expect(billsMemo(report, NOTATION).map(({ id }) => id)).toEqual(['scope', 'F-01', 'steps', 'method']);
  });

  it('is a letter that says what is asked for, by which rules, and what is enclosed', () => {
    const letter = billsLetter(report, NOTATION, { holder: 'A. Holder' });
    const all = [...letter.paragraphs, ...letter.asks];
    expect(letter.to).toEqual(['TARESCO, billing office']);
    expect(letter.asks).toContain(
      'Please pay back Rs 316.00, with interest of Rs 4.68 up to 2025-08-17 (SC-2020 cl. 8.5).',
    );
    expect(all.join(' ')).toContain('NMR-2021 r. 7.2 (Net Metering Regulations 2021)');
    expect(all.join(' ')).not.toMatch(/court|lawyer|police|penalt|legal action|must/i);
    expect(letter.encloses).toContain(
      'The bill before, from 2025-04-01 to 2025-05-01: credit carried forward 58 units',
    );
    expect(letter.closing.at(-1)).toBe('A. Holder');
  });

  it('is written by the notation that is given', () => {
    const notation = { ...NOTATION, money: (own: string) => `<${own}>`, day: (own: string) => `[${own}]` };
    const { asks, date } = billsLetter(report, notation);
    expect([date, asks[1]]).toEqual([
      '[2025-08-17]',
      'Please pay back <316.00>, with interest of <4.68> up to [2025-08-17] (SC-2020 cl. 8.5).',
    ]);
  });

  it('is a document of exact texts', () => {
    const document = checkResultDocument(report, checked);
    const again = JSON.parse(JSON.stringify(document)) as typeof document;
    expect(again).toEqual(document);
    expect([again.format, again.on, again.bills.map(({ verdict }) => verdict)]).toEqual([
      'unitbook-check-result-1',
      '2025-08-17',
      ['right', 'wrong'],
    ]);
    expect(again.findings[0]?.refund).toMatchObject({ refund: '316', interest: '4.68', underBilled: '0' });
    // A number in JSON would be read as a binary fraction; only the path of a finding counts places.
    const numbers: string[] = [];
    JSON.stringify(document, (key: string, value: unknown) => {
      if (typeof value === 'number') numbers.push(key);
      return key === 'path' ? undefined : value;
    });
    expect(numbers).toEqual([]);
  });
});

describe('bills that are wrong otherwise', () => {
  it('tells of what was not paid that it is to be withdrawn', () => {
    const { paid, ...unpaid } = MAY;
    expect(paid).toBeDefined();
    const { report } = reported([APRIL, unpaid]);
    const refund = report.findings[0]?.refund;
    expect([text(refund?.refund), text(refund?.withdraw), text(refund?.interest)]).toEqual(['0', '316', '0']);
    expect(report.findings[0]?.evidence.wanted).toContain('the receipt, if the bill was paid');
    expect(billsLetter(report, NOTATION).asks).toContain(
      'Please withdraw Rs 316.00 of it, and neither recover that amount nor charge a fee on it meanwhile.',
    );
  });

  // Why a net-metered bill is wrong, or right but surprising (project reference, 2025), C02 on the base month:
  // billed 0, 240 instead of 613, a later back-bill is coming.
  it('tells of a bill that is too low in the same way', () => {
    const { report } = reported(
      [
        {
          from: '2025-06-01',
          to: '2025-07-01',
          units: { import: '278', export: '412', billed: '0' },
          opening: { credit: '35' },
          payable: '240',
          paid: { on: '2025-07-10', amount: '240' },
        },
      ],
      BASE_MONTH,
    );
    const [finding] = report.findings;
    expect([finding?.favour, text(finding?.difference)]).toEqual(['household', '-373']);
    expect([text(finding?.refund?.refund), text(finding?.refund?.underBilled)]).toEqual(['0', '373']);
    expect(finding?.recommendations.map(({ id }) => id)).toContain('keep-aside');
    expect(finding?.clauses.map(({ clause }) => clause)).toEqual(['NMR-2021 r. 7.1']);
    expect(text(report.refund?.underBilled)).toBe('373');
    expect(billsLetter(report, NOTATION).paragraphs[1]).toContain('Rs 373.00 more');
  });

  // April hands on 0 instead of 58: May, billed 82, comes to 180 + 303.60 + 32.80 + 18.22 − 75 = 459.62, 460.
  it('tells of a bill that goes on from a wrong one', () => {
    const { report } = reported([
      { ...APRIL, closing: { credit: '0' } },
      {
        from: '2025-05-01',
        to: '2025-06-01',
        opening: { credit: '0' },
        units: { billed: '82' },
        payable: '460',
      },
    ]);
    expect(
      report.findings.map(({ id, favour, isConsequence, difference }) => [
        id,
        favour,
        isConsequence,
        text(difference),
      ]),
    ).toEqual([
      ['F-01', 'supplier', false, '0'],
      ['F-02', 'supplier', true, '230'],
    ]);
    expect(memoLines(report)).toContain(
      'It is right by what the bill before handed on, and wrong because that one is.',
    );
    expect(billsMemo(report, NOTATION).map(({ id }) => id)).toContain('total');
  });

  // April hands on 20 instead of 58. From there May bills 62: 180 + 207.60 + 24.80 + 12.46 − 75 = 349.86, 350; the
  // surcharge on 298 instead of 62 units adds 94.40: 444.26, 444. Right is 230.
  it('keeps apart what the bill before adds and what a bill has wrong of its own', () => {
    const { report } = reported([
      { ...APRIL, closing: { credit: '20' } },
      {
        from: '2025-05-01',
        to: '2025-06-01',
        opening: { credit: '20' },
        units: { billed: '62' },
        lines: [
          { charge: 'fixed', amount: '180.00' },
          { charge: 'energy', amount: '207.60' },
          { charge: 'fuel', amount: '119.20' },
          { charge: 'tax', amount: '12.46' },
          { charge: 'subsidy', amount: '-75.00' },
        ],
        sum: '444.26',
        payable: '444',
      },
    ]);
    const [, may] = report.findings;
    expect([text(may?.difference), may?.isConsequence]).toEqual(['214', false]);
    expect(
      may?.explanations.map(({ causes, addedBefore, rounding }) => [
        causes.map(({ id, amount, clauses }) => [id, text(amount), clauses.map(({ clause }) => clause)]),
        text(addedBefore),
        text(rounding),
      ]),
    ).toEqual([[[['surcharge-on-import', '94.4', ['TO-2024 cl. 5.1']]], '120', '-0.4']]);
    // 120 + 94.4 − 0.4 = 214
    expect(memoLines(report)).toEqual(
      expect.arrayContaining([
        'Added by the bills before |  | Rs 120.00',
        'Rounding of the total |  | Rs -0.40',
        'Together |  | Rs 214.00',
      ]),
    );
  });

  // C02 and C19 on the base month both come to 240, and a total alone proves neither. Import would be 278 or 0 units.
  it('asks for the figure that decides where explanations tie', () => {
    const { report } = reported([{ from: '2025-06-01', to: '2025-07-01', payable: '240' }], BASE_MONTH);
    const [finding] = report.findings;
    const causes = finding?.explanations.map((one) => one.causes.map(({ id }) => id).join()) ?? [];
    expect(causes).toEqual(expect.arrayContaining(['registers-swapped', 'frozen-register']));
    expect(new Set(finding?.explanations.map(({ confidence }) => confidence))).toEqual(new Set(['possible']));
    expect(finding?.deciders.map(({ name }) => name)).toContain('units.import');
    expect(finding?.recommendations.map(({ id }) => id)).toContain('decide');
    const { asks, paragraphs } = billsLetter(report, NOTATION);
    expect(paragraphs[1]).toContain('may come from this');
    expect(asks.filter((ask) => ask.startsWith('Please tell me what the bill was made with: '))).toHaveLength(
      1,
    );
  });

  it('asks for the working of a bill that nothing explains', () => {
    const { report } = reported([APRIL, { ...MAY, payable: '777.77', sum: '777.77' }]);
    const [finding] = report.findings;
    // 546 − 230 were paid too much, and 777.77 − 546 asked for and not paid.
    expect([text(finding?.refund?.refund), text(finding?.refund?.withdraw)]).toEqual(['316', '231.77']);
    expect([finding?.explanations, finding?.ruledOut]).toEqual([[], []]);
    expect(finding?.recommendations.map(({ id }) => id)).toEqual([
      'revise-bill',
      'pay-back',
      'withdraw',
      'show-working',
      'test-meter',
    ]);
    expect(finding?.inconsistencies.length).toBeGreaterThan(0);
    expect(billsLetter(report, NOTATION).asks).toContain(
      'Please read or test the meter while I am there, within 30 days of the request (SC-2020 cl. 8.4).',
    );
  });

  it('says of a bill without known credit what it comes to in each case', () => {
    const { report } = reported([{ from: '2025-05-01', to: '2025-06-01' }], { isOpeningKnown: false });
    // 82 units or more would leave the fixed charge, 3 × 60.
    expect(
      report.undecided[0]?.alternatives.map(({ opening, payable }) => [text(opening), text(payable)]),
    ).toEqual([
      ['0', '460'],
      ['58', '230'],
      ['298', '180'],
    ]);
    expect(
      memoLines(report).some((line) => line.includes('Rs 230.00 if credit brought forward is 58 units')),
    ).toBe(true);
    expect(billsLetter(report, NOTATION).asks).toEqual([]);
  });

  // TO-2024 cl. 4.3, half of the days under each order: lines of both are one line of the bill (C30, 572).
  it('works a line of two orders out as their sum', () => {
    const { report } = reported(
      [
        {
          from: '2024-03-17',
          to: '2024-04-16',
          lines: [{ charge: 'energy', amount: '385.20' }],
          payable: '613',
        },
      ],
      {
        account: { sanctionedLoad: '4', plantCapacity: '5', openingCredit: '35' },
        readings: [
          { date: '2024-03-17', import: '12480', export: '8310', generation: '15225' },
          { date: '2024-04-16', import: '12892', export: '8588', generation: '15805' },
        ],
      },
    );
    const [energy, payable] = report.findings[0]?.lines ?? [];
    // Each half: 25 units in the first slab, 24.5 in the second: 70 + 110.25 and 75 + 117.60.
    expect(energy?.computed?.inputs.map(text)).toEqual(['180.25', '192.6']);
    expect([text(energy?.computed), text(payable?.computed)]).toEqual(['372.85', '572']);
    expect(
      energy?.computed === undefined || energy.computed === null ? [] : unexplained(energy.computed),
    ).toEqual([]);
  });
});

describe('what is given besides the bills', () => {
  it('goes without rules for disputes: no interest is made up', () => {
    const { report } = reported([APRIL, MAY], { more: { dispute: null } });
    const [finding] = report.findings;
    expect([text(finding?.refund?.refund), finding?.refund?.interest, finding?.limit]).toEqual([
      '316',
      null,
      null,
    ]);
    expect(memoLines(report)).toContain('Interest on it | not known');
  });

  it('tells of rules that are not in force on the day', () => {
    const { report } = reported([APRIL, MAY], { more: { on: dayOf('2020-03-31') } });
    expect([report.rules, report.problems.map(({ code }) => code)]).toEqual([null, ['dispute/not-in-force']]);
  });

  it('takes over what the bill did to later ones, what was answered and what is at hand', () => {
    const none = { numerator: 0, denominator: 1 };
    const period = { from: dayOf('2025-06-01'), to: dayOf('2025-07-01') };
    const effects = { bills: [{ number: '0617', period, difference: none }], arrears: none, lateFee: none };
    const reply = { status: 'rejected', on: dayOf('2025-07-01'), words: 'The bill stands.' } as const;
    const held = ['the notice of the surcharge of the month'];
    const { report } = reported([APRIL, MAY], {
      more: { effects: [null, effects], replies: [null, reply], held },
    });
    const [finding] = report.findings;
    expect([finding?.effects, finding?.reply]).toEqual([effects, reply]);
    expect(finding?.evidence.wanted).not.toContain(held[0]);
    const lines = memoLines(report);
    expect(lines).toContain('Bill 0617 from 2025-06-01 to 2025-07-01: Rs 0.00');
    expect(lines.some((line) => line.includes('Status: rejected on 2025-07-01: The bill stands.'))).toBe(
      true,
    );
  });
});
