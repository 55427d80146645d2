import { subtractQuotients } from '../../quantity/index.ts';
import { isAbove, moneyPart, numberPart, said, told, type FindSurprise } from './surprise.ts';
import { dearerThan, isAboveByDay, stepsOf } from './year-before.ts';

/** S5: the plant made less than in the same month a year before, and more is to be paid. */
export const lessMade: FindSurprise = (terms) => {
  const apart = dearerThan(terms);
  const { facts } = terms;
  if (apart === null || apart.earlier.facts.powers['plant-capacity'] !== facts.powers['plant-capacity'])
    return null;
  const { now, then, earlier } = apart;
  const isLess = isAboveByDay(
    { value: then.generation, facts: earlier.facts },
    { value: now.generation, facts },
  );
  // Of months of other lengths, less by the day can be more in all.
  if (!isLess || !isAbove(then.generation, now.generation)) return null;
  const less = subtractQuotients(then.generation, now.generation);
  const steps = stepsOf(terms, apart);
  const { currency } = facts.tariff;
  const effect =
    steps === null
      ? ''
      : said`, which takes ${moneyPart(steps.withUse, currency)} to ${moneyPart(steps.now)}`;
  return {
    id: 'less-made',
    ...told(
      said`${numberPart(now.generation)} made, and ${numberPart(then.generation)} in the same month a year before: ${numberPart(less)} less${effect}`,
    ),
    figures: {
      made: now.generation,
      madeBefore: then.generation,
      ...(steps === null ? {} : { effect: subtractQuotients(steps.now, steps.withUse) }),
    },
    clause: null,
  };
};
