import { parseDay, type DayNumber, type Finding } from '@unitbook/engine';
import { isZone } from '@unitbook/meter-files';
import { commandFinding, type CommandFindingCode } from '../findings.ts';
import type { WantedDays } from '../read/meter-rows.ts';
import type { TypedCommand } from './command.ts';

/** Make a finding about the options of a command. */
export const optionFinding = (
  code: CommandFindingCode,
  values: Readonly<Record<string, string>> = {},
): Finding => commandFinding(code, { path: [] }, values);

/** Options that would ask for two things at once: both names and what to do. */
export type Excluded = readonly [name: string, other: string, remedy: string];

/** Whether an option was typed, whatever its form. */
export function hasOption({ values, lists, switches }: TypedCommand, name: string): boolean {
  return values.has(name) || lists.has(name) || switches.has(name);
}

/** One finding for each pair that was typed and does not go together. */
export function excludedFindings(typed: TypedCommand, pairs: readonly Excluded[]): readonly Finding[] {
  return pairs
    .filter(([name, other]) => hasOption(typed, name) && hasOption(typed, other))
    .map(([name, other, remedy]) =>
      optionFinding('command/options-exclude', { name: `--${name}`, other: `--${other}`, remedy }),
    );
}

/** The word of `--on` for the first day of each month. */
const FIRST_DAYS = 'first-days';

const noDay = (name: string, value: string, or = ''): Finding =>
  optionFinding('command/no-such-day', { name, value, or, remedy: 'Correct the date.' });

function onFindings(texts: readonly string[]): readonly Finding[] {
  const wrong = texts
    .filter((text) => text !== FIRST_DAYS && parseDay(text) === null)
    .map((text) => noDay('--on', text, `, or ${FIRST_DAYS}`));
  const isMixed = texts.includes(FIRST_DAYS) && texts.length > 1;
  const remedy = 'Ask for the first day of each month, or for days.';
  const mixed = isMixed
    ? [optionFinding('command/options-exclude', { name: `--on ${FIRST_DAYS}`, other: '--on', remedy })]
    : [];
  return [...wrong, ...mixed];
}

/** What is wrong with the values of `--day`, `--on` and `--zone`. */
export function meterOptionFindings({ values, lists }: TypedCommand): readonly Finding[] {
  const [day, zone] = [values.get('day'), values.get('zone')];
  return [
    ...(day === undefined || parseDay(day) !== null ? [] : [noDay('--day', day)]),
    ...onFindings(lists.get('on') ?? []),
    ...(zone === undefined || isZone(zone) ? [] : [optionFinding('command/unknown-zone', { value: zone })]),
  ];
}

/** The days that `--on` asks for; null where it was not typed. */
export function wantedDays({ lists }: TypedCommand): WantedDays {
  const texts = lists.get('on');
  if (texts === undefined) return null;
  return texts.includes(FIRST_DAYS) ? FIRST_DAYS : texts.flatMap((text) => parseDay(text) ?? []);
}

/** The day that `--day` gives; null where it was not typed. */
export function typedDay({ values }: TypedCommand): DayNumber | null {
  return parseDay(values.get('day') ?? '');
}
