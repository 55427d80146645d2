import type { Finding } from '@unitbook/engine';
import {
  LARGEST_FILE,
  tooLargeFinding,
  type FileClock,
  type MeterFileKind,
  type MeterSink,
  type OpenOptions,
  type ToldKind,
} from '@unitbook/meter-files';
import { KIND_WORDS } from '../render/kind-words.ts';
import type { OpenedFile } from './open-file.ts';
import { streamOwnList } from './own-list.ts';
import { readOwnReadings, type ReadingsFile } from './own-readings.ts';
import { streamMeterFile } from './stream-meter-file.ts';

/** A file of which it is known how to read it. */
export interface MeterSource {
  /** The file, as messages name it. */
  readonly subject: string;
  /** What it is and what told it, in words. */
  readonly words: string;
  /** A list or document of ours; null for any other file. */
  readonly own: ReadingsFile | null;
  /** What was found when it was opened. */
  readonly findings: readonly Finding[];
  /** Hand on all that it holds; the clock of its intervals. */
  readonly read: (sink: MeterSink) => Promise<FileClock>;
}

/** All bytes of a file, or a finding where they are more than a list of ours has. */
async function gather({ bytes }: OpenedFile): Promise<Uint8Array | Finding> {
  const parts: Uint8Array[] = [];
  let size = 0;
  for await (const part of bytes) {
    size += part.length;
    if (size > LARGEST_FILE) return tooLargeFinding(size);
    parts.push(part);
  }
  return Buffer.concat(parts);
}

/** A list or document of ours, or why there is none. */
export async function ownSource(
  file: OpenedFile,
  told: ToldKind,
  subject: string,
): Promise<{ readonly source: MeterSource | null; readonly findings: readonly Finding[] }> {
  const bytes = await gather(file);
  if ('code' in bytes) return { source: null, findings: [bytes] };
  const { readings, findings } = readOwnReadings(bytes, file.head, subject);
  const failure = file.failure();
  const all = failure === null ? findings : [...findings, failure];
  if (readings === null) return { source: null, findings: all };
  const words = wordsOf('own-register-list', told);
  const read = (sink: MeterSink): Promise<FileClock> => {
    streamOwnList(readings, sink);
    return Promise.resolve({ offset: null });
  };
  return { source: { subject, words, own: readings, findings: all, read }, findings: all };
}

function wordsOf(kind: MeterFileKind, { why }: ToldKind): string {
  return `${KIND_WORDS[kind]}; told by ${why}`;
}

/** A file that a meter or a supplier made. */
export function meterSource(
  file: OpenedFile,
  told: { readonly kind: Exclude<MeterFileKind, 'own-register-list'>; readonly why: string },
  subject: string,
  options: OpenOptions,
): MeterSource {
  return {
    subject,
    words: wordsOf(told.kind, told),
    own: null,
    findings: [],
    read: (sink) => streamMeterFile(file, sink, { ...options, kind: told.kind }),
  };
}
