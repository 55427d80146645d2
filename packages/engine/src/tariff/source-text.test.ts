import { expect, it } from 'vitest';
import { locate, rawText, readSourceText } from './source-text.ts';
import { documentFinding } from './document-findings.ts';

const text = `{
  "rates": [
    { "rate": 1e5, "note": "a" },
    { "rate": -0 }
  ],
  "rates": []
}`;

it('tells a key that stands twice', () => {
  const { findings } = readSourceText('{"a": {"b": 1, "b": 2}, "c": [{"d": 1, "d": 2}], "c": 3}');
  expect(findings.map(({ code, path }) => [code, path.join('.')])).toEqual([
    ['document/duplicate-key', 'a.b'],
    ['document/duplicate-key', 'c.0.d'],
    ['document/duplicate-key', 'c'],
  ]);
});

it('gives a value as the file writes it', () => {
  const { source } = readSourceText(text.replace('"rates": []', '"other": []'));
  expect(rawText(source, ['rates', 0, 'rate'])).toBe('1e5');
  expect(rawText(source, ['rates', 1, 'rate'])).toBe('-0');
});

it('puts a finding at its value, or at the nearest part that is there', () => {
  const { source } = readSourceText(text);
  const once = readSourceText(text.replace('"rates": []', '"other": []')).source;
  const at = (path: readonly (string | number)[], within = once) =>
    locate(within, documentFinding('document/unknown-key', { path })).position;
  expect(at(['rates', 1, 'rate'])).toEqual({ line: 4, column: 15 });
  expect(at(['rates'], source)).toEqual({ line: 6, column: 12 });
  expect(at(['rates', 0, 'missing', 'deep'])).toEqual({ line: 3, column: 5 });
  expect(at(['rates', 'length'])).toEqual({ line: 2, column: 12 });
  expect(at([])).toEqual({ line: 1, column: 1 });
});

it('says at which line and column a text is no JSON', () => {
  const { source, findings } = readSourceText('{\n  "a": 1\n  "b": 2\n}');
  expect(source.root).toBeUndefined();
  expect(findings).toMatchObject([
    { found: 'the file is not JSON here: comma expected', position: { line: 3, column: 3 } },
  ]);
  expect(rawText(source, ['a'])).toBe('');
});
