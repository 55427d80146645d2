import { isDecimalText, parseDay, type Finding, type Path } from '../quantity/index.ts';
import { rateTooFine } from './check-limits.ts';
import { roundingFindings } from './check-rounding.ts';
import { tariffFinding } from './findings.ts';
import type { Price } from './price-schema.ts';
import { ratesOfCharge } from './rates-named.ts';
import type { TariffDocument } from './schema.ts';

const quotedList = (items: readonly string[]): string =>
  items.map((item) => `"${item}"`).join(', ') || 'none';

function unknownPrice(price: string, known: readonly string[], path: Path): Finding {
  return tariffFinding('tariff/unknown-price', { path }, { price, known: quotedList(known) });
}

function seriesFindings({ values, through }: Price & { is: 'series' }, path: Path): Finding[] {
  const findings: Finding[] = [];
  let before = '';
  values.forEach(({ from, rate }, index) => {
    const at = [...path, 'values', index];
    if (parseDay(from) === null)
      findings.push(tariffFinding('tariff/no-such-day', { path: [...at, 'from'] }, { value: from }));
    else if (from <= before)
      findings.push(
        tariffFinding('tariff/days-not-ascending', { path: [...at, 'from'] }, { day: from, before }),
      );
    before = from;
    findings.push(...rateTooFine(rate, [...at, 'rate']));
  });
  if (through !== undefined && parseDay(through) === null) {
    findings.push(tariffFinding('tariff/no-such-day', { path: [...path, 'through'] }, { value: through }));
  } else if (through !== undefined && through < before) {
    findings.push(tariffFinding('tariff/ends-before-it-begins', { path }, { from: before, through }));
  }
  return findings;
}

/** A price names only prices above it, so that none is worked out from itself. */
function operandFindings(
  price: Exclude<Price, { is: 'series' }>,
  above: readonly string[],
  path: Path,
): Finding[] {
  const operands: readonly (readonly [string, Path])[] =
    typeof price.of === 'string'
      ? [[price.of, ['of']]]
      : price.of.map((name, index) => [name, ['of', index]] as const);
  return operands.flatMap(([name, at]) => {
    if (isDecimalText(name)) return rateTooFine(name, [...path, ...at]);
    return above.includes(name) ? [] : [unknownPrice(name, above, [...path, ...at])];
  });
}

/** Check the prices of a document. */
export function priceFindings(document: TariffDocument): Finding[] {
  const all = Object.entries(document.prices ?? {});
  return all.flatMap(([name, price], index) => {
    const path = ['prices', name];
    if (price.is === 'series') return seriesFindings(price, path);
    const above = all.slice(0, index).map(([one]) => one);
    const findings = [
      ...operandFindings(price, above, path),
      ...roundingFindings(price.rounding, [...path, 'rounding']),
    ];
    if (price.is === 'percent') findings.push(...rateTooFine(price.percent, [...path, 'percent']));
    if (price.is === 'mean' && document.prices?.[price.of]?.is !== 'series' && above.includes(price.of)) {
      const series = all.filter(([, one]) => one.is === 'series').map(([one]) => one);
      findings.push(unknownPrice(price.of, series, [...path, 'of']));
    }
    return findings;
  });
}

/** Every rate that is no number has to be one of the prices. */
export function rateFindings(document: TariffDocument): Finding[] {
  const known = Object.keys(document.prices ?? {});
  const check = (text: string | undefined, path: Path): Finding[] =>
    text === undefined || isDecimalText(text) || known.includes(text)
      ? []
      : [unknownPrice(text, known, path)];
  const charges = document.versions.flatMap((version, index) =>
    version.charges.flatMap((charge, at) =>
      ratesOfCharge(charge).flatMap(([text, path]) =>
        check(text, ['versions', index, 'charges', at, ...path]),
      ),
    ),
  );
  const settlements = document.settlements.flatMap((rule, index) => {
    const path = ['settlements', index];
    if (rule.scheme === 'unit-netting') return check(rule.close.rate, [...path, 'close', 'rate']);
    return (rule.ledgers ?? []).flatMap(({ payment }, at) =>
      check(payment?.rate, [...path, 'ledgers', at, 'payment', 'rate']),
    );
  });
  return [...charges, ...settlements];
}
