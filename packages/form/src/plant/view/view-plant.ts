import {
  addDays,
  cleaningEffects,
  parseDay,
  type CleaningEffect,
  type DiaryEntry,
  type Finding,
  type Period,
  type Plant,
  type PlantDay,
  type PlantDocument,
} from '@unitbook/engine';
import type { Household } from '../../household/household.ts';
import { viewBook } from '../../view/view-book.ts';
import { writingFor, type Writing } from '../../writing/writing.ts';
import { letterOf, topOf, type Bar, type ChartModel } from '../chart/chart-model.ts';
import { plantOf } from '../document/edit-plant.ts';
import { readTypedPlant } from '../document/read-typed-plant.ts';
import { keptDay } from '../document/typed-texts.ts';
import type { MakeDayViews } from './day-memo.ts';
import { dayViews, type DayViews } from './day-views.ts';
import { monthViews, type MonthView } from './month-views.ts';
import { dayPeriods, hasGenerationMeter, readPeriods, type MadePeriod } from './periods.ts';
import { bandOf, dayYield, yieldOf } from './yields.ts';

/** A diary entry and the letter that stands for it on the chart. */
export interface LetteredEntry extends DiaryEntry {
  readonly letter: string;
  /** Its place in the document. */
  readonly place: number;
}

/** Everything the page shows of a plant. */
export interface PlantView {
  readonly writing: Writing;
  /** As typed, or what the account says. */
  readonly document: PlantDocument;
  /** What can be used of it; null while its size cannot. */
  readonly plant: Plant | null;
  readonly findings: readonly Finding[];
  /** In order of time; calendar months of a daily file where no meter counts what the plant makes. */
  readonly months: readonly MonthView[];
  readonly hasMeter: boolean;
  /** Whether later readings wait for one that has to be set right. */
  readonly isBlocked: boolean;
  readonly days: DayViews | null;
  /** Entries that can be used, in order of days. */
  readonly diary: readonly LetteredEntry[];
  /** What cleanings did, as far as single days tell. */
  readonly effects: readonly CleaningEffect[];
}

/** What a view is made of. */
export interface PlantInput {
  readonly household: Household;
  /** ISO date, or '' where the page does not know it. */
  readonly today: string;
  /** Of a daily file, in order, each once. */
  readonly days: readonly PlantDay[];
  /** How days are looked through; left out: anew. */
  readonly makeDayViews?: MakeDayViews;
}

/** Entries in order of days with their letters; of several on one day, as the document has them. */
function lettered(plant: Plant | null, { diary = [] }: PlantDocument): readonly LetteredEntry[] {
  const left = diary.map(({ date, did }, place) => ({ day: parseDay(keptDay(date)), did, place }));
  return (plant?.diary ?? []).map((entry, at) => {
    const found = left.findIndex(({ day, did }) => day === entry.date && did === entry.did);
    const [own] = found < 0 ? [] : left.splice(found, 1);
    return { ...entry, letter: letterOf(at), place: own?.place ?? -1 };
  });
}

/**
 * Work out everything the page shows of a plant.
 *
 * @param input  the household, the day it is and days from a file
 */
export function viewPlant(input: PlantInput): PlantView {
  const { household, today, days, makeDayViews = dayViews } = input;
  const book = viewBook({ household, tariff: null, today });
  const document = plantOf(household);
  const { plant, findings } = readTypedPlant(document);
  const fromReadings = readPeriods(book, today);
  const periods: readonly MadePeriod[] = fromReadings.length > 0 ? fromReadings : dayPeriods(days);
  const closing = book.typed.rows.filter(({ event }) => event === undefined).length - 1;
  return {
    writing: writingFor(household.account.locale, 'INR'),
    document,
    plant,
    findings,
    months: plant === null ? [] : monthViews(periods, plant, days),
    hasMeter: hasGenerationMeter(book.account.account),
    isBlocked: fromReadings.length < closing,
    days: plant === null || days.length === 0 ? null : makeDayViews(days, plant),
    diary: lettered(plant, document),
    effects: plant === null || days.length === 0 ? [] : cleaningEffects(days, plant),
  };
}

const oneDay = (from: Period['from']): Period => ({ from, to: addDays(from, 1) });

function dayBars({ days }: DayViews, plant: Plant): readonly Bar[] {
  return days.flatMap(({ day, wattHours }) => {
    const value = wattHours === null ? null : dayYield(wattHours, day, plant);
    return value === null ? [] : [{ ...oneDay(day), value, judgement: null }];
  });
}

/** Months are drawn by days in service: the expectation leaves outages out, too. */
function monthBars(months: readonly MonthView[]): readonly Bar[] {
  return months.flatMap(({ period, specificYield, specificYieldInService, judgement }) => {
    const value = yieldOf(specificYieldInService ?? specificYield);
    return value === null ? [] : [{ ...period, value, judgement }];
  });
}

function marksOf({ diary, days }: PlantView): ChartModel['marks'] {
  const entries = diary.map(({ date, letter }) => ({ day: date, sign: letter }));
  const findings = (days?.findings ?? []).map((one) => ({ day: one.days.from, sign: String(one.number) }));
  return [...entries, ...findings].sort((one, other) => one.day - other.day);
}

/**
 * What the chart shows: single days where a daily file was read, else months.
 *
 * @param pointed  days to point at
 */
export function chartOf(view: PlantView, pointed: Period | null): ChartModel | null {
  const { plant, days, months, diary } = view;
  if (plant === null) return null;
  const bars = days === null ? monthBars(months) : dayBars(days, plant);
  if (bars.length === 0) return null;
  const bands = days === null ? months.flatMap((month) => bandOf(month, plant) ?? []) : days.bands;
  const outages = diary.filter(({ did }) => did === 'outage');
  return {
    by: days === null ? 'months' : 'days',
    bars,
    bands,
    outages: outages.map(({ date, through }) => ({ from: date, to: addDays(through, 1) })),
    marks: marksOf(view),
    pointed,
    top: topOf([...bars.map(({ value }) => value), ...bands.map(({ high }) => high)]),
  };
}
