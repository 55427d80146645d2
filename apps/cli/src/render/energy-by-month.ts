import { calendarDay, daysInMonth, type IntervalChannel } from '@unitbook/engine';
import { energyText, type DayEnergy } from '@unitbook/meter-files';
import type { PageNotation } from './notation.ts';
import { renderTable, type Column } from './table.ts';

const CHANNELS: readonly (readonly [heading: string, channel: IntervalChannel])[] = [
  ['Taken', 'import'],
  ['Given', 'export'],
  ['Made', 'generation'],
];

/** What the days of a month come to. */
interface Month {
  readonly year: number;
  readonly month: number;
  whole: number;
  /** By channel in whole numbers of 10^-places kWh; null without any value. */
  readonly sums: (bigint | null)[];
}

const added = (sum: bigint | null, value: number | null): bigint | null =>
  value === null ? sum : (sum ?? 0n) + BigInt(value);

function monthsOf(energy: DayEnergy): readonly Month[] {
  const months: Month[] = [];
  energy.days.forEach((day, index) => {
    const { year, month } = calendarDay(day);
    let own = months.at(-1);
    if (own?.year !== year || own.month !== month) {
      own = { year, month, whole: 0, sums: CHANNELS.map(() => null) };
      months.push(own);
    }
    if (energy.isWhole[index] === true) own.whole += 1;
    CHANNELS.forEach(([, channel], at) => {
      own.sums[at] = added(own.sums[at] ?? null, energy[channel]?.energy[index] ?? null);
    });
  });
  return months;
}

/** Energy by calendar month, one row each, and the sums. */
export function energyByMonth(energy: DayEnergy, { number }: PageNotation): readonly string[] {
  const months = monthsOf(energy);
  const shown = CHANNELS.flatMap(([heading, channel], at) =>
    energy[channel] === null ? [] : [{ heading, at }],
  );
  const text = (sum: bigint | null | undefined): string =>
    sum === null || sum === undefined ? '–' : number(energyText(sum, energy.places));
  const columns: readonly Column[] = [
    { heading: ['Month'], side: 'left' },
    { heading: ['Whole days'], side: 'right' },
    ...shown.map(({ heading }): Column => ({ heading: [heading], side: 'right' })),
  ];
  const body = months.map(({ year, month, whole, sums }) => [
    `${String(year)}-${String(month).padStart(2, '0')}`,
    `${String(whole)} of ${String(daysInMonth(year, month))}`,
    ...shown.map(({ at }) => text(sums[at])),
  ]);
  const total = shown.map(({ at }) =>
    text(
      months.reduce<bigint | null>(
        (sum, { sums }) => (sums[at] == null ? sum : (sum ?? 0n) + sums[at]),
        null,
      ),
    ),
  );
  const word = months.length === 1 ? '1 month' : `${String(months.length)} months`;
  return renderTable(columns, { body, foot: [[word, '', ...total]] });
}
