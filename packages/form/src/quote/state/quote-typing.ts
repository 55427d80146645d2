import type { QuoteDocument } from '@unitbook/engine';
import type { Taken } from '../document/edit-quote.ts';

/** What typing is told of, and where it goes. */
export interface TypingHost {
  readonly shadowRoot: ShadowRoot | null;
  readonly updateComplete: Promise<unknown>;
  readonly requestUpdate: () => void;
}

interface TakenOut {
  readonly told: string;
  readonly putBack: Taken['putBack'];
}

interface Typed {
  readonly typed: string;
  readonly kept: string;
}

/** What is typed just now, how it was typed, what was taken out, and which folds are open. */
export class QuoteTyping {
  /** The id of the input that is being typed in; '' once it is left. */
  field = '';
  private takenOut: readonly TakenOut[] = [];
  private readonly typed = new Map<string, Typed>();
  private readonly opened = new Map<string, boolean>();
  private readonly host: TypingHost;

  constructor(host: TypingHost) {
    this.host = host;
  }

  /** Another quote lies open: what was typed and taken out is not about it. */
  forget(): void {
    this.takenOut = [];
    this.typed.clear();
  }

  readonly note = ({ type }: Event): void => {
    const { shadowRoot, requestUpdate } = this.host;
    const active = shadowRoot?.activeElement;
    const isText = active instanceof HTMLInputElement && active.type === 'text';
    const field = type === 'input' && isText ? active.id : '';
    if (field === this.field) return;
    this.field = field;
    requestUpdate.call(this.host);
  };

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

  readonly isOpen = (key: string, otherwise: boolean): boolean => this.opened.get(key) ?? otherwise;

  readonly setOpen = (key: string, isOpen: boolean): void => {
    if (this.opened.get(key) === isOpen) return;
    this.opened.set(key, isOpen);
    this.host.requestUpdate();
  };

  /**
   * Go to a field, or to the first of a group of them, once it is drawn: the fold that it is in may have to open first.
   */
  readonly focusField = (id: string): void => {
    const go = (): void => {
      const root = this.host.shadowRoot;
      const within = `:is(input, select, textarea)[id^="${CSS.escape(id)}-"]`;
      const field = root?.getElementById(id) ?? root?.querySelector<HTMLElement>(within);
      field?.focus();
      if (field instanceof HTMLInputElement && field.type === 'text') field.select();
    };
    void this.host.updateComplete.then(() => {
      requestAnimationFrame(go);
    });
  };
}
