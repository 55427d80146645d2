import { parseDay, type Finding, type Path } from '../quantity/index.ts';
import { rateTooFine, tooFine } from './check-limits.ts';
import { unknownQuantity } from './unknown-quantity.ts';
import { positive, roundingFindings } from './check-rounding.ts';
import { tariffFinding } from './findings.ts';
import { quantityUnits, restName, takenNames } from './known-quantities.ts';
import type { LedgerRule } from './ledger-schema.ts';
import type { LedgersRule, TariffDocument } from './schema.ts';

function incomplete(path: Path, found: string, expected: string, remedy: string): Finding {
  return tariffFinding('tariff/settlement-incomplete', { path }, { found, expected, remedy });
}

/** What comes into a ledger of units, and what a period leaves of it, have to be said; money has neither. */
function flowFindings({ unit, adds, keeps }: LedgerRule, path: Path): Finding[] {
  if (unit !== 'money' && adds === undefined) {
    return [
      incomplete(
        path,
        'a ledger of units without "adds"',
        'the quantity that comes in',
        'Add "adds", and "keeps" where units of it are used.',
      ),
    ];
  }
  if (unit === 'money' && (adds !== undefined || keeps !== undefined)) {
    return [
      incomplete(
        path,
        'a ledger of money with "adds" or "keeps"',
        'a credit charge that names the ledger',
        'Take them out: the credit charge fills and uses it.',
      ),
    ];
  }
  return [];
}

/** A balance that is paid needs to know how; one that is not must not. */
function paymentFindings(ledger: LedgerRule, path: Path): Finding[] {
  const { close, payment } = ledger;
  const isPaid = close?.surplus === 'paid';
  if (isPaid && payment === undefined) {
    return [
      incomplete(path, 'a balance that is paid, without "payment"', 'how it is paid', 'Add "payment".'),
    ];
  }
  if (!isPaid && payment !== undefined) {
    return [
      incomplete(
        [...path, 'payment'],
        'a payment, of a balance that is never paid',
        'a "close" whose surplus is "paid"',
        'Take "payment" out, or write "surplus": "paid".',
      ),
    ];
  }
  return payment === undefined ? [] : termFindings(payment, ledger.unit, [...path, 'payment']);
}

/** A threshold and a limit, and what becomes of the rest. */
function partFindings(payment: NonNullable<LedgerRule['payment']>, at: Path): Finding[] {
  const findings: Finding[] = [];
  const threshold = payment.above ?? payment.atLeast;
  if (payment.above !== undefined && payment.atLeast !== undefined) {
    const values = { found: 'both "above" and "atLeast"', expected: '"above" or "atLeast"' };
    findings.push(tariffFinding('tariff/one-of-two', { path: at }, values));
  }
  const isPart = threshold !== undefined || payment.most !== undefined;
  if (isPart && payment.rest === undefined) {
    findings.push(
      incomplete(
        at,
        'a balance that is paid in part, without "rest"',
        '"carried" or "lapses" for what is not paid',
        'Add "rest".',
      ),
    );
  }
  if ((threshold === undefined) !== (payment.pays === undefined)) {
    findings.push(
      incomplete(
        at,
        'only one of the threshold and "pays"',
        'the threshold, and whether the whole balance or the excess is paid',
        'Add the other one.',
      ),
    );
  }
  return findings;
}

/** How a balance is paid: a rate for units, and a place for what is not paid. */
function termFindings(
  payment: NonNullable<LedgerRule['payment']>,
  unit: LedgerRule['unit'],
  at: Path,
): Finding[] {
  const findings = partFindings(payment, at);
  if ((unit !== 'money') !== (payment.rate !== undefined)) {
    findings.push(
      unit !== 'money'
        ? incomplete(at, 'units that are paid, without a "rate"', 'the money per unit', 'Add "rate".')
        : incomplete(
            [...at, 'rate'],
            'money that is paid, with a "rate"',
            'no rate: money is paid as it is',
            'Take "rate" out.',
          ),
    );
  }
  if (unit === 'money' && payment.most !== undefined) {
    const remedy = 'Take "most" out.';
    findings.push(
      incomplete([...at, 'most'], 'a limit of units on money', 'no limit, or a ledger of units', remedy),
    );
  }
  if (payment.rate !== undefined) findings.push(...rateTooFine(payment.rate, [...at, 'rate']));
  for (const key of ['above', 'atLeast'] as const) {
    const text = payment[key];
    if (text === undefined) continue;
    findings.push(...tooFine(text, 3, [...at, key]), ...positive(text, [...at, key]));
  }
  return [...findings, ...roundingFindings(payment.rounding, [...at, 'rounding'])];
}

