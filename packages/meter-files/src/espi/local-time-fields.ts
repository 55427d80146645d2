import { wholeNumber } from './digits.ts';
import { dstRule, type DstRule } from './dst-rule.ts';
import type { Position } from './elements.ts';
import { quoted, type Fields } from './fields.ts';
import type { LocalTimeParameters } from './local-time.ts';
import type { Tell } from './log.ts';

/** The elements of LocalTimeParameters that are read. */
export const LOCAL_TIME_FIELDS = ['dstEndRule', 'dstOffset', 'dstStartRule', 'tzOffset'] as const;

interface Source {
  readonly at: Position;
  readonly fields: Fields;
  readonly tell: Tell;
}

/** Minutes of a day, which no offset reaches. */
const MINUTES_OF_A_DAY = 1440;

/** An offset in minutes; null, which is told, where there is none that can be used. */
function minutesIn({ at, fields, tell }: Source, name: 'tzOffset' | 'dstOffset'): number | null {
  const field = fields.get(name);
  const expected = `${name} in seconds, whole minutes of less than a day, given once`;
  if (field === undefined) {
    tell('espi/local-time', at, { what: `LocalTimeParameters without ${name}`, expected });
    return null;
  }
  const seconds = field.twice === null ? wholeNumber(field.text) : null;
  // -0 is what dividing makes of no offset where a sign was written.
  const minutes = typeof seconds === 'number' ? seconds / 60 + 0 : NaN;
  if (Number.isInteger(minutes) && Math.abs(minutes) < MINUTES_OF_A_DAY) return minutes;
  const what = field.twice === null ? `"${quoted(field.text)}" as ${name}` : `two of ${name}`;
  tell('espi/local-time', field.at, { what, expected });
  return null;
}

/** A rule; 'none' where there is no daylight saving, null, which is told, where it is no rule. */
function ruleIn({ fields, tell }: Source, name: 'dstStartRule' | 'dstEndRule'): DstRule | 'none' | null {
  const field = fields.get(name);
  if (field === undefined) return 'none';
  const rule = field.twice === null ? dstRule(field.text.trim()) : null;
  if (rule === null) tell('espi/dst-rule', field.at, { field: name, rule: `"${quoted(field.text)}"` });
  return rule;
}

/** Both rules, or none for both. */
function rulesIn(source: Source): Pick<LocalTimeParameters, 'dstStart' | 'dstEnd'> | null {
  const dstStart = ruleIn(source, 'dstStartRule');
  const dstEnd = ruleIn(source, 'dstEndRule');
  if (dstStart === null || dstEnd === null) return null;
  if (dstStart === 'none' && dstEnd === 'none') return { dstStart: null, dstEnd: null };
  if (dstStart !== 'none' && dstEnd !== 'none') return { dstStart, dstEnd };
  const field = dstStart === 'none' ? 'dstStartRule' : 'dstEndRule';
  source.tell('espi/dst-rule', source.fields.get(field)?.at ?? source.at, { field, rule: 'no rule' });
  return null;
}

/**
 * Local time as LocalTimeParameters give it.
 *
 * @returns null where it cannot be worked out, which is told
 */
export function localTimeIn(source: Source): LocalTimeParameters | null {
  const { fields } = source;
  const offset = minutesIn(source, 'tzOffset');
  const rules = rulesIn(source);
  const needsDst = fields.has('dstOffset') || (rules !== null && rules.dstStart !== null);
  const dstOffset = needsDst ? minutesIn(source, 'dstOffset') : 0;
  if (offset === null || rules === null || dstOffset === null) return null;
  return { offset, dstOffset, ...rules };
}
