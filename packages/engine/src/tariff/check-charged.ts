import type { Finding, Path } from '../quantity/index.ts';
import { unknownQuantity } from './unknown-quantity.ts';
import { inForceDuring, readInForce } from './dated.ts';
import { tariffFinding } from './findings.ts';
import { clockMinute } from './time-block-calendar.ts';
import { quantityUnits, takenNames, type NamedQuantity } from './known-quantities.ts';
import type { Charge, SettlementRule, TariffDocument } from './schema.ts';

type Known = ReadonlyMap<string, NamedQuantity>;

/** The quantities a charge names, with the key of each. */
function chargedNames(charge: Charge): readonly (readonly [string, Path])[] {
  const own = (['on', 'chosenBy'] as const).flatMap((key) => {
    const name = (charge as unknown as Readonly<Record<string, unknown>>)[key];
    return typeof name === 'string' ? [[name, [key]] as const] : [];
  });
  if (charge.kind !== 'percentage') return own;
  const bases = charge.of.flatMap((base, index) =>
    typeof base === 'string' ? [] : [[base.recomputedOn, ['of', index, 'recomputedOn']] as const],
  );
  return [...own, ...bases];
}

const POWERS = ['kW', 'kVA'];

function chargeNames(charge: Charge, known: Known, path: Path): Finding[] {
  const findings = chargedNames(charge).flatMap(([name, at]) =>
    known.has(name) ? [] : [unknownQuantity(name, known, [...path, ...at])],
  );
  if (charge.kind !== 'per-kilowatt') return findings;
  const unit = known.get(charge.on)?.unit;
  if (unit !== undefined && !POWERS.includes(unit)) {
    findings.push(
      tariffFinding('tariff/not-a-power', { path: [...path, 'on'] }, { quantity: charge.on, unit }),
    );
  }
  return findings;
}

/** The settlement rules that are in force on some day of a version. */
function rulesBeside(
  document: TariffDocument,
  version: TariffDocument['versions'][number],
): readonly SettlementRule[] {
  const words = { path: [], one: '', several: '', name: (): string => '' };
  const rules = readInForce<SettlementRule>(document.settlements, words).value;
  const [own] = readInForce([version], words).value;
  return own === undefined ? document.settlements : inForceDuring(rules, own.period).map(({ item }) => item);
}

type Measure = NonNullable<TariffDocument['measures']>[string];

/** Hours of the day have a beginning and an end. */
function windowFindings({ window }: Measure, path: Path): readonly Finding[] {
  if (window?.within !== 'day-hours') return [];
  const { from, to } = window;
  const isTime = (text: string | undefined): boolean => text !== undefined && clockMinute(text) !== null;
  if (isTime(from) && isTime(to) && from !== to) return [];
  const found = `hours of the day from ${from ?? 'no time'} to ${to ?? 'no time'}`;
  return [tariffFinding('tariff/window-hours', { path: [...path, 'window'] }, { found })];
}

/** A measure cannot take the name of a quantity that every tariff knows, and its window has to be one. */
export function measureFindings(document: TariffDocument): Finding[] {
  const taken = takenNames(document);
  return Object.entries(document.measures ?? {}).flatMap(([id, measure]) => [
    ...(taken.has(id) ? [tariffFinding('tariff/quantity-twice', { path: ['measures', id] }, { id })] : []),
    ...windowFindings(measure, ['measures', id]),
  ]);
}

/** Every quantity that a charge names has to be given by every settlement rule of its days. */
export function chargedFindings(document: TariffDocument): Finding[] {
  return document.versions.flatMap((version, index) => {
    const knowns = rulesBeside(document, version).map((rule) => quantityUnits(document, rule));
    return version.charges.flatMap((charge, at) => {
      const path = ['versions', index, 'charges', at];
      const [first = []] = knowns
        .map((known) => chargeNames(charge, known, path))
        .filter((findings) => findings.length > 0);
      return first;
    });
  });
}
