import { minorUnitDigits, type Account, type Tariff } from '@unitbook/engine';
import { about, commandFinding, type PlacedFinding } from './findings.ts';
import { isKnownLocale, makeNotation, type PageNotation } from './render/notation.ts';

const FALLBACK = 'en';

/**
 * The findings about a locale that was typed.
 *
 * @param subject  the command
 */
export function localeFindings(locale: string | undefined, subject: string): readonly PlacedFinding[] {
  if (locale === undefined || isKnownLocale(locale)) return [];
  return about(subject, [commandFinding('command/unknown-locale', { path: [] }, { value: locale })]);
}

/** What a document says of its locale, and where. */
export interface DocumentLocale {
  readonly locale: string | undefined;
  /** The document, in words. */
  readonly where: string;
  /** The file it stands in. */
  readonly subject: string;
}

/** A notation, and what is wrong with the locale that it was to follow. */
export interface FoundNotation {
  readonly notation: PageNotation;
  readonly findings: readonly PlacedFinding[];
}

/**
 * How numbers are written: by the locale that was typed, else by that of a document.
 *
 * @returns the notation, and a finding when the document's locale is none; digits are then grouped as in
 *          English, which changes no number
 * @example
 * documentNotation('en-IN', { locale: 'xx_x', where: 'the quote', subject: 'q.json' }, 'INR').findings //=> []
 */
export function documentNotation(
  typed: string | undefined,
  { locale, where, subject }: DocumentLocale,
  currency: string,
): FoundNotation {
  const wanted = typed ?? locale ?? FALLBACK;
  const places = minorUnitDigits(currency) ?? 2;
  if (isKnownLocale(wanted)) return { notation: makeNotation(wanted, places), findings: [] };
  const finding = commandFinding('command/unknown-locale', { path: ['locale'] }, { value: wanted, where });
  return { notation: makeNotation(FALLBACK, places), findings: about(subject, [finding]) };
}

/** How numbers are written for a household: by the locale that was typed, else by the account's. */
export function householdNotation(
  typed: string | undefined,
  { account, tariff }: { readonly account: Account; readonly tariff: Tariff },
  subject: string,
): FoundNotation {
  const { locale } = account.document;
  return documentNotation(typed, { locale, where: 'the account', subject }, tariff.document.currency);
}
