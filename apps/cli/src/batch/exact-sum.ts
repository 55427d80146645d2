import { exactText, largeDivisor, type Quotient } from '@unitbook/engine';

/** A sum of any length, exact, that goes into a file and comes out of it again. */
export interface ExactSum {
  readonly top: string;
  readonly bottom: string;
}

/** Nothing. */
export const NO_SUM: ExactSum = { top: '0', bottom: '1' };

/** An amount as a sum. */
export const sumOf = ({ numerator, denominator }: Quotient): ExactSum => ({
  top: String(numerator),
  bottom: String(denominator),
});

/** The sum of two sums, in lowest terms. */
export function addSums(one: ExactSum, other: ExactSum): ExactSum {
  const [top, bottom] = [BigInt(one.top), BigInt(one.bottom)];
  const [more, under] = [BigInt(other.top), BigInt(other.bottom)];
  const [sum, common] = [top * under + more * bottom, bottom * under];
  const divisor = largeDivisor(sum, common);
  return { top: String(sum / divisor), bottom: String(common / divisor) };
}

/** A sum as decimal text, or as a fraction where it has no end. */
export const sumText = ({ top, bottom }: ExactSum): string =>
  exactText(BigInt(top), Number.parseInt(bottom, 10));

/** How much a sum is without its sign. */
export const sizeOf = ({ top, bottom }: ExactSum): ExactSum => ({ top: top.replace('-', ''), bottom });
