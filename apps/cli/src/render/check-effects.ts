import type { Effects, Quotient } from '@unitbook/engine';
import { exactText } from '@unitbook/engine';
import { signedAmount } from './check-figures.ts';
import { periodWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { PAGE_WIDTH, wrapIndented } from './text.ts';

const isNothing = ({ numerator }: Quotient): boolean => numerator === 0 || numerator === 0n;

const place = (at: number): string => `bill ${String(at + 1)}`;

function unitsText(value: Quotient, notation: PageNotation): string {
  const text = notation.number(exactText(value.numerator, value.denominator));
  return value.numerator > 0 ? `+${text}` : text;
}

function bankSentences({ bank, registers }: Effects, notation: PageNotation): readonly string[] {
  return [
    ...bank.flatMap(({ ledger, units, since, evenOn }) => {
      if (since !== null)
        return [
          `${ledger}: ${unitsText(units, notation)} units carried forward since ${place(since)}, and never put right.`,
        ];
      return evenOn === null ? [] : [`${ledger}: as it should be again on ${place(evenOn)}.`];
    }),
    ...registers.map(({ register, units, backOn }) =>
      backOn === null
        ? `Register ${register}: ${unitsText(units, notation)} units not counted, which have not come back yet.`
        : `Register ${register}: ${unitsText(units, notation)} units not counted, which came back by themselves on ${place(backOn)}: they are not claimed again.`,
    ),
  ];
}

function sentences(effects: Effects, notation: PageNotation): readonly string[] {
  const { bills, arrears, lateFee, settledOn, unknown, money } = effects;
  const amount = (value: Quotient): string => signedAmount(value, notation);
  const later = bills.map(
    ({ at, period, difference }) =>
      `On ${place(at)} (${periodWords(period)}): ${amount(difference)} to be paid.`,
  );
  return [
    ...later,
    ...(later.length === 0 ? [] : [`Together with its own bill: ${amount(money)}.`]),
    ...(isNothing(arrears) ? [] : [`Asked for once more as arrears: ${amount(arrears)}.`]),
    ...(isNothing(lateFee) ? [] : [`Late fees for it: ${amount(lateFee)}.`]),
    ...(settledOn === null ? [] : [`Taken back on ${place(settledOn)}.`]),
    ...unknown.map((at) => `What ${place(at)} asks for is not printed: it is not in the sum.`),
    ...bankSentences(effects, notation),
  ];
}

/** What each mistake did to later bills, to the bank and to the registers; empty where it touched its own bill alone. */
export function effectLines(effects: readonly Effects[], notation: PageNotation): readonly string[] {
  const told = effects.flatMap((one) => {
    const own = sentences(one, notation);
    return own.length === 0
      ? []
      : [`Of ${place(one.at)}:`, ...own.flatMap((each) => wrapIndented(`- ${each}`, '  ', PAGE_WIDTH))];
  });
  return told.length === 0 ? [] : ['', 'WHAT FOLLOWS FROM IT', ...told];
}
