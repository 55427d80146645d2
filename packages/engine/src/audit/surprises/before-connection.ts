import { dayText } from '../../quantity/index.ts';
import { FIGURE } from '../figure-names.ts';
import { isPositive, type FindSurprise } from './surprise.ts';

/** S9: what was given before the plant was connected for net metering earns nothing. */
export const beforeConnection: FindSurprise = ({ facts: { period }, right, connected }) => {
  if (connected === null || connected <= period.from || connected > period.to) return null;
  const exported = right.get(FIGURE.units('export'));
  const generation = right.get(FIGURE.units('generation'));
  if (exported === undefined || ![exported, generation].some((one) => one !== undefined && isPositive(one)))
    return null;
  const days = connected - period.from;
  return {
    id: 'before-connection',
    what: `connected on ${dayText(connected)}: what was given in the ${days.toString()} days before that earns nothing`,
    figures: { exported, days: { numerator: days, denominator: 1 } },
    clause: null,
  };
};
