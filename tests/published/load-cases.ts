import { checkCase, isCase } from './check-case.ts';
import type { PublishedCase, WaitingEntry } from './case.ts';

const files = import.meta.glob<unknown>('./cases/*.json', { import: 'default', eager: true });

const WAITING = 'waiting.json';

const inFiles = (isWaiting: boolean): readonly unknown[] =>
  Object.entries(files)
    .filter(([path]) => path.endsWith(WAITING) === isWaiting)
    .flatMap(([, content]) => content as readonly unknown[]);

/** Everything that is wrong with the form of the case files, and ids that stand twice. */
export function caseFileProblems(): readonly string[] {
  const entries = inFiles(false);
  const ids = entries.map((entry) => (entry as { id?: string }).id ?? '?');
  return entries.flatMap((entry, index) => {
    const id = ids[index] ?? '?';
    const twice = ids.indexOf(id) < index ? ['stands twice'] : [];
    return [...checkCase(entry), ...twice].map((problem) => `${id}: ${problem}`);
  });
}

/** All published cases, in the order of the files. */
export function publishedCases(): readonly PublishedCase[] {
  return inFiles(false).filter(isCase);
}

/** What is listed and waits, with the reason. */
export function waitingEntries(): readonly WaitingEntry[] {
  return inFiles(true) as readonly WaitingEntry[];
}
