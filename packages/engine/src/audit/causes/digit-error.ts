import type { Cause, CauseContext, Variant } from '../cause.ts';
import { isOneDigitLonger, oneDigitWrong, transposed, withoutPoint, withZero } from '../digits.ts';
import type { BillFacts, RegisterFacts } from '../facts.ts';
import { FIGURE } from '../figure-names.ts';
import { fitsPrinted, printedEnds, printedUnitsOf } from '../printed-readings.ts';
import { cutToStep, isPossible, withChannel, withReadings } from '../readings-changed.ts';

type End = 'previous' | 'present';

/** A reading taken wrongly: of what, and what it is taken for in thousandths. */
interface Misreading {
  readonly own: RegisterFacts;
  readonly end: End;
  readonly way: string;
  readonly value: number;
  readonly what: string;
  /** Left out: it does not depend on what is printed. */
  readonly fitted?: readonly string[];
}

const nameOf = ({ register: { key } }: RegisterFacts, end: End): string =>
  `The ${end} reading of ${key === 'import' || key === 'export' ? `the ${key} register` : `register ${key}`}`;

/** Mistakes that are made without knowing what was printed. */
function usual(own: RegisterFacts, end: End): readonly Misreading[] {
  const [value, name] = [own[end], nameOf(own, end)];
  const common = { own, end };
  const whole = withoutPoint(value, own.register);
  return [
    ...transposed(value, own.register).map(({ id, value: taken }) => ({
      ...common,
      way: `transposed ${id}`,
      value: taken,
      what: `${name} has two neighbouring digits in each other's place`,
    })),
    ...(whole === null
      ? []
      : [{ ...common, way: 'decimal', value: whole, what: `${name} takes digits after the point as units` }]),
    { ...common, way: 'zero', value: withZero(value), what: `${name} has a 0 too many at its end` },
  ];
}

/** One digit more, less or other than on the display, as the printed reading tells. */
function asPrinted(own: RegisterFacts, end: End, context: CauseContext): readonly Misreading[] {
  const printed = printedEnds(context, own.register.key)[end];
  const value = own[end];
  if (printed === null || printed === value || printed === withZero(value)) return [];
  const common = { own, end, value: printed, fitted: [FIGURE.reading(own.register.key, end)] };
  const name = nameOf(own, end);
  if (isOneDigitLonger(printed, value) && printed !== withoutPoint(value, own.register))
    return [{ ...common, way: 'longer', what: `${name} has a digit too many` }];
  if (isOneDigitLonger(value, printed)) return [{ ...common, way: 'shorter', what: `${name} lacks a digit` }];
  return oneDigitWrong(value, own.register).includes(printed)
    ? [{ ...common, way: 'digit', what: `${name} has one digit wrong` }]
    : [];
}

/** One digit other than on the display, as printed units tell where no reading is printed. */
function asUnits(own: RegisterFacts, context: CauseContext): readonly Misreading[] {
  const { key, id } = own.register;
  if (printedEnds(context, key).present !== null || printedUnitsOf(context, id) === null) return [];
  const usualOnes = new Set(usual(own, 'present').map(({ value }) => value));
  const what = `${nameOf(own, 'present')} has one digit wrong`;
  return oneDigitWrong(own.present, own.register)
    .filter((value) => !usualOnes.has(value))
    .map((value) => ({
      own,
      end: 'present',
      way: `digit ${value / 1000}`,
      value,
      what,
      fitted: [FIGURE.units(id)],
    }));
}

function readingVariants(facts: BillFacts, context: CauseContext): readonly Variant[] {
  return Object.values(facts.registers).flatMap((own) => {
    const { key } = own.register;
    const isPreviousPrinted = printedEnds(context, key).previous !== null;
    const misreadings = [
      ...usual(own, 'present'),
      // An opening reading is copied from the bill before: it is doubted only where it is printed.
      ...(isPreviousPrinted ? usual(own, 'previous') : []),
      ...asPrinted(own, 'present', context),
      ...asPrinted(own, 'previous', context),
      ...asUnits(own, context),
    ];
    return misreadings.flatMap(({ end, way, value, what, fitted }) => {
      const changed = withReadings(facts, { [key]: { [end]: value, passed: false } });
      if (!isPossible(changed) || !fitsPrinted(changed, context, [key])) return [];
      const id = `${key} ${end} ${way}`;
      return [fitted === undefined ? { id, what, facts: changed } : { id, what, facts: changed, fitted }];
    });
  });
}

/** Units of a channel with a 0 too many, or without their last digit, as they are typed into a bill. */
function unitVariants(facts: BillFacts, context: CauseContext): readonly Variant[] {
  return (['import', 'export'] as const).flatMap((channel) => {
    const units = facts.units[channel] ?? 0;
    const printed = printedUnitsOf(context, channel);
    const ways = [
      { way: 'zero', count: units * 10, what: `Units of ${channel} have a 0 too many` },
      {
        way: 'shorter',
        count: cutToStep(facts, units / 10),
        what: `Units of ${channel} lack their last digit`,
      },
    ];
    return ways
      .filter(({ count }) => count !== units && (printed === null || printed === count))
      .map(({ way, count, what }) => ({
        id: `${channel} units ${way}`,
        what,
        facts: withChannel(facts, channel, count),
      }));
  });
}

/** C08: a digit of a reading or of its units is wrong, too many, missing, or not in its place. */
export const DIGIT_ERROR: Cause = {
  id: 'digit-error',
  name: 'Digits taken wrongly',
  stage: 'readings',
  evidence: [
    'a photo of the display with all its digits',
    'the next reading, which falls back below a number that was too large',
    'how many digits the register has',
  ],
  variants: (facts, context) => [...readingVariants(facts, context), ...unitVariants(facts, context)],
};