function closeFindings({ close }: LedgerRule, path: Path): Finding[] {
  if (close === undefined) return [];
  const at = [...path, 'close'];
  const findings: Finding[] = [];
  if (Array.isArray(close.on)) {
    close.on.forEach((day, index) => {
      if (parseDay(`2000-${day}`) === null) {
        findings.push(tariffFinding('tariff/no-such-day', { path: [...at, 'on', index] }, { value: day }));
      }
    });
  }
  const once = Array.isArray(close.on) ? close.on.length === 1 : close.on !== 'every-period';
  if (close.everyYears !== undefined && !once) {
    findings.push(
      incomplete(
        [...at, 'everyYears'],
        '"everyYears" beside several closing days',
        'one day of the year',
        'Name one day, or take "everyYears" out.',
      ),
    );
  }
  return findings;
}

/** Units that a netting sets off must neither stay in the ledger nor come into it once more. */
function nettedFindings(
  { id, unit, adds, keeps }: LedgerRule,
  { quantities = [] }: LedgersRule,
  path: Path,
): Finding[] {
  if (unit === 'money') return [];
  const nettings = quantities.filter((definition) => definition.is === 'netting');
  const uses = nettings.find(({ supply }) => supply.includes(id));
  const findings: Finding[] = [];
  if (uses !== undefined && keeps === undefined) {
    const found = `"${id}" in the supply of "${uses.id}", and no "keeps"`;
    const remedy = `Write "keeps": "${restName(uses, id)}".`;
    findings.push(incomplete(path, found, 'what the netting leaves of the balance', remedy));
  }
  const counts = nettings.find(({ supply }) => adds !== undefined && supply.includes(adds));
  if (counts !== undefined && adds !== undefined) {
    const found = `"${adds}" coming in whole, which "${counts.id}" sets off`;
    const remedy = `Write "adds": "${restName(counts, adds)}".`;
    findings.push(incomplete([...path, 'adds'], found, 'what the netting leaves of it', remedy));
  }
  return findings;
}

/** Check the ledgers of a settlement rule. */
export function ledgersFindings(document: TariffDocument, rule: LedgersRule, path: Path): Finding[] {
  const known = quantityUnits(document, rule);
  const seen = new Set<string>();
  const taken = new Set([...takenNames(document), ...Object.keys(document.measures ?? {})]);
  return (rule.ledgers ?? []).flatMap((ledger, index) => {
    const at = [...path, 'ledgers', index];
    const names =
      ledger.unit === 'money'
        ? []
        : ([
            [ledger.adds, 'adds'],
            [ledger.keeps, 'keeps'],
            [ledger.payment?.most, 'payment.most'],
          ] as const);
    const unknown = names.flatMap(([name, key]) => {
      const place = [...at, ...key.split('.')];
      const quantity = name === undefined ? undefined : known.get(name);
      if (name === undefined || quantity?.unit === ledger.unit) return [];
      if (quantity === undefined) return [unknownQuantity(name, known, place)];
      const units = `${ledger.unit} and ${quantity.unit}`;
      return [tariffFinding('tariff/units-mixed', { path: place }, { id: ledger.id, units })];
    });
    const isTaken = taken.has(ledger.id) || seen.has(ledger.id);
    const twice = isTaken
      ? [tariffFinding('tariff/quantity-twice', { path: [...at, 'id'] }, { id: ledger.id })]
      : [];
    seen.add(ledger.id);
    return [
      ...twice,
      ...unknown,
      ...flowFindings(ledger, at),
      ...nettedFindings(ledger, rule, at),
      ...closeFindings(ledger, at),
      ...paymentFindings(ledger, at),
    ];
  });
}
