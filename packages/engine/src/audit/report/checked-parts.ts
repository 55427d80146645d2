import type { DayNumber, Figure, Finding, Quotient } from '../../quantity/index.ts';
import type { Attribution } from '../attribution.ts';
import type { Cause } from '../cause.ts';
import type { BillFacts } from '../facts.ts';
import type { ComparedFigure, Figures } from '../figures.ts';
import type { PrintedBill } from '../printed.ts';
import type { Attempt } from '../search.ts';
import type { FindingConfidence, LaterEffects, SupplierReply } from './bill-finding.ts';
import type { DisputeVersion } from './dispute-schema.ts';

/** A printed bill that was checked, as far as a finding is made of it. */
export interface CheckedParts {
  readonly printed: PrintedBill;
  readonly verdict: string;
  /** Those of the right bill. */
  readonly facts: BillFacts;
  /** By register or units: whether they are own or printed. */
  readonly sources: Readonly<Record<string, 'own' | 'printed'>>;
  readonly compared: readonly ComparedFigure[];
  readonly explanations: readonly {
    readonly attempt: Attempt;
    readonly confidence: FindingConfidence;
    readonly attribution: Attribution | null;
  }[];
  readonly deciders: readonly { readonly figure: string; readonly values: readonly (Quotient | null)[] }[];
  readonly nearest: readonly Attempt[];
  /** The bill as the books hand it on, where it is explained from there; null: from the right chain. */
  readonly carried: { readonly figures: Figures } | null;
  /** What the printed bill says that cannot all be true. */
  readonly findings: readonly Finding[];
}

/** What a finding is made with besides the checked bill. */
export interface FindingTerms {
  /** "F-01" and so on. */
  readonly id: string;
  readonly account: string;
  /** Serial number of the two-way meter; null where it is not known. */
  readonly meter: string | null;
  /** The bill before, where there is one. */
  readonly before: PrintedBill | null;
  /** Figures of the right bill with their working, by name. */
  readonly derived: ReadonlyMap<string, Figure>;
  /** The causes that were tried. */
  readonly causes: readonly Cause[];
  /** The rules for disputes in force; null where none are known. */
  readonly rules: DisputeVersion | null;
  /** The day of the report: interest runs up to it. */
  readonly on: DayNumber;
  /** Evidence that is at hand, in the words of the causes. */
  readonly held: readonly string[];
  /** What the bill did to others; null where the chain was not looked at. */
  readonly effects: LaterEffects | null;
  /** What the supplier said to it; null: nothing yet. */
  readonly reply: SupplierReply | null;
}
