import {
  checkPlant,
  isDecimalText,
  readingFinding,
  readNumberText,
  type Finding,
  type Path,
  type Plant,
  type PlantDocument,
} from '@unitbook/engine';
import { dayTexts, numberTexts, putAt, type PlantText } from './plant-texts.ts';
import { isDay, keptDay, keptNumber } from './typed-texts.ts';

/** A plant document as typed, as far as it can be understood. */
export interface TypedPlant {
  /** What can be used of it; null while the size of the plant cannot. */
  readonly plant: Plant | null;
  readonly findings: readonly Finding[];
}

const keyOf = (path: Path): string => path.join('.');

/** Still to type: what goes there. */
function missing({ path, what }: PlantText): Finding {
  return { ...readingFinding('account/number-missing', { path }, { what }), remedy: `${what}.` };
}

/** What stands in the way of reading a number. */
function unreadable(typed: PlantText): Finding {
  const { path, text: value } = typed;
  const read = readNumberText(value);
  switch (read.kind) {
    case 'number':
    case 'empty':
      return missing(typed);
    case 'letter':
      return readingFinding('reading/letter', { path, offer: read.offer }, { value, offer: read.offer });
    case 'comma-unclear':
      return readingFinding('reading/comma-unclear', { path }, { ...read, value });
    default:
      return readingFinding(`reading/${read.kind}`, { path }, { value });
  }
}

/** The texts of one table that are missing are told in one breath, at the table. */
function together(findings: readonly Finding[]): readonly Finding[] {
  const isOfTable = ({ path, code }: Finding): boolean =>
    code === 'account/number-missing' && path[0] === 'expected' && typeof path[2] === 'number';
  const [first, ...more] = findings.filter(isOfTable);
  if (first === undefined) return findings;
  const what = first.values['what'] ?? '';
  const months = more.map(({ values }) => (values['what'] ?? '').split(' ').at(-1) ?? '');
  const words = [what, ...months].join(', ').replace(/, ([^,]*)$/, ' and $1');
  const all = missing({
    path: first.path.slice(0, 2),
    text: '',
    what: months.length < 11 ? words : allMonths(what),
  });
  return [...findings.filter((finding) => !isOfTable(finding)), all];
}

const allMonths = (what: string): string => what.replace(/ \w+$/, ' every month, January to December');

interface Understood {
  readonly document: PlantDocument;
  readonly findings: readonly Finding[];
  /** Paths of texts that could not be read. */
  readonly unread: ReadonlySet<string>;
}

/** The document with plain numbers and days, as far as they can be read. */
function understand(typed: PlantDocument): Understood {
  let document = typed;
  const findings: Finding[] = [];
  const unread = new Set<string>();
  const take = (one: PlantText, plain: string, isRead: boolean): void => {
    if (plain !== one.text) document = putAt(document, one.path, plain);
    if (isRead) return;
    unread.add(keyOf(one.path));
    findings.push(unreadable(one));
  };
  for (const one of numberTexts(typed)) {
    const plain = keptNumber(one.text);
    take(one, plain, isDecimalText(plain));
  }
  for (const one of dayTexts(typed)) {
    const plain = keptDay(one.text);
    // Of a day that cannot be read the engine says what is wrong; of none, that it is missing.
    take(one, plain, isDay(plain) || plain !== '');
  }
  return { document, findings, unread };
}

/** The document without its parts that cannot be used. */
function usable(document: PlantDocument, wrong: readonly Path[]): PlantDocument {
  const has = (part: string): boolean => wrong.some(([first]) => first === part);
  const { expected, inverters, uncertainty, diary, ...rest } = document;
  const entries = diary?.filter(
    (_, at) => !wrong.some(([first, place]) => first === 'diary' && place === at),
  );
  return {
    ...rest,
    ...(expected === undefined || has('expected') ? {} : { expected }),
    ...(inverters === undefined || has('inverters') ? {} : { inverters }),
    ...(uncertainty === undefined || has('uncertainty') ? {} : { uncertainty }),
    ...(entries === undefined ? {} : { diary: entries }),
  };
}

/** What the document lacks although the engine can do without it. */
function sourceFindings({ expected }: PlantDocument): readonly Finding[] {
  if (expected?.irradiation === undefined || (expected.source ?? '').trim() !== '') return [];
  return [missing({ path: ['expected', 'source'], text: '', what: 'where the irradiation was taken from' })];
}

/**
 * Understand a plant document as people type it. A part that is wrong or not whole yet is left out, so that
 * the others can be used meanwhile.
 *
 * @param typed  of the right shape, its texts as typed
 */
export function readTypedPlant(typed: PlantDocument): TypedPlant {
  const { document, findings: own, unread } = understand(typed);
  const { findings: checked } = checkPlant(document);
  const told = checked.filter(({ path }) => !unread.has(keyOf(path)));
  const errors = [...own, ...told].filter(({ severity }) => severity === 'error');
  const wrong = errors.map(({ path }) => path);
  const plant = wrong.some(([part]) => part === 'capacity')
    ? null
    : checkPlant(usable(document, wrong)).value;
  return { plant, findings: [...together(own), ...told, ...sourceFindings(typed)] };
}
