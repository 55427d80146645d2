import {
  isDecimalText,
  decimalToWhole,
  type Finding,
  type QuoteDocument,
  type QuoteProfile,
  type Tariff,
} from '@unitbook/engine';
import { writingFor } from '../../writing/writing.ts';
import { isUnfinished } from '../../view/unfinished.ts';
import { chargesOf, powersOf, type KnownCharge } from '../document/charges.ts';
import { fieldIdOf } from '../document/edit-quote.ts';
import { allFields } from '../document/money-fields.ts';
import type { FieldSource } from '../document/quote-fields.ts';
import { readTypedQuote } from '../document/read-typed-quote.ts';
import type { QuoteBench, WorkedOut } from '../work/quote-bench.ts';
import { quoteWriting, type QuoteWriting } from './quote-writing.ts';

/** Everything the page shows of a quote. */
export interface QuoteView extends WorkedOut {
  readonly writing: QuoteWriting;
  readonly source: FieldSource;
  /** The quote with plain numbers, as the engine reads it. */
  readonly plain: QuoteDocument;
  /** Watts of a size that is tried; null: as it is offered. */
  readonly watts: number | null;
  /** What keeps the quote from being worked out, and is not merely still to type. */
  readonly wrong: readonly Finding[];
}

/** What a view is made of. */
export interface QuoteViewInput {
  readonly document: QuoteDocument;
  readonly tariff: Tariff | null;
  /** Use and generation by intervals; null: own use is by the share. */
  readonly profile: QuoteProfile | null;
  /** kWp of a size to be tried, as typed; '' for none. */
  readonly trial: string;
  /** The id of the input that is being typed in. */
  readonly typing: string;
  readonly bench: QuoteBench;
}

const NONE: readonly KnownCharge[] = [];

/** Watts of a size typed to be tried; null where it is none. */
function wattsOf(trial: string): number | null {
  if (!isDecimalText(trial) || !/^\d{1,5}(\.\d{1,3})?$/.test(trial)) return null;
  const watts = decimalToWhole(trial, 3);
  return watts > 0 ? watts : null;
}

/** What is typed in a field right now is not wrong yet: the rest of it is still to come. */
function whileTyping(finding: Finding, typing: string): Finding {
  const isTyped = finding.severity === 'error' && fieldIdOf(finding.path) === typing;
  return isTyped ? { ...finding, code: 'account/number-missing', remedy: 'the rest of it.' } : finding;
}

/** Work out everything that the page shows of a quote. */
export function viewQuote(input: QuoteViewInput): QuoteView {
  const { document, tariff, profile, trial, typing, bench } = input;
  const charges = tariff === null ? NONE : chargesOf(tariff);
  const source = { document, charges, powers: tariff === null ? [] : powersOf(tariff) };
  const typed = readTypedQuote(document, allFields(source));
  const watts = wattsOf(trial);
  const worked = bench.workOut(typed.document, tariff === null ? null : { tariff, profile }, watts);
  const told = worked.findings.filter(({ path }) => !typed.unread.has(path.join('.')));
  const findings = [...typed.findings, ...told].map((finding) => whileTyping(finding, typing));
  const isWhole = typed.unread.size === 0;
  const currency = tariff?.document.currency ?? 'INR';
  const { locale } = document;
  return {
    quote: isWhole ? worked.quote : null,
    prepared: isWhole ? worked.prepared : null,
    findings,
    writing: quoteWriting(writingFor(locale, currency), { locale, grid: worked.quote?.grid ?? 100 }),
    source,
    plain: typed.document,
    watts,
    wrong: findings.filter((finding) => finding.severity === 'error' && !isUnfinished(finding)),
  };
}
