import {
  addDays,
  dayText,
  parseDay,
  plantDays,
  plantMonths,
  upkeepCalendar,
  usualIrradiation,
  type DayNumber,
  type Finding,
  type Plant,
  type UpkeepEntry,
} from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import { PLANT_HELP } from '../help.ts';
import type { CommandIo } from '../io.ts';
import { localeFindings } from '../locale.ts';
import { CAUTIONS } from '../render/cautions.ts';
import { makeNotation } from '../render/notation.ts';
import { plantPage } from '../render/plant-page.ts';
import { finish, type Command, type TypedCommand } from './command.ts';
import { checkPlantOptions } from './plant-options.ts';
import { plantInput, type PlantInput } from './plant-input.ts';

const SUBJECT = 'unitbook plant';
/** Longer than any task of upkeep is apart. */
const CALENDAR_DAYS = 800;

/** The next time that each task is due, from today on. */
function nextDue(plant: Plant, today: DayNumber): readonly UpkeepEntry[] {
  const due = upkeepCalendar(plant, today, addDays(today, CALENDAR_DAYS)).filter(
    ({ state }) => state === 'due',
  );
  return due.filter((entry, index) => due.findIndex(({ task }) => task.id === entry.task.id) === index);
}

/** Months first, then days. */
function shownOf({ plant, generation }: PlantInput) {
  const { days } = generation;
  const periods = generation.periods.map((one) => {
    const irradiation = usualIrradiation(plant, one.period);
    return irradiation === null ? one : { ...one, irradiation };
  });
  const months = plantMonths(periods, plant, days);
  const single = days.length === 0 ? [] : plantDays(days, plant).findings;
  return { months: months.value, findings: [...months.findings, ...single] };
}

async function runPlant(typed: TypedCommand, io: CommandIo): Promise<number> {
  const locale = typed.values.get('locale');
  const problems = [...about(SUBJECT, checkPlantOptions(typed)), ...localeFindings(locale, SUBJECT)];
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  const today = parseDay(typed.values.get('today') ?? dayText(io.today)) ?? io.today;
  const { value: input, findings } = await plantInput(typed, io, today);
  if (input === null) return finish(io, { ran: false, findings });
  const { plant, source, generation } = input;
  const { months, findings: shown } = shownOf(input);
  const notation = makeNotation(locale ?? 'en', 2);
  const upkeep = nextDue(plant, today);
  const page = plantPage({ plant, source, months, findings: shown, upkeep, today }, notation);
  io.out([...page, '', CAUTIONS, ''].join('\n'));
  const own: readonly PlacedFinding[] = about(input.subject, generation.findings);
  const status = finish(io, { ran: true, findings: [...findings, ...own] });
  const isAsked = shown.some(({ severity }: Finding) => severity !== 'note');
  return isAsked ? Math.max(status, 1) : status;
}

/** `unitbook plant`: what a plant made beside what was to be expected, and its upkeep. */
export const plantCommand: Command = {
  name: 'plant',
  help: PLANT_HELP,
  options: {
    plant: 'FILE',
    household: 'FILE',
    account: 'FILE',
    readings: 'FILE',
    days: 'FILE',
    columns: 'FILE',
    day: 'DAY',
    on: 'DAY',
    zone: 'ZONE',
    locale: 'TAG',
    today: 'DAY',
  },
  repeated: ['on'],
  run: runPlant,
};
