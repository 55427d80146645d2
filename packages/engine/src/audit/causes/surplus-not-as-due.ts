import { decimalPlaces, decimalToWhole } from '../../quantity/index.ts';
import type { LedgerRule, SettlementRule } from '../../tariff/index.ts';
import type { Cause, CauseContext, Variant } from '../cause.ts';
import { unitLedgers } from '../charge-basis.ts';
import { changedSettlements, tariffVariant } from '../changed-tariff.ts';
import { exportRates, paidInBill, paysSurplus } from '../export-rates.ts';
import { thousandths, type BillFacts } from '../facts.ts';
import { FIGURE } from '../figure-names.ts';
import { lineRounding, negated, rateFor } from '../solved-number.ts';

const ID = 'surplus-not-as-due';
const LINE = FIGURE.line('surplus');

/** What a period leaves over: credit and units given, less units taken. */
function leftOver({ units, opening, tariff }: BillFacts): number {
  const credit = unitLedgers({ tariff, opening }).reduce((sum, id) => sum + (opening[id] ?? 0), 0);
  return Math.max(0, credit + (units['export'] ?? 0) - (units['import'] ?? 0));
}

/** A rate, and the printed figures it was worked out from. */
interface Rate {
  readonly text: string;
  readonly fitted: readonly string[];
}

/** Rates that are paid somewhere or were once; and the one that the printed payment comes to. */
function ratesOf(facts: BillFacts, { printed, otherTariffs }: CauseContext, units: number): readonly Rate[] {
  const lawful = exportRates([facts.tariff, ...otherTariffs]).map((text) => ({ text, fitted: [] }));
  const paid = printed.get(LINE);
  if (paid === undefined || units === 0) return lawful;
  const text = rateFor(negated(paid), thousandths(units), { rounding: lineRounding(facts.tariff, {}) });
  if (text === null || !/[1-9]/.test(text) || text.startsWith('-')) return lawful;
  return lawful.some((rate) => rate.text === text) ? lawful : [...lawful, { text, fitted: [LINE] }];
}

/** A rule that pays in the bill that closes the bank, at another rate; null: not at all. */
function paysOtherwise(rule: SettlementRule, rate: string | null): SettlementRule {
  if (!paysSurplus(rule)) return rule;
  if (rule.scheme === 'unit-netting') {
    const { close } = rule;
    if (close.inBill !== 'same') return rule;
    const none = { ...close, surplus: 'lapses', rate: undefined, inBill: undefined } as const;
    return { ...rule, close: rate === null ? none : { ...close, rate } };
  }
  const ledgers = (rule.ledgers ?? []).map((ledger) => paysOtherwiseFrom(ledger, rate));
  return { ...rule, ledgers };
}

function paysOtherwiseFrom(ledger: LedgerRule, rate: string | null): LedgerRule {
  const { payment, close } = ledger;
  if (ledger.unit === 'money' || close === undefined || payment?.inBill !== 'same') return ledger;
  return rate === null
    ? { ...ledger, payment: undefined, close: { ...close, surplus: 'lapses' } }
    : { ...ledger, payment: { ...payment, rate } };
}

/** Surplus that the bill before left to be paid by this one. */
function dueFromBefore(facts: BillFacts, context: CauseContext): readonly Variant[] {
  const { before } = context;
  if (facts.surplus.kind !== 'as-due' || !paidInBill(facts.tariff).has('next')) return [];
  const rates = ratesOf(facts, context, before === null ? 0 : leftOver(before));
  return [
    {
      id: 'not-paid',
      what: 'The surplus of the settlement before is not paid',
      facts: { ...facts, surplus: { kind: 'not-paid' } },
    },
    ...rates.map(({ text, fitted }): Variant => ({
      id: `at ${text}`,
      what: `The surplus of the settlement before is paid at ${text}`,
      facts: { ...facts, surplus: { kind: 'at-rate', rate: text } },
      fitted,
    })),
  ];
}

/** Surplus that this very bill has to pay. */
function dueNow(facts: BillFacts, context: CauseContext): readonly Variant[] {
  const units = leftOver(facts);
  if (units === 0 || !paidInBill(facts.tariff).has('same')) return [];
  const variant = (rate: Rate | null): readonly Variant[] =>
    tariffVariant(
      facts,
      {
        cause: ID,
        id: rate === null ? 'not-paid-now' : `now at ${rate.text}`,
        what: rate === null ? 'Surplus lapses that is to be paid' : `Surplus is paid at ${rate.text}`,
        fitted: rate?.fitted ?? [],
      },
      (document) => changedSettlements(document, (rule) => paysOtherwise(rule, rate?.text ?? null)),
    );
  return [null, ...ratesOf(facts, context, units)].flatMap(variant);
}

/** Surplus of an earlier settlement that this bill pays although nothing is due: units times a rate of the rule. */
function paidLate(facts: BillFacts, { printed }: CauseContext): readonly Variant[] {
  const amount = printed.get(LINE);
  if (amount === undefined || amount.numerator >= 0) return [];
  return exportRates([facts.tariff]).flatMap((rate): readonly Variant[] => {
    const places = decimalPlaces(rate);
    const price = { numerator: decimalToWhole(rate, places), denominator: 10 ** places };
    const units = rateFor(negated(amount), price, { rounding: null, most: 3 });
    if (units === null) return [];
    const what = `${units} units of an earlier settlement are paid only now, at ${rate}`;
    const accountLines = [...facts.accountLines, { id: LINE, label: 'Surplus paid late', amount }];
    return [{ id: `late at ${rate}`, what, facts: { ...facts, accountLines }, fitted: [LINE] }];
  });
}

/** C26: surplus is paid at another rate than that of the rule, late, or not at all. */
export const SURPLUS_NOT_AS_DUE: Cause = {
  id: ID,
  name: 'Surplus not paid as due',
  stage: 'credit',
  evidence: [
    'the bill of the settlement, with its closing credit, and the bill after it',
    'the rate of surplus in the order',
    'the bank statement, where it was paid apart',
  ],
  source:
    'C26, Why a net-metered bill is wrong, or right but surprising, project reference, 2025; March bank not credited in April, Agniban, 2025',
  variants: (facts, context) => [
    ...dueFromBefore(facts, context),
    ...dueNow(facts, context),
    ...paidLate(facts, context),
  ],
};
