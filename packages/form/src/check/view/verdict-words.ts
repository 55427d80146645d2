import { daysText, type Writing } from '../../writing/writing.ts';
import {
  FIGURE,
  figureUnit,
  type CheckedBill,
  type Period,
  type Quotient,
  type TariffDocument,
} from '@unitbook/engine';
import { figureText, magnitude, sumText } from './figure-words.ts';

/** The answer: one sentence, what goes with it, and in a word for a list. */
export interface VerdictWords {
  readonly verdict: string;
  readonly more: string;
  /** "right", "₹316 too much", "not known" */
  readonly short: string;
}

/** "1 May 2025 to 1 June 2025 (31 days)" */
export function periodText({ from, to }: Period, { day }: Writing): string {
  return `${day(from)} to ${day(to)} (${daysText(to - from)})`;
}

const isNothing = ({ numerator }: Quotient): boolean => BigInt(numerator) === 0n;

function wrongWords({ difference }: CheckedBill, should: string, writing: Writing): VerdictWords {
  if (difference === null)
    return { verdict: 'Something on this bill is wrong.', more: should, short: 'wrong' };
  if (isNothing(difference))
    return {
      verdict: 'The amount is right, but something else on this bill is not.',
      more: should,
      short: 'wrong, amount right',
    };
  const amount = sumText(magnitude(difference), writing);
  if (difference.numerator > 0)
    return { verdict: `${amount} too much.`, more: should, short: `${amount} too much` };
  return {
    verdict: `${amount} too little.`,
    more: `${should} The mistake is in your favour: it may be asked for later, so keep the money aside.`,
    short: `${amount} too little`,
  };
}

/** "nothing was brought forward", "58 units were brought forward", "₹58 were brought forward" */
function broughtForward(
  { ledger, opening }: CheckedBill['alternatives'][number],
  tariff: TariffDocument,
  writing: Writing,
): string {
  if (opening === 0) return 'nothing was brought forward';
  const name = FIGURE.opening(ledger);
  const value = { numerator: opening, denominator: 1000 };
  if (figureUnit(name, tariff) === 'money') return `${sumText(value, writing)} were brought forward`;
  const one = opening === 1000;
  return `${figureText(name, value, writing)} ${one ? 'unit was' : 'units were'} brought forward`;
}

function unknownWords(
  { alternatives, findings, facts }: CheckedBill,
  should: string,
  writing: Writing,
): VerdictWords {
  const short = 'not known';
  if (alternatives.length > 1) {
    const cases = alternatives.map(
      (one) => `${sumText(one.payable, writing)} if ${broughtForward(one, facts.tariff, writing)}`,
    );
    return {
      verdict: `It cannot be told yet: ${cases.join(', ')}.`,
      more: 'Look at the closing credit of the bill before, and type it or that bill in.',
      short,
    };
  }
  const verdict = 'It cannot be told yet.';
  if (findings.some(({ severity }) => severity === 'error'))
    return { verdict, more: `${should} What stands in the way is said beneath.`.trim(), short };
  return {
    verdict,
    more: `${should} Add what the bill prints, and the line that differs is shown.`.trim(),
    short,
  };
}

/** Verdicts that say of every figure that it is right, or of none that it is wrong. */
const UNSURE: readonly CheckedBill['verdict'][] = ['right', 'right-but-surprising', 'cannot-tell'];

/** A bill of which a figure cannot be read is not called right. */
function unreadWords({ verdict }: CheckedBill, should: string, unread: readonly string[]): VerdictWords {
  const names = unread.map((label) => `“${label}”`).join(', ');
  const what = unread.length === 1 ? 'a figure cannot be read' : 'figures cannot be read';
  const others = verdict === 'cannot-tell' ? '' : 'Every other printed figure is as computed.';
  return {
    verdict: `It cannot be told yet: ${what} (${names}).`,
    more: `${should} ${others}`.trim(),
    short: 'not known',
  };
}

/**
 * What a check says of a bill, in words.
 *
 * @param unread  labels of its figures that cannot be read
 */
export function verdictWords(
  checked: CheckedBill,
  writing: Writing,
  unread: readonly string[] = [],
): VerdictWords {
  const payable = checked.right?.figures.get('payable');
  const should = payable === undefined ? '' : `It should be ${sumText(payable, writing)}.`;
  if (unread.length > 0 && checked.alternatives.length <= 1 && UNSURE.includes(checked.verdict))
    return unreadWords(checked, should, unread);
  switch (checked.verdict) {
    case 'right':
      return {
        verdict: 'Your bill looks right.',
        more: 'Every printed figure is as computed.',
        short: 'right',
      };
    case 'right-but-surprising':
      return {
        verdict: 'Your bill looks right.',
        more: 'Every printed figure is as computed. What may surprise in it is explained beneath.',
        short: 'right',
      };
    case 'follows':
      return {
        verdict: 'This bill follows from one before it that is not right.',
        more: `What that one handed on makes every figure of this one${unread.length === 0 ? '' : ' that can be read'}. ${should}`.trim(),
        short: 'follows',
      };
    case 'wrong':
      return wrongWords(checked, should, writing);
    case 'cannot-tell':
      return unknownWords(checked, should, writing);
  }
}
