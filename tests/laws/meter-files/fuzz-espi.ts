import { ESPI_FINDINGS } from '../../../packages/meter-files/src/espi/index.ts';
import type { Random } from '../../support/random.ts';
import { printFeed, readFeed, type ReadFeed, type ReadStream } from './print-espi.ts';
import { pieces, randomEntries } from './random-espi.ts';

const FEEDS = import.meta.glob<string>('../../published/data/espi/*.xml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** The published feeds: their headers, the first readings and the end. */
const SAMPLES = Object.values(FEEDS).map((text) =>
  text.length < 20_000 ? text : text.slice(0, 12_000) + text.slice(-6000),
);

/** Texts that are put into a feed where they do not belong. */
const ODDITIES = [
  '<', '>', '&', '&amp;', '&#0;', '&x;', ']]>', '<![CDATA[5]]>', '<!-- -->', '<!--', '<?x y?>', '\0', '\r', '\r\n',
  '\ud800', '\udc00', '🌞', '-', '+', '.', '.5', 'e9', '0', '9', '999999999999999', '9999999999999999', 'NaN',
  ' ', '\n', '</value>', '<value>7</value>', '<tou>3</tou>', '<value/>', '</entry>', '<entry>', '<IntervalReading>',
  '<espi:value>', '<start>-60</start>', '<duration>0</duration>', 'FFFFFFFF', 'xmlns="urn:x"', '/', '"',
  '<!DOCTYPE feed [<!ENTITY x "y">]>', '<timePeriod/>', '<consumptionTier>2</consumptionTier>', 'x'.repeat(1500),
] as const; // prettier-ignore

function mutate(text: string, random: Random): string {
  const at = random.below(text.length + 1);
  const length = random.pick([0, 1, 1, 2, 20, 300]);
  const [before, cut, after] = [text.slice(0, at), text.slice(at, at + length), text.slice(at + length)];
  switch (random.below(5)) {
    case 0:
      return before + random.pick(ODDITIES) + after;
    case 1:
      return before + cut + cut + after;
    case 2:
      return before + String.fromCharCode(random.below(256)) + after;
    case 3:
      return random.chance(10) ? before : before + after;
    default:
      // A number somewhere is changed: the file stays well-formed, and says something else.
      return (
        before + after.replace(/>-?\d+</, `>${random.pick(['-', '', '0'])}${String(random.below(4000))}<`)
      );
  }
}

const isMinute = (value: number): boolean => Number.isSafeInteger(value);

/** What no stream may hold. */
function streamComplaints({ chunks, registers }: ReadStream): string[] {
  const badChunk = chunks.find(
    ({ start, minutes, places, values, qualities }) =>
      !isMinute(start) ||
      !(isMinute(minutes) && minutes > 0) ||
      !(places >= 0 && places <= 9) ||
      values.length === 0 ||
      values.length !== qualities.length ||
      !values.every(Number.isSafeInteger) ||
      qualities.some((quality) => quality > 3),
  );
  const badRegister = registers.find(
    ({ day, minute, value }) =>
      !isMinute(day) ||
      !(minute !== null && minute >= 0 && minute < 1440) ||
      !/^-?\d+(?:\.\d+)?$/.test(value),
  );
  return [badChunk, badRegister].filter((bad) => bad !== undefined).map((bad) => JSON.stringify(bad));
}

function findingComplaints({ findings }: ReadFeed): string[] {
  return findings
    .filter(
      ({ code, position, found, expected, remedy }) =>
        !Object.hasOwn(ESPI_FINDINGS, code) ||
        !(position !== undefined && position.line >= 1 && position.column >= 1) ||
        /undefined(?! entity)/.test(`${found}${expected}${remedy}`) ||
        found.length > 3000,
    )
    .map((finding) => JSON.stringify(finding));
}

/**
 * Read one feed that was spoilt at random, whole and in pieces.
 *
 * @returns what is wrong with what was read; nothing, if the reader is right. A reader that throws, throws.
 */
export function fuzzEspi(random: Random): string[] {
  let text = random.chance(30) ? printFeed(randomEntries(random)) : random.pick(SAMPLES);
  for (let count = random.below(4); count >= 0; count -= 1) text = mutate(text, random);
  const whole = readFeed([text]);
  const inPieces = readFeed(pieces(text, random));
  const isSame = JSON.stringify(whole) === JSON.stringify(inPieces);
  return [
    ...whole.streams.flatMap(streamComplaints),
    ...findingComplaints(whole),
    ...(isSame ? [] : [`other than in pieces: ${JSON.stringify([whole.findings, inPieces.findings])}`]),
  ];
}
