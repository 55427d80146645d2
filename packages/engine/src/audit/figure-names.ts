/**
 * Names of the figures of a bill. Every printed figure has one, and every computed one:
 *
 * - `days`, `factor`, `load`
 * - `reading.import.previous`, `reading.import.present`, and so on for each register
 * - `units.import`, `units.export`, `units.generation`, `units.billed`, `units.import@peak`, …
 * - `opening.credit`, `closing.credit`, and so on for each ledger
 * - `line.energy`, and so on for each charge; `line.surplus` for what surplus is paid
 * - `arrears`, `late-fee`, `adjustment`
 * - `sum`, `rounding`, `payable`
 */
export const FIGURE = {
  reading: (register: string, end: 'previous' | 'present'): string => `reading.${register}.${end}`,
  units: (name: string): string => `units.${name}`,
  opening: (ledger: string): string => `opening.${ledger}`,
  closing: (ledger: string): string => `closing.${ledger}`,
  line: (charge: string): string => `line.${charge}`,
} as const;

/** What a figure tells of: the order in which differences are put down to causes. */
export type FigureGroup = 'reading' | 'units' | 'credit' | 'line' | 'account' | 'total' | 'other';

const GROUPS: readonly (readonly [RegExp, FigureGroup])[] = [
  [/^reading\./, 'reading'],
  [/^units\./, 'units'],
  [/^(?:opening|closing)\./, 'credit'],
  [/^line\./, 'line'],
  [/^(?:arrears|late-fee|adjustment)$/, 'account'],
  [/^(?:sum|rounding|payable)$/, 'total'],
];

/**
 * The group of a figure.
 *
 * @example
 * groupOf('line.energy') //=> "line"
 */
export function groupOf(name: string): FigureGroup {
  return GROUPS.find(([pattern]) => pattern.test(name))?.[1] ?? 'other';
}

/**
 * What a figure is of, inside its group: everything behind the first dot, so that a name may have dots of its own.
 *
 * @example
 * nameIn('line.Fuel adj. charge') //=> "Fuel adj. charge"
 */
export const nameIn = (figure: string): string => figure.slice(figure.indexOf('.') + 1);
