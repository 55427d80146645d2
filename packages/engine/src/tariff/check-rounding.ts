import { isDecimalText, type Finding, type Path } from '../quantity/index.ts';
import { rateTooFine } from './check-limits.ts';
import { tariffFinding } from './findings.ts';

/** A step, divisor or the like has to be above 0. */
export function positive(text: string, path: Path): Finding[] {
  if (!isDecimalText(text)) return [];
  if (!text.startsWith('-') && /[1-9]/.test(text)) return [];
  return [tariffFinding('tariff/step-not-positive', { path }, { key: String(path.at(-1)), value: text })];
}

/** A rounding needs a step above 0 that is not too fine. */
export function roundingFindings(
  rounding: { readonly step: string } | 'none' | undefined,
  path: Path,
): Finding[] {
  if (rounding === undefined || rounding === 'none') return [];
  return [...positive(rounding.step, [...path, 'step']), ...rateTooFine(rounding.step, [...path, 'step'])];
}
