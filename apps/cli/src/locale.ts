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

/**
 * How numbers are written for a household: by the locale that was typed, else by the account's.
 *
 * @returns the notation, and a finding when the account's locale is none; digits are then grouped as in
 *          English, which changes no number
 */
export function householdNotation(
  typed: string | undefined,
  { account, tariff }: { readonly account: Account; readonly tariff: Tariff },
  subject: string,
): { notation: PageNotation; findings: readonly PlacedFinding[] } {
  const wanted = typed ?? account.document.locale ?? FALLBACK;
  const places = minorUnitDigits(tariff.document.currency) ?? 2;
  if (isKnownLocale(wanted)) return { notation: makeNotation(wanted, places), findings: [] };
  const values = { value: wanted, where: 'the account' };
  const finding = commandFinding('command/unknown-locale', { path: ['locale'] }, values);
  return { notation: makeNotation(FALLBACK, places), findings: about(subject, [finding]) };
}
