import { exactText, periodDays } from '../../quantity/index.ts';
import { atBill, unitsOf, unitsPath, type ConsistencyCheck } from './check.ts';
import { compare, textOf, times, wholeNumber } from './exact.ts';

/** kWh for each kWp and day of any plant in any season. Project reference "causes", 2.7, check 8 (2026). */
const LEAST = { whole: 3n, places: 1 };
const MOST = { whole: 75n, places: 1 };

/** (8) What the plant made in a day for each kWp is what plants make. */
export const YIELD_OF_PLANT: ConsistencyCheck = {
  id: 'yield-of-plant',
  holds: 'a plant makes 0.3 to 7.5 kWh a day for each kWp',
  find: (terms) => {
    const { bill, account } = terms;
    const made = unitsOf(terms, 'generation');
    if (made === undefined || account === null) return [];
    const days = periodDays(bill.period);
    // Watts, so that the bounds are of kWh times 1000.
    const plantDays = times(wholeNumber(account.plantCapacity), wholeNumber(days));
    const thousandfold = times(made, wholeNumber(1000));
    const isPlausible =
      compare(thousandfold, times(plantDays, LEAST)) >= 0 &&
      compare(thousandfold, times(plantDays, MOST)) <= 0;
    if (isPlausible) return [];
    const values = {
      generation: textOf(made),
      days: days.toString(),
      capacity: exactText(account.plantCapacity, 1000),
    };
    return [atBill(bill, unitsPath(bill, 'generation'), 'check/yield-implausible', values)];
  },
};
