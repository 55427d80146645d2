import type { Quotient } from '../../quantity/index.ts';
import type { Cause, Variant } from '../cause.ts';
import { FIGURE } from '../figure-names.ts';
import { thousandths, type BillFacts } from '../facts.ts';
import { lineRounding, rateFor } from '../solved-number.ts';
import { unknownLines, type UnknownLine } from '../unknown-lines.ts';

/** Decimals of a rate that somebody may have set. */
const PLACES = 3;

/** Units that such a line may be taken on, the likeliest first. */
function basesOf({ units }: BillFacts): readonly (readonly [string, number])[] {
  const { import: taken, export: given = 0, generation: made } = units;
  const known: readonly (readonly [string, number | undefined])[] = [
    ['unit used straight from the roof', made === undefined ? undefined : made - given],
    ['unit made', made],
    ['unit given', given],
    ['unit imported', taken],
  ];
  return known.flatMap(([name, value]) =>
    value === undefined || value <= 0 ? [] : [[name, value] as const],
  );
}

/** What a line comes to for each unit, where that is a number somebody may have set. */
function rateWords(facts: BillFacts, amount: Quotient): string {
  const rounding = lineRounding(facts.tariff, {});
  const found = basesOf(facts).flatMap(([name, value]) => {
    const rate = rateFor(amount, thousandths(value), { rounding, most: PLACES });
    return rate === null ? [] : [`${rate} for each ${name}`];
  });
  return found.length === 0 ? '' : `; it comes to ${found.join(', or ')}`;
}

function withLines(facts: BillFacts, lines: readonly UnknownLine[], what: string): Variant {
  const added = lines.map(({ charge, amount }) => ({ id: FIGURE.line(charge), label: charge, amount }));
  return {
    id: lines.map(({ charge }) => charge).join('+'),
    what,
    facts: { ...facts, accountLines: [...facts.accountLines, ...added] },
    fitted: lines.map(({ charge }) => FIGURE.line(charge)),
  };
}

/** A line of money that the tariff does not have, such as a duty from which solar homes are exempt. */
export const CHARGE_NOT_IN_TARIFF: Cause = {
  id: 'charge-not-in-tariff',
  name: 'Line that the tariff does not have',
  stage: 'charges',
  evidence: ['the order or notice that levies it, and whom it exempts'],
  source: 'a self-generation duty levied from the exempt, The Hindu, 2024',
  variants: (facts, { printed }) => {
    const lines = unknownLines(facts, printed);
    const single = lines.map((line) => {
      const what = `The tariff has no line "${line.charge}"${rateWords(facts, line.amount)}`;
      return withLines(facts, [line], what);
    });
    if (lines.length < 2) return single;
    const names = lines.map(({ charge }) => `"${charge}"`).join(', ');
    return [...single, withLines(facts, lines, `The tariff has no lines ${names}`)];
  },
};
