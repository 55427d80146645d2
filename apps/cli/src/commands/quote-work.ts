import {
  BLOCK,
  joinDraws,
  prepareQuote,
  quoteBatterySizes,
  quoteBilledUnits,
  quoteBounds,
  quoteDrawer,
  quoteFacts,
  quoteSizes,
  quoteWarnings,
  summariseDraws,
  usualBatteries,
  usualSizes,
  workOutCases,
  workOutQuote,
  type DrawSummary,
  type Finding,
  type FlyerFacts,
  type Outcome,
  type PreparedQuote,
  type Quote,
  type QuoteInput,
  type QuoteProfile,
  type QuoteResult,
  type Tariff,
} from '@unitbook/engine';
import { withMissingNamed } from './quote-missing.ts';

/** Random draws of a quote that says what is uncertain; null: it does not, or none are wanted. */
function drawsOf(prepared: PreparedQuote, tariff: Tariff, count: number): Outcome<DrawSummary | null> {
  if (prepared.input.document.uncertainty === undefined || count === 0) return { value: null, findings: [] };
  const { value: drawer, findings } = quoteDrawer(prepared, tariff);
  if (drawer === null) return { value: null, findings };
  const blocks = Array.from({ length: count / BLOCK }, (_, block) => drawer.draw(block));
  const draws = joinDraws(blocks);
  return { value: draws.count === 0 ? null : summariseDraws(draws), findings };
}

/** The other end, where own use is not known: as much of it as use and generation allow. */
function mostOwnUse(input: QuoteInput, tariff: Tariff): Quote | null {
  return input.share === null ? (quoteBounds(input, tariff).value?.high ?? null) : null;
}

/**
 * Findings of which each is told once: bills without the plant say again what those with it have said, and draws
 * under a policy what its case has said.
 */
function once(findings: readonly Finding[]): readonly Finding[] {
  const texts = findings.map(({ code, found }) => `${code} ${found}`);
  return findings.filter((_, at) => texts.indexOf(texts[at] ?? '') === at);
}

/** A quote worked out, and what its tariff says besides. */
export interface WorkedQuote {
  readonly result: QuoteResult;
  readonly facts: FlyerFacts;
}

/** What a quote is worked out with besides its document. */
export interface WorkOptions {
  readonly draws: number;
  readonly profile: QuoteProfile | null;
}

/**
 * Work a quote out in all its parts, and doubt it.
 *
 * @param options  how many draws are wanted; the profile, if there is one
 * @returns      null where it cannot be billed under the tariff
 */
export function workOut(
  input: QuoteInput,
  tariff: Tariff,
  { draws, profile }: WorkOptions,
): Outcome<WorkedQuote | null> {
  const { value: prepared, findings } = prepareQuote(input, tariff, undefined, { profile });
  if (prepared === null) return { value: null, findings: once(withMissingNamed(findings, tariff)) };
  const quote = workOutQuote(prepared);
  const range = usualSizes(input.watts);
  const sizes = quoteSizes(prepared, range);
  const batteries = quoteBatterySizes(prepared, range, usualBatteries(input.document));
  const cases = workOutCases(input, tariff, { profile });
  const facts = quoteFacts(prepared);
  const drawn = drawsOf(prepared, tariff, draws);
  const ofCases = cases.flatMap((one) => one.findings);
  const result = {
    quote,
    mostOwnUse: profile === null ? mostOwnUse(input, tariff) : null,
    cases,
    sizes,
    batteries,
    billed: quoteBilledUnits(prepared),
    draws: drawn.value,
  };
  const doubts = quoteWarnings(quote, facts);
  return {
    value: { result, facts },
    findings: once([...findings, ...doubts, ...ofCases, ...drawn.findings]),
  };
}
