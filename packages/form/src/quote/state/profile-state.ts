import type { QuoteDocument } from '@unitbook/engine';
import type { TableLayout } from '@unitbook/meter-files';
import { faultReport } from '../../files/fault.ts';
import type { LayoutKeep } from '../../files/keep-layouts.ts';
import type { AskedFile, RefusedFile } from '../../plant/days/day-file.ts';
import type {
  firstZone,
  openProfile,
  ProfileFile,
  ReadIntervals,
  readIntervals,
} from '../work/open-profile.ts';

/** Who holds a profile: where layouts are remembered, and whom to tell of changes. */
export interface ProfileHost {
  readonly layouts: LayoutKeep | null;
  readonly requestUpdate: () => void;
}

/** What is fetched once a file is chosen. */
interface Readers {
  readonly openProfile: typeof openProfile;
  readonly firstZone: typeof firstZone;
  readonly readIntervals: typeof readIntervals;
}

const fetchReaders = (): Promise<Readers> => import('../work/open-profile.ts');

/** What a quote is worked out by besides its document. */
interface Held {
  readonly read: ReadIntervals | null;
  readonly file: ProfileFile | null;
  readonly zone: string | null;
}

const NOTHING: Held = { read: null, file: null, zone: null };

/** Use and generation by intervals, read from a meter file for this visit; a file that is refused changes nothing. */
export class ProfileState {
  /** What the quote is worked out by; null: by the share. */
  read: ReadIntervals | null = null;
  /** The file that is being read just now; '' for none. */
  reading = '';
  asked: AskedFile | null = null;
  refused: RefusedFile | null = null;
  /** As typed; null where the times of the file stand as they are. */
  zone: string | null = null;
  private file: ProfileFile | null = null;
  private run = 0;
  private readonly held = new WeakMap<QuoteDocument, Held>();
  private readonly host: ProfileHost;

  constructor(host: ProfileHost) {
    this.host = host;
  }

  private tell(): void {
    this.host.requestUpdate();
  }

  readonly openFile = (file: File): Promise<void> => this.open(file.name, file, null);

  /** Go on with the table that was asked about. @param layout  null leaves the file out */
  readonly answerTable = async (layout: TableLayout | null): Promise<void> => {
    const { asked } = this;
    this.asked = null;
    this.tell();
    if (asked !== null && layout !== null) await this.open(asked.name, asked.blob, layout);
  };

  private async open(name: string, blob: Blob, layout: TableLayout | null): Promise<void> {
    this.run += 1;
    const { run } = this;
    this.reading = name;
    this.refused = null;
    this.tell();
    try {
      const readers = await fetchReaders();
      const opened = await readers.openProfile(name, blob, { layout, layouts: this.host.layouts });
      if (run !== this.run) return;
      if (opened.kind === 'refused') this.refused = opened.refused;
      else if (opened.kind === 'asked') await this.ask(opened.asked);
      else this.take(opened.opened, readers);
    } catch (error) {
      if (run === this.run) this.refused = notRead(name, blob, error);
    }
    if (run !== this.run) return;
    this.reading = '';
    this.tell();
  }

  private async ask(asked: AskedFile): Promise<void> {
    (await import('../../plant/days/table-question.ts')).defineQuestion();
    this.asked = asked;
  }

  private take(file: ProfileFile, readers: Readers): void {
    this.file = file;
    this.zone = readers.firstZone(file);
    this.apply(readers);
  }

  private apply(readers: Readers): void {
    if (this.file === null) return;
    const made = readers.readIntervals(this.file, this.zone?.trim() ?? null);
    if ('reason' in made) this.refused = made;
    else {
      this.read = made;
      this.refused = null;
    }
  }

  /** Put the times of the file on the clock of another place. */
  readonly setZone = async (zone: string): Promise<void> => {
    this.zone = zone;
    this.tell();
    this.apply(await fetchReaders());
    this.tell();
  };

  private put(held: Held): void {
    this.run += 1;
    this.read = held.read;
    this.file = held.file;
    this.zone = held.zone;
    this.reading = '';
    this.asked = null;
    this.refused = null;
    this.tell();
  }

  /** Leave the profile out. @returns the way back */
  readonly takeOut = (): (() => void) => {
    const { read, file, zone } = this;
    this.put(NOTHING);
    return () => {
      this.put({ read, file, zone });
    };
  };

  /**
   * Another quote lies open: its house is another one. Where the quote before is put back, so is its profile.
   *
   * @param before  undefined: there was none
   */
  turnTo(now: QuoteDocument, before: QuoteDocument | undefined): void {
    const { read, file, zone } = this;
    if (before !== undefined) this.held.set(before, { read, file, zone });
    this.put(this.held.get(now) ?? NOTHING);
  }
}

/** The readers could not be fetched, the browser did not give the file, or we are at fault. */
function notRead(name: string, blob: Blob, error: unknown): RefusedFile {
  const report = faultReport(`reading intervals of ${String(blob.size)} bytes`, error);
  const reason =
    'It could not be read here. Open this page once while online, choose the file again, and report this where ' +
    `it stays so: ${report}`;
  return { name, reason, findings: [] };
}
