import { describe, expect, it } from 'vitest';
import { makeLifeUnits } from '../life-columns.ts';
import { selfUsed, ShareUse } from './share-use.ts';

const of = (numerator: number) => ({ share: { numerator, denominator: 100 }, step: 1000 });

describe('a share of own use', () => {
  it('is rounded half-up to whole units', () => {
    // 38 % of 510 are 193.8, of 625 237.5, of 624 237.12.
    expect([510_000, 625_000, 624_000].map((made) => selfUsed(made, 900_000, of(38)))).toEqual([
      194_000, 238_000, 237_000,
    ]);
  });

  it('is no more than was used, and no more than was made', () => {
    expect(selfUsed(500_000, 100_000, of(38))).toBe(100_000);
    expect(selfUsed(500_000, 900_000, of(100))).toBe(500_000);
    expect([selfUsed(0, 900_000, of(38)), selfUsed(500_000, 0, of(38))]).toEqual([0, 0]);
  });

  it('fills in what is taken and given, and is the same for draws', () => {
    const rule = new ShareUse({ numerator: 38, denominator: 100 }, 1000);
    const units = makeLifeUnits(1);
    units.use[0] = 520_000;
    units.generation[0] = 510_000;
    rule.forDraws().take(units);
    expect([...units.withPlant]).toEqual([326_000, 316_000, 510_000, 0]);
    expect([...units.withoutPlant]).toEqual([520_000, 0, 0, 0]);
    expect(rule.kept(null, 510_000, 520_000)).toBe(194_000);
  });
});
