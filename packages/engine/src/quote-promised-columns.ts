import type { Figure, Period } from './quantity/index.ts';
import { INTERVAL_CHANNELS } from './energy/index.ts';
import type { PreparedQuote } from './quote-prepare.ts';
import { sumByDays } from './quote-promised-units.ts';
import {
  ownUseOf,
  roundedUnits,
  shareSteps,
  WIDTH,
  type OwnUse,
  type PeriodShape,
  type PeriodUnits,
  type ReadProfile,
} from './quote/index.ts';

/** Units of a period as they are assumed. */
export interface AssumedUnits extends PeriodUnits {
  /** Of own use, what a battery loses and holds. */
  readonly lost: number;
}

/** What a period is billed by: a row of columns with the plant, and one without it. */
export interface PromiseRow {
  readonly withPlant: readonly number[];
  readonly withoutPlant: readonly number[];
}

/** What is known of a period besides its energy, by name: import@peak, or a measure. */
export type PeriodQuantities = Readonly<Record<string, Figure>>;

const sumOf = (values: Iterable<number>): number => [...values].reduce((sum, value) => sum + value, 0);

const thousandths = (figure: Figure | undefined): number =>
  figure === undefined ? 0 : ((figure.numerator as number) * 1000) / figure.denominator;

/**
 * The columns that time blocks and measures of a quote's tariff add to those of a promise. What is made in each block
 * is none of them: no meter tells it.
 */
export function promiseNames(profile: ReadProfile | null): readonly string[] {
  const { blocks = [], windows = [] } = profile ?? {};
  return [
    ...blocks.map((block) => `import@${block}`),
    ...blocks.map((block) => `export@${block}`),
    ...windows.map(({ id }) => id),
  ];
}

/** Shares in whole steps, by weights that are not below 0. */
function shared(total: number, step: number, weights: Float64Array, most: Float64Array | null): Float64Array {
  const into = new Float64Array(weights.length);
  shareSteps(total, step, { into, from: 0, weights: weights.map((one) => Math.max(0, one)), most });
  return into;
}

/** Writes the rows of a promise: its units by time block and by measure, and those that came. */
export class PromisedColumns {
  readonly names: readonly string[];
  private readonly prepared: PreparedQuote;
  private readonly periods: readonly Period[];
  private readonly rule: OwnUse;
  private readonly bases = new Map<number, PeriodShape>();

  constructor(prepared: PreparedQuote, periods: readonly Period[]) {
    this.prepared = prepared;
    this.periods = periods;
    this.rule = ownUseOf(prepared);
    this.names = promiseNames(prepared.profile);
  }

  /**
   * A period as the quote has it for some use, generation and own use: blocks by the shape of the profile, in whole
   * steps by largest remainder.
   *
   * @param promised  its units as they are promised
   */
  assumed(at: number, units: AssumedUnits, promised: PeriodUnits): PromiseRow {
    const { use, generation, selfUse, lost } = units;
    const channels = [use - selfUse, generation - selfUse, generation];
    const row = this.plainRow(channels, use - lost);
    const shape = this.shapeOf(at, units, promised);
    if (shape === null) return row;
    const step = this.stepOf(units);
    const used = shared(use - lost, step, shape.used, null);
    const made = shared(generation, step, shape.made, null);
    const taken = shared(use - selfUse, step, shape.taken, used);
    const given = shared(generation - selfUse, step, shape.given, made);
    const left = this.windows.map(({ of, less }, index) => {
      const [own, other] = [of, less].map((channel) => channels[INTERVAL_CHANNELS.indexOf(channel)] ?? 0);
      const most = Math.min(own ?? 0, other ?? 0);
      return (own ?? 0) - Math.max(0, Math.min(most, roundedUnits(shape.met[index] ?? 0, step)));
    });
    return {
      withPlant: [...row.withPlant, ...taken, ...given, ...left],
      withoutPlant: [...row.withoutPlant, ...used, ...given.map(() => 0), ...this.unplanted(use - lost)],
    };
  }

