import { decimalToWhole, isDecimalText, parseDay, type Finding, type Path } from '../quantity/index.ts';
import { rateTooFine, tooFine } from './check-limits.ts';
import { roundingFindings } from './check-rounding.ts';
import { tariffFinding } from './findings.ts';
import {
  givenQuantities,
  madeBy,
  operandsOf,
  quantityUnits,
  type NamedQuantity,
} from './known-quantities.ts';
import type { Definition } from './quantity-schema.ts';
import { unknownQuantity } from './unknown-quantity.ts';
import type { LedgersRule, TariffDocument } from './schema.ts';

type Known = ReadonlyMap<string, NamedQuantity>;

const quotedList = (items: Iterable<string>): string =>
  [...items].map((item) => `"${item}"`).join(', ') || 'none';

/** Operands with the key each stands under. */
function placedOperands(definition: Definition): readonly (readonly [string, Path])[] {
  switch (definition.is) {
    case 'choice':
      return [
        [definition.by, ['by']],
        ...definition.steps.map(({ take }, index) => [take, ['steps', index, 'take']] as const),
      ];
    case 'netting':
      return [
        ...definition.supply.map((name, index) => [name, ['supply', index]] as const),
        ...definition.demand.map((name, index) => [name, ['demand', index]] as const),
        ...(definition.most === undefined ? [] : [[definition.most, ['most']] as const]),
      ];
    case 'part':
      return (['of', 'above', 'upTo'] as const).flatMap((key) => {
        const operand = definition[key];
        return operand === undefined ? [] : [[operand, [key]] as const];
      });
    case 'quotient':
      return [
        [definition.of, ['of']],
        [definition.by, ['by']],
      ];
    default:
      return typeof definition.of === 'string'
        ? [[definition.of, ['of']]]
        : definition.of.map((name, index) => [name, ['of', index]] as const);
  }
}

/** Sums, differences and the like take quantities of one unit only. */
const ONE_UNIT: readonly Definition['is'][] = [
  'sum',
  'difference',
  'excess',
  'least',
  'greatest',
  'part',
  'netting',
  'percent',
];

function unitFindings(definition: Definition, known: Known, path: Path): Finding[] {
  if (!ONE_UNIT.includes(definition.is)) return [];
  const units = new Set(operandsOf(definition).flatMap((name) => known.get(name)?.unit ?? []));
  if (units.size < 2) return [];
  return [
    tariffFinding('tariff/units-mixed', { path }, { id: definition.id, units: [...units].join(' and ') }),
  ];
}

function incomplete(path: Path, found: string, expected: string, remedy: string): Finding {
  return tariffFinding('tariff/settlement-incomplete', { path }, { found, expected, remedy });
}

type Netting = Definition & { is: 'netting' };
type Route = Exclude<Netting['routes'], string>[number];

/** A route has to lead from the supply to the demand, and say how units of another worth are rounded. */
function routeFindings(
  { supply, demand, rounding }: Netting,
  { from, to, worth }: Route,
  at: Path,
): Finding[] {
  const findings: Finding[] = [];

  if (!supply.includes(from)) {
    findings.push(
      incomplete(
        [...at, 'from'],
        `the route from "${from}"`,
        `one of the supply: ${quotedList(supply)}`,
        'Name one of the supply.',
      ),
    );
  }
  if (!demand.includes(to)) {
    findings.push(
      incomplete(
        [...at, 'to'],
        `the route to "${to}"`,
        `one of the demand: ${quotedList(demand)}`,
        'Name one of the demand.',
      ),
    );
  }
  if (worth === undefined) return findings;
  findings.push(...rateTooFine(worth, [...at, 'worth']));
  if (!/[1-9]/.test(worth) || worth.startsWith('-')) {
    findings.push(
      tariffFinding('tariff/step-not-positive', { path: [...at, 'worth'] }, { key: 'worth', value: worth }),
    );
  } else if (worth !== '100' && rounding === undefined) {
    findings.push(
      incomplete(
        at,
        `units worth ${worth} percent, without a rounding`,
        '"rounding" beside the routes',
        'Say how units are rounded, such as a step of "0.001".',
      ),
    );
  }
  return findings;
}

function nettingFindings(netting: Netting, path: Path): Finding[] {
  const { supply, demand, routes } = netting;
  const findings: Finding[] = [];
  const all = [...supply, ...demand];
  const twice = all.find((name, index) => all.indexOf(name) < index);
  if (twice !== undefined) {
    findings.push(
      incomplete(
        path,
        `"${twice}" twice in a netting`,
        'each of the supply and the demand once',
        'Name it once.',
      ),
    );
  }
  if (typeof routes === 'string') return findings;
  const keys = routes.map(({ from, to }) => `${from} ${to}`);
  const again = keys.findIndex((key, index) => keys.indexOf(key) < index);
  if (again >= 0) {
    const found = 'the same route a second time';
    findings.push(incomplete([...path, 'routes', again], found, 'each way once', 'Take one of the two out.'));
  }
  return [
    ...findings,
    ...routes.flatMap((route, index) => routeFindings(netting, route, [...path, 'routes', index])),
  ];
}

