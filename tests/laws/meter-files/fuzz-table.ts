import type { Finding } from '@unitbook/engine';
import {
  VALUE_QUALITIES,
  type IntervalChunk,
  type RegisterValue,
} from '../../../packages/meter-files/src/stream.ts';
import { layoutFindings } from '../../../packages/meter-files/src/table/check-layout.ts';
import { proposeTable, type TableLayout } from '../../../packages/meter-files/src/table/index.ts';
import { ODD_TEXTS } from '../../support/odd-texts.ts';
import type { Random } from '../../support/random.ts';
import { readTable, type TableFile } from '../../support/table.ts';
import { randomPieces, randomTable } from './random-table.ts';

const FILES = import.meta.glob<string>('../../published/data/tables/*.csv', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** The measured tables with the layout that is proposed for each. */
const SAMPLES = Object.values(FILES).map((text) => ({
  text: text.split('\n').slice(0, 40).join('\n'),
  layout: { ...proposeTable(text).layout, confirmed: true },
}));

/** Odd texts, and those that mean something in this format. */
const CELLS = [
  ...ODD_TEXTS,
  ...['1.234,5', '12 kWh', '#N/A', '#####', '=1+1', '1,2E+05', '@x', '"x\ny"', 'Total', 'actual', 'E'],
  ...['2025-05-01', '2024-02-29', '2023-02-29', '0000-00-00', '9999-12-31', '24:00', '2025-10-26 02:30'],
  ...['2025-03-30 02:30', '1/2/3', '13.13.2025', '2025-05-01T00:00:00+99:99', '20250501', '1746057600'],
];

const CHARACTERS = Array.from('0123456789.,;|-+:TZ/ eE#="\'\n\r\t\ufeff\0x٣𝟙');

type Mutation = (text: string, random: Random) => string;

/** A place in a text, more often after one of its marks. */
function placeIn(text: string, random: Random): number {
  const at = random.below(text.length + 1);
  const mark = text.slice(at).search(/[,;|\t\n]/);
  return mark < 0 || random.chance(40) ? at : at + mark + 1;
}

const inLines = (change: (lines: string[], random: Random) => void): Mutation => {
  return (text, random) => {
    const lines = text.split('\n');
    change(lines, random);
    return lines.join('\n');
  };
};

const MUTATIONS: readonly Mutation[] = [
  (text, random) => {
    const at = placeIn(text, random);
    const rest = text.slice(at);
    const end = Math.max(0, rest.search(/[,;|\t\n]/));
    return text.slice(0, at) + random.pick(CELLS) + rest.slice(end);
  },
  (text, random) => {
    const at = random.below(text.length + 1);
    return text.slice(0, at) + random.pick(CHARACTERS) + text.slice(at + random.below(3));
  },
  (text, random) => text.slice(0, random.below(text.length + 1)),
  (text, random) =>
    text.replaceAll(random.pick([',', '.', ':', '-', '"']), random.pick([',', ';', '.', ' ', '"'])),
  inLines((lines, random) => {
    lines.splice(random.below(lines.length), 1 + random.below(2));
  }),
  inLines((lines, random) => {
    lines.splice(random.below(lines.length), 0, random.pick(lines));
  }),
  inLines((lines, random) => {
    lines.splice(random.below(lines.length), 0, ...random.pick(SAMPLES).text.split('\n').slice(0, 3));
  }),
  inLines((lines, random) => {
    const [from = ''] = lines.splice(random.below(lines.length), 1);
    lines.splice(random.below(lines.length + 1), 0, from);
  }),
];

const MISSING = VALUE_QUALITIES.indexOf('missing');

function chunkProblems({
  start,
  minutes,
  places,
  values,
  qualities,
  line,
}: IntervalChunk): readonly string[] {
  const hasShape =
    [start, minutes, places, line].every(Number.isSafeInteger) && places >= 0 && places <= 15 && line >= 1;
  const shape =
    hasShape && values.length > 0 && values.length <= 4096 ? [] : [`chunk at ${start}, ${places} places`];
  const wrong = Array.from(values, (value, at) => {
    const quality = qualities === null ? 0 : (qualities[at] ?? -1);
    const isRight = Number.isNaN(value)
      ? quality === MISSING
      : Number.isSafeInteger(value) && quality !== MISSING;
    return isRight && !Object.is(value, -0) && quality >= 0 && quality < VALUE_QUALITIES.length
      ? []
      : [`line ${line}: ${value} with the quality ${quality}`];
  });
  return [...shape, ...wrong.flat()];
}

function registerProblems({ day, minute, value, line, stream }: RegisterValue): readonly string[] {
  const isTime =
    Number.isSafeInteger(day) &&
    (minute === null || (Number.isInteger(minute) && minute >= 0 && minute < 1440));
  const isNumber = /^-?\d+(?:\.\d+)?$/.test(value);
  const isRight = isTime && isNumber && line >= 1;
  return isRight ? [] : [`${stream.register}, line ${line}: ${value} on ${day} at ${String(minute)}`];
}

function findingProblems({ code, position, found, expected, remedy }: Finding): readonly string[] {
  const isPlaced = position !== undefined && position.line >= 1 && position.column >= 1;
  const words = `${found} ${expected} ${remedy}`;
  const isSaid = ![found, expected, remedy].includes('') && !/undefined|\[object|NaN /.test(words);
  return isPlaced && isSaid && found.length < 1000 ? [] : [`${code}: ${words}`];
}

const told = ({ chunks, registers, findings }: TableFile): string =>
  JSON.stringify([chunks.map((chunk) => [chunk, [...chunk.values].join()]), registers, findings]);

/** What should not be in what a layout makes of a text, whole and in pieces. */
function tableProblems(layout: TableLayout, text: string, random: Random): readonly string[] {
  const file = readTable(layout, text);
  const isSame = told(readTable(layout, ...randomPieces(text, random))) === told(file);
  const isSilent = file.chunks.length + file.registers.length + file.findings.length === 0;
  const hasRows = text.trim().split(/[\r\n]+/).length > 1;
  return [
    ...file.chunks.flatMap(chunkProblems),
    ...file.registers.flatMap(registerProblems),
    ...file.findings.flatMap(findingProblems),
    ...(isSame ? [] : ['in pieces it reads otherwise']),
    ...(isSilent &&
    hasRows &&
    /[^\s,;|"]/.test(
      text
        .trim()
        .split(/[\r\n]+/)
        .slice(1)
        .join(''),
    )
      ? ['nothing read, nothing said']
      : []),
  ];
}

/**
 * Propose a layout for one table that was spoilt at random, and read it by that layout and by its own.
 *
 * @returns what is wrong with what was made of it; nothing, if all is well. What throws, throws.
 */
export function fuzzTable(random: Random): readonly string[] {
  const { layout, text: good } = random.chance(60) ? random.pick(SAMPLES) : randomTable(random);
  let text = good;
  for (let count = random.below(5); count >= 0; count -= 1) text = random.pick(MUTATIONS)(text, random);
  const proposal = proposeTable(text);
  const proposed = { ...proposal.layout, confirmed: true };
  const hasColumns = proposed.columns.length === proposed.header.length;
  return [
    ...(hasColumns && !proposal.layout.confirmed ? [] : ['the proposal does not fit together']),
    ...proposal.findings.flatMap(findingProblems),
    ...(layoutFindings(proposed).length === 0 ? tableProblems(proposed, text, random) : []),
    ...tableProblems(layout, text, random),
  ];
}
