import type { ACCURACY_CLASSES } from './account-document.ts';
import { decimalPlaces, decimalToWhole } from '../quantity/index.ts';

/** A class of accuracy that a nameplate names. */
export type AccuracyClass = (typeof ACCURACY_CLASSES)[number];

/** The registers of a household: what is taken, what is given, what the plant made. */
export type RegisterId = 'import' | 'export' | 'generation';

/** Register readings are whole numbers of this many decimals: thousandths. */
export const READING_PLACES = 3;

/** A counter of a meter: its width, and what a reading is multiplied by. */
export interface Register {
  /** What it counts. */
  readonly id: RegisterId;
  /** The rate whose units it counts; null where it counts all. */
  readonly rate: string | null;
  /** Its name in the account: "import", or "import-1" for rate 1. */
  readonly key: string;
  /** The time block of the tariff that its rate stands for; null where the account names none. */
  readonly block: string | null;
  readonly digits: number;
  readonly decimals: number;
  /** Thousandths of its last digit: 100 with one decimal. */
  readonly step: number;
  /** The first number it cannot show, in thousandths: 5 digits make 100 000 000. */
  readonly fullScale: number;
  /** The class on the nameplate of its meter; null where the account does not say. */
  readonly accuracyClass: AccuracyClass | null;
  /** The multiplying factor as a quotient of whole numbers. */
  readonly factor: { readonly numerator: number; readonly denominator: number; readonly text: string };
}

/**
 * Make a register from what an account document says of it.
 *
 * @param digits, decimals   whole numbers as text
 * @param multiplyingFactor  decimal text above 0
 * @param rate, block        left out: it counts all units
 * @example
 * makeRegister({ id: 'import', digits: '5', decimals: '1', multiplyingFactor: '1' }).fullScale //=> 100000000
 */
export function makeRegister(parts: {
  readonly id: RegisterId;
  readonly digits: string;
  readonly decimals: string;
  readonly multiplyingFactor: string;
  readonly rate?: string;
  readonly block?: string | undefined;
  readonly accuracyClass?: AccuracyClass | undefined;
}): Register {
  const digits = decimalToWhole(parts.digits, 0);
  const decimals = decimalToWhole(parts.decimals, 0);
  const places = decimalPlaces(parts.multiplyingFactor);
  return {
    id: parts.id,
    rate: parts.rate ?? null,
    key: parts.rate === undefined ? parts.id : `${parts.id}-${parts.rate}`,
    block: parts.block ?? null,
    accuracyClass: parts.accuracyClass ?? null,
    digits,
    decimals,
    step: 10 ** (READING_PLACES - decimals),
    fullScale: 10 ** (digits + READING_PLACES),
    factor: {
      numerator: decimalToWhole(parts.multiplyingFactor, places),
      denominator: 10 ** places,
      text: parts.multiplyingFactor,
    },
  };
}
