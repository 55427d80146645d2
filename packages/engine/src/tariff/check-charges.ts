import type { Finding, Path } from '../quantity/index.ts';
import { creditFindings, insideFindings } from './check-credits.ts';
import { splitUnscaled } from './check-split.ts';
import { limitFindings, rateTooFine, type Limited } from './check-limits.ts';
import { documentFinding } from './document-findings.ts';
import { tariffFinding } from './findings.ts';
import type { Charge, TariffDocument } from './schema.ts';

const quotedList = (items: Iterable<string>): string =>
  [...items].map((item) => `"${item}"`).join(', ') || 'none';

/** Exactly one of two keys has to be there. */
function oneOfTwo(charge: Charge, keys: readonly [string, string], path: Path): Finding[] {
  const present = keys.filter((key) => (charge as unknown as Record<string, unknown>)[key] !== undefined);
  if (present.length === 1) return [];
  const found =
    present.length === 0 ? `neither "${keys[0]}" nor "${keys[1]}"` : `both "${keys[0]}" and "${keys[1]}"`;
  return [tariffFinding('tariff/one-of-two', { path }, { found, expected: `"${keys[0]}" or "${keys[1]}"` })];
}

/** A list of steps needs the quantity that chooses among them. */
function chooserNeeded(
  charge: Charge & { chosenBy?: string | undefined; steps?: unknown },
  path: Path,
): Finding[] {
  if (charge.steps === undefined || charge.chosenBy !== undefined) return [];
  const values = { key: 'chosenBy', meaning: 'the quantity that chooses the step' };
  return [documentFinding('document/missing-key', { path: [...path, 'chosenBy'] }, values)];
}

/** A slab, band or step: a limit and one number. */
interface Row extends Limited {
  readonly rate?: string;
  readonly amount?: string;
  readonly percent?: string;
}

function ratesTooFine(rows: readonly Row[], path: Path): Finding[] {
  return rows.flatMap((row, index) =>
    (['rate', 'amount', 'percent'] as const).flatMap((key) => rateTooFine(row[key], [...path, index, key])),
  );
}

function rowFindings(rows: readonly Row[] | undefined, path: Path): Finding[] {
  if (rows === undefined) return [];
  return [...limitFindings(rows, path), ...ratesTooFine(rows, path)];
}

/** "Only the first so many units" is a limit like any other, but stands by itself. */
function firstUnitsFindings(limit: string | undefined, path: Path): Finding[] {
  if (limit === undefined) return [];
  return limitFindings([{ upTo: limit }, {}], path).map((finding) => ({ ...finding, path }));
}

/** Findings about the numbers inside one charge. */
function numberFindings(charge: Charge, path: Path): Finding[] {
  switch (charge.kind) {
    case 'slabs':
      return rowFindings(charge.slabs, [...path, 'slabs']);
    case 'slab-tables':
      return [
        ...limitFindings(charge.tables, [...path, 'tables']),
        ...charge.tables.flatMap((table, index) =>
          rowFindings(table.slabs, [...path, 'tables', index, 'slabs']),
        ),
      ];
    case 'per-unit':
      return [
        ...rateTooFine(charge.rate, [...path, 'rate']),
        ...firstUnitsFindings(charge.firstUnits, [...path, 'firstUnits']),
      ];
    case 'per-kilowatt':
      return [
        ...oneOfTwo(charge, ['rate', 'bands'], path),
        ...rateTooFine(charge.rate, [...path, 'rate']),
        ...rowFindings(charge.bands, [...path, 'bands']),
        ...methodNeeded(charge, path),
      ];
    case 'fixed':
      return [
        ...oneOfTwo(charge, ['amount', 'steps'], path),
        ...chooserNeeded(charge, path),
        ...rateTooFine(charge.amount, [...path, 'amount']),
        ...rowFindings(charge.steps, [...path, 'steps']),
      ];
    case 'percentage':
      return [
        ...oneOfTwo(charge, ['percent', 'steps'], path),
        ...chooserNeeded(charge, path),
        ...rateTooFine(charge.percent, [...path, 'percent']),
        ...rowFindings(charge.steps, [...path, 'steps']),
      ];
    case 'minimum':
      return rateTooFine(charge.amount, [...path, 'amount']);
    case 'credit':
      return rateTooFine(charge.percent, [...path, 'percent']);
  }
}

function methodNeeded(charge: Charge & { kind: 'per-kilowatt' }, path: Path): Finding[] {
  if (charge.bands === undefined || charge.method !== undefined) return [];
  const values = { key: 'method', meaning: '"telescopic" or "whole": how bands are applied' };
  return [documentFinding('document/missing-key', { path: [...path, 'method'] }, values)];
}

