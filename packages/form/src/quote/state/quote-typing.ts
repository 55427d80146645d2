import type { QuoteDocument } from '@unitbook/engine';
import { PageTyping } from '../../page-typing.ts';
import type { Taken } from '../document/edit-quote.ts';

interface TakenOut {
  readonly told: string;
  readonly putBack: Taken['putBack'];
}

interface Typed {
  readonly typed: string;
  readonly kept: string;
}

/** What is typed just now, how it was typed, what was taken out, and which folds are open. */
export class QuoteTyping extends PageTyping {
  private takenOut: readonly TakenOut[] = [];
  private readonly typed = new Map<string, Typed>();

  /** Another quote lies open: what was typed and taken out is not about it. */
  forget(): void {
    this.takenOut = [];
    this.typed.clear();
  }

  /** What was taken out last, in a sentence; '' for nothing. */
  get removed(): string {
    return this.takenOut.at(-1)?.told ?? '';
  }

  /** Note what was taken out. @returns the quote without it; null where there was nothing */
  readonly take = (taken: Taken | null, told: string): QuoteDocument | null => {
    if (taken === null) return null;
    this.takenOut = [...this.takenOut, { told, putBack: taken.putBack }];
    this.focusField('quote-undo');
    return taken.quote;
  };

  /** The quote with what was taken out last; null where nothing was. */
  readonly undo = (quote: QuoteDocument): QuoteDocument | null => {
    const last = this.takenOut.at(-1);
    if (last === undefined) return null;
    this.takenOut = this.takenOut.slice(0, -1);
    this.focusField(this.takenOut.length > 0 ? 'quote-undo' : 'quote-trial');
    return last.putBack(quote);
  };

  readonly shown = (id: string, kept: string): string => {
    const own = this.typed.get(id);
    return own?.kept === kept ? own.typed : kept;
  };

  readonly noteTyped = (id: string, typed: string, kept: string): void => {
    this.typed.set(id, { typed, kept });
  };
}
