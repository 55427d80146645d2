import { describe, expect, it } from 'vitest';
import { accountText, type AccountParts } from '../../../../tests/support/demo.ts';
import { readAccount } from './account.ts';

function read(parts: AccountParts) {
  const { value, findings } = readAccount(accountText(parts));
  return { value, findings, codes: findings.map(({ code }) => code) };
}

describe('an account', () => {
  it('has power in watts, credit in watt-hours and a register for each direction', () => {
    const { value, codes } = read({ sanctionedLoad: '4', plantCapacity: '3.3', openingCredit: '35.5' });
    expect(codes).toEqual([]);
    expect(value).toMatchObject({ sanctionedLoad: 4000, plantCapacity: 3300, openingCredit: 35_500 });
    expect(value?.registers.import.id).toBe('import');
    expect(value?.registers.export.id).toBe('export');
    expect(value?.registers.generation?.id).toBe('generation');
  });

  it('can have no generation meter', () => {
    expect(read({ generationMeter: false }).value?.registers.generation).toBeNull();
  });

  it('takes a credit as it is printed, with or without a minus sign', () => {
    expect(read({ openingCredit: '-58' }).value?.openingCredit).toBe(58_000);
    expect(read({ openingCredit: '0' }).value?.openingCredit).toBe(0);
  });

  it.each<[string, AccountParts]>([
    ['a load of 0', { sanctionedLoad: '0' }],
    ['a load below 0', { sanctionedLoad: '-4' }],
    ['a load finer than watts', { sanctionedLoad: '4.0001' }],
    ['a plant of 0', { plantCapacity: '0.000' }],
    ['a load of thirteen figures', { sanctionedLoad: '1234567890123' }],
  ])('cannot be used with %s', (_, parts) => {
    const { value, codes } = read(parts);
    expect(value).toBeNull();
    expect(codes).toContain('account/not-above-zero');
  });

  it('cannot be used with a credit finer than watt-hours', () => {
    const { value, codes } = read({ openingCredit: '35.0001' });
    expect(value).toBeNull();
    expect(codes).toEqual(['account/credit-not-a-number']);
  });

  it('cannot be used with a multiplying factor of 0, on either meter', () => {
    const { value, findings } = read({ multiplyingFactor: '0' });
    expect(value).toBeNull();
    expect(findings.map(({ path }) => path)).toEqual([
      ['meters', 'grid', 'multiplyingFactor'],
      ['meters', 'generation', 'multiplyingFactor'],
    ]);
  });

  it('is asked about above 100 kW, where watts may have been typed', () => {
    expect(read({ sanctionedLoad: '100', multiplyingFactor: '20' }).codes).toEqual([]);
    const { value, findings } = read({
      sanctionedLoad: '3000',
      plantCapacity: '100.001',
      multiplyingFactor: '20',
    });
    expect(value).not.toBeNull();
    expect(findings.map(({ code, path, severity }) => [code, path, severity])).toEqual([
      ['account/load-in-watts', ['sanctionedLoad'], 'question'],
      ['account/load-in-watts', ['plantCapacity'], 'question'],
    ]);
  });

  it.each([
    ['3000', '3'],
    ['3300', '3.3'],
    ['4500', '4.5'],
    ['12000', '12'],
    ['3330', '3.33'],
  ])('is offered %s W as %s kW', (typed, offer) => {
    expect(read({ plantCapacity: typed }).findings.map((finding) => finding.offer)).toEqual([offer]);
  });

  it('is asked for the factor of current transformers above 10 kW', () => {
    expect(read({ sanctionedLoad: '10' }).codes).toEqual([]);
    expect(read({ sanctionedLoad: '10.001' }).codes).toEqual(['account/factor-on-large-load']);
    expect(read({ sanctionedLoad: '10.001', multiplyingFactor: '20' }).codes).toEqual([]);
  });
});

describe('numbers of an account', () => {
  it('are read as people type them, and kept as plain decimals', () => {
    const { value, codes } = read({ sanctionedLoad: '3 kW', plantCapacity: '3,3', openingCredit: '−58' });
    expect(codes).toEqual([]);
    expect(value).toMatchObject({ sanctionedLoad: 3000, plantCapacity: 3300, openingCredit: 58_000 });
    expect(value?.document).toMatchObject({ sanctionedLoad: '3', plantCapacity: '3.3' });
  });

  it('may be blank where a blank has a meaning, which is said', () => {
    const { value, findings } = read({ openingCredit: '', multiplyingFactor: ' ' });
    expect(findings.map(({ code, severity, path }) => [code, severity, path.join('.')])).toEqual([
      ['account/blank', 'note', 'openingCredit'],
      ['account/blank', 'note', 'meters.grid.multiplyingFactor'],
      ['account/blank', 'note', 'meters.generation.multiplyingFactor'],
    ]);
    expect(value).toMatchObject({ openingCredit: 0 });
    expect(value?.registers.import.factor.text).toBe('1');
  });

  it('say what stands in the way, once for each', () => {
    expect(read({ sanctionedLoad: '' }).codes).toEqual(['account/number-missing']);
    expect(read({ sanctionedLoad: '3O' }).codes).toEqual(['reading/letter']);
    expect(read({ plantCapacity: '3,300' }).codes).toEqual(['reading/comma-unclear']);
    expect(read({ plantCapacity: '=3' }).codes).toEqual(['reading/formula']);
    expect(read({ openingCredit: 'none' }).codes).toEqual(['reading/not-a-number']);
  });
});
