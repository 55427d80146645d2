import { subtractQuotients } from '../../quantity/index.ts';
import { isAbove, moneyPart, numberPart, said, told, type FindSurprise } from './surprise.ts';
import { dearerThan, isAboveByDay, stepsOf } from './year-before.ts';

/** S4: the home uses more than in the same month a year before, and that is why more is to be paid. */
export const moreUsed: FindSurprise = (terms) => {
  const apart = dearerThan(terms);
  if (apart === null) return null;
  const { now, then, earlier } = apart;
  const isMore = isAboveByDay(
    { value: now.use, facts: terms.facts },
    { value: then.use, facts: earlier.facts },
  );
  // Of months of other lengths, more by the day can be less in all.
  if (!isMore || !isAbove(now.use, then.use)) return null;
  const grown = subtractQuotients(now.use, then.use);
  const steps = stepsOf(terms, apart);
  const { currency } = terms.facts.tariff;
  const effect =
    steps === null
      ? ''
      : said`, which takes ${moneyPart(steps.then, currency)} to ${moneyPart(steps.withUse)}`;
  return {
    id: 'more-used',
    ...told(
      said`${numberPart(now.use)} used, and ${numberPart(then.use)} in the same month a year before: ${numberPart(grown)} more${effect}`,
    ),
    figures: {
      used: now.use,
      usedBefore: then.use,
      ...(steps === null ? {} : { effect: subtractQuotients(steps.withUse, steps.then) }),
    },
    clause: null,
  };
};
