import type { Cause, CauseContext, Sign } from '../cause.ts';
import type { BillFacts, RegisterFacts } from '../facts.ts';
import { thousandths, withShown } from '../facts.ts';
import { sameSerial } from '../consistency/serials.ts';
import { FIGURE } from '../figure-names.ts';
import { printedEnds, printedUnitsOf } from '../printed-readings.ts';
import { countedBy, isPossible, withChannel } from '../readings-changed.ts';

type GridChannel = 'import' | 'export';

/** Both ends of a register as a bill prints them. */
interface Ends {
  readonly previous: number;
  readonly present: number;
}

function endsOf(context: CauseContext, channel: GridChannel): Ends | null {
  const { previous, present } = printedEnds(context, channel);
  return previous === null || present === null ? null : { previous, present };
}

/** Whether readings are of another counter: further off at either end than either counter went. */
function isFar({ previous, present }: Ends, own: RegisterFacts): boolean {
  const went = Math.max(Math.abs(present - previous), Math.abs(own.present - own.previous));
  return Math.abs(previous - own.previous) > went && Math.abs(present - own.present) > went;
}

/** Whether printed readings are of none of one's own registers: those would be taken for each other. */
function isOfNoOwn(ends: Ends, { registers }: BillFacts): boolean {
  return Object.values(registers).every((own) => isFar(ends, own));
}

function signsOf({ serials }: CauseContext): readonly Sign[] {
  const { own, printed } = serials['grid'] ?? { own: [], printed: null };
  if (own.length === 0 || printed === null || printed === '') return [];
  return own.some((serial) => sameSerial(serial, printed))
    ? [{ speaks: 'against', why: `The bill prints the number of one's own meter, ${printed}.` }]
    : [
        {
          speaks: 'for',
          why: `The bill prints the meter number ${printed}; one's own is ${own.join(', ')}.`,
        },
      ];
}

/** Units of the other meter: as its readings make them, or as printed; null: its export is not known. */
function unitsOf(facts: BillFacts, context: CauseContext, channel: GridChannel): number | null {
  const ends = endsOf(context, channel);
  const own = facts.registers[channel];
  if (ends === null || own === undefined) return printedUnitsOf(context, channel);
  return countedBy({ ...own, ...ends, passed: false }, facts);
}

/** Facts that show the readings of another meter. */
function showing(facts: BillFacts, context: CauseContext): BillFacts {
  return (['import', 'export'] as const).reduce((own, channel) => {
    const ends = endsOf(context, channel);
    if (ends === null) return own;
    return withShown(own, {
      [FIGURE.reading(channel, 'previous')]: thousandths(ends.previous),
      [FIGURE.reading(channel, 'present')]: thousandths(ends.present),
    });
  }, facts);
}

/** C16: the bill is made of the readings of another meter. */
export const ANOTHER_METER: Cause = {
  id: 'another-meter',
  name: 'Readings of another meter',
  stage: 'readings',
  evidence: [
    'a photo of the meter with its number',
    'a test with the utility: the breaker off, and which meter stands still',
  ],
  variants: (facts, context) => {
    const taken = endsOf(context, 'import');
    const given = endsOf(context, 'export');
    if (taken === null || !isOfNoOwn(taken, facts) || (given !== null && !isOfNoOwn(given, facts))) return [];
    if (facts.registers['import'] === undefined) return [];
    const imported = unitsOf(facts, context, 'import');
    // A meter of which no export is printed is likely one of a house without a plant.
    const exported = unitsOf(facts, context, 'export') ?? 0;
    if (imported === null) return [];
    const changed = withChannel(withChannel(showing(facts, context), 'import', imported), 'export', exported);
    if (!isPossible(changed)) return [];
    const fitted = (['import', 'export'] as const).flatMap((channel) => [
      FIGURE.reading(channel, 'previous'),
      FIGURE.reading(channel, 'present'),
      FIGURE.units(channel),
    ]);
    const what = 'The readings are not those of this meter: both are far from its own';
    return [{ id: 'printed', what, facts: changed, fitted, signs: signsOf(context) }];
  },
};
