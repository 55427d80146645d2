import { describe, expect, it } from 'vitest';
import { readNumberText } from './number-text.ts';

describe('numbers as people type them', () => {
  it.each([
    ['4640', '4640'],
    ['4640.3', '4640.3'],
    ['00012.3', '00012.3'],
    ['12,892.4', '12892.4'],
    ['12892,4', '12892.4'],
    ['12.892,4', '12892.4'],
    ['12892,45', '12892.45'],
    ['12892,456', '12892.456'],
    ['1,16,444', '116444'],
    ['1,16,444.5', '116444.5'],
    ['1.164.444', '1164444'],
    ['1.164.444,5', '1164444.5'],
    ["12'892.4", '12892.4'],
    ['12’892.4', '12892.4'],
    ['12 892,4', '12892.4'],
    ['12\u00a0892.4', '12892.4'],
    ['12_892', '12892'],
    ['Rs 8,81,506', '881506'],
    ['Rs. 546', '546'],
    ['INR 546', '546'],
    ['₹ 1401', '1401'],
    ['546/-', '546'],
    ['Rs 16,401.50/-', '16401.50'],
    ['4640.3 kWh', '4640.3'],
    ['4 kW', '4'],
    ['298 units', '298'],
    ['1 unit', '1'],
    ['४३४२.१', '4342.1'],
    ['٤٣٤٢', '4342'],
    ['４３４２', '4342'],
    [' 4342 ', '4342'],
    ['+58', '58'],
    ['-58', '-58'],
    ['−58', '-58'],
    ['-58,5', '-58.5'],
  ])('reads "%s" as %s', (text, number) => {
    expect(readNumberText(text)).toEqual({ kind: 'number', text: number });
  });

  it.each([
    ['₹ 1,401', '1401', '1.401'],
    ['12,892', '12892', '12.892'],
    ['-1,401', '-1401', '-1.401'],
    ['0,123', '0123', '0.123'],
  ])('cannot tell what the comma of "%s" marks', (text, grouped, decimal) => {
    expect(readNumberText(text)).toEqual({ kind: 'comma-unclear', grouped, decimal });
  });

  it.each([
    ['l2892', '12892'],
    ['1O5', '105'],
    ['1o5', '105'],
    ['I2', '12'],
    ['12S.4', '125.4'],
    ['B0', '80'],
  ])('takes the letter of "%s" for a digit, and offers %s', (text, offer) => {
    expect(readNumberText(text)).toEqual({ kind: 'letter', offer });
  });

  it.each([
    ['=1+1', 'formula'],
    ['@A1', 'formula'],
    ['+A1', 'formula'],
    ['-A1', 'formula'],
    ['-(5)', 'formula'],
    ['+1+2', 'formula'],
    ['-5*2', 'formula'],
    ['', 'empty'],
    ['  ', 'empty'],
    ['\t', 'empty'],
    ['1,2,3', 'mixed-separators'],
    ['1,234,5', 'mixed-separators'],
    ['1,2,345.6,7', 'mixed-separators'],
    ['12.34,567.8', 'mixed-separators'],
    ['12..3', 'mixed-separators'],
    ['12,,3', 'mixed-separators'],
    [',', 'mixed-separators'],
    ['.5', 'mixed-separators'],
    ['5.', 'mixed-separators'],
    ['abc', 'not-a-number'],
    ['1e5', 'not-a-number'],
    ['-', 'not-a-number'],
    ['12-34', 'not-a-number'],
    ['4640 4641 kWh x', 'not-a-number'],
    ['NaN', 'not-a-number'],
    ['½', 'not-a-number'],
  ])('refuses "%s": %s', (text, kind) => {
    expect(readNumberText(text)).toEqual({ kind });
  });
});
