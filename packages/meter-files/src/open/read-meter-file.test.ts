import { describe, expect, it } from 'vitest';
import { codesOf, dayOf } from '../../../../tests/support/meter-chunks.ts';
import { meterFileKind } from './kind.ts';
import { openMeterFile } from './open-meter-file.ts';
import { readMeterFile } from './read-meter-file.ts';

const DAY = Array.from({ length: 48 }, (_, index) => (index === 0 ? '0.25' : '0')).join(',');
const NEM12 = `100,NEM12,202401010900,S,R\n200,N1,E1,1,E1,N1,M1,kWh,30,\n300,20240101,${DAY},A,,,20240102000000,\n900\n`;
const LIST = '1.8.0(001234.5*kWh)\n2.8.0(000007.0*kWh)\n';

describe('a whole meter file', () => {
  it.each([
    ['text', NEM12],
    ['bytes', new TextEncoder().encode(NEM12)],
    ['bytes of UTF-16', Uint8Array.from(Buffer.from(`\ufeff${NEM12}`, 'utf16le'))],
    ['text with a mark', `\ufeff${NEM12}`],
  ])('is read from %s', (_, input) => {
    const { kind, file, findings } = readMeterFile(input);
    expect([kind, findings]).toEqual(['nem12', []]);
    expect(file?.clock).toEqual({ offset: 600 });
    const [series] = file?.intervals ?? [];
    expect([series?.stream.register, series?.starts.length, series?.values[0]]).toEqual(['E1', 48, 25]);
  });

  it('is read in pieces as it is in one', () => {
    // Days enough for more than one piece.
    const days = Array.from({ length: 800 }, (_, index) => {
      const month = String(1 + (Math.floor(index / 28) % 12)).padStart(2, '0');
      return `300,${2020 + Math.floor(index / 336)}${month}${String(1 + (index % 28)).padStart(2, '0')},${DAY},A,,,,\n`;
    });
    const text = NEM12.replace(/300,.*\n/, days.join(''));
    expect(text.length > 65_536).toBe(true);
    const { file } = readMeterFile(new TextEncoder().encode(text));
    expect(file?.intervals[0]?.starts.length).toBe(800 * 48);
    expect(readMeterFile(text).file).toEqual(file);
  });

  it('is read with the day of its readings', () => {
    const { kind, file } = readMeterFile(LIST, { day: dayOf('2025-05-01') });
    expect(kind).toBe('register-list');
    expect(file?.registers.map(({ readings }) => readings.map(({ day, value }) => [day, value]))).toEqual([
      [[dayOf('2025-05-01'), '001234.5']],
      [[dayOf('2025-05-01'), '000007.0']],
    ]);
  });

  it('is read as what it is said to be', () => {
    const { kind, why, findings } = readMeterFile(LIST, { kind: 'nem12' });
    expect([kind, why, findings.length > 0]).toEqual(['nem12', 'the kind that was named', true]);
  });

  it('is not read as a kind that needs more', () => {
    expect(codesOf(readMeterFile(LIST, { kind: 'table' }).findings)).toEqual(['meter-file/needs-layout']);
    expect(codesOf(readMeterFile(LIST, { kind: 'own-register-list' }).findings)).toEqual([
      'meter-file/own-register-list',
    ]);
    expect(codesOf(readMeterFile('', { kind: 'nem12' }).findings)).toEqual(['meter-file/empty']);
  });

  it('is none where it is no text', () => {
    for (const input of ['abc\0', new Uint8Array([0x61, 0]), new Uint8Array([0x25, 0x50, 0x44, 0x46])]) {
      const { file, findings } = readMeterFile(input);
      expect([file, codesOf(findings)]).toEqual([null, ['meter-file/not-text']]);
    }
  });

  it('tells of no text behind the head, too', () => {
    const text = `${NEM12}${'\n'.repeat(70_000)}`;
    const bytes = new TextEncoder().encode(`${text}\0`);
    expect(codesOf(readMeterFile(bytes).findings)).toEqual(['meter-file/not-text']);
    expect(codesOf(readMeterFile(`${text}\0`).findings)).toEqual(['meter-file/not-text']);
  });
});

describe('a reader', () => {
  it.each(['nem12', 'nem13', 'espi', 'telegram', 'register-list'] as const)('is made for %s', (kind) => {
    const nothing = (): void => undefined;
    const reader = openMeterFile(kind, { intervals: nothing, register: nothing, finding: nothing });
    expect(typeof reader.write).toBe('function');
  });

  it('of a table needs a layout', () => {
    const nothing = (): void => undefined;
    const sink = { intervals: nothing, register: nothing, finding: nothing };
    expect(() => openMeterFile('table', sink)).toThrow(RangeError);
    expect(meterFileKind('a;b\n1;2').kind).toBe('table');
  });
});
