import { decimalToWhole, minorUnitDigits, parseDay, type Finding, type Path } from '../quantity/index.ts';
import { chargeFindings } from './check-charges.ts';
import { rateTooFine, tooFine } from './check-limits.ts';
import { documentFinding } from './document-findings.ts';
import { tariffFinding } from './findings.ts';
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

/** A step, divisor or the like has to be above 0. */
function positive(text: string, path: Path): Finding[] {
  if (!text.startsWith('-') && /[1-9]/.test(text)) return [];
  return [tariffFinding('tariff/step-not-positive', { path }, { key: String(path.at(-1)), value: text })];
}

function roundingFindings(rounding: { readonly step: string } | 'none' | undefined, path: Path): Finding[] {
  if (rounding === undefined || rounding === 'none') return [];
  return [...positive(rounding.step, [...path, 'step']), ...rateTooFine(rounding.step, [...path, 'step'])];
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

function paymentFindings(rule: SettlementRule, path: Path): Finding[] {
  const { close } = rule;
  const at = [...path, 'close'];
  if (close.surplus === 'paid' && (close.rate === undefined || close.inBill === undefined)) {
    const values = {
      found: 'surplus that is paid, without its "rate" or "inBill"',
      expected: 'the rate per unit and whether the same or the next bill pays it',
      remedy: 'Add what is missing.',
    };
    return [tariffFinding('tariff/settlement-incomplete', { path: at }, values)];
  }
  if (close.surplus === 'lapses' && (close.rate !== undefined || close.inBill !== undefined)) {
    const values = {
      found: 'surplus that lapses, with a "rate" or "inBill"',
      expected: 'no payment where nothing is paid',
      remedy: 'Take them out, or write "surplus": "paid".',
    };
    return [tariffFinding('tariff/settlement-incomplete', { path: at }, values)];
  }
  if (close.rate === undefined) return [];
  return [...positive(close.rate, [...at, 'rate']), ...rateTooFine(close.rate, [...at, 'rate'])];
}

function capFindings({ cap }: SettlementRule, path: Path): Finding[] {
  if (cap === undefined) return [];
  const at = [...path, 'cap', 'percent'];
  return [...positive(cap.percent, at), ...rateTooFine(cap.percent, at)];
}

function settlementFindings(rule: SettlementRule, path: Path): Finding[] {
  const findings = [...paymentFindings(rule, path), ...capFindings(rule, path)];
  const { on } = rule.close;
  if (on !== 'every-period' && parseDay(`2000-${on}`) === null) {
    findings.push(tariffFinding('tariff/no-such-day', { path: [...path, 'close', 'on'] }, { value: on }));
  }
  if (on !== 'every-period' && rule.carry === undefined) {
    const values = {
      found: `units left over are kept until ${on}, but nothing carries them to the next period`,
      expected: '"carry", or a bank that closes in every period',
      remedy: 'Add "carry" with its clause, or write "on": "every-period".',
    };
    findings.push(tariffFinding('tariff/settlement-incomplete', { path: [...path, 'close', 'on'] }, values));
  }
  if (on === 'every-period' && (rule.carry !== undefined || rule.cap?.excess === 'carried')) {
    const values = {
      found: 'units that are carried, in a bank that closes in every period',
      expected: 'no "carry" and an excess that lapses, or a day of the year on which the bank closes',
      remedy: 'Take out what carries them, or write the day as mm-dd.',
    };
    findings.push(tariffFinding('tariff/settlement-incomplete', { path: [...path, 'close', 'on'] }, values));
  }
  return findings;
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
    findings.push(...settlementFindings(rule, ['settlements', index]));
  });
  return findings;
}
