import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodePieces } from './decode-pieces.ts';

/** Decode bytes that come in pieces which end at some places. */
function decoded(bytes: Uint8Array, cuts: readonly number[] = []) {
  const decoder = decodePieces();
  const ends = [...cuts.filter((cut) => cut < bytes.length), bytes.length].sort((a, b) => a - b);
  let from = 0;
  let text = '';
  for (const end of ends) {
    text += decoder.write(bytes.subarray(from, end));
    from = end;
  }
  text += decoder.end();
  return { text, findings: decoder.findings().map(({ code, values }) => [code, values]) };
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const little = (text: string): Uint8Array => Uint8Array.from(Buffer.from(`\ufeff${text}`, 'utf16le'));
const big = (text: string): Uint8Array => Uint8Array.from(Buffer.from(`\ufeff${text}`, 'utf16le').swap16());
const latin = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'latin1'));

describe('a file in pieces', () => {
  it('is the same text wherever they end', () => {
    const some = fc.array(fc.constantFrom('a', '1', 'é', '€', '😀', '\r\n', ';'), { maxLength: 60 });
    const cuts = fc.array(fc.nat({ max: 200 }), { maxLength: 9 });
    fc.assert(
      fc.property(some, cuts, fc.boolean(), (characters, at, isLong) => {
        // Longer than the head, by which a file is told, or shorter.
        const text = (isLong ? 'x'.repeat(4090) : '') + characters.join('');
        const shifted = at.map((cut) => (isLong ? cut + 4080 : cut));
        for (const encode of [utf8, little, big])
          expect(decoded(encode(text), shifted)).toEqual({ text, findings: [] });
      }),
    );
  });

  it('has no mark at its beginning', () => {
    expect(decoded(utf8('\ufeffdate')).text).toBe('date');
  });

  it('may be used again by whoever wrote it', () => {
    const decoder = decodePieces();
    const bytes = utf8('one');
    decoder.write(bytes);
    bytes.fill(0);
    expect(decoder.end()).toBe('one');
  });

  it('has a mark in place of bytes that are no character, and tells the lines', () => {
    const lines = ['date;Zähler', '1;2', 'ä;ü', '3;4'].join('\r\n');
    for (const cuts of [[], [12], [13, 14], [20, 21, 22]]) {
      const { text, findings } = decoded(latin(lines), cuts);
      expect(text).toBe(lines.replace(/[äü]/g, '\ufffd'));
      expect(findings).toEqual([
        ['meter-file/bytes-replaced', { count: '3', encoding: 'UTF-8', lines: 'lines 1, 3' }],
      ]);
    }
  });

  it('has one line end where two pieces share it', () => {
    const line = 'x'.repeat(5000);
    const { findings } = decoded(latin(`${line}\r\n${line}\r\n\u00e4`), [5001, 10_003]);
    expect(findings.map(([, values]) => values)).toEqual([
      { count: '1', encoding: 'UTF-8', lines: 'line 3' },
    ]);
  });

  it('that ends within a character has a mark at its end', () => {
    expect(decoded(utf8('a€').subarray(0, 3))).toEqual({
      text: 'a\ufffd',
      findings: [['meter-file/bytes-replaced', { count: '1', encoding: 'UTF-8', lines: 'line 1' }]],
    });
    expect(decoded(little('ab').subarray(0, 5)).findings).toEqual([
      ['meter-file/bytes-replaced', { count: '1', encoding: 'UTF-16', lines: 'line 1' }],
    ]);
  });

  it('may have the marks of a readout', () => {
    const readout = '\u0002' + '1.8.0(1*kWh)\r\n!\r\n\u0003\u0006';
    expect(decoded(utf8(readout))).toEqual({ text: readout, findings: [] });
  });
});

describe('a file that is no text', () => {
  it.each([
    ['a PDF document', '%PDF-1.4'],
    ['a workbook or another packed file', 'PK\u0003\u0004'],
    ['bytes that are no text', 'abc\u0000def'],
    ['bytes that are no text', 'abc\u0007'],
    ['text in UTF-16 without the mark that says so', 'a\u0000b\u0000c\u0000d\u0000'],
  ])('is %s', (what, text) => {
    const { text: nothing, findings } = decoded(latin(text), [2]);
    expect([nothing, findings]).toEqual(['', [['meter-file/not-text', { what }]]]);
  });

  it('can turn out to be so later on, and has no more text then', () => {
    const decoder = decodePieces();
    const pieces = ['x'.repeat(5000), 'y\0z', 'more'].map((piece) => decoder.write(latin(piece)));
    expect([pieces.map(({ length }) => length), decoder.end(), decoder.isNoText()]).toEqual([
      [5000, 0, 0],
      '',
      true,
    ]);
    expect(decoder.findings()[0]?.values).toEqual({ what: 'bytes that are no text' });
  });
});
