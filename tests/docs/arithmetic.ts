import { roundLargeQuotient, wholeToDecimal } from '@unitbook/engine';
import { rational, readRational, type Rational } from '../published/rational.ts';

type Operator = (a: Rational, b: Rational) => Rational;

const add: Operator = (a, b) => rational(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom);
const subtract: Operator = (a, b) => rational(a.top * b.bottom - b.top * a.bottom, a.bottom * b.bottom);
const multiply: Operator = (a, b) => rational(a.top * b.top, a.bottom * b.bottom);
const divide: Operator = (a, b) => rational(a.top * b.bottom, a.bottom * b.top);

const HUNDRED = rational(100n, 1n);

/** Reads `50 × 3.00 + 6 % of (720.00 − 72.00)` from left to right, products before sums. */
class Reader {
  private readonly tokens: readonly string[];
  private at = 0;

  constructor(text: string) {
    this.tokens = text.match(/[\d,.]+|% of|[^\s\d]/g) ?? [];
  }

  private take(...wanted: readonly string[]): string | null {
    const token = this.tokens[this.at];
    if (token === undefined || !wanted.includes(token)) return null;
    this.at += 1;
    return token;
  }

  private factor(): Rational {
    if (this.take('(') !== null) {
      const inner = this.sum();
      if (this.take(')') === null) throw new RangeError('a bracket is not closed');
      return inner;
    }
    const sign = this.take('−') === null ? '' : '-';
    const token = (this.tokens[this.at] ?? '').replaceAll(',', '');
    this.at += 1;
    const value = readRational(sign + token);
    return this.take('% of') === null ? value : divide(multiply(value, this.factor()), HUNDRED);
  }

  private product(): Rational {
    let value = this.factor();
    for (let sign = this.take('×', '÷'); sign !== null; sign = this.take('×', '÷'))
      value = (sign === '×' ? multiply : divide)(value, this.factor());
    return value;
  }

  sum(): Rational {
    let value = this.product();
    for (let sign = this.take('+', '−'); sign !== null; sign = this.take('+', '−'))
      value = (sign === '+' ? add : subtract)(value, this.product());
    return value;
  }

  whole(): Rational {
    const value = this.sum();
    if (this.at < this.tokens.length) throw new RangeError(`"${this.tokens.join(' ')}" is no calculation`);
    return value;
  }
}

/** What a calculation comes to, exactly. */
export function calculated(text: string): Rational {
  return new Reader(text).whole();
}

/** A value rounded half up to as many decimals as an amount shows: "1,084.20" shows two. */
export function shownAs(value: Rational, amount: string): string {
  const places = (/\.(\d+)$/.exec(amount)?.[1] ?? '').length;
  const whole = roundLargeQuotient(value.top * 10n ** BigInt(places), value.bottom, 'half-up');
  return wholeToDecimal(whole, places);
}

/** An amount of a page as plain decimal text. */
export function plain(amount: string): string {
  return amount.replaceAll(',', '').replace('−', '-');
}