/** Limits that ascend, from any number on: a quantity that chooses can be 0 or below. */
function choiceLimits(steps: readonly { readonly upTo?: string | undefined }[], path: Path): Finding[] {
  let before: string | null = null;
  return steps.flatMap(({ upTo }, index) => {
    const at = [...path, index, 'upTo'];
    const isLast = index === steps.length - 1;
    if (upTo === undefined) {
      return isLast ? [] : [tariffFinding('tariff/slab-limit-missing', { path: [...path, index] })];
    }
    if (isLast) return [tariffFinding('tariff/last-slab-limited', { path: at }, { limit: upTo })];
    const fine = tooFine(upTo, 3, at);
    if (fine.length > 0) return fine;
    const isAscending = before === null || decimalToWhole(upTo, 3) > decimalToWhole(before, 3);
    const values = { limit: upTo, before: before ?? '' };
    before = upTo;
    return isAscending ? [] : [tariffFinding('tariff/slabs-not-ascending', { path: at }, values)];
  });
}

/** A day of every year, or one that the account tells. */
function isDayOfYear(since: string | undefined): boolean {
  const told = [undefined, 'anniversary', 'chosen'];
  return told.includes(since) || parseDay(`2000-${since ?? ''}`) !== null;
}

function numberFindings(definition: Definition, path: Path): Finding[] {
  switch (definition.is) {
    case 'percent':
      return rateTooFine(definition.percent, [...path, 'percent']);
    case 'choice':
      return choiceLimits(definition.steps, [...path, 'steps']);
    case 'running-total':
      if (definition.since !== undefined && definition.periods !== undefined) {
        return [
          tariffFinding(
            'tariff/one-of-two',
            { path },
            { found: 'both "since" and "periods"', expected: '"since" or "periods"' },
          ),
        ];
      }
      return isDayOfYear(definition.since)
        ? []
        : [
            tariffFinding(
              'tariff/no-such-day',
              { path: [...path, 'since'] },
              { value: definition.since ?? '' },
            ),
          ];
    case 'netting':
      return nettingFindings(definition, path);
    default:
      return [];
  }
}

const enoughOperands = (definition: Definition, path: Path): Finding[] => {
  const needsTwo = ['difference', 'excess', 'least', 'greatest', 'product'].includes(definition.is);
  if (!needsTwo || operandsOf(definition).length > 1) return [];
  return [
    incomplete(
      path,
      `"${definition.is}" of one quantity`,
      'two quantities or more',
      'Add what is missing, or write "sum".',
    ),
  ];
};

/** Findings about one definition. */
function definitionFindings(definition: Definition, known: Known, path: Path): Finding[] {
  const operands = placedOperands(definition).flatMap(([operand, at]): Finding[] => {
    if (isDecimalText(operand)) {
      return definition.is === 'product'
        ? rateTooFine(operand, [...path, ...at])
        : tooFine(operand, 3, [...path, ...at]);
    }
    return known.has(operand) ? [] : [unknownQuantity(operand, known, [...path, ...at])];
  });
  const rounding = 'rounding' in definition ? definition.rounding : undefined;
  return [
    ...operands,
    ...unitFindings(definition, known, path),
    ...enoughOperands(definition, path),
    ...numberFindings(definition, path),
    ...roundingFindings(rounding, [...path, 'rounding']),
    ...(rounding === undefined ? [] : tooFine(rounding.step, 3, [...path, 'rounding', 'step'])),
  ];
}

/**
 * Check the quantities of a settlement rule: each worked out from those above it, of one unit, under a
 * name of its own.
 */
export function quantityFindings(document: TariffDocument, rule: LedgersRule, path: Path): Finding[] {
  const known = new Map(givenQuantities(document, rule));
  const all = quantityUnits(document, rule);
  return (rule.quantities ?? []).flatMap((definition, index) => {
    const at = [...path, 'quantities', index];
    // What earlier periods came to is known of every quantity, also of those worked out below.
    const isPast = 'through' in definition && definition.through === 'previous-period';
    const findings = definitionFindings(definition, isPast ? all : known, at);
    for (const [name, quantity] of madeBy(definition, known)) {
      if (known.has(name)) {
        findings.push(tariffFinding('tariff/quantity-twice', { path: [...at, 'id'] }, { id: name }));
      }
      known.set(name, quantity);
    }
    return findings;
  });
}
