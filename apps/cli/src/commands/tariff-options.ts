import { decimalPlaces, decimalToWhole, isDecimalText, type Finding, type Quotient } from '@unitbook/engine';
import { commandFinding, type CommandFindingCode } from '../findings.ts';
import type { TypedCommand } from './command.ts';

const make = (code: CommandFindingCode, values: Readonly<Record<string, string>>): Finding =>
  commandFinding(code, { path: [] }, values);

/** Options that say more about one of the three reports, by the option that asks for it. */
const BELONGS: Readonly<Record<string, string>> = {
  case: 'cases',
  explain: 'case',
  json: 'cases',
  units: 'year',
  load: 'year',
  quantity: 'year',
  cliff: 'year',
};

const DEFAULT_UNITS = '300';
const DEFAULT_CLIFF = '3';
const UNITS = /^(?:0|[1-9]\d{0,5})$/;
const POWER = /^(?:0|[1-9]\d{0,5})(?:\.\d{1,3})?$/;
const TIMES = /^(?:[1-9]\d{0,2})(?:\.\d{1,2})?$/;

/** What a year is worked out for, as it was typed or by choice of this report. */
export interface YearOptions {
  readonly units: number;
  readonly unitsAreChosen: boolean;
  readonly quantities: Readonly<Record<string, string>>;
  readonly times: Quotient;
  readonly timesText: string;
}

/** What stands behind an option in the help. */
const VALUES: Readonly<Record<string, string>> = { cases: ' FILE', case: ' ID' };

function belongFindings(has: (name: string) => boolean): Finding[] {
  return Object.entries(BELONGS)
    .filter(([name, other]) => has(name) && !has(other))
    .map(([name, other]) => {
      const wanted = `--${other}${VALUES[other] ?? ''}`;
      return make('command/option-alone', { name: `--${name}`, other: wanted });
    });
}

/** Pairs that would ask for two things at once. */
const EXCLUDED = [
  ['year', 'cases', 'Ask for one, then for the other.'],
  ['case', 'json', 'JSON holds every case with its derivation; leave one of the two out.'],
  ['explain', 'json', 'JSON holds every case with its derivation; leave one of the two out.'],
] as const;

/** What the report sets itself, in all and in every time block. */
const SET =
  /^(?:import|export|generation|self-consumption|total-use|billed|days|shared|plant-capacity)(?:@.*)?$/;

function quantityFindings(typed: readonly string[], hasLoad: boolean): Finding[] {
  const names = typed.map((text) => text.split('=')[0] ?? '');
  const set = typed
    .filter((_, index) => SET.test(names[index] ?? '') || (hasLoad && names[index] === 'sanctioned-load'))
    .map((value) => make('command/quantity-set', { value }));
  const wrong = typed
    .filter((text, index) => {
      const value = text.slice((names[index] ?? '').length + 1);
      return names[index] === '' || !isDecimalText(value) || names.indexOf(names[index] ?? '') < index;
    })
    .map((value) => make('command/not-a-quantity', { value }));
  return [...wrong, ...set];
}

function numberFindings({ values, lists }: TypedCommand): Finding[] {
  const rules = [
    ['units', UNITS, 'whole units a month, from 0 to 999999'],
    ['load', POWER, 'kW, with at most 3 decimals'],
    ['cliff', TIMES, 'how many times the rate of its slab a unit has to cost, more than 1'],
  ] as const;
  const wrong = rules.flatMap(([name, form, expected]) => {
    const value = values.get(name);
    const isFine =
      value === undefined || (form.test(value) && (name !== 'cliff' || !/^1(\.0+)?$/.test(value)));
    return isFine ? [] : [make('command/not-a-number', { name: `--${name}`, value, expected })];
  });
  return [...wrong, ...quantityFindings(lists.get('quantity') ?? [], values.has('load'))];
}

/**
 * Everything that is wrong with the options of `unitbook tariff` taken together.
 *
 * @param typed  each of them right by itself
 */
export function checkTariffOptions(typed: TypedCommand): readonly Finding[] {
  const { values, lists, switches, others } = typed;
  const has = (name: string): boolean => values.has(name) || lists.has(name) || switches.has(name);
  const [first = ''] = others;
  if (has('schema') && others.length > 0) {
    const remedy = 'Leave it out, or leave --schema out to check it.';
    return [make('command/extra-argument', { value: first, remedy })];
  }
  if (!has('schema') && others.length === 0)
    return [make('command/no-file', { expected: 'one tariff file or more, or --schema' })];
  const reports = ['cases', 'year'].filter(has);
  const excluded = EXCLUDED.filter(([name, other]) => has(name) && has(other)).map(([name, other, remedy]) =>
    make('command/options-exclude', { name: `--${name}`, other: `--${other}`, remedy }),
  );
  const several = reports
    .filter(() => others.length > 1)
    .map((name) => make('command/one-tariff', { count: String(others.length), name: `--${name}` }));
  const twice = first === '-' && values.get('cases') === '-';
  return [
    ...belongFindings(has),
    ...excluded,
    ...several,
    ...(twice ? [make('command/input-twice', { names: 'the tariff and --cases' })] : []),
    ...numberFindings(typed),
  ];
}

/** The choices of a year: what was typed, and the report's own where nothing was. */
export function yearOptions({ values, lists }: TypedCommand): YearOptions {
  const load = values.get('load');
  const named = (lists.get('quantity') ?? []).map((text) => {
    const [name = ''] = text.split('=');
    return [name, text.slice(name.length + 1)] as const;
  });
  const timesText = values.get('cliff') ?? DEFAULT_CLIFF;
  const places = decimalPlaces(timesText);
  return {
    units: decimalToWhole(values.get('units') ?? DEFAULT_UNITS, 0),
    unitsAreChosen: !values.has('units'),
    quantities: { ...(load === undefined ? {} : { 'sanctioned-load': load }), ...Object.fromEntries(named) },
    times: { numerator: decimalToWhole(timesText, places), denominator: 10 ** places },
    timesText,
  };
}
