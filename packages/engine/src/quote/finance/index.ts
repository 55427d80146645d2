export { datedPresentValue, presentValue, spreadsheetPresentValue, type DatedFlow } from './present-value.ts';
export { capitalRecoveryFactor, singlePresentValueFactor, uniformPresentValueFactor } from './annuity.ts';
export { compoundedRate, effectiveRate, nominalRate, periodRate, realRate } from './rate-conversions.ts';
export {
  interestOf,
  interestPart,
  levelPayment,
  principalOf,
  principalPart,
  type LevelPayments,
  type PaymentSpan,
} from './level-payments.ts';
export { countOfRates, datedInternalRates, internalRates, type InternalRates } from './internal-rates.ts';
export { modifiedInternalRate, type MoneyRates } from './modified-rate.ts';
export { discountedPayback, simplePayback, type Crossing, type Payback } from './payback.ts';
export { loanSchedule, LONGEST_LOAN, type LoanLine, type LoanSchedule, type LoanTerms } from './loan.ts';
export {
  benefitCostRatio,
  levelisedCost,
  savingsToInvestment,
  simpleLevelisedCost,
  type GainsAndCosts,
  type LevelPlant,
  type Outlay,
  type PlantYears,
} from './levelised-cost.ts';
export { normalBelow, normalQuantile } from './normal-distribution.ts';
export {
  chanceOfShortfall,
  combinedSigma,
  EXCEEDANCE_CHANCES,
  exceedanceFactor,
  exceededYield,
  type UncertainYield,
} from './exceedance.ts';
export { sortedQuantile } from './sorted-quantile.ts';
export { lifetimeEnergy, powerLeft, yearlyEnergy, type Degradation } from './degradation.ts';
export { DEGRADATION_STUDIES, type DegradationStudy } from './degradation-studies.ts';
