import { addQuotients, isSameQuotient, subtractQuotients, type Quotient } from '../../quantity/index.ts';
import type { Cause, CauseContext, Sign, Variant } from '../cause.ts';
import type { AccountLine, BillFacts } from '../facts.ts';
import { lineRounding, roundedLine, times } from '../solved-number.ts';

/** Shares of what is owed that late fees of a month usually come to. */
const LATE_FEES = ['0.01', '0.015', '0.02'] as const;

const line = (id: string, label: string, amount: Quotient): AccountLine => ({ id, label, amount });
const arrearsOf = (amount: Quotient): AccountLine => line('arrears', 'Arrears', amount);
const feeOf = (amount: Quotient): AccountLine => line('late-fee', 'Late fee', amount);

/** Whether the bill before was paid decides whether it can be asked for again. */
function signsOf({ paidBefore }: CauseContext): readonly Sign[] {
  if (paidBefore === undefined) return [];
  return paidBefore
    ? [{ speaks: 'for', why: 'the bill before was paid' }]
    : [{ speaks: 'against', why: 'the bill before was not paid, so that it may be asked for again' }];
}

/** Something asked for, and the printed figures it was taken from. */
interface Asked {
  readonly id: string;
  readonly what: string;
  readonly lines: readonly AccountLine[];
  readonly fitted: readonly string[];
}

/** What the bill before came to, asked for again: alone, and with a late fee. */
function billBefore(facts: BillFacts, { printedBefore }: CauseContext): readonly Asked[] {
  const amount = printedBefore?.get('payable');
  if (amount === undefined || amount.numerator <= 0) return [];
  const what = 'The bill before is asked for again';
  const rounding = lineRounding(facts.tariff, {});
  return [
    { id: 'bill-before', what, lines: [arrearsOf(amount)], fitted: [] },
    ...LATE_FEES.map((share): Asked => {
      const fee = roundedLine(times(share, amount), rounding);
      const lines = [arrearsOf(amount), feeOf(fee)];
      const percent = { '0.01': '1', '0.015': '1.5', '0.02': '2' }[share];
      return {
        id: `bill-before+${share}`,
        what: `${what}, with a late fee of ${percent} %`,
        lines,
        fitted: [],
      };
    }),
  ];
}

/** Account lines as the bill prints them. */
function asPrinted({ printed }: CauseContext): readonly Asked[] {
  const known = [
    ['arrears', 'Arrears'],
    ['late-fee', 'Late fee'],
    ['adjustment', 'Adjustment'],
  ] as const;
  const lines = known.flatMap(([id, label]) => {
    const amount = printed.get(id);
    return amount === undefined || amount.numerator === 0 || amount.numerator === 0n
      ? []
      : [line(id, label, amount)];
  });
  if (lines.length === 0) return [];
  const what = `Besides the charges of the tariff: ${lines.map(({ label }) => label.toLowerCase()).join(', ')}`;
  return [{ id: 'as-printed', what, lines, fitted: lines.map(({ id }) => id) }];
}

const ASKED = ['arrears', 'late-fee', 'adjustment'] as const;

/** What the printed sum has more than the printed lines, where no line says so. */
function hidden({ printed }: CauseContext): readonly Asked[] {
  const sum = printed.get('sum');
  const lines = [...printed].filter(([name]) => name.startsWith('line.')).map(([, amount]) => amount);
  if (sum === undefined || lines.length === 0 || ASKED.some((name) => printed.has(name))) return [];
  const amount = subtractQuotients(sum, addQuotients(lines));
  if (amount.numerator === 0 || amount.numerator === 0n) return [];
  const what = 'The sum holds an amount that no printed line shows';
  // What is to be paid only rounds the sum: that it fits proves no more.
  const fitted = ['sum', 'rounding', 'payable'];
  return [{ id: 'hidden', what, lines: [line('adjustment', 'Amount without a line', amount)], fitted }];
}

const sameLines = (one: Asked, other: Asked): boolean =>
  one.lines.length === other.lines.length &&
  one.lines.every(({ id, amount }, at) => {
    const own = other.lines[at];
    return own?.id === id && isSameQuotient(own.amount, amount);
  });

/** What is asked for takes the place of what may be asked for under the same name. */
const isOther =
  (lines: readonly AccountLine[]) =>
  ({ id }: AccountLine): boolean =>
    lines.every((line) => line.id !== id);

/** C40: what was paid already, a late fee or another amount is mixed into the bill. */
export const ARREARS_MIXED_IN: Cause = {
  id: 'arrears-mixed-in',
  name: 'Arrears or fee mixed in',
  stage: 'account',
  evidence: ['the receipt for the bill before, with its day and reference', 'the statement of the account'],
  source: 'C40, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts, context) => {
    const before = billBefore(facts, context);
    const others = [...asPrinted(context), ...hidden(context)].filter(
      (own) => !before.some((known) => sameLines(known, own)),
    );
    const signs = signsOf(context);
    return [...before, ...others].map(({ id, what, lines, fitted }): Variant => ({
      id,
      what,
      facts: { ...facts, accountLines: [...facts.accountLines.filter(isOther(lines)), ...lines] },
      fitted,
      signs,
    }));
  },
};
