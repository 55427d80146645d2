import { describe, expect, it } from 'vitest';
import example from '../../../../../tariffs-examples/disputes/tarumira.json?raw';
import { dayOf } from '../../../../../tests/support/make.ts';
import { disputeVersionOn, readDispute } from './dispute-document.ts';
import type { DisputeDocument } from './dispute-schema.ts';

const EXAMPLE = JSON.parse(example) as DisputeDocument;
const [VERSION] = EXAMPLE.versions;
if (VERSION === undefined) throw new Error('the example has no version');

const codesOf = (versions: readonly unknown[]): readonly string[] =>
  readDispute(JSON.stringify({ ...EXAMPLE, versions })).findings.map(({ code }) => code);

describe('rules for disputes', () => {
  it('are read as they are written', () => {
    expect(readDispute(example)).toEqual({ value: EXAMPLE, findings: [] });
  });

  // Why a net-metered bill is wrong, or right but surprising, section 2.1, SC-2020 cl. 8.2–8.6 (project reference, 2025).
  it('of Tarumira are those of its supply code', () => {
    const { interest, claim, arrears, lateFee, steps } = VERSION;
    const rates = interest?.kind === 'simple' ? interest.rates.map(({ percent }) => percent) : [];
    expect([rates, claim?.months, arrears?.months, lateFee?.percent]).toEqual([['9'], '24', '24', '1']);
    const limits = steps.flatMap((step) => step.limits ?? []);
    expect(limits.map(({ within, unit }) => `${within} ${unit}`)).toEqual([
      '0 days',
      '3 working-days',
      '30 days',
    ]);
  });

  it('cannot be used where anything is wrong with them', () => {
    const { value, findings } = readDispute(
      JSON.stringify({ ...EXAMPLE, versions: [{ ...VERSION, from: '2020-02-30' }] }),
    );
    expect(value).toBeNull();
    expect(findings.map(({ code, position }) => [code, position === undefined])).toEqual([
      ['dispute/no-such-day', false],
    ]);
  });

  it('may have gaps between versions, but no overlap', () => {
    const before = { ...VERSION, through: '2021-03-31' };
    expect(codesOf([before, { ...VERSION, from: '2021-04-01' }])).toEqual([]);
    expect(codesOf([before, { ...VERSION, from: '2022-04-01' }])).toEqual([]);
    expect(codesOf([before, { ...VERSION, from: '2021-03-31' }])).toEqual(['dispute/not-in-order']);
    expect(codesOf([VERSION, { ...VERSION, from: '2021-03-31' }])).toEqual(['dispute/not-in-order']);
  });

  it.each([
    ['2020-04-01', true],
    ['2020-03-31', false],
    ['2024-03-31', true],
    ['2024-04-01', false],
  ])('are those in force on a day: %s', (on, isKnown) => {
    const document = { ...EXAMPLE, versions: [{ ...VERSION, through: '2024-03-31' }] };
    const { value, findings } = disputeVersionOn(document, dayOf(on));
    expect([value !== null, findings.length]).toEqual([isKnown, isKnown ? 0 : 1]);
  });
});
