import { addQuotients, signOf, subtractQuotients, type Quotient } from '../../quantity/index.ts';
import type { Attribution } from '../attribution.ts';
import type { CheckedParts } from './checked-parts.ts';

/** A row of what an explanation comes to. */
export interface ExplanationRow {
  readonly is: 'before' | 'cause' | 'rounding' | 'together';
  readonly label: string;
  readonly amount: Quotient;
}

/** What sums up to the difference of a bill: bills before, causes, rounding. */
export interface ExplanationParts {
  /** What the bills before add, where the causes explain the bill as the books handed it on; null: nothing. */
  readonly addedBefore: Quotient | null;
  /** Amounts are null where the bill does not print what is to be paid. */
  readonly causes: readonly { readonly name: string; readonly amount: Quotient | null }[];
  /** What rounding of the total adds to the amounts of the causes; null where they have none. */
  readonly rounding: Quotient | null;
}

type Compared = Pick<CheckedParts, 'compared' | 'carried'>;

/** What the bills before add: the difference from the right bill that is none from the one the books hand on. */
function addedBefore({ compared, carried }: Compared, attribution: Attribution): Quotient | null {
  const difference = compared.find(({ name }) => name === 'payable')?.difference ?? null;
  return carried === null || difference === null
    ? null
    : subtractQuotients(difference, attribution.difference);
}

/**
 * What an explanation of a checked bill comes to, part by part.
 *
 * @param attribution  of the explanation; null where the bill does not print what is to be paid
 */
export function explanationParts(
  checked: Compared,
  { attempt, attribution }: CheckedParts['explanations'][number],
): ExplanationParts {
  const causes = attempt.steps.map(({ cause: { name } }, at) => ({
    name,
    amount: attribution?.parts[at]?.amount ?? null,
  }));
  if (attribution === null) return { addedBefore: null, causes, rounding: null };
  // Rounding is of the total by its rule, and of what is printed to fewer decimals than it has.
  const rounding = addQuotients([attribution.rounding, attribution.rest]);
  return { addedBefore: addedBefore(checked, attribution), causes, rounding };
}

/**
 * The rows of an explanation, which sum up to its last one: what bills before add, each cause, rounding, and all
 * together. A page, a command and a memo draw the same.
 *
 * @returns  none where the bill does not print what is to be paid
 */
export function explanationRows(parts: ExplanationParts): readonly ExplanationRow[] {
  const { causes, rounding } = parts;
  if (rounding === null) return [];
  const row = (
    is: ExplanationRow['is'],
    label: string,
    amount: Quotient | null,
  ): readonly ExplanationRow[] => (amount === null || signOf(amount) === 0 ? [] : [{ is, label, amount }]);
  const amounts = [parts.addedBefore, ...causes.map(({ amount }) => amount), rounding];
  const together = addQuotients(amounts.filter((one) => one !== null));
  return [
    ...row('before', 'Added by the bills before', parts.addedBefore),
    ...causes.flatMap(({ name, amount }): readonly ExplanationRow[] =>
      amount === null ? [] : [{ is: 'cause', label: name, amount }],
    ),
    ...row('rounding', 'Rounding of the total', rounding),
    { is: 'together', label: 'Together', amount: together },
  ];
}
