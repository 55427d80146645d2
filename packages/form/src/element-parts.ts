import { unsafeCSS, type CSSResult, type PropertyDeclarations } from 'lit';
import { bookStyles } from './styles/book.ts';

/** The styles of all elements; our own text, so nothing in it is unsafe. */
export const styleSheet: CSSResult = unsafeCSS(bookStyles);

/** Properties set from a script only: none of them is an attribute. */
export function drawnProperties(names: readonly string[]): PropertyDeclarations {
  return Object.fromEntries(names.map((name) => [name, { attribute: false }]));
}
