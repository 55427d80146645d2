import { parseDay, type Finding, type Path } from '../quantity/index.ts';
import { rateTooFine } from './check-limits.ts';
import { positive } from './check-rounding.ts';
import { tariffFinding } from './findings.ts';
import type { UnitNettingRule } from './schema.ts';

function paymentFindings(rule: UnitNettingRule, path: Path): Finding[] {
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

function capFindings({ cap }: UnitNettingRule, path: Path): Finding[] {
  if (cap === undefined) return [];
  const at = [...path, 'cap', 'percent'];
  return [...positive(cap.percent, at), ...rateTooFine(cap.percent, at)];
}

/** Check a settlement rule of scheme `unit-netting`: payments, the cap, the closing day. */
export function unitNettingFindings(rule: UnitNettingRule, path: Path): Finding[] {
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
