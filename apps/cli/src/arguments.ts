import { parseArgs } from 'node:util';
import type { Finding } from '@unitbook/engine';
import { commandFinding, type CommandFindingCode } from './findings.ts';

/** The options of a command: what stands for the value in the help text, or null for a switch. */
export type OptionNames = Readonly<Record<string, string | null>>;

/** What was typed after the name of a command. */
export interface Arguments {
  readonly values: ReadonlyMap<string, string>;
  /** What stands behind options that can be given several times, each time it is. */
  readonly lists: ReadonlyMap<string, readonly string[]>;
  readonly switches: ReadonlySet<string>;
  readonly others: readonly string[];
  readonly findings: readonly Finding[];
}

const HELP: OptionNames = { help: null };

type Token = NonNullable<ReturnType<typeof parseArgs>['tokens']>[number];
type OptionToken = Extract<Token, { kind: 'option' }>;

const make = (code: CommandFindingCode, values: Readonly<Record<string, string>>): Finding =>
  commandFinding(code, { path: [] }, values);

function optionFinding(token: OptionToken, known: OptionNames, isSecond: boolean): Finding | null {
  const name = token.rawName;
  const wanted = Object.hasOwn(known, token.name) ? known[token.name] : undefined;
  if (wanted === undefined) {
    const allowed = Object.keys(known)
      .map((key) => `--${key}`)
      .join(', ');
    return make('command/unknown-option', { name, allowed });
  }
  if (isSecond) return make('command/option-twice', { name });
  if (wanted === null && token.value !== undefined)
    return make('command/option-with-value', { name, value: token.value });
  if (wanted !== null && (token.value ?? '') === '')
    return make('command/option-without-value', { name, value: wanted });
  return null;
}

/** An option that wants a value does not take the next option for it. */
function withoutSwallowing(argv: readonly string[], known: OptionNames): string[] {
  return argv.map((word, index) => {
    const next = argv[index + 1];
    const wanted = word.startsWith('--') ? known[word.slice(2)] : undefined;
    const isBare = next === undefined || (next.startsWith('-') && next !== '-');
    return typeof wanted === 'string' && isBare ? `${word}=` : word;
  });
}

/**
 * Read what was typed after the name of a command; list everything that is wrong with it.
 *
 * @param argv      the words
 * @param names     the options of the command; `--help` goes without saying
 * @param repeated  those of them that can be given several times
 */
export function readArguments(
  argv: readonly string[],
  names: OptionNames,
  repeated: readonly string[] = [],
): Arguments {
  const known: OptionNames = { ...names, ...HELP };
  const options = Object.fromEntries(
    Object.entries(known).map(([name, value]) => [name, { type: value === null ? 'boolean' : 'string' }]),
  ) as Record<string, { type: 'boolean' | 'string' }>;
  const { tokens } = parseArgs({
    args: withoutSwallowing(argv, known),
    options,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const values = new Map<string, string>();
  const lists = new Map<string, readonly string[]>();
  const switches = new Set<string>();
  const others: string[] = [];
  const findings: Finding[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') others.push(token.value);
    if (token.kind !== 'option') continue;
    const isSecond = values.has(token.name) || switches.has(token.name);
    const finding = optionFinding(token, known, isSecond);
    if (finding !== null) findings.push(finding);
    else if (token.value === undefined) switches.add(token.name);
    else if (repeated.includes(token.name))
      lists.set(token.name, [...(lists.get(token.name) ?? []), token.value]);
    else values.set(token.name, token.value);
  }
  return { values, lists, switches, others, findings };
}
