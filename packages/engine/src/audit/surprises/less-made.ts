import { subtractQuotients } from '../../quantity/index.ts';
import { textOf, type FindSurprise } from './surprise.ts';
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
  if (!isLess) return null;
  const less = subtractQuotients(then.generation, now.generation);
  const steps = stepsOf(terms, apart);
  const { currency } = facts.tariff;
  const effect =
    steps === null ? '' : `, which takes ${currency} ${textOf(steps.withUse)} to ${textOf(steps.now)}`;
  return {
    id: 'less-made',
    what: `${textOf(now.generation)} made, and ${textOf(then.generation)} in the same month a year before: ${textOf(less)} less${effect}`,
    figures: {
      made: now.generation,
      madeBefore: then.generation,
      ...(steps === null ? {} : { effect: subtractQuotients(steps.now, steps.withUse) }),
    },
    clause: null,
  };
};
