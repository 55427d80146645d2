import type { DayNumber, Figure, Finding, Period, Quotient } from '../../quantity/index.ts';
import type { Surprise } from '../surprises/surprise.ts';
import type { BillRefund } from './refund.ts';
import type { LimitCheck } from './limitation.ts';
import type { NearestCauses } from './nearest.ts';
import type { ClauseReference } from './source-of-clause.ts';

/** Which bill is meant. */
export interface BillReference {
  /** Number of the bill as printed; null where it was not typed. */
  readonly number: string | null;
  readonly period: Period;
  readonly days: number;
  readonly issued: DayNumber | null;
  readonly due: DayNumber | null;
}

/** A printed figure beside the right one, with the working of the right one. */
export interface FindingLine {
  /** See {@link FIGURE}. */
  readonly name: string;
  readonly label: string;
  readonly printed: Figure;
  /** Explains itself; null where a right bill has no such figure. */
  readonly computed: Figure | null;
  /** Printed less right; null where nothing is computed. */
  readonly difference: Quotient | null;
  readonly clauses: readonly ClauseReference[];
}

/** How sure an explanation is. */
export type FindingConfidence = 'proven' | 'likely' | 'possible';

/** A cause in an explanation, and what it adds to the sum of the bill. */
export interface FindingCause {
  readonly id: string;
  readonly name: string;
  /** What was done, in a sentence. */
  readonly what: string;
  /** null where the bill does not print what is to be paid. */
  readonly amount: Quotient | null;
  /** The rules that it breaks. */
  readonly clauses: readonly ClauseReference[];
  /** What decides whether it was so. */
  readonly evidence: readonly string[];
  /** What speaks for it, or against it, besides the figures. */
  readonly signs: readonly { readonly speaks: 'for' | 'against'; readonly why: string }[];
}

/** Causes that together reproduce every printed figure. */
export interface FindingExplanation {
  readonly confidence: FindingConfidence;
  readonly causes: readonly FindingCause[];
  /** What the bills before add, where the causes explain the bill as the books handed it on; null: nothing. */
  readonly addedBefore: Quotient | null;
  /** What rounding of the total adds to the amounts of the causes; null where they have none. */
  readonly rounding: Quotient | null;
}

/** A figure that is not printed and would decide between explanations that tie. */
export interface FindingDecider {
  readonly name: string;
  readonly label: string;
  /** What each explanation shows, in their order; null: no such figure. */
  readonly values: readonly (Figure | null)[];
}

/** Something that is held to show that a finding is right. */
export type HeldEvidence =
  | { readonly kind: 'bill'; readonly bill: BillReference }
  | {
      readonly kind: 'bill-before';
      readonly bill: BillReference;
      readonly closing: readonly Figure[];
      readonly readings: readonly Figure[];
    }
  | { readonly kind: 'own-readings'; readonly days: readonly DayNumber[] }
  | {
      readonly kind: 'payment';
      readonly of: 'bill' | 'bill-before';
      readonly on: DayNumber;
      readonly amount: Figure;
    }
  | { readonly kind: 'stated'; readonly what: string };

/** What is held, and what is still wanted. */
export interface FindingEvidence {
  readonly held: readonly HeldEvidence[];
  readonly wanted: readonly string[];
}

/** What a wrong bill does to others: whoever knows the chain of bills fills it in. */
export interface LaterEffects {
  /** Bills after it that come out otherwise: printed less right of what is to be paid. */
  readonly bills: readonly {
    readonly number: string | null;
    readonly period: Period;
    readonly difference: Quotient;
  }[];
  /** Arrears and late fees that follow from it; 0: none. */
  readonly arrears: Quotient;
  readonly lateFee: Quotient;
  /** Printed less right of its own bill and those; left out: not summed. */
  readonly money?: Quotient;
  /** What the books hold too much (below 0: too little) at the end, by ledger; left out: not known. */
  readonly bank?: readonly { readonly ledger: string; readonly units: Quotient }[];
}

