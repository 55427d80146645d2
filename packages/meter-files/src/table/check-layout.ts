import {
  inFileOrder,
  locate,
  readDocument,
  type Finding,
  type FindingPlace,
  type Outcome,
} from '@unitbook/engine';
import { tableFinding, type TableFindingCode } from './findings.ts';
import { tableLayoutSchema, type TableLayout, type TableLayoutDocument } from './layout-document.ts';
import { isZone } from '../collected/zone-clock.ts';

type Add = (
  code: TableFindingCode,
  path: FindingPlace['path'],
  values?: Readonly<Record<string, string>>,
) => void;

const TIMES: readonly string[] = ['date-time', 'date', 'time'];
const ONCE = ['point', 'meter'] as const;

const INTERVAL_KEYS = {
  label: '"start" or "end": which end of its interval a time names',
  minutes: 'how long each interval is, such as "15", or "1440" for days',
} as const;

function checkTimes({ columns, holds, minutes }: TableLayout, add: Add): void {
  const times = columns.map(({ is }) => is).filter((is) => TIMES.includes(is));
  const key = [...times].sort().join();
  if (key !== 'date-time' && key !== 'date' && key !== 'date,time')
    add('table-layout/time-columns', ['columns'], { columns: times.join(', ') });
  else if (key === 'date' && holds === 'intervals' && minutes !== undefined && minutes !== '1440')
    add('table-layout/time-needed', ['minutes'], { minutes });
}

function checkColumns({ columns, header }: TableLayout, add: Add): void {
  if (columns.length !== header.length) {
    const values = { count: String(columns.length), names: String(header.length) };
    add('table-layout/column-count', ['columns'], values);
  }
  if (!columns.some((column) => 'unit' in column)) add('table-layout/no-value-column', ['columns']);
  for (const is of ONCE) {
    const second = columns.findIndex(
      (column, at) => column.is === is && columns.findIndex((one) => one.is === is) < at,
    );
    if (second >= 0) add('table-layout/column-twice', ['columns', second], { is });
  }
}

/** What a schema cannot say of a layout: whether its parts fit each other. */
export function layoutFindings(layout: TableLayout): readonly Finding[] {
  const findings: Finding[] = [];
  const add: Add = (code, path, values) => findings.push(tableFinding(code, { path }, values));
  checkColumns(layout, add);
  checkTimes(layout, add);
  if (layout.grouping === layout.decimalMark)
    add('table-layout/same-marks', ['grouping'], { mark: layout.decimalMark });
  if (layout.zone !== undefined && !isZone(layout.zone))
    add('table-layout/zone', ['zone'], { zone: layout.zone });
  if (layout.holds === 'intervals')
    for (const key of ['label', 'minutes'] as const)
      if (layout[key] === undefined)
        add('table-layout/interval-needs', ['holds'], { key, expected: INTERVAL_KEYS[key] });
  return findings;
}

/**
 * Read a document that says how the columns of a table are to be read. It counts as confirmed.
 *
 * @param text  the JSON document, whole
 * @returns     the layout, or null when it cannot be used; findings with line and column
 * @example
 * readTableLayout('{"format":"unitbook-columns-1"}').value //=> null
 */
export function readTableLayout(text: string): Outcome<TableLayout | null> {
  const read = readDocument<TableLayoutDocument>(text, tableLayoutSchema);
  const meaning = read.mended === null ? [] : layoutFindings(read.mended);
  const findings = [...read.findings, ...meaning.map((finding) => locate(read.source, finding))];
  const isUsable = !findings.some(({ severity }) => severity === 'error');
  return { value: isUsable ? read.value : null, findings: inFileOrder(findings) };
}
