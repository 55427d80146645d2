import { expect, it } from 'vitest';
import { BLANK_FLYER, flyerText, readFlyerFile } from './flyer-file.ts';

const refusal = (text: string): string => {
  const file = readFlyerFile(text);
  return file.kind === 'refused' ? [file.reason, ...file.findings.map(({ code }) => code)].join(' ') : '';
};

it('opens what it saved, half typed numbers and all', () => {
  const flyer = { ...BLANK_FLYER, claimedSaving: '44 16', words: 'Zero bill' };
  expect(readFlyerFile(flyerText(flyer))).toEqual({ kind: 'flyer', flyer });
});

it('says of another text what it is and what was expected', () => {
  expect(refusal('{')).toContain('not JSON');
  expect(refusal('[]')).toContain('"format": "unitbook-flyer-1"');
  expect(refusal('{"format":"unitbook-household-1"}')).toContain(
    '“unitbook-household-1”. Expected: “unitbook-flyer-1”',
  );
});

it('refuses a number that is no text, and a key that would not be looked at', () => {
  expect(refusal('{"format":"unitbook-flyer-1","price":216000}')).toContain('document/number-not-text');
  expect(refusal('{"format":"unitbook-flyer-1","prise":"216000"}')).toContain('document/unknown-key');
});
