import { wordFor } from './counted.ts';

/** What the figures hang on, in one language: on the screen's strip and on paper. */
export interface AssumptionWords {
  readonly tariff: string;
  readonly rise: string;
  readonly ownUse: string;
  readonly wear: string;
  readonly upkeep: string;
  readonly discount: string;
  readonly life: string;
  readonly use: string;
  readonly subsidy: string;
  readonly notAtAll: string;
  readonly unknownUse: string;
  readonly counted: string;
  readonly none: string;
  /** What stands between one and the next of several. */
  readonly apart: string;
  readonly surplus: string;
  readonly byIntervals: string;
  readonly growing: (percent: string) => string;
  /** @param charges  by the names that the tariff gives them */
  readonly rises: (percent: string, charges: string) => string;
  readonly wears: (first: string, later: string) => string;
  readonly maintenance: (money: string, growth: string) => string;
  readonly replaced: (item: string, year: string, money: string) => string;
  readonly years: (years: string) => string;
  /** @param growth  '' for none */
  readonly used: (growth: string) => string;
}

/** The same in English. */
export const ENGLISH_ASSUMPTIONS: AssumptionWords = {
  tariff: 'Tariff',
  rise: 'Rates rise',
  ownUse: 'Own use',
  wear: 'Wear',
  upkeep: 'Upkeep',
  discount: 'Discount rate',
  life: 'Life',
  use: 'Use',
  subsidy: 'Subsidy',
  notAtAll: 'not at all',
  unknownUse: 'not known: nothing',
  counted: 'counted as granted',
  none: 'none',
  apart: '; ',
  surplus: 'Surplus is paid',
  byIntervals: 'by intervals',
  growing: (percent) => `+${percent} % a year`,
  rises: (percent, charges) => `${percent} % a year (${charges.toLowerCase()})`,
  wears: (first, later) =>
    first === later ? `${first} % a year` : `${first} % in year 2, then ${later} % a year`,
  maintenance: (money, growth) => `${money} a year, +${growth} % each year`,
  replaced: (item, year, money) => `${item.toLowerCase()} in year ${year} for ${money}`,
  years: (years) => `${years} ${wordFor('en', Number(years), ['year', 'years'])}`,
  used: (growth) => `as in the twelve months given${growth === '' ? '' : `, +${growth} % a year`}`,
};
