import { readPlant, type Plant } from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { fileName, readDocumentText } from './read-bytes.ts';

/** Read a plant document; null where it cannot be used. */
export async function readPlantFile(
  io: CommandIo,
  path: string,
): Promise<{ readonly value: Plant | null; readonly findings: readonly PlacedFinding[] }> {
  const { text, findings } = await readDocumentText(io, path, 'unitbook-plant-1');
  const read = text === null ? { value: null, findings } : readPlant(text);
  return { value: read.value, findings: about(fileName(path), read.findings) };
}
