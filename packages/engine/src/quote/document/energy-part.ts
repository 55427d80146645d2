import * as z from 'zod/mini';
import { decimalText } from '../../tariff/index.ts';
import { byMonth, plainText } from './fields.ts';

/** What the household uses in twelve months. */
export const useSchema = z.strictObject({
  months: byMonth('kWh used, off the bills'),
  fill: z.optional(
    z
      .enum(['mean', 'neighbours'])
      .check(
        z.describe(
          'How missing months are filled, and marked: the mean of those known, or of the nearest one before and after',
        ),
      ),
  ),
  source: plainText('Where the units are from'),
  growth: z.optional(decimalText('How much the use grows each year, in percent')),
});

/** What the plant makes in its first year. */
export const generationSchema = z.strictObject({
  months: z.optional(byMonth('kWh the plant makes')),
  year: z.optional(decimalText('kWh of the first year, shared out evenly by days')),
  irradiation: z.optional(byMonth('Irradiation in the plane of the modules')),
  unit: z.optional(z.enum(['kWh/m2/day', 'kWh/m2/month'])),
  performanceRatio: z.optional(decimalText('Performance ratio (IEC 61724-1), such as "0.78"')),
  source: plainText('Where the units or the irradiation are from, and by which method'),
  usualYield: z.optional(
    decimalText('kWh per kWp that plants of the region make in a year: more than that is a warning'),
  ),
});

/** How much of the generation the house uses as it is made. */
export const selfUseSchema = z.strictObject({
  share: z.optional(decimalText('Percent of the generation of each month')),
  basis: z.optional(plainText('Why so much')),
});

/** How the plant wears. */
export const degradationSchema = z.strictObject({
  first: decimalText('Percent that generation is lower in the second year than in the first'),
  later: decimalText('The same for each year after'),
  source: z.optional(plainText('Where the figures are from')),
});

/** The plant that is offered. */
export const offeredPlantSchema = z.strictObject({
  kWp: decimalText('Capacity of all modules in kWp'),
  kW: z.optional(decimalText('Power of the inverters in kW')),
  modules: z.optional(plainText('The modules as the seller describes them')),
  inverter: z.optional(plainText('The inverter as the seller describes it')),
  layout: z.optional(plainText('Where the modules lie, and their direction and tilt')),
  shading: z.optional(plainText('What shade there is, and what was taken off for it')),
});

/** A battery in the house, charged from surplus and used at home. */
export const batterySchema = z.strictObject({
  capacity: decimalText('kWh that can be taken out and put in'),
  power: decimalText('kW that it charges and discharges with at most'),
  efficiency: decimalText('Percent of what goes in that comes out'),
  cost: decimalText('Price with everything'),
  replacement: z.optional(
    z.strictObject({ year: decimalText('Year'), amount: decimalText('Price of the next battery') }),
  ),
});
