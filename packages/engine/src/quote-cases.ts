import type { Finding } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import { prepareQuote, readProfileOf, type PreparedQuote, type PrepareOptions } from './quote-prepare.ts';
import { workOutQuote } from './quote-work-out.ts';
import {
  inputOfCase,
  quoteFinding,
  usualCases,
  withSettlement,
  yearStart,
  type Quote,
  type QuoteCase,
  type QuoteInput,
} from './quote/index.ts';

/** A case worked out. */
export interface CaseResult {
  readonly name: string;
  readonly id: string;
  /** null where it could not be billed; the findings say why. */
  readonly quote: Quote | null;
  readonly findings: readonly Finding[];
}

type Document = Tariff['document'];

/** What a close says where surplus lapses; what it said of the payment goes. */
function lapsed<Close extends { readonly surplus?: string | undefined }>(close: Close): Close {
  if (close.surplus !== 'paid') return close;
  return { ...close, surplus: 'lapses', rate: undefined, inBill: undefined, label: undefined };
}

/** A tariff under which no surplus is paid out. */
function withoutSurplus(document: Document): Document {
  const settlements = document.settlements.map((rule) => {
    if (rule.scheme === 'unit-netting') return { ...rule, close: lapsed(rule.close) };
    const ledgers = rule.ledgers?.map((ledger) => {
      const { close } = ledger;
      return close === undefined ? ledger : { ...ledger, payment: undefined, close: lapsed(close) };
    });
    return ledgers === undefined ? rule : { ...rule, ledgers };
  });
  return { ...document, settlements };
}

/** The bills of a case, or why there are none. */
export interface PreparedCase {
  readonly prepared: PreparedQuote | null;
  readonly findings: readonly Finding[];
}

/** The tariff as it would be in a case. */
function documentOfCase(
  document: Document,
  { start }: QuoteInput,
  { policy, isSurplusUnpaid }: QuoteCase['change'],
): Document {
  const settlement = policy?.policy.settlement;
  const own =
    policy === undefined || settlement === undefined
      ? document
      : withSettlement(document, settlement, yearStart(start, policy.from));
  return isSurplusUnpaid === true ? withoutSurplus(own) : own;
}

/**
 * Make the bills of a case ready.
 *
 * @param options  as of the quote; a case with a share of own use of its own is not by the profile
 */
export function prepareCase(
  input: QuoteInput,
  tariff: Tariff,
  { name, change }: QuoteCase,
  options: PrepareOptions = {},
): PreparedCase {
  const changed = (document: Document): Document => documentOfCase(document, input, change);
  const isByShare = change.policy?.policy.selfUse !== undefined;
  const own = isByShare ? { ...options, profile: null } : options;
  const prepared = prepareQuote(inputOfCase(input, change), tariff, changed, own);
  if (prepared.value !== null) return { prepared: prepared.value, findings: [] };
  const [first] = prepared.findings.filter(({ severity }) => severity === 'error');
  const why = first === undefined ? '' : first.found;
  return {
    prepared: null,
    findings: [quoteFinding('quote/case-not-billed', { path: ['policies'] }, { name, why })],
  };
}

/**
 * Work one case of a quote out: every bill of the life anew.
 *
 * @param tariff   as it is today
 * @param options  as the quote is prepared with
 */
export function workOutCase(
  input: QuoteInput,
  tariff: Tariff,
  one: QuoteCase,
  options: PrepareOptions = {},
): CaseResult {
  const { id, name, change } = one;
  const { prepared, findings } = prepareCase(input, tariff, one, options);
  const quote = prepared === null ? null : workOutQuote(prepared, change.isSubsidyRefused !== true);
  return { id, name, quote, findings };
}

/**
 * Every usual case of a quote.
 *
 * @param options  as the quote is prepared with
 */
export function workOutCases(
  input: QuoteInput,
  tariff: Tariff,
  options: PrepareOptions = {},
): readonly CaseResult[] {
  // A profile is read once for all.
  const profile = readProfileOf(options.profile, tariff).value ?? options.profile;
  return usualCases(input).map((one) => workOutCase(input, tariff, one, { ...options, profile }));
}
