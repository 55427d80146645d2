import { isSameQuotient } from '../../quantity/index.ts';
import type { Cause } from '../cause.ts';
import { netsUnits } from '../charge-basis.ts';
import { FIGURE } from '../figure-names.ts';
import { thousandths, withShown, withUnits } from '../facts.ts';

/**
 * The same units given count twice: by the export register, and by an import register that is taken to have run back
 * or by a second meter.
 */
export const EXPORT_CREDITED_TWICE: Cause = {
  id: 'export-credited-twice',
  name: 'Units given credited twice',
  stage: 'netting',
  evidence: [
    'the number of the meter beside each line of units given',
    'photos of the import register at both ends: it must not have run back',
  ],
  source: 'a customer with two meters, Hearth forum, 2014',
  variants: (facts, { printed }) => {
    const given = facts.units['export'] ?? 0;
    if (given === 0 || !netsUnits(facts.tariff)) return [];
    const names = Object.keys(facts.units).filter((name) => /^export(?:@.*)?$/.test(name));
    const twice = withUnits(
      facts,
      Object.fromEntries(names.map((name) => [name, 2 * (facts.units[name] ?? 0)])),
    );
    const shown = printed.get(FIGURE.units('export'));
    const showsTwice = shown !== undefined && isSameQuotient(shown, thousandths(2 * given));
    const own = Object.fromEntries(
      names.map((name) => [FIGURE.units(name), thousandths(facts.units[name] ?? 0)]),
    );
    const what = 'Every unit given is set off twice';
    return [{ id: 'twice', what, facts: showsTwice ? twice : withShown(twice, own) }];
  },
};
