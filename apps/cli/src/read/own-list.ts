import {
  dayText,
  readingFinding,
  readNumberText,
  readTypedDay,
  type DayNumber,
  type Finding,
  type NumberText,
  type Path,
  type ReadingRow,
  type RegisterId,
} from '@unitbook/engine';
import type { MeterSink, Stream } from '@unitbook/meter-files';
import type { ReadingsFile } from './own-readings.ts';

/** A number of a row: what it counts, as it was typed, and where it stands. */
interface Cell {
  readonly id: RegisterId;
  readonly rate: string | null;
  readonly text: string;
  readonly path: Path;
}

const IDS = ['import', 'export', 'generation'] as const satisfies readonly RegisterId[];

function cellsOf(row: ReadingRow, path: Path): readonly Cell[] {
  const totals = IDS.map((id): Cell => ({ id, rate: null, text: row[id] ?? '', path: [...path, id] }));
  const rates = (['import', 'export'] as const).flatMap((id) =>
    Object.entries(row.rates?.[id] ?? {}).map(([rate, text]): Cell => ({
      id,
      rate,
      text,
      path: [...path, 'rates', id, rate],
    })),
  );
  return [...totals, ...rates].filter(({ text }) => text.trim() !== '');
}

/** Why a number cannot be read without knowing how wide the register is. */
function numberFinding(read: NumberText, { text, path }: Cell): Finding {
  switch (read.kind) {
    case 'number':
    case 'empty':
      return readingFinding('reading/negative', { path }, { value: text });
    case 'letter':
      return readingFinding(
        'reading/letter',
        { path, offer: read.offer },
        { value: text, offer: read.offer },
      );
    case 'comma-unclear':
      return readingFinding('reading/comma-unclear', { path }, { ...read, value: text });
    default:
      return readingFinding(`reading/${read.kind}`, { path }, { value: text });
  }
}

/** The registers of a list as streams, one for each, and a new one where a meter was changed. */
class ListStreams {
  private readonly streams = new Map<string, Stream>();
  /** How many meters came before. */
  private readonly changes = { grid: 0, generation: 0 };

  /** The first reading of a meter: what follows is counted by it. */
  begin(cells: readonly Cell[]): void {
    if (cells.some(({ id }) => id === 'generation')) this.changes.generation += 1;
    if (cells.some(({ id }) => id !== 'generation')) this.changes.grid += 1;
  }

  of({ id, rate }: Cell): Stream {
    const before = this.changes[id === 'generation' ? 'generation' : 'grid'];
    const register = rate === null ? id : `${id}-${rate}`;
    const key = `${String(before)} ${register}`;
    const known = this.streams.get(key);
    if (known !== undefined) return known;
    const meter = before === 0 ? '' : String(before + 1);
    const stream: Stream = { point: '', meter, register, quantity: id, rate, unit: 'kWh' };
    this.streams.set(key, stream);
    return stream;
  }
}

/** What takes the readings of a list. */
interface Taking {
  readonly streams: ListStreams;
  readonly sink: MeterSink;
  /** Where a path stands in the file. */
  readonly lineOf: (path: Path) => number;
  readonly tell: (finding: Finding) => void;
}

/** The day of a row; null, and why is told, where there is none. */
function dayOf({ date }: ReadingRow, path: Path, { tell }: Taking): DayNumber | null {
  const typed = readTypedDay(date);
  const at = [...path, 'date'];
  if (typed === null) tell(readingFinding('reading/no-day', { path: at }, { value: date }));
  if (typed === null || typed.other === null) return typed?.day ?? null;
  const values = { value: date, read: dayText(typed.day), other: dayText(typed.other) };
  tell({
    ...readingFinding('reading/day-or-month', { path: at, offer: values.other }, values),
    severity: 'note',
  });
  return typed.day;
}

const isEstimate = ({ status, estimated = [] }: ReadingRow, id: RegisterId): boolean =>
  status === 'estimated' || estimated.includes(id);

function takeRow(row: ReadingRow, path: Path, taking: Taking): void {
  const { streams, sink, lineOf, tell } = taking;
  const cells = cellsOf(row, path);
  if (row.event === 'first') streams.begin(cells);
  const day = dayOf(row, path, taking);
  if (day === null) return;
  for (const cell of cells) {
    const read = readNumberText(cell.text);
    if (read.kind !== 'number' || read.text.startsWith('-')) {
      tell(numberFinding(read, cell));
      continue;
    }
    const quality = isEstimate(row, cell.id) ? 'estimated' : 'actual';
    const line = lineOf(cell.path);
    sink.register({ stream: streams.of(cell), day, minute: null, value: read.text, quality, line });
  }
}

/**
 * Hand on the readings of a list of ours as those of any meter file. Without an account nothing is known of
 * how wide the registers are: a number that only that can tell is a finding, and is left out.
 *
 * @param sink  where they go, with findings about what cannot be read
 */
export function streamOwnList({ rows, place }: ReadingsFile, sink: MeterSink): void {
  const taking: Taking = {
    streams: new ListStreams(),
    sink,
    lineOf: (path) => place(readingFinding('reading/none', { path })).position?.line ?? 1,
    tell: (finding) => {
      sink.finding(place(finding));
    },
  };
  rows.forEach((row, index) => {
    takeRow(row, ['readings', index], taking);
  });
}
