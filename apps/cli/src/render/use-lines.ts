import { quotientText, useBounds, type Account, type BookMonth, type EnergyPeriod } from '@unitbook/engine';
import type { PageNotation } from './notation.ts';
import { PAGE_WIDTH, wrapIndented } from './text.ts';

/** Between what own use and total use lie where they cannot be known. */
function boundsText(energy: EnergyPeriod, account: Account, notation: PageNotation): string {
  const bounds = useBounds(energy, account);
  if (bounds === null) return '';
  const { selfConsumption: own, totalUse: all } = bounds;
  const between = ({ least, most }: typeof own): string =>
    `from ${notation.units(least)} to ${notation.units(most)} units`;
  return (
    `What the house used is not known: ${between(own)} straight from the roof, ${between(all)} in all. ` +
    'A plant makes at most 7.5 units per kWp and day (common practice).'
  );
}

const BATTERY = 'There is a battery: own use holds what the battery loses.';

/** What the house used and where it came from, or between what it lies. */
export function useLines(month: BookMonth, account: Account, notation: PageNotation): readonly string[] {
  const known = useText(month, notation);
  const text = known === '' ? boundsText(month.energy, account, notation) : known;
  const battery = account.hasBattery ? ` ${BATTERY}` : '';
  return text === '' ? [] : wrapIndented(`${text}${battery}`, '  ', PAGE_WIDTH);
}

function useText(month: BookMonth, notation: PageNotation): string {
  const { generation, selfConsumption, totalUse } = month.energy;
  const { specificYield } = month.ratios;
  if (generation === null || selfConsumption === null || totalUse === null) return '';
  const perPeak =
    specificYield === null
      ? ''
      : `, ${notation.number(quotientText(specificYield.numerator, specificYield.denominator, 1))} per kWp and day`;
  return (
    `The house used ${notation.units(totalUse)} units: ${notation.units(selfConsumption)} straight from the roof, ` +
    `${notation.units(month.energy.import)} from the grid. ` +
    `The plant made ${notation.units(generation)}${perPeak}.`
  );
}
