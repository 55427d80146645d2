import { describe, expect, it } from 'vitest';
import { bitwiseChecksum } from '../../../../tests/laws/meter-files/print-obis.ts';
import { sample, SAMPLES } from '../../../../tests/laws/meter-files/obis-samples.ts';
import { crc16 } from './checksum.ts';

/** From "/" to "!", both with it. */
const counted = (text: string): string => text.slice(text.indexOf('/'), text.lastIndexOf('!') + 1);

describe('the checksum of a telegram', () => {
  it('has the check value of CRC-16/ARC', () => {
    // "123456789" → 0xBB3D: catalogue of parametrised CRC algorithms, G. Cook (from memory).
    expect(crc16('123456789')).toBe('BB3D');
    expect(crc16('')).toBe('0000');
  });

  it.each([
    ['v4_2', '6796'],
    ['v5', '6EEE'],
    ['v5_hu', '99DA'],
  ] as const)('is the one printed in the sample %s, %s', (name, printed) => {
    expect(sample(name).trimEnd().endsWith(`!${printed}`)).toBe(true);
    expect(crc16(counted(sample(name)))).toBe(printed);
  });

  it('is the one that a telegram comes to bit by bit', () => {
    expect(SAMPLES.size).toBe(3);
    for (const text of SAMPLES.values()) expect(crc16(text)).toBe(bitwiseChecksum(text));
  });

  it('counts a character that is none of ASCII as its bytes in UTF-8', () => {
    // é is C3 A9 in UTF-8.
    expect(crc16('é')).toBe(bitwiseChecksum('\u00c3\u00a9'));
  });
});
