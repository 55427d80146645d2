import type { Cause } from '../cause.ts';
import { withShownReadings } from '../printed-readings.ts';
import { withChannel } from '../readings-changed.ts';

/** C17: the register of import less export is read as import, and export is taken off once more. */
export const NET_REGISTER_AS_IMPORT: Cause = {
  id: 'net-register-as-import',
  name: 'Net register read as import',
  stage: 'readings',
  evidence: ['a photo of the display with the code of the screen', 'the list of screens in the meter guide'],
  variants: (facts, context) => {
    const { units, registers } = facts;
    const [taken, given] = [units['import'] ?? 0, units['export'] ?? 0];
    // A register of the difference that fell shows no units that a bill could be made of.
    if (given === 0 || taken <= given) return [];
    const [import_, export_] = [registers['import'], registers['export']];
    const net = withChannel(facts, 'import', taken - given);
    const what = 'Import is read off the register of import less export, and export is taken off once more';
    if (import_ === undefined || export_ === undefined) return [{ id: 'net', what, facts: net }];
    const shown = {
      previous: import_.previous - export_.previous,
      present: import_.present - export_.present,
    };
    return [{ id: 'net', what, facts: withShownReadings(net, context, { import: shown }) }];
  },
};
