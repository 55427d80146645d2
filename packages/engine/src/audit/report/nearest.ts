import type { TariffDocument } from '../../tariff/index.ts';
import { figureLabel } from '../figure-label.ts';
import { inRow } from '../in-row.ts';
import type { Attempt } from '../search.ts';

/** What comes near to a bill that nothing explains. */
export interface NearestCauses {
  /** Names of the causes. */
  readonly causes: readonly string[];
  /** How many printed figures they make. */
  readonly reproduced: number;
  /** Printed figures that they do not make, see {@link FIGURE}. */
  readonly missed: readonly string[];
  /** What those are called. */
  readonly missedLabels: readonly string[];
}

type Near = Pick<Attempt, 'reproduced' | 'missed'> & {
  readonly steps: readonly { readonly cause: { readonly name: string } }[];
};

/**
 * What comes nearest to a bill that nothing explains, each once: variants of a mistake that make and miss the same
 * figures say nothing new, and what makes no printed figure is not near.
 */
export function nearestCauses(nearest: readonly Near[], tariff: TariffDocument): readonly NearestCauses[] {
  const near = nearest
    .filter(({ reproduced }) => reproduced > 0)
    .map(({ steps, reproduced, missed }) => ({
      causes: steps.map(({ cause }) => cause.name),
      reproduced,
      missed,
      missedLabels: missed.map((name) => figureLabel(name, tariff)),
    }));
  return [...new Map(near.map((one) => [nearestWords(one), one])).values()];
}

/**
 * @example
 * nearestWords({ causes: ['Factor ignored'], reproduced: 1, missed: ['payable'], missedLabels: ['To be paid'] }) //=> "Factor ignored: 1 printed figure, but not To be paid"
 */
export function nearestWords({ causes, reproduced, missedLabels }: NearestCauses): string {
  const count = reproduced === 1 ? '1 printed figure' : `${String(reproduced)} printed figures`;
  return `${inRow(causes)}: ${count}, but not ${missedLabels.join(', ')}`;
}
