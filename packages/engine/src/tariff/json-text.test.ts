import fc from 'fast-check';
import { getNodeValue, parseTree, type Node, type ParseError } from 'jsonc-parser';
import { expect, it } from 'vitest';
import { readJson, type JsonNode } from './json-text.ts';

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

function read(text: string): JsonNode {
  const node = readJson(text);
  if ('problem' in node) throw new Error(`${node.problem} at ${String(node.offset)}`);
  return node;
}

/** The tree of the published parser, with the fields that ours has. */
function witness(node: Node): JsonNode {
  const { type, offset, length, children } = node;
  const value = node.value as unknown;
  return {
    type,
    offset,
    length,
    ...(children === undefined ? { value } : { children: children.map(witness) }),
  };
}

function expectAsWitnessed(text: string): void {
  const errors: ParseError[] = [];
  const root = parseTree(text, errors, { disallowComments: true, allowTrailingComma: false });
  expect(errors).toEqual([]);
  const node = read(text);
  expect(node).toEqual(root === undefined ? undefined : witness(root));
  expect(getNodeValue(node)).toEqual(JSON.parse(text));
}

it.each([
  '0',
  '-0',
  '1e5',
  '-1.50E+02',
  '12345678901234567890.123',
  ' "a\\u0041\\n\\/\\"\\\\" ',
  '"\\ud83d\\ude00 \\ud800 ₹ अ \u2028\u2029\u007f"',
  '[ ]',
  '{\r\n\t}',
  '[null, true,false , [1,[ ]] ]',
  '{"a": {"b": [1, "2", {"": -0.0}]}, "a": 1, "__proto__": 2, "toString": 3}',
  `${'['.repeat(200)}${']'.repeat(200)}`,
  `{"k":${'[{"k":'.repeat(99)}1${'}]'.repeat(99)}}`,
])('reads %s as JSON.parse does, with the places of the published parser', expectAsWitnessed);

it('reads any JSON as JSON.parse does, with the places of the published parser', () => {
  fc.assert(
    fc.property(fc.json({ maxDepth: 6, stringUnit: 'binary' }), fc.nat(4), (text, indent) => {
      expectAsWitnessed(text);
      expectAsWitnessed(JSON.stringify(JSON.parse(text), null, indent));
    }),
    { numRuns: 500 },
  );
});

it('takes what JSON.parse takes, and nothing else', () => {
  const pieces = fc.constantFrom(
    ...['{', '}', '[', ']', ',', ':', '"', '\\', '"a"', '"b":', '\\u00', '41', '0', '-', '.', 'e', '+', '1'],
    ...[
      ' ',
      '\n',
      '\t',
      '\r',
      '\f',
      '\u00a0',
      '\ufeff',
      '\u0000',
      'true',
      'nul',
      'null',
      '/',
      '//x',
      '_',
      'é',
    ],
  );
  const broken = fc
    .tuple(fc.json({ maxDepth: 3 }), fc.nat(), fc.nat(3), pieces)
    .map(([text, at, out, piece]) => {
      const place = at % (text.length + 1);
      return text.slice(0, place) + piece + text.slice(place + out);
    });
  const mixed = fc.array(pieces, { maxLength: 12 }).map((parts) => parts.join(''));
  fc.assert(
    fc.property(fc.oneof(broken, mixed), (text) => {
      const found = readJson(text);
      expect('type' in found).toBe(isJson(text));
      expect(found.offset).toBeLessThanOrEqual(text.length);
    }),
    { numRuns: 3000 },
  );
});

it.each([
  ['', 'the file is empty', 0],
  [' \n', 'the file is empty', 0],
  ['{', 'property name expected', 1],
  ['{"a"', 'colon expected', 4],
  ['{"a" 1}', 'colon expected', 5],
  ['{"a":', 'value expected', 5],
  ['{"a":1', 'close brace expected', 6],
  ['{"a":1 "b":2}', 'comma expected', 7],
  ['{"a":1,}', 'property name expected', 7],
  ['{"a":1,,"b":2}', 'property name expected', 7],
  ['{a:1}', 'property name expected', 1],
  ["{'a':1}", 'property name expected', 1],
  ['[', 'value expected', 1],
  ['[1', 'close bracket expected', 2],
  ['[1 2]', 'comma expected', 3],
  ['[1,]', 'value expected', 3],
  ['[1}', 'comma expected', 2],
  ['{} x', 'end of file expected', 3],
  ['[tru]', 'invalid symbol', 1],
  ['[NaN]', 'invalid symbol', 1],
  ['[01]', 'invalid number format', 1],
  ['[1.]', 'invalid number format', 1],
  ['[-]', 'invalid number format', 1],
  ['[1e]', 'invalid number format', 1],
  ['[+1]', 'invalid number format', 1],
  ['["a]', 'unexpected end of string', 1],
  ['["a\n"]', 'unexpected end of string', 1],
  ['["a\tb"]', 'invalid character', 3],
  ['["a\\x"]', 'invalid escape character', 3],
  ['["\\u12g4"]', 'invalid unicode', 2],
  ['// a comment', 'value expected', 0],
  ['\ufeff{}', 'value expected', 0],
])('says what is wrong with %j and where', (text, problem, offset) => {
  expect(readJson(text)).toMatchObject({ problem, offset });
});

it.each(['[', '{"a":'])('answers ten thousand of %s with a message', (bracket) => {
  expect(readJson(bracket.repeat(10_000))).toMatchObject({
    problem: 'more than 200 brackets within each other',
    offset: 200 * bracket.length,
  });
});
