import { wholeToDecimal, type DayNumber } from '@unitbook/engine';
import { deedWords } from '../view/deed-words.ts';
import { fixedText } from '../view/fixed-text.ts';
import { judgementWords } from '../view/judgement-words.ts';
import type { Rows } from '../view/plant-rows.ts';
import type { PlantView } from '../view/view-plant.ts';
import { bandOf, dayYield, yieldOf, YIELD_PLACES, type YieldBand } from '../view/yields.ts';

/** What the chart shows is read with two decimals. */
const SHOWN_PLACES = 2;
const STEP = 10 ** (YIELD_PLACES - SHOWN_PLACES);

function numberText(value: number | null | undefined, { writing }: PlantView): string {
  if (value === null || value === undefined) return '–';
  return fixedText(wholeToDecimal(Math.round(value / STEP), SHOWN_PLACES), writing);
}

function bandCells(band: YieldBand | null | undefined, view: PlantView): readonly string[] {
  if (band === null || band === undefined) return ['–', '–'];
  return [numberText(band.middle, view), `${numberText(band.low, view)} to ${numberText(band.high, view)}`];
}

/** What the diary says of some days. */
function diaryText({ diary }: PlantView, from: DayNumber, to: DayNumber): string {
  const own = diary.filter(({ date, through }) => date < to && through >= from);
  return own.map(({ letter, did }) => `${letter} ${deedWords(did).toLowerCase()}`).join(', ');
}

function monthLines(view: PlantView): Rows['lines'] {
  const { months, plant, writing } = view;
  return months.map((month) => {
    const { from, to } = month.period;
    return [
      writing.day(to),
      numberText(yieldOf(month.specificYieldInService ?? month.specificYield), view),
      ...bandCells(plant === null ? null : bandOf(month, plant), view),
      judgementWords(month),
      diaryText(view, from, to),
    ];
  });
}

function dayLines(view: PlantView): Rows['lines'] {
  const { days, plant, writing } = view;
  if (days === null || plant === null) return [];
  return days.days.map(({ day, wattHours }) => {
    const band = days.bands.find(({ from, to }) => from <= day && day < to);
    const made = wattHours === null ? null : dayYield(wattHours, day, plant);
    const findings = days.findings.filter((one) => one.days.from <= day && day < one.days.to);
    return [
      writing.day(day),
      wattHours === null ? 'not known' : numberText(made, view),
      ...bandCells(band, view),
      findings.map(({ number }) => String(number)).join(', '),
      diaryText(view, day, (day + 1) as DayNumber),
    ];
  });
}

/**
 * The chart as a table, with two decimals for reading.
 *
 * @param by  what the chart shows
 */
export function chartRows(view: PlantView, by: 'months' | 'days'): Rows {
  const made = 'Made per kWp and day';
  const expected = ['Expected', 'One sigma around it'];
  return by === 'days'
    ? { heads: ['Day', made, ...expected, 'Findings', 'Diary'], lines: dayLines(view) }
    : { heads: ['Up to', made, ...expected, 'Judgement', 'Diary'], lines: monthLines(view) };
}
