import { FLYER_CLAIMS, readFlyer } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { FLYER_FIELDS } from './flyer-fields.ts';
import { BLANK_FLYER, flyerText } from './flyer-file.ts';
import { readTypedFlyer } from './read-typed-flyer.ts';

const codes = (typed: Parameters<typeof readTypedFlyer>[0]): string[] =>
  readTypedFlyer(typed).findings.map(({ code, path }) => `${path.join('.')} ${code}`);

it('has a field for every number that a flyer can claim', () => {
  expect(FLYER_FIELDS.map(({ claim }) => claim).sort()).toEqual([...FLYER_CLAIMS].sort());
});

it('reads numbers as they are printed, and leaves blank lines out', () => {
  const { plain, usable, findings } = readTypedFlyer({
    ...BLANK_FLYER,
    price: 'Rs 2,16,000/-',
    netPrice: '₹ 162 000',
    claimedGeneration: '5,520 kWh',
    claimedSaving: '44,160',
    claimedPayback: '3,7',
    claimedRate: '',
    words: ' ',
  });
  expect(findings).toEqual([]);
  expect(plain).toEqual({
    format: 'unitbook-flyer-1',
    price: '216000',
    netPrice: '162000',
    claimedGeneration: '5520',
    claimedSaving: '44160',
    claimedPayback: '3.7',
  });
  expect(usable).toEqual(plain);
});

it('asks where a comma can mean two things, and says what is wrong with each line, all at once', () => {
  const typed = {
    ...BLANK_FLYER,
    claimedRate: '6,640',
    price: '21o000',
    claimedSaving: 'a lot',
    claimedPayback: '101',
    escalation: '5',
  };
  expect(codes(typed)).toEqual([
    'price reading/letter',
    'claimedSaving quote/number-out-of-range',
    'claimedRate reading/comma-unclear',
    'claimedPayback quote/number-out-of-range',
  ]);
  const { usable, plain } = readTypedFlyer(typed);
  expect(usable).toEqual({ ...BLANK_FLYER, escalation: '5' });
  // What a file holds of them stands as typed.
  expect(plain).toEqual(typed);
});

it('says what a number of a flyer looks like, not one of a meter', () => {
  const [finding] = readTypedFlyer({ ...BLANK_FLYER, claimedPayback: '3.7 summers' }).findings;
  expect(finding?.found).toBe('3.7 summers for paid back after, years');
  expect(finding?.expected).toBe('a number, such as 1234.5');
});

it('makes a file that the engine reads, whatever was typed with it', () => {
  const { plain } = readTypedFlyer({ ...BLANK_FLYER, claimedSaving: 'Rs 44,160/-', words: 'Zero bill' });
  const { value, findings } = readFlyer(flyerText(plain));
  expect(findings).toEqual([]);
  expect(value).toEqual({ format: 'unitbook-flyer-1', claimedSaving: '44160', words: 'Zero bill' });
});
