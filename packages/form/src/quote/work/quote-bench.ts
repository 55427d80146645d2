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
  type Tariff,
} from '@unitbook/engine';
import { sizedInput } from './sized-input.ts';

/** A quote worked out, as far as it can be. */
export interface WorkedOut {
  readonly quote: Quote | null;
  readonly prepared: PreparedQuote | null;
  readonly findings: readonly Finding[];
}

interface Made {
  readonly key: string;
  readonly tariff: Tariff;
  readonly prepared: PreparedQuote;
  readonly findings: readonly Finding[];
}

/** What the bills hang on besides units and rises: as long as it stays, they need not be prepared anew. */
function keyOf({ document, years, start, share }: QuoteInput): string {
  const { escalation, quantities, payable, battery } = document;
  const rising = Object.keys(escalation.charges);
  return JSON.stringify([rising, quantities, payable, battery, years, start, share === null]);
}

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
   * @param tariff    of the bills; null: none is open
   * @param watts     a size to be tried; null: as it is offered
   */
  workOut(document: QuoteDocument, tariff: Tariff | null, watts: number | null): WorkedOut {
    try {
      return this.attempt(document, tariff, watts);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      return {
        quote: null,
        prepared: null,
        findings: [quoteFinding('quote/cannot-project', { path: ['years'] }, { why })],
      };
    }
  }

  private attempt(document: QuoteDocument, tariff: Tariff | null, watts: number | null): WorkedOut {
    const checked = checkQuote(document);
    if (checked.value === null || tariff === null)
      return { quote: null, prepared: null, findings: checked.findings };
    const { prepared, findings } = this.prepare(sizedInput(checked.value, watts), tariff);
    const all = [...checked.findings, ...findings];
    return { quote: prepared === null ? null : workOutQuote(prepared), prepared, findings: all };
  }

  private prepare(
    input: QuoteInput,
    tariff: Tariff,
  ): { readonly prepared: PreparedQuote | null; readonly findings: readonly Finding[] } {
    const key = keyOf(input);
    const { made } = this;
    if (made !== null && made.key === key && made.tariff === tariff) {
      const prepared = prepareAgain(made.prepared, input);
      if (prepared !== null) return { prepared, findings: made.findings };
    }
    const { value, findings } = prepareQuote(input, tariff);
    this.made = value === null ? null : { key, tariff, prepared: value, findings };
    return { prepared: value, findings };
  }
}
