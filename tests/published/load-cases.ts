import { checkCase, isCase } from './check-case.ts';
import type { PublishedCase } from './case.ts';
import elsewhere from './elsewhere.json' with { type: 'json' };

const files = import.meta.glob<unknown>('./cases/*.json', { import: 'default', eager: true });

const entries = Object.values(files).flatMap((content) => content as readonly unknown[]);

/** Something listed that no bill comes to: what it is, and whose it is. */
export interface ElsewhereEntry {
  readonly id: string;
  readonly part: string;
  readonly reason: string;
}

/**
 * Reference values and parts of scenarios that bills have nothing to do with, each with its reason. Worked
 * examples cannot stand here: they are cases, or failures.
 */
export function elsewhereEntries(): readonly ElsewhereEntry[] {
  return elsewhere;
}

/** An entry about a worked example: it has to be a case. */
function elsewhereProblems(): readonly string[] {
  return elsewhere
    .filter(({ id, reason }) => !/^(row|scenario)-/.test(id) || reason === '')
    .map(({ id, reason }) => `${id}: is a worked example, and not checked: ${reason}`);
}

/** Everything that is wrong with the form of the case files, ids that stand twice, and examples put elsewhere. */
export function caseFileProblems(): readonly string[] {
  const ids = entries.map((entry) => (entry as { id?: string }).id ?? '?');
  const problems = entries.flatMap((entry, index) => {
    const id = ids[index] ?? '?';
    const twice = ids.indexOf(id) < index ? ['stands twice'] : [];
    return [...checkCase(entry), ...twice].map((problem) => `${id}: ${problem}`);
  });
  return [...problems, ...elsewhereProblems()];
}

/** All published cases, in the order of the files. */
export function publishedCases(): readonly PublishedCase[] {
  return entries.filter(isCase);
}
