import type { Cause, Sign, Variant } from '../cause.ts';
import { FACTOR_ONE, withFactor } from '../factor-changed.ts';
import type { BillFacts } from '../facts.ts';
import { cutToStep, withChannel, withReadings } from '../readings-changed.ts';

/** What generation is where the meter counted a third of it, or nothing. */
function counting(facts: BillFacts, parts: 0 | 1): BillFacts {
  const own = facts.registers['generation'];
  const made = facts.units['generation'] ?? 0;
  if (own === undefined || own.passed)
    return withChannel(facts, 'generation', cutToStep(facts, (made * parts) / 3));
  const { register, previous, present } = own;
  const advance = Math.trunc(((present - previous) * parts) / (3 * register.step)) * register.step;
  return withReadings(facts, { generation: { present: previous + advance } });
}

/** More given than made cannot be without a battery: the generation meter counts too little. */
function signsOf({ units }: BillFacts): readonly Sign[] {
  const [made, given] = [units['generation'] ?? 0, units['export'] ?? 0];
  return made < given
    ? [{ speaks: 'for', why: 'More is given to the grid than the generation meter counted as made.' }]
    : [];
}

/** C15: current transformers of the generation meter are reversed or missing, or its factor is left out. */
export const GENERATION_METER_WRONG: Cause = {
  id: 'generation-meter-wrong',
  name: 'Generation meter counts too little',
  stage: 'readings',
  evidence: [
    'the log of the inverter',
    'a photo of the arrows on the current transformers',
    'the test report of the meter',
  ],
  variants: (facts, context): readonly Variant[] => {
    if ((facts.units['generation'] ?? 0) === 0) return [];
    const divided = withFactor(facts, context, ['generation'], () => FACTOR_ONE);
    const ways = [
      {
        id: 'third',
        what: 'One of three current transformers is reversed: a third counts',
        facts: counting(facts, 1),
      },
      { id: 'zero', what: 'The generation meter counts nothing', facts: counting(facts, 0) },
      ...(divided === null
        ? []
        : [{ id: 'factor', what: 'Generation counts without its multiplying factor', facts: divided }]),
    ];
    return ways.map((way) => ({ ...way, signs: signsOf(way.facts) }));
  },
};
