import { describe, expect, it } from 'vitest';
import { parseObis } from './code.ts';
import { obisMeaning, type ObisMeaning } from './meaning.ts';

function meaningOf(text: string): ObisMeaning {
  const code = parseObis(text);
  if (code === null) throw new RangeError(text);
  return obisMeaning(code);
}

// IEC 62056-6-1: group C says what is counted (1 import, 2 export, 15 both together, 16 import less export),
// D = 8 that it is counted from the beginning, for both directions.
describe('what a code stands for', () => {
  it.each([
    ['1.8.0', 'import', null],
    ['1.8', 'import', null],
    ['1-0:1.8.1', 'import', '1'],
    ['1-0:1.8.4*255', 'import', '4'],
    ['2.8.0', 'export', null],
    ['1-0:2.8.2', 'export', '2'],
    ['1-1:2.8.63', 'export', '63'],
    ['15.8.0', 'other', null],
    ['16.8.0', 'net', null],
    ['1.29.0', 'other', null],
    ['2.29.1', 'other', '1'],
    ['1.9.0', 'other', null],
    ['21.8.0', 'other', null],
  ])('%s counts active energy: %s, rate %s', (text, quantity, rate) => {
    const meaning = meaningOf(text);
    expect([meaning.quantity, meaning.rate, meaning.isEnergy]).toEqual([quantity, rate, true]);
    expect(meaning.other === null).toBe(quantity !== 'other');
  });

  it.each([
    ['3.8.0', 'reactive energy'],
    ['4.8.1', 'reactive energy'],
    ['8.8.0', 'reactive energy'],
    ['9.8.0', 'apparent energy'],
    ['1.7.0', 'power at this moment'],
    ['2.7.0', 'power at this moment'],
    ['1.6.0', 'the largest demand'],
    ['1.4.0', 'the demand of the interval'],
    ['31.7.0', 'a current'],
    ['3.29.0', 'reactive energy of an interval'],
    ['7-0:3.1.0', 'gas'],
    ['0-1:24.2.1', 'a value of another meter'],
    ['0-0:1.8.0', 'no medium'],
    ['C.1.0', 'a serial number'],
    ['1.8.64', 'no number of a rate'],
    ['1.8.255', 'no number of a rate'],
  ])('%s counts none: %s', (text) => {
    const { quantity, isEnergy, other } = meaningOf(text);
    expect([quantity, isEnergy, other]).toEqual(['other', false, null]);
  });

  it.each([
    ['1.8.0', false],
    ['1.8.0*255', false],
    ['1.8.0*0', true],
    ['1.8.0*1', true],
    ['1.8.0*254', true],
  ])('%s is of a past billing period: %s', (text, isPast) => {
    expect(meaningOf(text).isPast).toBe(isPast);
  });
});
