import {
  FIGURE,
  runBill,
  thousandths,
  type BillFacts,
  type Cause,
  type CauseContext,
  type Figures,
  type RunBasis,
  type Variant,
} from '@unitbook/engine';
import type { Random } from '../../support/random.ts';

type Value = NonNullable<ReturnType<Figures['get']>>;

/** What a mistake is planted into. */
export interface Ground {
  readonly facts: BillFacts;
  readonly basis: RunBasis;
  readonly figures: Figures;
  readonly context: CauseContext;
}

/** A whole number from one to another, both included. */
const whole = (random: Random, from: number, to: number): number => from + random.below(to - from + 1);

const shown = (figures: Figures, name: string): number => {
  const value = figures.get(name);
  return value === undefined ? 0 : (Number(value.numerator) * 1000) / value.denominator;
};

/** A register and its units moved on by some units. */
function moved(figures: Map<string, Value>, register: string, units: number): void {
  const previous = shown(figures, FIGURE.reading(register, 'previous'));
  figures.set(FIGURE.reading(register, 'present'), thousandths(previous + units));
  figures.set(FIGURE.units(register), thousandths(units));
}

type Change = (figures: Map<string, Value>, random: Random) => void;

/** What a bill shows where a mistake is one of a number that nobody knows beforehand. */
const SHOWN: Readonly<Record<string, Change>> = {
  'estimated-reading': (figures, random) => {
    moved(figures, 'import', whole(random, 40, 900) * 1000);
    if (whole(random, 0, 1) === 0) moved(figures, 'export', 0);
  },
  'another-meter': (figures, random) => {
    for (const register of ['import', 'export']) {
      figures.set(FIGURE.reading(register, 'previous'), thousandths(whole(random, 20_000, 60_000) * 1000));
      moved(figures, register, whole(random, 10, 900) * 1000);
    }
  },
  'phase-wise-registers': (figures, random) => {
    const more = whole(random, 5, 200) * 1000;
    for (const register of ['import', 'export'])
      moved(figures, register, shown(figures, FIGURE.units(register)) + more);
  },
  'digit-error': (figures, random) => {
    const name = FIGURE.reading('import', 'present');
    const digit = 10 ** whole(random, 3, 6);
    figures.set(name, thousandths(shown(figures, name) + digit * whole(random, 1, 4)));
  },
  'charge-not-in-tariff': (figures, random) => {
    figures.set(FIGURE.line('duty'), { numerator: whole(random, 500, 9000), denominator: 100 });
  },
  'days-counted-otherwise': (figures, random) => {
    figures.set('days', { numerator: shown(figures, 'days') / 1000 + whole(random, 1, 6), denominator: 1 });
  },
  'billed-as-net-billing': (figures) => {
    const given = shown(figures, FIGURE.units('export'));
    figures.set(FIGURE.line('credit-for-export'), {
      numerator: -Math.round(given * 31),
      denominator: 10_000,
    });
  },
  'surplus-not-as-due': (figures, random) => {
    const paid = figures.get(FIGURE.line('surplus'));
    if (paid === undefined) return;
    figures.set(FIGURE.line('surplus'), {
      numerator: Number(paid.numerator) * whole(random, 3, 9),
      denominator: paid.denominator * 10,
    });
  },
};

/** The facts of a bill as some mistake makes them, chosen at random; null: it cannot be made in this bill. */
function plantedBy(
  cause: Cause,
  { facts, figures, context }: Pick<Ground, 'facts' | 'figures' | 'context'>,
  random: Random,
): Variant | null {
  const change = SHOWN[cause.id];
  // Most mistakes are made without knowing what will be printed; others show a number of their own.
  const isShown = change !== undefined && random.chance(60);
  const printed = isShown ? new Map(figures) : new Map<string, Value>();
  if (isShown) change(printed, random);
  const variants = cause.variants(facts, { ...context, printed });
  return variants.length === 0 ? null : random.pick(variants);
}

/** The figures of a bill that mistakes were planted in one after the other; null: they cannot be made. */
export function figuresWith(
  causes: readonly Cause[],
  ground: Ground,
  random: Random,
): { readonly facts: BillFacts; readonly figures: Figures } | null {
  let { facts, figures } = ground;
  for (const cause of causes) {
    const variant = plantedBy(cause, { facts, figures, context: ground.context }, random);
    const run = variant === null ? null : runBill(variant.facts, ground.basis);
    if (variant === null || run === null || isSame(run.figures, figures)) return null;
    ({ facts } = variant);
    ({ figures } = run);
  }
  return { facts, figures };
}

/** Whether two bills show the same. */
export function isSame(one: Figures, other: Figures): boolean {
  return (
    one.size === other.size &&
    [...one].every(([name, { numerator, denominator }]) => {
      const own = other.get(name);
      return (
        own !== undefined &&
        BigInt(numerator) * BigInt(own.denominator) === BigInt(own.numerator) * BigInt(denominator)
      );
    })
  );
}