/** Telescopic parts and single amounts are not chosen: a chooser beside them would be passed over silently. */
function chooserWithoutEffect(charge: Charge, path: Path): Finding[] {
  if (!('chosenBy' in charge) || charge.chosenBy === undefined) return [];
  const isTelescopic = 'method' in charge && charge.method === 'telescopic';
  const isSingle =
    (charge.kind === 'fixed' && charge.amount !== undefined) ||
    (charge.kind === 'percentage' && charge.percent !== undefined);
  if (!isTelescopic && !isSingle) return [];
  const beside = isTelescopic ? 'the method "telescopic"' : 'one amount or percentage';
  return [tariffFinding('tariff/no-effect', { path: [...path, 'chosenBy'] }, { key: 'chosenBy', beside })];
}

const RECOMPUTABLE: readonly Charge['kind'][] = ['slabs', 'slab-tables', 'per-unit'];

/** The lines that a credit is earned by and set against have to stand above it. */
function creditBases(
  charge: Charge & { kind: 'credit' },
  above: ReadonlyMap<string, Charge>,
  path: Path,
): Finding[] {
  return (['earned', 'against'] as const).flatMap((key) =>
    (charge[key] ?? []).flatMap((line, index) => {
      if (above.has(line)) return [];
      const values = { line, lines: quotedList(above.keys()) };
      return [tariffFinding('tariff/unknown-line', { path: [...path, key, index] }, values)];
    }),
  );
}

/** Findings about the lines a charge names. */
function baseFindings(charge: Charge, above: ReadonlyMap<string, Charge>, path: Path): Finding[] {
  if (charge.kind === 'credit') return creditBases(charge, above, path);
  if (charge.kind !== 'percentage' && charge.kind !== 'minimum') return [];
  return charge.of.flatMap((base, index) => {
    const at = [...path, 'of', index];
    const line = typeof base === 'string' ? base : base.line;
    const named = above.get(line);
    if (named === undefined) {
      return [tariffFinding('tariff/unknown-line', { path: at }, { line, lines: quotedList(above.keys()) })];
    }
    if (typeof base === 'string' || RECOMPUTABLE.includes(named.kind)) return [];
    return [tariffFinding('tariff/line-not-recomputable', { path: at }, { line, kind: named.kind })];
  });
}

/** The bases that a charge names as they stand: what is recomputed is another amount. */
function plainBases(charge: Charge): readonly string[] {
  if (charge.kind !== 'percentage' && charge.kind !== 'minimum') return [];
  return charge.of.map((base) => (typeof base === 'string' ? base : ''));
}

const isFloor = (charge: Charge | undefined): charge is Charge & { kind: 'minimum' } =>
  charge?.kind === 'minimum' && charge.as === 'floor';

/** What one base of a charge counts that another counts too; null when nothing. */
function repeated(base: string, index: number, bases: readonly string[], above: ReadonlyMap<string, Charge>) {
  if (base === '') return null;
  if (bases.indexOf(base) < index) return `"${base}" twice`;
  const floor = above.get(base);
  const line = isFloor(floor) ? floor.of.find((one) => bases.includes(one)) : undefined;
  return line === undefined ? null : `the floor "${base}" and "${line}", which it stands in for`;
}

/** A floor stands in for the lines it names, so that naming both, or two floors over one line, counts twice. */
function countedTwice(charge: Charge, above: ReadonlyMap<string, Charge>, path: Path): Finding[] {
  const bases = plainBases(charge);
  const floors = isFloor(charge) ? [...above.values()].filter(isFloor) : [];
  return bases.flatMap((base, index) => {
    const other = floors.find((floor) => floor.of.includes(base));
    const covered = other === undefined ? null : `"${base}", which the floor "${other.id}" stands in for`;
    const found = repeated(base, index, bases, above) ?? covered;
    return found === null
      ? []
      : [tariffFinding('tariff/counted-twice', { path: [...path, 'of', index] }, { found })];
  });
}

/**
 * Check the charges of one version against each other and against the day rules.
 *
 * @param charges   in order
 * @param document  for the names of its day rules
 * @param path      of the list
 */
export function chargeFindings(charges: readonly Charge[], document: TariffDocument, path: Path): Finding[] {
  const rules = Object.keys(document.dayRules ?? {});
  const above = new Map<string, Charge>();
  return charges.flatMap((charge, index) => {
    const at = [...path, index];
    const findings = [
      ...numberFindings(charge, at),
      ...chooserWithoutEffect(charge, at),
      ...baseFindings(charge, above, at),
      ...countedTwice(charge, above, at),
      ...creditFindings(charge, charges.slice(0, index), { document, all: charges, path: at }),
      ...insideFindings(charge, at),
      ...splitUnscaled(charge, document, at),
    ];
    if (above.has(charge.id))
      findings.push(tariffFinding('tariff/same-id-twice', { path: [...at, 'id'] }, { id: charge.id }));
    if ('scaledBy' in charge && charge.scaledBy !== undefined && !rules.includes(charge.scaledBy)) {
      const values = { rule: charge.scaledBy, rules: quotedList(rules) };
      findings.push(tariffFinding('tariff/unknown-day-rule', { path: [...at, 'scaledBy'] }, values));
    }
    above.set(charge.id, charge);
    return findings;
  });
}
