import type { Cause } from '../cause.ts';
import { ANOTHER_METER } from './another-meter.ts';
import { ARREARS_MIXED_IN } from './arrears-mixed-in.ts';
import { BILLED_AS_NET_BILLING } from './billed-as-net-billing.ts';
import { CHARGE_NOT_IN_TARIFF } from './charge-not-in-tariff.ts';
import { CREDIT_LAPSED_EARLY } from './credit-lapsed-early.ts';
import { CREDIT_NOT_BROUGHT_FORWARD } from './credit-not-brought-forward.ts';
import { CREDIT_USED_TWICE } from './credit-used-twice.ts';
import { DAYS_COUNTED_OTHERWISE } from './days-counted-otherwise.ts';
import { DIGIT_ERROR } from './digit-error.ts';
import { ESTIMATED_READING } from './estimated-reading.ts';
import { EXPORT_ADDED_TO_IMPORT } from './export-added-to-import.ts';
import { EXPORT_COUNTED_LATE } from './export-counted-late.ts';
import { EXPORT_CREDITED_TWICE } from './export-credited-twice.ts';
import { EXPORT_NOT_READ } from './export-not-read.ts';
import { FACTOR_IGNORED } from './factor-ignored.ts';
import { FACTOR_ON_ONE_REGISTER } from './factor-on-one-register.ts';
import { FACTOR_SQUARED } from './factor-squared.ts';
import { FIXED_BY_OTHER_UNITS } from './fixed-by-other-units.ts';
import { FIXED_ON_PLANT_CAPACITY } from './fixed-on-plant-capacity.ts';
import { FROZEN_REGISTER } from './frozen-register.ts';
import { GENERATION_BILLED_AS_IMPORT } from './generation-billed-as-import.ts';
import { GENERATION_METER_WRONG } from './generation-meter-wrong.ts';
import { KILOVOLT_AMPERE_HOURS_MIXED } from './kilovolt-ampere-hours-mixed.ts';
import { METER_REPLACED } from './meter-replaced.ts';
import { MINIMUM_ON_TOP } from './minimum-on-top.ts';
import { MONTHS_BILLED_AS_ONE } from './months-billed-as-one.ts';
import { NET_REGISTER_AS_IMPORT } from './net-register-as-import.ts';
import { NETTED_BY_BLOCK } from './netted-by-block.ts';
import { NETWORK_ON_ASSUMED_FACTOR } from './network-on-assumed-factor.ts';
import { PHASE_WISE_REGISTERS } from './phase-wise-registers.ts';
import { RATES_OUT_OF_DATE } from './rates-out-of-date.ts';
import { REGISTERS_SWAPPED } from './registers-swapped.ts';
import { ROLLOVER_AS_DIFFERENCE } from './rollover-as-difference.ts';
import { ROUNDED_OTHERWISE } from './rounded-otherwise.ts';
import { SLAB_LIMITS_WRONG } from './slab-limits-wrong.ts';
import { SLABS_NOT_SCALED } from './slabs-not-scaled.ts';
import { SLABS_ON_IMPORT } from './slabs-on-import.ts';
import { STALE_OPENING } from './stale-opening.ts';
import { STEP_BACK_AS_ROLLOVER } from './step-back-as-rollover.ts';
import { SUBSIDY_DROPPED } from './subsidy-dropped.ts';
import { SURCHARGE_ON_IMPORT } from './surcharge-on-import.ts';
import { SURPLUS_NOT_AS_DUE } from './surplus-not-as-due.ts';
import { TAX_BASE_WRONG } from './tax-base-wrong.ts';
import { TOTAL_AND_RATES_ADDED } from './total-and-rates-added.ts';
import { WRONG_CATEGORY } from './wrong-category.ts';

/** Every mistake that a printed bill is tried with, in the order of the stages. */
export const CAUSES: readonly Cause[] = [
  EXPORT_NOT_READ,
  REGISTERS_SWAPPED,
  FACTOR_IGNORED,
  FACTOR_SQUARED,
  FACTOR_ON_ONE_REGISTER,
  STALE_OPENING,
  ESTIMATED_READING,
  DIGIT_ERROR,
  ROLLOVER_AS_DIFFERENCE,
  STEP_BACK_AS_ROLLOVER,
  METER_REPLACED,
  GENERATION_BILLED_AS_IMPORT,
  EXPORT_ADDED_TO_IMPORT,
  PHASE_WISE_REGISTERS,
  GENERATION_METER_WRONG,
  ANOTHER_METER,
  NET_REGISTER_AS_IMPORT,
  TOTAL_AND_RATES_ADDED,
  FROZEN_REGISTER,
  EXPORT_COUNTED_LATE,
  NETTED_BY_BLOCK,
  BILLED_AS_NET_BILLING,
  KILOVOLT_AMPERE_HOURS_MIXED,
  EXPORT_CREDITED_TWICE,
  CREDIT_NOT_BROUGHT_FORWARD,
  CREDIT_LAPSED_EARLY,
  CREDIT_USED_TWICE,
  SURPLUS_NOT_AS_DUE,
  WRONG_CATEGORY,
  RATES_OUT_OF_DATE,
  SLABS_NOT_SCALED,
  MONTHS_BILLED_AS_ONE,
  SLAB_LIMITS_WRONG,
  SLABS_ON_IMPORT,
  FIXED_ON_PLANT_CAPACITY,
  FIXED_BY_OTHER_UNITS,
  MINIMUM_ON_TOP,
  TAX_BASE_WRONG,
  SURCHARGE_ON_IMPORT,
  NETWORK_ON_ASSUMED_FACTOR,
  SUBSIDY_DROPPED,
  CHARGE_NOT_IN_TARIFF,
  ARREARS_MIXED_IN,
  DAYS_COUNTED_OTHERWISE,
  ROUNDED_OTHERWISE,
];
