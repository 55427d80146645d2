import { expect, it } from 'vitest';
import tariffText from '../../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { periodOf } from '../../../../../tests/support/make.ts';
import { readTariff } from '../../tariff/index.ts';
import { readPrintedBill, type PrintedBill } from '../printed.ts';
import type { PrintedBillDocument } from '../printed-document.ts';
import type { FindingExplanation } from './bill-finding.ts';
import type { CheckedParts } from './checked-parts.ts';
import { evidenceOf } from './evidence.ts';

const tariff = readTariff(tariffText).value?.document;
if (tariff === undefined) throw new Error('the example cannot be read');
const TARIFF = tariff;
const APRIL: PrintedBillDocument = { from: '2025-04-01', to: '2025-05-01' };
const MAY: PrintedBillDocument = { from: '2025-05-01', to: '2025-06-01', payable: '546' };

function printed(document: PrintedBillDocument): PrintedBill {
  const { value } = readPrintedBill(document, []);
  if (value === null) throw new Error('the bill cannot be read');
  return value;
}

function checked(bill: PrintedBillDocument, source: 'own' | 'printed'): CheckedParts {
  const facts: CheckedParts['facts'] = {
    tariff: TARIFF,
    period: periodOf('2025-05-01', '2025-06-01'),
    registers: {},
    units: {},
    powers: {},
    opening: {},
    surplus: { kind: 'as-due' },
    accountLines: [],
    shown: {},
  };
  const nothing = { compared: [], explanations: [], deciders: [], nearest: [], carried: null, findings: [] };
  return {
    printed: printed(bill),
    verdict: 'wrong',
    facts,
    sources: { import: source, export: source },
    ...nothing,
  };
}

/** What is still wanted where a cause asks for one thing. */
function wanted(
  asked: string,
  {
    before = null,
    bill = MAY,
    held = [],
  }: Partial<{ before: PrintedBillDocument | null; bill: PrintedBillDocument; held: readonly string[] }>,
): boolean {
  const cause = { id: 'x', name: 'X', what: 'X', amount: null, clauses: [], evidence: [asked], signs: [] };
  const explanation: FindingExplanation = {
    confidence: 'likely',
    causes: [cause],
    addedBefore: null,
    rounding: null,
  };
  const terms = { before: before === null ? null : printed(before), held };
  return evidenceOf(checked(bill, 'own'), terms, [explanation]).wanted.includes(asked);
}

const READ: PrintedBillDocument = { ...APRIL, readings: { import: { present: '4342' } } };
const PAID: PrintedBillDocument = { ...APRIL, paid: { on: '2025-05-12', amount: '180' } };
const CREDITED: PrintedBillDocument = { ...APRIL, closing: { credit: '58' } };

it.each<[string, Parameters<typeof wanted>[1], boolean]>([
  ['the closing credit of the bill before', { before: CREDITED }, false],
  ['the closing credit of the bill before', { before: READ }, true],
  ['the closing export reading of the bill before', { before: READ }, false],
  ['the closing export reading of the bill before', { before: CREDITED }, true],
  ['the receipt for the bill before, with its day and reference', { before: PAID }, false],
  ['the receipt for the bill before, with its day and reference', { before: READ }, true],
  ['both bills: the first day of one has to be the last day of the other', { before: APRIL }, false],
  ['both bills: the first day of one has to be the last day of the other', {}, true],
  ['the tax line of the bill', {}, false],
  ['a photo of the nameplate', {}, true],
  ['a photo of the nameplate', { held: ['a photo of the nameplate'] }, false],
])('%s, with %j: wanted %s', (asked, given, isWanted) => {
  expect(wanted(asked, given)).toBe(isWanted);
});

it('asks for own readings, the bill before and the receipt where they are not there', () => {
  const all = evidenceOf(checked(MAY, 'printed'), { before: null, held: [] }, []);
  expect(all).toEqual({
    held: [{ kind: 'bill', bill: expect.objectContaining({ days: 31 }) as unknown }],
    wanted: [
      'own readings on both days, with photos of the display',
      'the bill before, with its closing credit',
      'the receipt, if the bill was paid',
    ],
  });
  const paid = { ...MAY, paid: { on: '2025-06-18', amount: '546' } };
  expect(evidenceOf(checked(paid, 'own'), { before: printed(APRIL), held: [] }, []).wanted).toEqual([]);
});
