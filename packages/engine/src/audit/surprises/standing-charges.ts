import { addQuotients } from '../../quantity/index.ts';
import type { Figure } from '../../quantity/index.ts';
import { FIGURE } from '../figure-names.ts';
import {
  figuresAt,
  isPositive,
  moneyPart,
  said,
  told,
  type FindSurprise,
  type SurpriseTerms,
} from './surprise.ts';

const STANDING: readonly string[] = ['fixed', 'per-kilowatt', 'minimum'];
const NAMES = { billed: FIGURE.units('billed'), payable: 'payable' };

/** Lines of the right bill that no unit is behind. */
function standingLines({ facts, month }: SurpriseTerms): readonly Figure[] {
  const ids = facts.tariff.versions.flatMap(({ charges }) =>
    charges.filter(({ kind }) => STANDING.includes(kind)).map(({ id }) => id),
  );
  return month.bill.lines
    .filter(({ figure, counts }) => counts && ids.includes(figure.id) && isPositive(figure))
    .map(({ figure }) => figure);
}

/**
 * S3: the fixed charge, or the minimum, stays where nothing is billed. Told of the first of such bills, where it prints
 * the line.
 */
export const standingCharges: FindSurprise = (terms) => {
  const { right, before, printed, facts } = terms;
  const totals = figuresAt(right, NAMES);
  if (totals === null || isPositive(totals.billed) || !isPositive(totals.payable)) return null;
  const billedBefore = before?.figures.get(NAMES.billed);
  if (billedBefore !== undefined && !isPositive(billedBefore)) return null;
  const lines = standingLines(terms).filter(({ id }) => printed.figures.has(FIGURE.line(id)));
  if (lines.length === 0) return null;
  const standing = addQuotients(lines);
  const named = lines.flatMap((line, at) => said`${at === 0 ? '' : ', '}${line.label} ${moneyPart(line)}`);
  const stays = lines.length === 1 ? 'stays' : 'stay';
  return {
    id: 'standing-charges',
    ...told(
      said`${moneyPart(totals.payable, facts.tariff.currency)} with no unit billed: ${named} ${stays} whatever is billed`,
    ),
    figures: { payable: totals.payable, standing },
    clause: [...new Set(lines.map(({ clause }) => clause))].join(', '),
  };
};
