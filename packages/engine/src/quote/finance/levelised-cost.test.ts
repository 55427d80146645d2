import { expect, it } from 'vitest';
import {
  benefitCostRatio,
  levelisedCost,
  savingsToInvestment,
  simpleLevelisedCost,
} from './levelised-cost.ts';

it('discounts costs and units alike', () => {
  // (80 + 25 ÷ 1.25) ÷ (50 ÷ 1.25) = 100 ÷ 40.
  expect(levelisedCost(0.25, { costs: [80, 25], energy: [0, 50] })).toBe(2.5);
  // Not discounted: 105 ÷ 50.
  expect(levelisedCost(0, { costs: [80, 25], energy: [0, 50] })).toBe(2.1);
  expect(levelisedCost(0.25, { costs: [80], energy: [0, 0] })).toBeNull();
  expect(() => levelisedCost(-1, { costs: [1], energy: [1] })).toThrow(RangeError);
});

it('spreads the cost of a kilowatt over what it makes', () => {
  const plant = { costPerKilowatt: 8760, years: 4, capacityFactor: 0.25, upkeepPerUnit: 0.5 };
  // 8760 ÷ 4 ÷ (8760 ÷ 4) + 0.5.
  expect(simpleLevelisedCost(0, plant)).toBe(1.5);
  expect(simpleLevelisedCost(0, { ...plant, capacityFactor: 0 })).toBeNull();
  expect(() => simpleLevelisedCost(0, { ...plant, years: 0 })).toThrow(RangeError);
});

it('is the levelised cost of a plant that makes the same every year', () => {
  const simple = simpleLevelisedCost(0.25, {
    costPerKilowatt: 876,
    years: 3,
    capacityFactor: 0.1,
    upkeepPerUnit: 1,
  });
  const years = levelisedCost(0.25, { costs: [876, 876, 876, 876], energy: [0, 876, 876, 876] });
  expect(simple?.toFixed(12)).toBe(years?.toFixed(12));
});

it('compares gains with costs', () => {
  expect(benefitCostRatio(0.25, { benefits: [0, 150], costs: [60] })).toBe(2);
  expect(benefitCostRatio(0.25, { benefits: [0, 150], costs: [0] })).toBeNull();
});

it('takes upkeep from the savings and adds replacements to the outlay', () => {
  // 75 ÷ 1.25 = 60; 60 − 25 ÷ 1.25 = 40.
  expect(savingsToInvestment(0.25, { savings: [0, 75], investment: [60, -25] })).toBe(1.5);
  // 100 a year less 50 for upkeep: 40 over 20, where benefits over costs are 80 over 60.
  expect(savingsToInvestment(0.25, { savings: [0, 100 - 50], investment: [20] })).toBe(2);
  expect(benefitCostRatio(0.25, { benefits: [0, 100], costs: [20, 50] })?.toFixed(9)).toBe('1.333333333');
  expect(savingsToInvestment(0.25, { savings: [1], investment: [] })).toBeNull();
});
