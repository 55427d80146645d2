import { decimalToWhole, minorUnitDigits, type Finding, type Path } from '../quantity/index.ts';
import { chargeFindings } from './check-charges.ts';
import { tooFine } from './check-limits.ts';
import { ledgersFindings } from './check-ledgers.ts';
import { priceFindings, rateFindings } from './check-prices.ts';
import { chargedFindings, measureFindings } from './check-charged.ts';
import { quantityFindings } from './check-quantities.ts';
import { positive, roundingFindings } from './check-rounding.ts';
import { unitNettingFindings } from './check-unit-netting.ts';
import { documentFinding } from './document-findings.ts';
import { tariffFinding } from './findings.ts';
import { seasonFindings } from './check-seasons.ts';
import { checkTimeBlocks } from './check-time-blocks.ts';
import { sharingRuleFindings } from './sharing-schema.ts';
import type { DayRule, SettlementRule, TariffDocument } from './schema.ts';

/** Every clause of the document has to begin with one of its sources. */
function clauseFindings(value: unknown, sources: readonly string[], path: Path): Finding[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, child]: [string, unknown]) => {
    const at = [...path, Array.isArray(value) ? Number.parseInt(key, 10) : key];
    if (key !== 'clause' || typeof child !== 'string') return clauseFindings(child, sources, at);
    if (sources.some((source) => child === source || child.startsWith(`${source} `))) return [];
    return [
      tariffFinding(
        'tariff/clause-without-source',
        { path: at },
        { clause: child, sources: sources.join(', ') },
      ),
    ];
  });
}

/** A span has to end on or after its first day. */
function spanFindings({ unscaledFrom = '0', unscaledThrough = '0' }: DayRule, path: Path): Finding[] {
  if (decimalToWhole(unscaledFrom, 0) <= decimalToWhole(unscaledThrough, 0)) return [];
  const values = { from: unscaledFrom, through: unscaledThrough };
  return [tariffFinding('tariff/span-reversed', { path: [...path, 'unscaledThrough'] }, values)];
}

function dayRuleFindings(rule: DayRule, path: Path): Finding[] {
  const findings = [
    ...roundingFindings(rule.factor, [...path, 'factor']),
    ...roundingFindings(rule.limits, [...path, 'limits']),
  ];
  if (rule.rule === 'days-over') findings.push(...positive(rule.divisor, [...path, 'divisor']));
  const span = (['unscaledFrom', 'unscaledThrough'] as const).filter((key) => rule[key] !== undefined);
  if (span.length === 1) {
    const missing = span[0] === 'unscaledFrom' ? 'unscaledThrough' : 'unscaledFrom';
    const values = {
      key: missing,
      meaning: `the other end of the span that begins or ends with "${span[0] ?? ''}"`,
    };
    findings.push(documentFinding('document/missing-key', { path: [...path, missing] }, values));
  }
  for (const key of span) findings.push(...tooFine(rule[key] ?? '', 0, [...path, key]));
  if (span.length === 2 && findings.length === 0) findings.push(...spanFindings(rule, path));
  if (rule.limits !== undefined) findings.push(...tooFine(rule.limits.step, 3, [...path, 'limits', 'step']));
  if (rule.rule === 'days-over') findings.push(...tooFine(rule.divisor, 0, [...path, 'divisor']));
  return findings;
}

/** The numbers of the largest plant: watts, and thousandths of a percent. */
function plantLimitFindings({ plantLimit }: SettlementRule, path: Path): Finding[] {
  const { most = '1', percentOfLoad = '1' } = plantLimit ?? {};
  return [
    ...tooFine(most, 3, [...path, 'most']),
    ...positive(most, [...path, 'most']),
    ...tooFine(percentOfLoad, 3, [...path, 'percentOfLoad']),
    ...positive(percentOfLoad, [...path, 'percentOfLoad']),
  ];
}

/** Seasons first: which hours a block covers hangs on them. */
function seasonsAndBlocks(document: TariffDocument): Finding[] {
  const findings = seasonFindings(document);
  if (document.timeBlocks === undefined || findings.length > 0) return findings;
  return checkTimeBlocks({ ...document.timeBlocks, seasons: document.seasons });
}

/**
 * Check what a schema cannot say: currency, clauses and their sources, limits, names of lines and day
 * rules, roundings, payments.
 *
 * @param document  of the right shape
 * @returns         all findings, in the document's order by kind
 */
export function documentFindings(document: TariffDocument): Finding[] {
  const findings: Finding[] = [];
  if (minorUnitDigits(document.currency) === null) {
    findings.push(
      tariffFinding('tariff/unknown-currency', { path: ['currency'] }, { currency: document.currency }),
    );
  }
  findings.push(...clauseFindings(document, Object.keys(document.sources), []));
  findings.push(...roundingFindings(document.rounding.line, ['rounding', 'line']));
  findings.push(...roundingFindings(document.rounding.total, ['rounding', 'total']));
  for (const [name, rule] of Object.entries(document.dayRules ?? {})) {
    findings.push(...dayRuleFindings(rule, ['dayRules', name]));
  }
  document.versions.forEach((version, index) => {
    const path = ['versions', index, 'charges'];
    findings.push(...chargeFindings(version.charges, document, path));
    version.charges.forEach((charge, at) => {
      findings.push(...roundingFindings(charge.rounding, [...path, at, 'rounding']));
    });
  });
  document.settlements.forEach((rule, index) => {
    const path = ['settlements', index];
    findings.push(...plantLimitFindings(rule, [...path, 'plantLimit']));
    if (rule.scheme === 'unit-netting') findings.push(...unitNettingFindings(rule, path));
    else {
      findings.push(...quantityFindings(document, rule, path), ...ledgersFindings(document, rule, path));
      if (rule.sharing !== undefined)
        findings.push(...sharingRuleFindings(rule.sharing, [...path, 'sharing']));
    }
  });
  findings.push(
    ...priceFindings(document),
    ...rateFindings(document),
    ...seasonsAndBlocks(document),
    ...measureFindings(document),
    ...chargedFindings(document),
  );
  return findings;
}
