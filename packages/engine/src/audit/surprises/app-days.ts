import { addDays, type Period } from '../../quantity/index.ts';
import { dayPart, numberPart, said, told, type FindSurprise, type SurprisePart } from './surprise.ts';

const daysOf = ({ from, to }: Period): readonly SurprisePart[] =>
  said`${dayPart(from)} to ${dayPart(addDays(to, -1))}`;

/** S2: the days of an app are not those of the bill. Told where the units of an app are given. */
export const appDays: FindSurprise = ({ facts: { period }, right, app }) => {
  if (app === null || (app.period.from === period.from && app.period.to === period.to)) return null;
  const metered = right.get('units.generation');
  const beside = metered === undefined ? '' : said`, and the meter ${numberPart(metered)}`;
  return {
    id: 'app-days',
    ...told(
      said`the app counts ${numberPart(app.generation)} from ${daysOf(app.period)}${beside} from ${daysOf(period)}: not the same days, so that neither says anything of the other`,
    ),
    figures: { app: app.generation, ...(metered === undefined ? {} : { metered }) },
    clause: null,
  };
};
