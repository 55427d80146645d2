import { subtractQuotients } from '../../quantity/index.ts';
import { FIGURE } from '../figure-names.ts';
import { figuresAt, isAbove, isPositive, numberPart, said, told, type FindSurprise } from './surprise.ts';

const NAMES = { generation: FIGURE.units('generation'), exported: FIGURE.units('export') };

/**
 * S1: what was used at home is taken for missing export. Told where more of it stayed at home than went out, and both
 * are printed.
 */
export const ownUse: FindSurprise = ({ right, printed }) => {
  const isPrinted = Object.values(NAMES).every((name) => printed.figures.has(name));
  const units = figuresAt(right, NAMES);
  if (units === null || !isPrinted || isAbove(units.exported, units.generation)) return null;
  const used = subtractQuotients(units.generation, units.exported);
  if (!isPositive(used) || !isAbove(used, units.exported)) return null;
  return {
    id: 'own-use',
    ...told(
      said`${numberPart(units.generation)} made, ${numberPart(units.exported)} exported, ${numberPart(used)} used at home: nothing lost`,
    ),
    figures: { ...units, used },
    clause: null,
  };
};