/** What a bill hands on, as printed and as it should be. */
export interface HandedOn {
  readonly ledger: string;
  readonly label: string;
  /** null where the bill does not print it. */
  readonly printed: Figure | null;
  readonly right: Figure;
}

/** Something that should be done. */
export interface Recommendation {
  readonly id:
    | 'revise-bill'
    | 'pay-back'
    | 'withdraw'
    | 'pay-credit'
    | 'keep-aside'
    | 'correct-credit'
    | 'correct-readings'
    | 'test-meter'
    | 'correct-rules'
    | 'clear-account'
    | 'show-working'
    | 'decide';
  readonly text: string;
}

/** In whose favour a bill is wrong. */
export type Favour = 'supplier' | 'household' | 'none';

/** What became of a finding at the supplier. */
export type FindingStatus = 'open' | 'accepted' | 'rejected' | 'escalated';

/** What the supplier said to a finding. */
export interface SupplierReply {
  readonly status: FindingStatus;
  /** The day of the reply; null where it is not known. */
  readonly on: DayNumber | null;
  /** In its own words; empty: none. */
  readonly words: string;
}

/** Everything that is to be said of one bill that is wrong, whichever way. */
export interface BillFinding {
  /** "F-01" and so on, in order of time. */
  readonly id: string;
  /** null: there is none yet, the finding is open. */
  readonly reply: SupplierReply | null;
  readonly account: string;
  /** Serial number of the two-way meter; null where it is not known. */
  readonly meter: string | null;
  readonly bill: BillReference;
  /** Whether it is wrong only because it goes on from a bill before it that is. */
  readonly isConsequence: boolean;
  /** The figure that the finding is about: what is to be paid, or the first that differs where that is not printed. */
  readonly claim: FindingLine;
  /** Every printed figure that differs, in the order of paper. */
  readonly lines: readonly FindingLine[];
  /** What the bill says that cannot all be true, whatever the tariff. */
  readonly inconsistencies: readonly Finding[];
  /** Of what is to be paid, or of the sum; null where the bill prints neither. */
  readonly difference: Quotient | null;
  readonly favour: Favour;
  /** Surest first; none: not explained. */
  readonly explanations: readonly FindingExplanation[];
  /** Names of the other causes: none was found to reproduce what is printed. Empty where nothing explains the bill. */
  readonly ruledOut: readonly string[];
  /** Where nothing explains the bill: what comes nearest, by the names of its causes. */
  readonly nearest: readonly NearestCauses[];
  readonly deciders: readonly FindingDecider[];
  /** The rules broken, each once. */
  readonly clauses: readonly ClauseReference[];
  readonly evidence: FindingEvidence;
  /** Of a claim of the household, or of the supplier where the bill is too low; null where no rule is known. */
  readonly limit: LimitCheck | null;
  /** null where what is to be paid is not printed. */
  readonly refund: BillRefund | null;
  readonly handedOn: readonly HandedOn[];
  readonly effects: LaterEffects | null;
  readonly recommendations: readonly Recommendation[];
}

/** A bill that is right, with what may surprise on it. */
export interface RightBill {
  readonly bill: BillReference;
  readonly surprises: readonly Surprise[];
}

/** A printed figure that cannot be read: of a bill with one it cannot be said that it is right. */
export interface UnreadFigure {
  /** What the figure is called. */
  readonly label: string;
  /** Why it cannot be read. */
  readonly finding: Finding;
}

/** A bill of which it cannot be said whether it is right. */
export interface UndecidedBill {
  readonly bill: BillReference;
  /** What is to be paid by what is known; null where no bill can be made. */
  readonly payable: Figure | null;
  /** What is to be paid for each balance that may have been brought forward. */
  readonly alternatives: readonly {
    readonly label: string;
    readonly opening: Figure;
    readonly payable: Figure;
  }[];
  /** Why no bill can be made. */
  readonly why: readonly Finding[];
  /** The printed figures that cannot be read. */
  readonly unread: readonly UnreadFigure[];
}
