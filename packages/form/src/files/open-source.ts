import type { DayNumber, Finding } from '@unitbook/engine';
import {
  collectedFinding,
  collectMeterFile,
  decodePieces,
  LARGEST_METER_FILE,
  meterFileKind,
  openMeterFile,
  readRegisterCsv,
  type CollectedFile,
  type RegisterCsv,
  type StreamedKind,
  type TableLayout,
  type ToldKind,
} from '@unitbook/meter-files';

/** What a person chose, dropped or typed. */
export interface MeterSource {
  /** Of the file; '' for what was typed. */
  readonly name: string;
  readonly blob: Blob;
}

/** What became of it. */
export type Opened =
  | {
      readonly kind: 'file';
      readonly told: ToldKind;
      readonly file: CollectedFile;
      readonly findings: readonly Finding[];
    }
  | { readonly kind: 'own'; readonly told: ToldKind; readonly csv: RegisterCsv }
  /** A table of which nobody has said what its columns are. */
  | { readonly kind: 'table'; readonly told: ToldKind; readonly head: string }
  /** A book saved from this page. */
  | { readonly kind: 'book'; readonly told: ToldKind }
  | { readonly kind: 'refused'; readonly told: ToldKind; readonly findings: readonly Finding[] }
  | { readonly kind: 'stopped' };

/** How it is to be read, and who watches. */
export interface OpenRequest {
  /** The day of a list that has none. */
  readonly day?: DayNumber;
  readonly layout?: TableLayout;
  /** Bytes that were read. */
  readonly progress: (done: number) => void;
  readonly isStopped: () => boolean;
}

/** The browser did not give the file to the page. */
export class FileNotGiven extends Error {}

const MEGABYTE = 1024 * 1024;
/** So much is read at a time: little enough for the page to answer in between. */
const PIECE = MEGABYTE / 2;
/** So many characters tell what a file is. */
const HEAD = 65_536;

async function bytesOf(blob: Blob): Promise<Uint8Array> {
  try {
    return new Uint8Array(await blob.arrayBuffer());
  } catch (error) {
    throw new FileNotGiven('the file could not be read', { cause: error });
  }
}

/** The beginning of a file, or what keeps it from being text. */
async function headOf({ blob }: MeterSource): Promise<{ head: string; findings: readonly Finding[] }> {
  const decoder = decodePieces();
  const first = blob.slice(0, PIECE);
  const text = decoder.write(await bytesOf(first)) + (first.size === blob.size ? decoder.end() : '');
  const findings = decoder.findings().filter(({ severity }) => severity === 'error');
  return { head: text.slice(0, HEAD), findings };
}

const refused = (told: ToldKind, code: Parameters<typeof collectedFinding>[0]): Opened => ({
  kind: 'refused',
  told,
  findings: [collectedFinding(code, { path: [] }, { why: told.why })],
});

function tooLarge({ blob }: MeterSource): Opened {
  const values = {
    size: String(Math.ceil(blob.size / MEGABYTE)),
    most: String(LARGEST_METER_FILE / MEGABYTE),
  };
  const findings = [collectedFinding('meter-file/too-many-bytes', { path: [] }, values)];
  return { kind: 'refused', told: { kind: null, why: 'a file that is too large' }, findings };
}

async function readStream(
  source: MeterSource,
  told: ToldKind & { readonly kind: StreamedKind },
  request: OpenRequest,
): Promise<Opened> {
  const { blob } = source;
  const { day, layout, progress, isStopped } = request;
  const { sink, result } = collectMeterFile();
  const decoder = decodePieces();
  const options = { ...(day === undefined ? {} : { day }), ...(layout === undefined ? {} : { layout }) };
  const reader = openMeterFile(told.kind, sink, options);
  for (let at = 0; at < blob.size && !decoder.isNoText(); at += PIECE) {
    const bytes = await bytesOf(blob.slice(at, at + PIECE));
    if (isStopped()) return { kind: 'stopped' };
    reader.write(decoder.write(bytes));
    progress(Math.min(blob.size, at + PIECE));
  }
  reader.write(decoder.end());
  reader.end();
  const file = result(reader.clock);
  return { kind: 'file', told, file, findings: [...decoder.findings(), ...file.findings] };
}

/** A document that this page has saved begins with its format. */
const isOurs = (head: string): boolean => /^\s*\{\s*"format":\s*"unitbook-/.test(head);

/** What is typed is a list of registers, however little of it tells. */
function tellKind(source: MeterSource, head: string, { layout }: OpenRequest): ToldKind {
  const told = meterFileKind(head);
  if (layout !== undefined && told.why !== 'an empty file')
    return { kind: 'table', why: 'its columns, which were confirmed' };
  const isTyped = source.name === '' && told.kind === null && told.why !== 'an empty file';
  return isTyped ? { kind: 'register-list', why: 'it was typed' } : told;
}

/**
 * Read what a person chose, piece by piece, in this page.
 *
 * @throws FileNotGiven  where the browser does not give the file: it was moved, or may not be read
 */
export async function openSource(source: MeterSource, request: OpenRequest): Promise<Opened> {
  if (source.blob.size > LARGEST_METER_FILE) return tooLarge(source);
  const { head, findings } = await headOf(source);
  if (findings.length > 0) return { kind: 'refused', told: { kind: null, why: 'no text' }, findings };
  const told = tellKind(source, head, request);
  const { kind } = told;
  if (told.why === 'an empty file') return refused(told, 'meter-file/empty');
  if (kind === null)
    return isOurs(head) ? { kind: 'book', told } : refused(told, 'meter-file/kind-not-known');
  if (kind === 'own-register-list')
    return { kind: 'own', told, csv: readRegisterCsv(await bytesOf(source.blob)) };
  if (kind === 'table' && request.layout === undefined) return { kind: 'table', told, head };
  return readStream(source, { ...told, kind }, request);
}
