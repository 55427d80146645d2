import { FIGURE } from '../figure-names.ts';
import { dayPart, isPositive, numberPart, said, told, type FindSurprise } from './surprise.ts';

/** S9: what was given before the plant was connected for net metering earns nothing. */
export const beforeConnection: FindSurprise = ({ facts: { period }, right, connected }) => {
  if (connected === null || connected <= period.from || connected > period.to) return null;
  const exported = right.get(FIGURE.units('export'));
  const generation = right.get(FIGURE.units('generation'));
  if (exported === undefined || ![exported, generation].some((one) => one !== undefined && isPositive(one)))
    return null;
  const days = connected - period.from;
  const count = { numerator: days, denominator: 1 };
  return {
    id: 'before-connection',
    ...told(
      said`connected on ${dayPart(connected)}: what was given in the ${numberPart(count)} ${days === 1 ? 'day' : 'days'} before that earns nothing`,
    ),
    figures: { exported, days: count },
    clause: null,
  };
};
