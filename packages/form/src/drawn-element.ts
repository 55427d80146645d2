import { render, type TemplateResult, type nothing } from 'lit-html';
import { bookStyles } from './styles/book.ts';

let sheet: CSSStyleSheet | null = null;

/** The styles of all elements, parsed once; on being asked, since only a browser can. */
function styleSheet(): CSSStyleSheet {
  if (sheet === null) {
    sheet = new CSSStyleSheet();
    sheet.replaceSync(bookStyles);
  }
  return sheet;
}

/** The properties set since the last drawing, each with its value before. */
export type Changed = ReadonlyMap<string, unknown>;

/**
 * An element that draws itself anew when one of its properties is set: once for all that are set in one
 * go. Lit's templates without Lit's own element class: that serves attributes, converters and old
 * browsers, which two elements set from a script have no use for, and is a twentieth of the whole page.
 */
export abstract class DrawnElement extends HTMLElement {
  /** Fulfilled once everything set so far is drawn. */
  updateComplete: Promise<void> = Promise.resolve();
  private readonly values = new Map<string, unknown>();
  private changed: Map<string, unknown> | null = null;

  constructor() {
    super();
    this.attachShadow({ mode: 'open' }).adoptedStyleSheets = [styleSheet()];
  }

  /**
   * Make properties of a class draw its elements anew. Such a property is declared only: a field would hide
   * the accessor made here.
   *
   * @param names  of the properties
   */
  static drawsFor(names: readonly string[]): void {
    for (const name of names)
      Object.defineProperty(this.prototype, name, {
        get(this: DrawnElement) {
          return this.values.get(name);
        },
        set(this: DrawnElement, value: unknown) {
          this.note(name, value);
        },
      });
  }

  private note(name: string, value: unknown): void {
    const before = this.values.get(name);
    if (Object.is(before, value)) return;
    this.values.set(name, value);
    if (this.changed === null) {
      this.changed = new Map();
      this.updateComplete = Promise.resolve().then(() => {
        this.draw();
      });
    }
    if (!this.changed.has(name)) this.changed.set(name, before);
  }

  private draw(): void {
    try {
      this.willDraw(this.changed ?? new Map());
    } finally {
      // What `willDraw` sets is part of this drawing; whatever is set from here on makes the next.
      this.changed = null;
    }
    if (this.shadowRoot !== null) render(this.template(), this.shadowRoot);
  }

  /** What has to be thought over before a drawing; what it sets is drawn with it. */
  protected abstract willDraw(changed: Changed): void;

  /** What the element shows. */
  protected abstract template(): TemplateResult | typeof nothing;
}
