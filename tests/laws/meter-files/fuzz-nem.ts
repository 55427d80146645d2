import type { Finding } from '@unitbook/engine';
import { VALUE_QUALITIES, type IntervalChunk } from '../../../packages/meter-files/src/stream.ts';
import { readNem12, readNem13, type NemFile } from '../../support/nem.ts';
import { ODD_TEXTS } from '../../support/odd-texts.ts';
import type { Random } from '../../support/random.ts';

const FILES = import.meta.glob<string>('../../published/data/nem/*.csv', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const MOST_LINES = 8;

/** The sample files; of a long one its head, and its tail from the second stream on. */
const SAMPLES: readonly (readonly string[])[] = Object.values(FILES).map((text) => {
  const lines = text.split(/\r?\n/);
  return lines.length <= 3 * MOST_LINES
    ? lines
    : [...lines.slice(0, MOST_LINES), ...lines.slice(33, 33 + MOST_LINES), ...lines.slice(-2)];
});

/** Odd texts, and those that mean something in this format. */
const CELLS = [
  ...ODD_TEXTS,
  ...[
    '100',
    '200',
    '250',
    '300',
    '400',
    '500',
    '550',
    '900',
    '999',
    'A',
    'E64',
    'N',
    'V',
    'S14',
    'X',
    'E1',
    'B1',
  ],
  ...['Wh', 'kWh', 'MWh', 'kVArh', '5', '15', '30', '60', '1', '48', '49', '96', '288'],
  ...['20240229', '20230229', '20240101000000', '20240101240000'],
];

const CHARACTERS = Array.from('0123456789.,,,-eEANV" \n\r\t\ufeff\0;x٣𝟙');

type Mutation = (lines: string[], random: Random) => void;

/** Change one cell of one line. */
function inCell(lines: string[], random: Random, change: (cells: string[], at: number) => void): void {
  const line = random.below(lines.length);
  const cells = (lines[line] ?? '').split(',');
  change(cells, random.below(cells.length));
  lines[line] = cells.join(',');
}

const MUTATIONS: readonly Mutation[] = [
  (lines, random) => {
    inCell(lines, random, (cells, at) => {
      cells[at] = random.pick(CELLS);
    });
  },
  (lines, random) => {
    inCell(lines, random, (cells, at) => {
      cells.splice(at, random.below(4), ...cells.slice(0, random.below(4)));
    });
  },
  (lines, random) => {
    const line = random.below(lines.length);
    const text = lines[line] ?? '';
    const at = random.below(text.length + 1);
    lines[line] = text.slice(0, at) + random.pick(CHARACTERS) + text.slice(at + random.below(3));
  },
  (lines, random) => {
    lines.splice(random.below(lines.length), 1 + random.below(2));
  },
  (lines, random) => {
    lines.splice(random.below(lines.length), 0, random.pick(lines));
  },
  (lines, random) => {
    lines.splice(random.below(lines.length), 0, random.pick(random.pick(SAMPLES)));
  },
  (lines, random) => {
    const [from = ''] = lines.splice(random.below(lines.length), 1);
    lines.splice(random.below(lines.length + 1), 0, from);
  },
  (lines, random) => {
    const range = () => String(random.below(100));
    lines.splice(random.below(lines.length), 0, `400,${range()},${range()},${random.pick(CELLS)},,`);
  },
];

/**
 * A sample file of NEM12 or NEM13 with a few things changed in it: cells, characters, lines, its end.
 *
 * @param random  the same source gives the same texts
 */
export function fuzzNem(random: Random): string {
  const lines = [...random.pick(SAMPLES)];
  for (let count = 1 + random.below(6); count > 0; count -= 1) {
    if (lines.length > 0) random.pick(MUTATIONS)(lines, random);
    if (lines.length === 0) lines.push('');
  }
  const text = lines.join(random.pick(['\n', '\n', '\r\n', '\r']));
  return random.chance(10) ? text.slice(0, random.below(text.length + 1)) : text;
}

/** A text in pieces that end anywhere. */
function piecesOf(text: string, random: Random): readonly string[] {
  const pieces: string[] = [];
  const most = random.pick([1, 7, 300, 5000]);
  for (let at = 0; at < text.length;) {
    const end = at + 1 + random.below(most);
    pieces.push(text.slice(at, end));
    at = end;
  }
  return pieces;
}

const MISSING = VALUE_QUALITIES.indexOf('missing');

function valueProblems({ values, qualities, line }: IntervalChunk): readonly string[] {
  const problems: string[] = [];
  values.forEach((value, at) => {
    const quality = qualities === null ? 0 : (qualities[at] ?? -1);
    const isKnown = quality >= 0 && quality < VALUE_QUALITIES.length;
    if (!isKnown || Number.isNaN(value) !== (quality === MISSING))
      problems.push(`line ${line}: value ${value} with the quality ${quality}`);
    if (!Number.isNaN(value) && !(Number.isSafeInteger(value) && value >= 0))
      problems.push(`line ${line}: value ${value}`);
  });
  return problems;
}

function chunkProblems(chunk: IntervalChunk): readonly string[] {
  const { start, minutes, places, values, line } = chunk;
  const isDay = start % 1440 === 0 && values.length * minutes === 1440;
  const hasPlaces = Number.isInteger(places) && places >= 0 && places <= 15;
  const shape =
    isDay && hasPlaces ? [] : [`line ${line}: start ${start}, ${minutes} minutes, ${places} places`];
  return [...shape, ...valueProblems(chunk)];
}

function findingProblems({ code, position, found, expected, remedy }: Finding): readonly string[] {
  const isPlaced = position !== undefined && position.line >= 1 && position.column >= 1;
  const words = `${found} ${expected} ${remedy}`;
  const isSaid = ![found, expected, remedy].includes('') && !/undefined|\[object/.test(words);
  return isPlaced && isSaid ? [] : [`${code}: ${words}`];
}

const told = ({ chunks, registers, findings }: NemFile): string =>
  JSON.stringify([chunks.map((chunk) => [chunk, [...chunk.values].join()]), registers, findings]);

/** What should not be in what the readers make of a text, whole and in pieces; [] where all is well. */
export function nemProblems(text: string, random: Random): readonly string[] {
  return [readNem12, readNem13].flatMap((read) => {
    const file = read(text);
    const isSame = told(read(...piecesOf(text, random))) === told(file);
    return [
      ...file.chunks.flatMap(chunkProblems),
      ...file.registers.flatMap(({ value, line }) =>
        /^\d+(?:\.\d+)?$/.test(value) ? [] : [`line ${line}: "${value}"`],
      ),
      ...file.findings.flatMap(findingProblems),
      ...(isSame ? [] : ['in pieces it reads otherwise']),
    ];
  });
}
