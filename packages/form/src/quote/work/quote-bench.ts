import {
  checkQuote,
  prepareAgain,
  prepareQuote,
  quoteFinding,
  workOutQuote,
  type Finding,
  type PreparedQuote,
  type Quote,
  type QuoteDocument,
  type QuoteInput,
  type QuoteProfile,
  type Tariff,
} from '@unitbook/engine';
import { sizedInput } from './sized-input.ts';

/** A quote worked out, as far as it can be. */
export interface WorkedOut {
  readonly quote: Quote | null;
  readonly prepared: PreparedQuote | null;
  readonly findings: readonly Finding[];
}

/** What a quote is worked out by besides its document. */
export interface Basis {
  readonly tariff: Tariff;
  /** Use and generation by intervals; null: own use is by the share. */
  readonly profile: QuoteProfile | null;
}

interface Made {
  readonly key: string;
  readonly basis: Basis;
  readonly prepared: PreparedQuote;
  readonly findings: readonly Finding[];
}

/**
 * What the bills, and what is said of them, hang on besides units and rises: as long as it stays, they need not be
 * prepared anew. With a profile that is which months have units, too.
 */
function keyOf({ document, years, start, share, use, generation }: QuoteInput, isByProfile: boolean): string {
  const { escalation, quantities, payable, battery, tariff, units, settlementDay = '' } = document;
  const rising = Object.keys(escalation.charges);
  const own = isByProfile ? [...use, ...generation].map((one) => one > 0) : [];
  const said = { rising, quantities, payable, units, battery, tariff, years, start, settlementDay, own };
  return JSON.stringify([said, share === null]);
}

const isSame = (one: Basis, other: Basis): boolean =>
  one.tariff === other.tariff && one.profile === other.profile;

/** The share that is not used beside a profile, as it is now. */
function withShare(finding: Finding, { document }: QuoteInput): Finding {
  const { code, path } = finding;
  const share = document.selfUse?.share;
  if (code !== 'quote/share-beside-profile' || share === undefined) return finding;
  return quoteFinding(code, { path }, { share });
}

const isOfProfile = ({ path }: Finding): boolean => path[0] === 'profile';

/**
 * Works quotes out one after the other. A slider changes units or rates of return at each move: bills are then
 * made by what was prepared for the move before, well within a frame.
 */
export class QuoteBench {
  private made: Made | null = null;

  /**
   * What the engine throws is a fault of ours, not of what was typed: it is told, and the page goes on.
   *
   * @param document  with plain numbers
   * @param basis     of the bills; null: no tariff is open
   * @param watts     a size to be tried; null: as it is offered
   */
  workOut(document: QuoteDocument, basis: Basis | null, watts: number | null): WorkedOut {
    try {
      return this.attempt(document, basis, watts);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      return {
        quote: null,
        prepared: null,
        findings: [quoteFinding('quote/cannot-project', { path: ['years'] }, { why })],
      };
    }
  }

  private attempt(document: QuoteDocument, basis: Basis | null, watts: number | null): WorkedOut {
    const checked = checkQuote(document);
    if (checked.value === null || basis === null)
      return { quote: null, prepared: null, findings: checked.findings };
    const { prepared, findings } = this.prepare(sizedInput(checked.value, watts), basis);
    const all = [...checked.findings, ...findings];
    return { quote: prepared === null ? null : workOutQuote(prepared), prepared, findings: all };
  }

  private prepare(
    input: QuoteInput,
    basis: Basis,
  ): { readonly prepared: PreparedQuote | null; readonly findings: readonly Finding[] } {
    const { tariff, profile } = basis;
    const key = keyOf(input, profile !== null);
    const before = this.made !== null && isSame(this.made.basis, basis) ? this.made : null;
    const again = before?.key === key ? prepareAgain(before.prepared, input) : null;
    if (before !== null && again !== null)
      return { prepared: again, findings: before.findings.map((one) => withShare(one, input)) };
    const read = before?.prepared.profile ?? null;
    const { value, findings: found } = prepareQuote(input, tariff, undefined, { profile: read ?? profile });
    // Intervals that were read before are not looked at once more: what was said of them stays.
    const findings = read === null ? found : [...found, ...(before?.findings ?? []).filter(isOfProfile)];
    this.made = value === null ? null : { key, basis, prepared: value, findings };
    return { prepared: value, findings };
  }
}