  /**
   * A period as it came. What was used at home in each block no meter tells: it is shared by the shape of the profile,
   * and counts only where bills are made without the plant.
   */
  actual(at: number, units: AssumedUnits, quantities: PeriodQuantities, promised: PeriodUnits): PromiseRow {
    const { use, generation, selfUse, lost } = units;
    const shape = this.shapeOf(at, units, promised);
    const of = (channel: string) =>
      Float64Array.from(this.blocks, (block) => thousandths(quantities[`${channel}@${block}`]));
    const [taken, given] = [of('import'), of('export')];
    const hasBlocks = this.blocks.length > 0;
    const imported = hasBlocks ? sumOf(taken) : use - selfUse;
    const exported = hasBlocks ? sumOf(given) : generation - selfUse;
    const row = this.plainRow([imported, exported, generation], imported + selfUse - lost);
    if (shape === null) return row;
    const atHome = shape.used.map((used, block) => used - (shape.taken[block] ?? 0));
    const own = shared(selfUse - lost, this.stepOf(units), atHome, null);
    const used = taken.map((one, block) => one + (own[block] ?? 0));
    const left = this.windows.map(({ id }) => thousandths(quantities[id]));
    return {
      withPlant: [...row.withPlant, ...taken, ...given, ...left],
      withoutPlant: [
        ...row.withoutPlant,
        ...used,
        ...given.map(() => 0),
        ...this.unplanted(imported + selfUse - lost),
      ],
    };
  }

  private get blocks(): ReadProfile['blocks'] {
    return this.prepared.profile?.blocks ?? [];
  }

  private get windows(): ReadProfile['windows'] {
    return this.prepared.profile?.windows ?? [];
  }

  private plainRow(channels: readonly number[], withoutPlant: number): PromiseRow {
    const { watts } = this.prepared.input;
    return { withPlant: [...channels, watts], withoutPlant: [withoutPlant, 0, 0, 0] };
  }

  /** Measures without the plant: everything is taken. */
  private unplanted(use: number): readonly number[] {
    return this.windows.map(({ of, less }) => (of === 'import' && less !== 'import' ? use : 0));
  }

  /** Whole steps of the quote; thousandths where meters tell finer units. */
  private stepOf({ use, generation, selfUse, lost }: AssumedUnits): number {
    const { unitStep: step } = this.prepared.input;
    return [use, generation, selfUse, lost].every((one) => one % step === 0) ? step : 1;
  }

  /** The shape of the quote's own months, moved by as much as the rule moves it for other units. */
  private shapeOf(at: number, { generation, use }: PeriodUnits, promised: PeriodUnits): PeriodShape | null {
    const period = this.periods[at] as Period;
    if (this.names.length === 0) return null;
    const base = this.baseOf(at);
    const from = this.rule.shape(period, promised.generation, promised.use);
    const to = this.rule.shape(period, generation, use);
    if (from === null || to === null) return null;
    const moved = (what: keyof PeriodShape): Float64Array =>
      base[what].map((own, index) => own + (to[what][index] ?? 0) - (from[what][index] ?? 0));
    return {
      used: moved('used'),
      made: moved('made'),
      taken: moved('taken'),
      given: moved('given'),
      met: moved('met'),
    };
  }

  /** The columns of the quote's months over a period, by days. */
  private baseOf(at: number): PeriodShape {
    const known = this.bases.get(at);
    if (known !== undefined) return known;
    const { units } = this.prepared;
    const { length: blocks } = this.blocks;
    const column = (rows: Float64Array, place: number): number =>
      sumByDays(this.prepared, this.periods[at] as Period, (month) => rows[month * units.width + place] ?? 0);
    const ofBlocks = (rows: Float64Array, channel: number): Float64Array =>
      Float64Array.from(this.blocks, (_, block) => column(rows, WIDTH + channel * blocks + block));
    const base = {
      used: ofBlocks(units.withoutPlant, 0),
      taken: ofBlocks(units.withPlant, 0),
      given: ofBlocks(units.withPlant, 1),
      made: ofBlocks(units.withPlant, 2),
      met: Float64Array.from(this.windows, ({ of }, index) => {
        const left = column(units.withPlant, WIDTH + 3 * blocks + index);
        return column(units.withPlant, INTERVAL_CHANNELS.indexOf(of)) - left;
      }),
    };
    this.bases.set(at, base);
    return base;
  }
}
