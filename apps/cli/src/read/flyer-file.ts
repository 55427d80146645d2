import { flyerSchema, readDocument, readFlyer, type FlyerDocument } from '@unitbook/engine';
import { about } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { placedIn, type Placed } from './placed.ts';
import { fileName, readDocumentText } from './read-bytes.ts';

/** Read a flyer that was typed in. */
export async function readFlyerFile(io: CommandIo, path: string): Promise<Placed<FlyerDocument>> {
  const subject = fileName(path);
  const { text, findings } = await readDocumentText(io, path, 'unitbook-flyer-1');
  if (text === null)
    return { value: null, place: (later) => about(subject, later), findings: about(subject, findings) };
  const { value, findings: own } = readFlyer(text);
  const { source } = readDocument<FlyerDocument>(text, flyerSchema);
  return { value, place: placedIn(subject, source), findings: about(subject, own) };
}
