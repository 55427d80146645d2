import { wholeToDecimal, type Quotient } from '../../quantity/index.ts';
import { FIGURE } from '../figure-names.ts';
import type { Figures } from '../figures.ts';
import { decimalPart, numberPart, said, told, type FindSurprise, type SurprisePart } from './surprise.ts';

const NAMES = { active: FIGURE.units('import'), reactive: FIGURE.units('reactive') };

/** kWh and kvarh in the same whole parts. */
interface Powers {
  readonly active: bigint;
  readonly reactive: bigint;
  readonly figures: { readonly active: Quotient; readonly reactive: Quotient };
}

function powersOf(figures: Figures): Powers | null {
  const [active, reactive] = [figures.get(NAMES.active), figures.get(NAMES.reactive)];
  if (active === undefined || reactive === undefined) return null;
  const scale = (one: Quotient, other: Quotient): bigint => BigInt(one.numerator) * BigInt(other.denominator);
  return {
    active: scale(active, reactive),
    reactive: scale(reactive, active),
    figures: { active, reactive },
  };
}

/** kWh over the root of kWh² + kvarh², in hundredths, half-up: decided on the squares. */
function factorText({ active, reactive }: Powers): string {
  const square = active * active + reactive * reactive;
  let hundredths = 0n;
  // Half a hundredth below a factor is the least that rounds up to it.
  while ((2n * hundredths + 1n) ** 2n * square <= (200n * active) ** 2n) hundredths += 1n;
  return wholeToDecimal(hundredths, 2);
}

/** S10: the power factor falls because kWh from the grid shrink and kvarh stay. Told where the bill prints kvarh. */
export const powerFactor: FindSurprise = ({ printed, printedBefore }) => {
  if (printedBefore === null) return null;
  const [now, then] = [powersOf(printed.figures), powersOf(printedBefore.figures)];
  if (now === null || then === null || now.active <= 0n || then.active <= 0n) return null;
  const fewer =
    BigInt(now.figures.active.numerator) * BigInt(then.figures.active.denominator) <
    BigInt(then.figures.active.numerator) * BigInt(now.figures.active.denominator);
  // A factor is lower where kvarh for each kWh are higher.
  if (!fewer || now.reactive * then.active <= then.reactive * now.active) return null;
  const words = (powers: Powers): readonly SurprisePart[] =>
    said`${decimalPart(factorText(powers))} of ${numberPart(powers.figures.active)} kWh and ${numberPart(powers.figures.reactive)} kvarh`;
  return {
    id: 'power-factor',
    ...told(
      said`power factor ${words(now)}, after ${words(then)}: less is taken from the grid, and the kvarh stay`,
    ),
    figures: { active: now.figures.active, reactive: now.figures.reactive },
    clause: null,
  };
};
