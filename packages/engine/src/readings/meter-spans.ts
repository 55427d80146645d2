import type * as z from 'zod/mini';
import { parseDay, type DayNumber } from '../quantity/index.ts';
import type { AccountDocument, gridRegisterSchema } from './account-document.ts';
import { makeRegister, type Register, type RegisterId } from './register.ts';

/** What the meters of an account are from a day on. */
export interface MeterSpan {
  /** The first day; null: since the beginning. */
  readonly from: DayNumber | null;
  /** The meters that the account names from this day on: none of the first span. */
  readonly begun: readonly ('grid' | 'generation')[];
  readonly serials: { readonly grid: string; readonly generation: string | null };
  /** The register of all units of each kind. */
  readonly totals: Readonly<Record<'import' | 'export', Register>> & { readonly generation: Register | null };
  /** The registers that units are counted by: a total, or the rates in its place. */
  readonly counted: readonly Register[];
}

type Meters = AccountDocument['meters'];
type GridMeter = Pick<Meters['grid'], 'serial' | 'multiplyingFactor' | 'accuracyClass' | 'import' | 'export'>;
type PlantMeter = Pick<
  NonNullable<Meters['generation']>,
  'serial' | 'multiplyingFactor' | 'accuracyClass' | 'generation'
>;
type Shape = z.infer<typeof gridRegisterSchema>;
type Meter = Pick<GridMeter, 'multiplyingFactor' | 'accuracyClass'>;

function total(id: RegisterId, { digits, decimals }: Shape, meter: Meter): Register {
  const { multiplyingFactor, accuracyClass } = meter;
  return makeRegister({ id, digits, decimals, multiplyingFactor, accuracyClass });
}

/** The registers of the rates, or the total where there are none. */
function counted(register: Register, shape: Shape, meter: Meter): readonly Register[] {
  if (shape.rates === undefined) return [register];
  const { digits, decimals } = shape;
  const { multiplyingFactor, accuracyClass } = meter;
  return shape.rates.map(({ id, block }) =>
    makeRegister({ id: register.id, digits, decimals, multiplyingFactor, accuracyClass, rate: id, block }),
  );
}

function spanOf(
  { from, begun }: Pick<MeterSpan, 'from' | 'begun'>,
  grid: GridMeter,
  plant: PlantMeter | null,
): MeterSpan {
  const taken = total('import', grid.import, grid);
  const given = total('export', grid.export, grid);
  const made = plant === null ? null : total('generation', plant.generation, plant);
  return {
    from,
    begun,
    serials: { grid: grid.serial, generation: plant?.serial ?? null },
    totals: { import: taken, export: given, generation: made },
    counted: [
      ...counted(taken, grid.import, grid),
      ...counted(given, grid.export, grid),
      ...(made === null ? [] : [made]),
    ],
  };
}

/** The last of some dated meters that counts on a day. */
function inPlace<Dated extends { readonly from: string }>(
  later: readonly Dated[] | undefined,
  day: DayNumber,
): Dated | undefined {
  return later?.findLast(({ from }) => (parseDay(from) ?? Infinity) <= day);
}

const METERS = ['grid', 'generation'] as const;

const daysOf = (later: readonly { readonly from: string }[] | undefined): readonly DayNumber[] =>
  (later ?? []).flatMap(({ from }) => parseDay(from) ?? []);

/**
 * The meters of an account as they follow each other.
 *
 * @param meters  whose days are days and whose numbers are plain decimals
 * @returns       at least one span, in order of time
 */
export function meterSpans({ grid, generation }: Meters): readonly MeterSpan[] {
  const dated = { grid: daysOf(grid.later), generation: daysOf(generation?.later) };
  const days = [...new Set([...dated.grid, ...dated.generation])].sort((a, b) => a - b);
  const first = spanOf({ from: null, begun: [] }, grid, generation ?? null);
  return [
    first,
    ...days.map((day) =>
      spanOf(
        { from: day, begun: METERS.filter((meter) => dated[meter].includes(day)) },
        inPlace(grid.later, day) ?? grid,
        inPlace(generation?.later, day) ?? generation ?? null,
      ),
    ),
  ];
}

/** The meters on a day: a day on which one was changed belongs to the new one. */
export function spanOn(spans: readonly MeterSpan[], day: DayNumber): MeterSpan {
  const own = spans.findLast(({ from }) => from === null || from <= day) ?? spans[0];
  if (own === undefined) throw new RangeError('an account has at least one meter');
  return own;
}

/** The meters just before a day: whose last readings are taken on it. */
export function spanBefore(spans: readonly MeterSpan[], day: DayNumber): MeterSpan {
  const own = spans.findLast(({ from }) => from === null || from < day) ?? spans[0];
  if (own === undefined) throw new RangeError('an account has at least one meter');
  return own;
}
