import { describe, expect, it } from 'vitest';
import { readFlyer } from './flyer-document.ts';

const text = (claims: Readonly<Record<string, unknown>>): string =>
  JSON.stringify({ format: 'unitbook-flyer-1', ...claims }, null, 2);

const said = (claims: Readonly<Record<string, unknown>>) =>
  readFlyer(text(claims)).findings.map(({ code, severity, position, found, expected }) => [
    code,
    severity,
    `${String(position?.line)}:${String(position?.column)}`,
    found,
    expected,
  ]);

describe('a flyer', () => {
  it('is read as it was typed', () => {
    const claims = {
      claimedSaving: '44160',
      claimedPayback: '3.70',
      claimedGeneration: '5520',
      claimedRate: '8.00',
      price: '216000',
      netPrice: '162000',
      monthlyBillAfter: '0',
      escalation: '-1',
      words: 'zero bill',
    };
    expect(readFlyer(text(claims))).toEqual({
      value: { format: 'unitbook-flyer-1', ...claims },
      findings: [],
    });
  });

  it('may hold words alone', () => {
    expect(readFlyer(text({ words: 'free' })).findings).toEqual([]);
  });

  it.each([[{}], [{ words: '  ' }]])('without a claim is asked for one: %j', (claims) => {
    const { value, findings } = readFlyer(text(claims));
    expect(value).not.toBeNull();
    expect(findings).toMatchObject([
      {
        code: 'quote/flyer-empty',
        severity: 'question',
        found: 'a flyer without a claim',
        expected: 'at least one number or its words',
        remedy: 'Type in what it says: saving, payback, units, price, bill or words.',
      },
    ]);
  });

  it.each([
    ['claimedPayback', '0', true],
    ['claimedPayback', '100', true],
    ['claimedPayback', '100.0001', false],
    ['claimedPayback', '3.66848', false],
    ['claimedRate', '0.000001', true],
    ['claimedRate', '-1', false],
    ['claimedSaving', '1000000000000', true],
    ['claimedSaving', '1000000000000.01', false],
    ['escalation', '40', true],
    ['escalation', '40.001', false],
  ])('has %s within its range: %s', (claim, claimed, isRead) => {
    expect(readFlyer(text({ [claim]: claimed })).value !== null).toBe(isRead);
  });

  it('with numbers out of range is told all of them, line by line', () => {
    expect(said({ price: '-5', claimedPayback: '101' })).toEqual([
      [
        'quote/number-out-of-range',
        'error',
        '3:12',
        '-5 for an amount of money',
        'a number with up to 2 decimals, from 0 up to 1000000000000',
      ],
      [
        'quote/number-out-of-range',
        'error',
        '4:21',
        '101 for a payback in years',
        'a number with up to 4 decimals, from 0 up to 100',
      ],
    ]);
  });

  it('with a bare number or an unknown field is not read, and the rest is checked all the same', () => {
    const { value, findings } = readFlyer(text({ claimedSaving: 44160, odd: '1', price: '-5' }));
    expect(value).toBeNull();
    expect(findings.map(({ code, position }) => [code, position?.line])).toEqual([
      ['document/number-not-text', 3],
      ['document/unknown-key', 4],
      ['quote/number-out-of-range', 5],
    ]);
  });

  it('that is no JSON is not read', () => {
    expect(readFlyer('flyer').value).toBeNull();
    expect(readFlyer('flyer').findings).toHaveLength(1);
  });
});
