import type { BillFacts } from './facts.ts';
import type { Figures } from './figures.ts';

/** The stages of a bill, in the order in which a difference is put down to causes. */
export const STAGES = ['readings', 'netting', 'credit', 'slabs', 'charges', 'account'] as const;

/** A stage of a bill. */
export type Stage = (typeof STAGES)[number];

/** The numbers of a meter: of the account, with those that were there before, and as the bill prints it. */
export interface KnownSerials {
  readonly own: readonly string[];
  readonly printed: string | null;
}

/** What is known besides the facts of the bill itself; whatever is not known is left out. */
export interface CauseContext {
  /** What the bill shows. */
  readonly printed: Figures;
  /** Read status of the bill. */
  readonly status: 'actual' | 'estimated' | null;
  /** The facts of the bill before, right as far as is known. */
  readonly before: BillFacts | null;
  /** What the bill before printed. */
  readonly printedBefore: Figures | null;
  /** Credit that the bill before left by the right chain, by ledger. */
  readonly closingBefore: Readonly<Record<string, number>> | null;
  /** Tariffs of other categories of the same place. */
  readonly otherTariffs: readonly BillFacts['tariff'][];
  /** The day on which the plant was connected for net metering; null: not known, or before the period. */
  readonly connected: number | null;
  /** Whether all of the bill before was paid; undefined: not known. */
  readonly paidBefore: boolean | undefined;
  /** Numbers of meters, by "grid" and "generation". */
  readonly serials: Readonly<Record<string, KnownSerials>>;
}

/** One way in which a cause makes a bill wrong. */
export interface Variant {
  /** Tells variants of a cause apart, such as "import" or "12982". */
  readonly id: string;
  /** What was done, in a sentence that begins with a capital letter. */
  readonly what: string;
  readonly facts: BillFacts;
  /** Printed figures from which the variant was worked out: that it shows them proves nothing. */
  readonly fitted?: readonly string[];
  /** What speaks for it or against it besides the figures. */
  readonly signs?: readonly Sign[];
}

/** Something known that speaks for a cause, or against it. */
export interface Sign {
  readonly speaks: 'for' | 'against';
  readonly why: string;
}

/**
 * A mistake that is known to be made: a small change of what a bill is made of, run through the same engine. Each is
 * a file of its own.
 */
export interface Cause {
  /** Short and stable, such as "export-not-read". */
  readonly id: string;
  /** What went wrong, in a few words. */
  readonly name: string;
  readonly stage: Stage;
  /** What decides whether it was so. */
  readonly evidence: readonly string[];
  /** Where the mistake is on record. */
  readonly source?: string;
  /** The ways in which it can make a bill of these facts wrong; none where it cannot. */
  readonly variants: (facts: BillFacts, context: CauseContext) => readonly Variant[];
}

/** The place of a stage in the order of attribution. */
export const stageAt = ({ stage }: Pick<Cause, 'stage'>): number => STAGES.indexOf(stage);
