import { splitCells, type Delimiter } from '../cells.ts';
import { readHeader } from '../header.ts';

/** The kinds of files that are told apart. */
export const METER_FILE_KINDS = [
  'nem12',
  'nem13',
  'espi',
  'telegram',
  'register-list',
  'own-register-list',
  'table',
] as const;

/** A kind of file. */
export type MeterFileKind = (typeof METER_FILE_KINDS)[number];

/** What a file is, and what tells. */
export interface ToldKind {
  /** null where nothing tells. */
  readonly kind: MeterFileKind | null;
  readonly why: string;
}

/** The lines of the head of a file that are not blank. The last can be cut off. */
type Lines = readonly string[];

const LOOKED_AT = 200;

function linesOf(head: string): Lines {
  const lines = head
    .replace(/^\ufeff/, '')
    .split(/\r\n|\r|\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  return lines.slice(0, LOOKED_AT);
}

const told = (kind: MeterFileKind | null, why: string): ToldKind => ({ kind, why });

/** NEM12 and NEM13 begin with a header that names them; parts of a file are told by their records. */
function nemKind(lines: Lines): ToldKind | null {
  const first = lines[0] ?? '';
  const version = /^"?100"?\s*,\s*"?(NEM1[23])/i.exec(first)?.[1]?.toUpperCase();
  if (version !== undefined)
    return told(version === 'NEM12' ? 'nem12' : 'nem13', `the header record of ${version} in line 1`);
  const has = (record: string): boolean => lines.some((line) => line.startsWith(`${record},`));
  if (/^200,/.test(first) && has('300'))
    return told('nem12', 'records 200 and 300 of NEM12, without a header');
  if (/^250,/.test(first)) return told('nem13', 'records 250 of NEM13, without a header');
  return null;
}

function xmlKind(head: string): ToldKind | null {
  const text = head.trimStart();
  if (!text.startsWith('<')) return null;
  if (/https?:\/\/naesb\.org\/espi/i.test(text)) return told('espi', 'XML with the namespace of ESPI');
  if (/^<(?:!doctype\s+html|html)/i.test(text)) return told(null, 'a web page');
  return told(null, 'XML without the namespace of ESPI');
}

/** A telegram begins with "/", three letters of the maker and what it says of itself. */
const IDENTIFICATION = /^\/[A-Za-z]{3}\S/;
/** A code in full, then a value: "1-0:1.8.0(001234.5*kWh)". */
const FULL_CODE = /^\d{1,3}-\d{1,3}:(?:\d{1,3}|[CFLP])\.\d{1,3}(?:\.\d{1,3})?(?:[*&]\d{1,3})?\s*[\s(:;=,|]/;
/** A code without its first groups, then a value in brackets: "1.8.0(001234.5)". */
const BRACKETED = /^(?:\d{1,3}|[CFLP])\.\d{1,3}(?:\.\d{1,3})?(?:[*&]\d{1,3})?\s*\(/;
/** A code of counted energy without its first groups, as people copy it: "1.8.0 = 1234.5". No date has it. */
const COPIED = /^(?:1|2|15|16)\.8\.\d(?:[*&]\d{1,3})?(?:\s*[:=]|\s)\s*\d/;
/** The same without points, or a name of the display. */
const DISPLAY =
  /^(?:(?:1|2|15|16)\.?8\.?\d|imp(?:ort)?|exp(?:ort)?|gen(?:eration)?)\b[^,;\t|]*\d\s*(?:kWh|Wh|MWh)?$/i;

/** A readout can begin with a mark below the letters: STX, the start of text. */
const bare = (line: string): string => (line.charCodeAt(0) < 9 ? line.slice(1) : line);

const isCode = (line: string): boolean =>
  [FULL_CODE, BRACKETED, COPIED].some((form) => form.test(bare(line)));

function obisKind(lines: Lines): ToldKind | null {
  const codes = lines.filter(isCode).length;
  const begins = lines.some((line) => IDENTIFICATION.test(line));
  if (begins && codes > 0)
    return told('telegram', 'a line that begins with "/" as telegrams do, and OBIS codes');
  if (codes * 3 >= lines.length) return told('register-list', 'lines that begin with OBIS codes');
  const shown = lines.filter((line) => DISPLAY.test(line)).length;
  return shown * 2 > lines.length ? told('register-list', 'lines with the names that a display has') : null;
}

/** Our own list has the columns date, import and export, and a day without a time in each line. */
function ownKind(lines: Lines): ToldKind | null {
  const header = readHeader(lines[0] ?? '', 1).value;
  if (header === null || header.columns.includes(null)) return null;
  const column = header.columns.indexOf('date');
  const first = splitCells(lines[1] ?? '', header.delimiter)[column] ?? '';
  return /\d:\d/.test(first) ? null : told('own-register-list', 'columns named date, import and export');
}

const DELIMITERS: readonly (readonly [Delimiter | '|', string])[] = [
  [';', 'semicolons'],
  ['\t', 'tabs'],
  [',', 'commas'],
  ['|', 'bars'],
];
const SOME_LINES = 20;

/** A table has one separator in most of its lines, and digits. */
function tableKind(lines: Lines): ToldKind | null {
  const some = lines.slice(0, SOME_LINES);
  const digits = some.filter((line) => /\d/.test(line)).length;
  if (digits === 0) return null;
  const found = DELIMITERS.find(
    ([mark]) => some.filter((line) => line.includes(mark)).length * 2 > some.length,
  );
  return found === undefined ? null : told('table', `lines with cells separated by ${found[1]}`);
}

/**
 * Tell what kind of file it is by what it begins with, whatever its name is.
 *
 * @param head  its first thousands of characters
 * @example
 * meterFileKind('100,NEM12,200402070911,MDA1,Ret1\n').kind //=> "nem12"
 * meterFileKind('date;import;export\n2025-04-01;1;2').kind //=> "own-register-list"
 * meterFileKind('when,import kWh\n2025-04-01 00:15,0.25').kind //=> "table"
 */
export function meterFileKind(head: string): ToldKind {
  const lines = linesOf(head);
  if (lines.length === 0) return told(null, 'an empty file');
  const kind =
    nemKind(lines) ??
    xmlKind(head.replace(/^\ufeff/, '')) ??
    obisKind(lines) ??
    ownKind(lines) ??
    tableKind(lines);
  return kind ?? told(null, 'text that is no meter data of a kind that is known');
}
