import { addDays, calendarDay, daysInMonth, type Period } from '../../quantity/index.ts';
import type { LedgerRule, SettlementRule, UnitNettingRule } from '../../tariff/index.ts';
import type { Cause, CauseContext, Sign, Variant } from '../cause.ts';
import { unitLedgers } from '../charge-basis.ts';
import { changedSettlements, tariffVariant } from '../changed-tariff.ts';
import type { BillFacts } from '../facts.ts';
import { FIGURE } from '../figure-names.ts';

const ID = 'credit-lapsed-early';
/** How long the period before is taken to be where it is not known. */
const MONTH = 30;

function lapsingLedger(ledger: LedgerRule): LedgerRule {
  if (ledger.unit === 'money' || ledger.close?.on === 'every-period') return ledger;
  const clause = ledger.close?.clause ?? ledger.clause;
  return { ...ledger, payment: undefined, close: { clause, on: 'every-period', surplus: 'lapses' } };
}

/** Unit netting that carries nothing into the next period. */
const closedNow = (rule: UnitNettingRule, close: UnitNettingRule['close']): UnitNettingRule => ({
  ...rule,
  carry: undefined,
  cap: rule.cap === undefined ? undefined : { ...rule.cap, excess: 'lapses' },
  close,
});

/** The rule with its banks emptied at the end of every period. */
function lapsing(rule: SettlementRule): SettlementRule {
  if (rule.scheme === 'unit-netting') {
    const { on, clause } = rule.close;
    return on === 'every-period' ? rule : closedNow(rule, { clause, on: 'every-period', surplus: 'lapses' });
  }
  const own = (rule.ledgers ?? []).map(lapsingLedger);
  return own.every((ledger, at) => ledger === rule.ledgers?.[at]) ? rule : { ...rule, ledgers: own };
}

/** The same, with what the rule pays for them: a settlement in the wrong month. */
function settledNow(rule: SettlementRule): SettlementRule {
  if (rule.scheme !== 'unit-netting' || rule.close.surplus !== 'paid' || rule.close.inBill !== 'same')
    return rule;
  return rule.close.on === 'every-period' ? rule : closedNow(rule, { ...rule.close, on: 'every-period' });
}

/** Whether a period holds the last day of a quarter, on which banks are usually closed. */
function holdsQuarterEnd({ from, to }: Period): boolean {
  for (let day = from; day < to; day = addDays(day, 1)) {
    const { year, month, day: date } = calendarDay(day);
    if (month % 3 === 0 && date === daysInMonth(year, month)) return true;
  }
  return false;
}

/** What the bill before printed as carried forward speaks for a bank that was emptied there, or rules it out. */
function signsOf(ledger: string, { printedBefore }: CauseContext): readonly Sign[] | null {
  const printed = printedBefore?.get(FIGURE.closing(ledger));
  if (printed === undefined) return [];
  return printed.numerator === 0
    ? [{ speaks: 'for', why: 'the bill before already carries nothing forward' }]
    : null;
}

/** The bank was emptied with the period before, which no rule closes. */
function emptiedBefore(facts: BillFacts, context: CauseContext): readonly Variant[] {
  const before = context.before?.period ?? {
    from: addDays(facts.period.from, -MONTH),
    to: facts.period.from,
  };
  const isUsualDay = holdsQuarterEnd(before);
  return unitLedgers(facts).flatMap((ledger) => {
    const signs = signsOf(ledger, context);
    // On any other day, only a bill that carries nothing forward tells of it: else nothing was brought forward.
    if ((facts.opening[ledger] ?? 0) === 0 || signs === null || (!isUsualDay && signs.length === 0))
      return [];
    const what = 'The bank was emptied with the period before, in which nothing closes it';
    return [
      {
        id: `before ${ledger}`,
        what,
        facts: { ...facts, opening: { ...facts.opening, [ledger]: 0 } },
        signs,
      },
    ];
  });
}

/** C21: credit lapsed, or was settled, in a month in which nothing closes the bank. */
export const CREDIT_LAPSED_EARLY: Cause = {
  id: ID,
  name: 'Credit lapsed early',
  stage: 'credit',
  evidence: [
    'the clause that says when the bank is closed, and the agreement',
    'the chain of bills since the last settlement',
  ],
  source: 'C21, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts, context) => [
    ...emptiedBefore(facts, context),
    ...tariffVariant(
      facts,
      {
        cause: ID,
        id: 'now',
        what: 'What is left over lapses with this period, in which nothing closes the bank',
      },
      (document) => changedSettlements(document, lapsing),
    ),
    ...tariffVariant(
      facts,
      { cause: ID, id: 'settled-now', what: 'What is left over is settled with this period, too early' },
      (document) => changedSettlements(document, settledNow),
    ),
  ],
};
