import { dayText, type DayNumber, type Finding, type Outcome, type Period } from './quantity/index.ts';
import type { Tariff, TariffDocument } from './tariff/index.ts';
import {
  blockClock,
  INTERVAL_CHANNELS,
  intervalFigure,
  measureIntervalYear,
  type BlockClock,
  type IntervalChannel,
  type IntervalColumns,
  type IntervalPeriod,
  type NettingWindow,
} from './energy/index.ts';
import { prepareTariff, type PreparedTariff } from './bill/index.ts';
import { startKeeping, type UnitsMonth } from './keeper.ts';
import type { UnitsAccount } from './periods-document.ts';
import type { Given } from './read-units.ts';

const LABELS: Readonly<Record<IntervalChannel, string>> = {
  import: 'Units taken from the grid',
  export: 'Units given to the grid',
  generation: 'Units the plant made',
};

/** What periods of interval data are billed from. */
export interface IntervalsInput {
  readonly account: UnitsAccount;
  readonly tariff: Tariff | PreparedTariff;
  /** In local time, in order. */
  readonly columns: IntervalColumns;
  /** Billing periods in order of time. */
  readonly periods: readonly Period[];
  /** Quantities that intervals do not count, such as a demand, by period; left out: none. */
  readonly more?: readonly Readonly<Record<string, string>>[];
  /** The local days on which the clocks change. */
  readonly clockChanges?: readonly DayNumber[];
  /** Of the tariff's time blocks, where many accounts share one; left out: made anew. */
  readonly clock?: BlockClock;
  /** false: no bills besides those there are; left out: what solar saved, too. */
  readonly withSavings?: boolean;
}

const isChannel = (name: string): name is IntervalChannel =>
  INTERVAL_CHANNELS.some((channel) => channel === name);

/** The nettings inside a period that the measures of a document ask for. */
function nettingWindows({ measures = {} }: TariffDocument): readonly NettingWindow[] {
  return Object.entries(measures).flatMap(([id, { window }]) => {
    if (window === undefined || !isChannel(window.of) || !isChannel(window.less)) return [];
    const { of, less, within, from, to } = window;
    return [
      { id, of, less, within, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) },
    ];
  });
}

/** The clock of a document's time blocks, for intervals of some minutes. */
export function clockOf(document: TariffDocument, minutes: number): BlockClock {
  const { timeBlocks, seasons } = document;
  return blockClock(timeBlocks === undefined ? null : { ...timeBlocks, seasons }, minutes);
}

/** What a period of intervals comes to, by the names that tariffs use. */
function quantitiesOf(measured: IntervalPeriod, hasBlocks: boolean): Given {
  const given: Given = {};
  for (const channel of INTERVAL_CHANNELS) {
    const total = measured.totals[channel];
    if (total === null) continue;
    given[channel] = intervalFigure({ id: channel, label: LABELS[channel] }, total);
    if (!hasBlocks) continue;
    for (const block of measured.blocks) {
      const id = `${channel}@${block.id}`;
      given[id] = intervalFigure({ id, label: `${LABELS[channel]}, ${block.id}` }, block[channel] ?? 0);
    }
  }
  for (const { id, total } of measured.windows) given[id] = intervalFigure({ id, label: id }, total);
  return given;
}

/**
 * Bill periods from interval data: sum every channel by time block, net inside the windows that the
 * tariff's measures name, settle and bill.
 *
 * Channels are taken as metered: nothing is netted but where a measure says so.
 *
 * @param input  account, tariff, columns of whole watt-hours and periods
 * @returns      the periods up to the first that cannot be billed, and every finding about all of them
 */
export function keepIntervals(input: IntervalsInput): Outcome<readonly UnitsMonth[]> {
  const { account, columns, periods, more = [], clockChanges = [] } = input;
  const prepared = 'prepared' in input.tariff ? input.tariff : prepareTariff(input.tariff);
  const { document } = prepared.tariff;
  const clock = input.clock ?? clockOf(document, columns.minutes);
  const rules = { clock, windows: nettingWindows(document), clockChanges };
  const measured = measureIntervalYear(columns, periods, rules);
  const findings: Finding[] = measured.flatMap((one) => one.findings);
  const sound = measured.findIndex(({ value }) => value === null);
  const usable = sound < 0 ? measured : measured.slice(0, sound);
  const { withSavings = true } = input;
  const [first] = periods;
  const day = first === undefined ? undefined : dayText(first.from);
  const started = startKeeping({ account, tariff: prepared, withSavings, first: day });
  findings.push(...started.findings);
  const keeper = started.value;
  if (keeper === null) return { value: [], findings };
  const hasBlocks = document.timeBlocks !== undefined;
  for (const [index, { value }] of usable.entries()) {
    const period = value as IntervalPeriod;
    const before = keeper.kept.length;
    findings.push(
      ...keeper.keepGiven(period.period, quantitiesOf(period, hasBlocks), more[index] ?? {}, [
        'periods',
        index,
      ]),
    );
    if (keeper.kept.length === before) break;
  }
  return { value: keeper.kept.map(({ month }) => month), findings };
}
