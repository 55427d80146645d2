import {
  explanationParts,
  explanationRows,
  figureLabel,
  type BillExplanation,
  type CheckedBill,
  type Decider,
  type TariffDocument,
} from '@unitbook/engine';
import type { Writing } from '../../writing/writing.ts';
import { figureText, isMoney, signed, sumText } from './figure-words.ts';

/** How sure an explanation is, in words. */
export const CONFIDENCE_WORDS = {
  proven: {
    word: 'Proven',
    why: 'it makes every printed figure, and nothing else that is known does.',
  },
  likely: {
    word: 'Likely',
    why: 'it makes every printed figure, and so does another explanation: one more fact decides.',
  },
  possible: {
    word: 'Possible',
    why: 'it makes every printed figure, but they are too few, or something speaks against it.',
  },
} as const;

/** A cause in an explanation: its name, what was done in a sentence, and what it adds. */
export interface CauseRow {
  readonly name: string;
  readonly what: string;
  /** '' where the bill does not print what is to be paid. */
  readonly adds: string;
}

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

/** The causes of an explanation in the order in which they were applied. */
export function causeRows({ attempt, attribution }: BillExplanation, writing: Writing): readonly CauseRow[] {
  return attempt.steps.map(({ cause, variant }, at) => {
    const amount = attribution?.parts[at]?.amount;
    return {
      name: cause.name,
      what: sentence(variant.what),
      adds: amount === undefined ? '' : signed(amount, sumText(amount, writing)),
    };
  });
}

/** A row of what an explanation comes to. */
export interface SumRow {
  readonly label: string;
  readonly adds: string;
  readonly isTogether: boolean;
}

/**
 * What sums up to the difference: bills before, each cause, rounding, and all together.
 *
 * @returns  none where the bill does not print what is to be paid
 */
export function sumRows(
  explanation: BillExplanation,
  checked: Pick<CheckedBill, 'compared' | 'carried'>,
  writing: Writing,
): readonly SumRow[] {
  return explanationRows(explanationParts(checked, explanation)).map(({ is, label, amount }) => ({
    label,
    adds: signed(amount, sumText(amount, writing)),
    isTogether: is === 'together',
  }));
}

/** What decides whether it was so, each once. */
export function evidenceOf({ attempt }: BillExplanation): readonly string[] {
  return [...new Set(attempt.steps.flatMap(({ cause }) => cause.evidence))];
}

/** "Credit not brought forward and Fuel surcharge on import" */
export function namesOf({ attempt }: Pick<BillExplanation, 'attempt'>): string {
  return attempt.steps.map(({ cause }) => cause.name).join(' and ');
}

/** A figure that would decide between explanations, and what each says of it. */
export interface DeciderRow {
  readonly label: string;
  /** In the order of the explanations. */
  readonly values: readonly string[];
}

/** How many figures that would decide are told: more of them say nothing new. */
const MOST = 5;

/** What would decide between explanations that tie. */
export function deciderRows(
  { deciders }: Pick<CheckedBill, 'deciders'>,
  tariff: TariffDocument,
  writing: Writing,
): readonly DeciderRow[] {
  return deciders.slice(0, MOST).map(({ figure, values }: Decider) => ({
    label: figureLabel(figure, tariff),
    values: values.map((value) => {
      if (value === null) return 'no such line';
      return isMoney(figure) ? sumText(value, writing) : figureText(figure, value, writing);
    }),
  }));
}
