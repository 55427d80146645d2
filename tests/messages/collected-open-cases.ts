import type { Finding } from '@unitbook/engine';
import { LARGEST_METER_FILE, readMeterFile } from '../../packages/meter-files/src/open/index.ts';
import type { MessageCase } from './message-case.ts';

const read = (input: string | Uint8Array) => (): readonly Finding[] => readMeterFile(input).findings;

const bytesOf = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));

const KINDS =
  'NEM12 or NEM13, ESPI in XML, a telegram or a list of OBIS codes, a register list, or a table with columns';
const CHOOSE = 'Choose a file of one of these kinds: whoever reads the meter can often offer several.';
const TEXT = 'text: the formats of meter data that are read are all text';
const UNPACK = 'Unpack the file, or save the sheet as CSV (text), and choose that file.';
const NAMES =
  'They are read as the mark \ufffd. Nothing to do if they stand in names; numbers with them are not read.';

/** Before a reader reads. */
export const OPEN_CASES: readonly MessageCase[] = [
  {
    code: 'meter-file/empty',
    when: 'a file has blank lines only',
    make: read(' \r\n\n'),
    at: '',
    found: 'an empty file',
    expected: 'a file with meter data',
    remedy: 'Choose the file that holds the data, or download it again.',
  },
  {
    code: 'meter-file/too-many-bytes',
    when: 'a file has one byte more than 200 MB',
    make: read(new Uint8Array(LARGEST_METER_FILE + 1)),
    at: '',
    found: '201 MB',
    expected: 'at most 200 MB in one piece',
    remedy: 'Split the file by years, or read it with the command, which reads files of any size.',
  },
  {
    code: 'meter-file/not-text',
    when: 'a packed file',
    make: read(bytesOf('PK\u0003\u0004\u0014\u0000')),
    at: '',
    found: 'a workbook or another packed file',
    expected: TEXT,
    remedy: UNPACK,
  },
  {
    code: 'meter-file/not-text',
    when: 'text in UTF-16 without its mark',
    make: read(bytesOf('1\u00000\u00000\u0000,\u0000N\u0000')),
    at: '',
    found: 'text in UTF-16 without the mark that says so',
    expected: TEXT,
    remedy: UNPACK,
  },
  {
    code: 'meter-file/bytes-replaced',
    when: 'a letter in another encoding',
    make: read(bytesOf('1.8.0(1234.5*kWh)\n2.8.0(7*kWh) Z\u00e4hler\n')),
    severity: 'question',
    at: '2:1',
    found: '1 place with bytes that are no UTF-8, on line 2',
    expected: 'text in UTF-8',
    remedy: NAMES,
    isAmongOthers: true,
  },
  {
    code: 'meter-file/bytes-replaced',
    when: 'letters in another encoding on several lines',
    make: read(bytesOf('1.8.0(1234.5*kWh)\r\n2.8.0(7*kWh) Z\u00e4hler \u00fc\r\n\u00df\r\n')),
    severity: 'question',
    at: '2:1',
    found: '3 places with bytes that are no UTF-8, on lines 2 to 3',
    expected: 'text in UTF-8',
    remedy: NAMES,
    isAmongOthers: true,
  },
  {
    code: 'meter-file/kind-not-known',
    when: 'a web page',
    make: read('<!DOCTYPE html>\n<html>'),
    at: '',
    found: 'a web page',
    expected: KINDS,
    remedy: CHOOSE,
  },
  {
    code: 'meter-file/kind-not-known',
    when: 'prose',
    make: read('To whom it may concern'),
    at: '',
    found: 'text that is no meter data of a kind that is known',
    expected: KINDS,
    remedy: CHOOSE,
  },
  {
    code: 'meter-file/needs-layout',
    when: 'a table without a layout',
    make: read('when,import kWh\n2025-04-01 00:15,0.25\n'),
    at: '',
    found: 'lines with cells separated by commas, and nothing that says what its columns are',
    expected: 'what each column holds, and how dates and numbers are written',
    remedy: 'Say what the columns are. The same is then used for all files with the same columns.',
  },
  {
    code: 'meter-file/own-register-list',
    when: 'a list of readings',
    make: read('date,import,export\n2025-04-01,1,2\n'),
    at: '',
    found: 'columns named date, import and export',
    expected: 'a file as a meter or a supplier makes it',
    remedy: 'Read it as a register list instead.',
  },
];
