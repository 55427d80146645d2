import { extendedId, readExtendedTariff, type Tariff } from '@unitbook/engine';
import { exampleText, idsLike } from '../examples.ts';
import { about, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { fileName, readDocumentText } from './read-bytes.ts';

/** A tariff as it was read from a file, or null. */
export interface TariffFile {
  readonly value: Tariff | null;
  /** Whether the file could be read at all. */
  readonly wasRead: boolean;
  readonly findings: readonly PlacedFinding[];
}

/** A file that a document was looked for in. */
interface Found {
  readonly path: string;
  /** Null where the file is there, but no tariff document can be read from it. */
  readonly text: string | null;
  readonly findings: readonly PlacedFinding[];
}

const FORMAT = 'unitbook-tariff-1';
/** Of one that names more, the engine says so. */
const MOST_DOCUMENTS = 9;

/** The folder of a file, with its stroke; of standard input, the folder in which the command was typed. */
function folderOf(path: string): string {
  return path.replace(/[^/\\]*$/, '');
}

/** Where a document is looked for, from the folder of the one that extends it. */
function placesFor(id: string, folder: string): readonly string[] {
  return [`${id}.json`, `../${id}.json`, `${id}/tariff.json`, `../${id}/tariff.json`].map(
    (place) => folder + place,
  );
}

async function findBeside(io: CommandIo, id: string, folder: string): Promise<Found | null> {
  for (const path of placesFor(id, folder)) {
    const { text, findings } = await readDocumentText(io, path, FORMAT);
    const isMissing = findings.some(
      ({ code }) => code === 'command/missing-file' || code === 'command/folder',
    );
    if (!isMissing) return { path, text, findings: about(path, findings) };
  }
  return null;
}

interface Gathered {
  readonly texts: ReadonlyMap<string, string>;
  /** The id that no document was found for; empty where all were. */
  readonly missing: string;
  readonly findings: readonly PlacedFinding[];
}

/** Read the documents that a text extends, one behind the other, from beside it or from the examples. */
async function gather(io: CommandIo, text: string, path: string): Promise<Gathered> {
  const texts = new Map<string, string>();
  let folder: string | null = folderOf(path);
  let id = extendedId(text);
  while (id !== null && !texts.has(id) && texts.size < MOST_DOCUMENTS) {
    // An example extends examples: there is nothing beside it.
    const found: Found | null = folder === null ? null : await findBeside(io, id, folder);
    if (found !== null && found.text === null) return { texts, missing: id, findings: found.findings };
    const next: string | null = found?.text ?? exampleText(id);
    if (next === null) break;
    texts.set(id, next);
    folder = found === null ? null : folderOf(found.path);
    id = extendedId(next);
  }
  return { texts, missing: id ?? '', findings: [] };
}

/**
 * Read a tariff file, and the documents that it extends: from the files `ID.json` and `ID/tariff.json` beside
 * it or in the folder above, else from the examples that come with the command.
 *
 * @param path  or "-" for standard input
 */
export async function readTariffFile(io: CommandIo, path: string): Promise<TariffFile> {
  const subject = fileName(path);
  const { text, findings } = await readDocumentText(io, path, FORMAT);
  if (text === null) return { value: null, wasRead: false, findings: about(subject, findings) };
  const { texts, missing, findings: ofOthers } = await gather(io, text, path === '-' ? '' : path);
  if (ofOthers.length > 0) return { value: null, wasRead: true, findings: ofOthers };
  const lookUp = (id: string): string | null => texts.get(id) ?? null;
  const outcome = readExtendedTariff(text, { lookUp, known: idsLike(missing) });
  return { value: outcome.value, wasRead: true, findings: about(subject, outcome.findings) };
}
