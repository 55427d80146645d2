import { exactText, subtractQuotients, type Quotient } from '../../quantity/index.ts';
import type { AccuracyClass } from '../../readings/index.ts';
import { meterBand, meterBandText } from '../../energy/index.ts';
import { FIGURE } from '../figure-names.ts';
import { decimalPart, isAbove, isPositive, numberPart, said, told, type FindSurprise } from './surprise.ts';

/** The class of most meters in homes, where the plate is not known. Common practice. */
const USUAL_CLASS: AccuracyClass = '1';

/** Whole watt-hours; null where a value is finer. */
function wattHours(value: Quotient): number | null {
  const text = exactText(BigInt(value.numerator) * 1000n, value.denominator);
  return /^-?\d+$/.test(text) ? Number.parseInt(text, 10) : null;
}

const sizeOf = ({ numerator, denominator }: Quotient): Quotient => ({
  numerator: numerator < 0 ? -numerator : numerator,
  denominator,
});

/** S8: inverter and meter differ by no more than their classes allow. Much is counted at a low current. */
export const twoDevices: FindSurprise = ({ facts: { period, registers }, right, app }) => {
  const metered = right.get(FIGURE.units('generation'));
  if (app === null || metered === undefined) return null;
  if (app.period.from !== period.from || app.period.to !== period.to) return null;
  const [own, other] = [wattHours(metered), wattHours(app.generation)];
  if (own === null || other === null || own === other) return null;
  const ownClass = registers['generation']?.register.accuracyClass ?? USUAL_CLASS;
  const parts = [
    { wattHours: own, classText: ownClass },
    { wattHours: -other, classText: app.accuracyClass ?? USUAL_CLASS },
  ];
  const band = meterBand(parts, 'low');
  const difference = subtractQuotients(metered, app.generation);
  const wattHoursApart = sizeOf({ numerator: own - other, denominator: 1 });
  if (band === null || !isPositive(band.worst) || isAbove(wattHoursApart, band.worst)) return null;
  return {
    id: 'two-devices',
    ...told(
      said`${numberPart(app.generation)} on the inverter, ${numberPart(metered)} on the meter: by their classes they may be ${decimalPart(meterBandText(band).worst)} apart`,
    ),
    figures: { app: app.generation, metered, difference },
    clause: null,
  };
};
