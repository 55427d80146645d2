/** What typing is told of, and where it goes. */
export interface TypingHost {
  readonly shadowRoot: ShadowRoot | null;
  readonly updateComplete: Promise<unknown>;
  readonly requestUpdate: () => void;
}

/** Which input of a page is being typed in, and which folds are open. */
export class PageTyping {
  /** The id of the input that is being typed in; '' once it is left. */
  field = '';
  private readonly opened = new Map<string, boolean>();
  private readonly host: TypingHost;

  constructor(host: TypingHost) {
    this.host = host;
  }

  /** Note an event of typing, or of an input that is left. */
  readonly note = ({ type }: Event): void => {
    const active = this.host.shadowRoot?.activeElement;
    const isText = active instanceof HTMLInputElement && active.type === 'text';
    const field = type === 'input' && isText ? active.id : '';
    if (field === this.field) return;
    this.field = field;
    this.host.requestUpdate();
  };

  readonly isOpen = (key: string, otherwise: boolean): boolean => this.opened.get(key) ?? otherwise;

  readonly setOpen = (key: string, isOpen: boolean): void => {
    if (this.opened.get(key) === isOpen) return;
    this.opened.set(key, isOpen);
    this.host.requestUpdate();
  };

  /**
   * Go to an element, or to the first input of a group of them, once it is drawn: the fold that it is in may have to
   * open first.
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
