import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';
import { SCHEME_FINDINGS } from './scheme-findings.ts';

const quoted = (text: string | undefined): string => `"${text ?? ''}"`;

/** Everything that can be wrong with a tariff document, by code. */
export const TARIFF_FINDINGS = {
  'tariff/unknown-currency': {
    severity: 'error',
    text: (v) => ({
      found: `the currency ${quoted(v['currency'])}`,
      expected: 'a currency code of ISO 4217, such as "INR"',
      remedy: 'Correct the code.',
    }),
  },
  'tariff/clause-without-source': {
    severity: 'error',
    text: (v) => ({
      found: `the clause ${quoted(v['clause'])}`,
      expected: `a clause that begins with one of the sources: ${v['sources'] ?? ''}`,
      remedy: 'Add the source under "sources" or correct the clause.',
    }),
  },
  'tariff/slabs-not-ascending': {
    severity: 'error',
    text: (v) => ({
      found: `the limit ${v['limit'] ?? ''} after the limit ${v['before'] ?? ''}`,
      expected: 'limits that ascend from above 0',
      remedy: 'Put them in ascending order or correct the limit.',
    }),
  },
  'tariff/slab-limit-missing': {
    severity: 'error',
    text: () => ({
      found: 'a slab without "upTo" that is not the last',
      expected: 'an upper limit on every slab but the last',
      remedy: 'Add "upTo".',
    }),
  },
  'tariff/last-slab-limited': {
    severity: 'error',
    text: (v) => ({
      found: `the last slab ends at ${v['limit'] ?? ''}`,
      expected: 'a last slab without "upTo", so that every quantity has a rate',
      remedy: 'Take "upTo" out of the last slab or add a slab after it.',
    }),
  },
  'tariff/same-id-twice': {
    severity: 'error',
    text: (v) => ({
      found: `a second charge with the id ${quoted(v['id'])}`,
      expected: 'each id once in a version',
      remedy: 'Give this charge another id.',
    }),
  },
  'tariff/unknown-line': {
    severity: 'error',
    text: (v) => ({
      found: `the line ${quoted(v['line'])}`,
      expected: `a line above this one: ${v['lines'] ?? ''}`,
      remedy: 'Name a line above, or move this charge below the line it names.',
    }),
  },
  'tariff/line-not-recomputable': {
    severity: 'error',
    text: (v) => ({
      found: `the line ${quoted(v['line'])}, of kind ${v['kind'] ?? ''}, charged again on another quantity`,
      expected: 'a line of kind slabs, slab-tables or per-unit',
      remedy: 'Name a line that is charged on units, or name the line itself.',
    }),
  },
  'tariff/unknown-day-rule': {
    severity: 'error',
    text: (v) => ({
      found: `the day rule ${quoted(v['rule'])}`,
      expected: `one of the day rules: ${v['rules'] ?? ''}`,
      remedy: 'Add it under "dayRules" or correct the name.',
    }),
  },
  'tariff/counted-twice': {
    severity: 'error',
    text: (v) => ({
      found: v['found'] ?? '',
      expected: 'lines that are each counted once',
      remedy: 'Name a line once: itself, or one floor that stands in for it.',
    }),
  },
  'tariff/split-unscaled': {
    severity: 'error',
    text: (v) => ({
      found: `${quoted(v['id'])} without "scaledBy", where a change of the charges splits the period`,
      expected: 'a day rule, so that each part bears its share only',
      remedy: 'Add "scaledBy" with one of the day rules, or let one version bill the whole period.',
    }),
  },
  'tariff/no-effect': {
    severity: 'error',
    text: (v) => ({
      found: `${quoted(v['key'])} beside ${v['beside'] ?? ''}`,
      expected: 'a quantity that chooses only where one of several is chosen for the whole',
      remedy: 'Take "chosenBy" out, or write steps, or the method "whole".',
    }),
  },
  'tariff/one-of-two': {
    severity: 'error',
    text: (v) => ({
      found: v['found'] ?? '',
      expected: v['expected'] ?? '',
      remedy: 'Keep exactly one of the two.',
    }),
  },
  'tariff/step-not-positive': {
    severity: 'error',
    text: (v) => ({
      found: `${quoted(v['key'])} is ${v['value'] ?? ''}`,
      expected: 'a number above 0',
      remedy: 'Correct the number.',
    }),
  },
  'tariff/settlement-incomplete': {
    severity: 'error',
    text: (v) => ({
      found: v['found'] ?? '',
      expected: v['expected'] ?? '',
      remedy: v['remedy'] ?? '',
    }),
  },
  'tariff/no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: quoted(v['value']),
      expected: 'a day of the calendar',
      remedy: 'Correct the date.',
    }),
  },
  'tariff/ends-before-it-begins': {
    severity: 'error',
    text: (v) => ({
      found: `in force from ${v['from'] ?? ''} through ${v['through'] ?? ''}`,
      expected: 'a last day on or after the first',
      remedy: 'Correct one of the two dates.',
    }),
  },
  'tariff/gap': {
    severity: 'error',
    text: (v) => ({
      found: `no ${v['one'] ?? ''} from ${v['from'] ?? ''} through ${v['through'] ?? ''}`,
      expected: 'each version to begin on the day after the one before ends',
      remedy: `Correct the dates of ${v['before'] ?? ''} or ${v['after'] ?? ''}, or add what was in force between.`,
    }),
  },
  'tariff/overlap': {
    severity: 'error',
    text: (v) => ({
      found: `two ${v['several'] ?? ''} from ${v['from'] ?? ''} ${v['through'] ? `through ${v['through']}` : 'on'}`,
      expected: 'one on every day',
      remedy: `Correct the dates of ${v['before'] ?? ''} or ${v['after'] ?? ''}.`,
    }),
  },
  'tariff/finer-than-grid': {
    severity: 'error',
    text: (v) => ({
      found: `${quoted(v['value'])}, with ${v['places'] ?? ''} decimals`,
      expected: `at most ${v['most'] ?? ''} decimals here`,
      remedy: 'Round it as the order does, or state it in another unit.',
    }),
  },
  'tariff/too-large': {
    severity: 'error',
    text: (v) => ({
      found: quoted(v['value']),
      expected: 'at most 9 digits before the point, and 15 in all',
      remedy: 'Correct the number, or state it in another unit.',
    }),
  },
  'tariff/span-reversed': {
    severity: 'error',
    text: (v) => ({
      found: `a span that begins at ${v['from'] ?? ''} days and ends at ${v['through'] ?? ''}`,
      expected: '"unscaledThrough" on or after "unscaledFrom"',
      remedy: 'Put the two in order.',
    }),
  },
  ...SCHEME_FINDINGS,
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about a tariff document. */
export type TariffFindingCode = keyof typeof TARIFF_FINDINGS;

/** Make a finding about a tariff document. */
export const tariffFinding: (
  code: TariffFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<TariffFindingCode>(TARIFF_FINDINGS);
