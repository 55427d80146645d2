import { html, type TemplateResult } from 'lit';
import { renderPlainSelect } from '../../render/select.ts';
import { putAt } from '../document/edit-quote.ts';
import { offerFields } from '../document/quote-fields.ts';
import { renderLanguageProblem } from '../paper/language-problem.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderFields } from './quote-field.ts';

/** Each language by its own name, for whoever reads no other. */
const LOCALES = [
  ['en-IN', 'English, 1,23,456.78 (India)'],
  ['hi-IN', 'हिन्दी, 1,23,456.78'],
  ['en-GB', 'English, 123,456.78'],
  ['de-DE', 'Deutsch, 123.456,78'],
  ['fr-FR', 'Français, 123 456,78'],
  ['es-ES', 'Español, 123.456,78'],
] as const;

/** Who offers what to whom, and in which language it is printed. */
export function renderOffer(desk: QuoteDesk): TemplateResult {
  const { locale = 'en-IN' } = desk.document;
  const known = LOCALES.some(([name]) => name === locale);
  return html`${renderFields(offerFields(), desk)}
  ${renderPlainSelect({
    id: 'quote-locale',
    label: 'Language and numbers of the printed quote',
    value: locale,
    options: [...LOCALES, ...(known ? [] : [[locale, locale] as const])],
    choose: (value) => {
      desk.change(putAt(desk.document, ['locale'], value));
    },
  })}
  ${renderLanguageProblem(desk.language)}`;
}
