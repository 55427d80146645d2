import type { RegisterId } from '../../readings/index.ts';
import type { Cause, CauseContext, Sign, Variant } from '../cause.ts';
import type { BillFacts } from '../facts.ts';
import { FIGURE } from '../figure-names.ts';
import { printedEnds, printedThousandths, printedUnitsOf } from '../printed-readings.ts';
import { countedBy, isPossible, withChannel } from '../readings-changed.ts';

/** Units that a bill takes for a channel, in thousandths. */
interface Estimate {
  readonly channel: RegisterId;
  readonly units: number;
}

/** Ten units: whoever estimates rounds. */
const ROUND = 10_000;

/** What a bill prints of a channel where it is not what was counted, and where units and reading do not contradict. */
function estimateOf(facts: BillFacts, context: CauseContext, channel: RegisterId): Estimate | null {
  const own = facts.registers[channel];
  const { present } = printedEnds(context, channel);
  const units = printedUnitsOf(context, channel);
  const read =
    own === undefined || present === null ? null : countedBy({ ...own, present, passed: false }, facts);
  const estimated = units ?? read;
  if (estimated === null || estimated < 0 || estimated === facts.units[channel]) return null;
  return read === null || read === estimated ? { channel, units: estimated } : null;
}

/** Facts in which a channel counts an estimate, and its register shows that. */
function withEstimate(facts: BillFacts, context: CauseContext, { channel, units }: Estimate): BillFacts {
  const own = facts.registers[channel];
  const counted = withChannel(facts, channel, units);
  if (own === undefined) return counted;
  const { numerator, denominator } = own.register.factor;
  const advance = Math.trunc((units * denominator) / numerator);
  const present = printedEnds(context, channel).present ?? own.previous + advance;
  const registers = { ...facts.registers, [channel]: { ...own, present, passed: false } };
  return { ...counted, registers };
}

function statusSigns({ status }: CauseContext): readonly Sign[] {
  if (status === 'estimated')
    return [{ speaks: 'for', why: 'The bill says that its readings were estimated.' }];
  if (status === 'actual') return [{ speaks: 'against', why: 'The bill says that its readings were read.' }];
  return [];
}

/** An estimate that is what the bill before counted, by its own paper or by right. */
function isRepeated({ channel, units }: Estimate, { printedBefore, before }: CauseContext): boolean {
  const printed =
    printedBefore === null ? null : printedThousandths({ printed: printedBefore }, FIGURE.units(channel));
  return units > 0 && (units === printed || units === before?.units[channel]);
}

const isRound = ({ units }: Estimate): boolean => units > 0 && units % ROUND === 0;

function signsOf(estimates: readonly Estimate[], context: CauseContext): readonly Sign[] {
  const repeated = estimates.some((one) => isRepeated(one, context));
  const same: readonly Sign[] = repeated
    ? [{ speaks: 'for', why: 'It is the number of units of the bill before once more.' }]
    : [];
  return [...statusSigns(context), ...same];
}

/** What is taken for a channel beside an estimate of import, with what that is called. */
function ways(taken: Estimate, given: Estimate | null, facts: BillFacts, isExportPrinted: boolean) {
  const none: Estimate = { channel: 'export', units: 0 };
  const right = facts.units['export'] ?? 0;
  const importOnly = {
    id: 'import-only',
    what: 'Import is estimated, and nothing counts as given',
    estimates: [taken, ...(right === 0 ? [] : [none])],
  };
  if (given !== null && given.units > 0)
    return [{ id: 'both', what: 'Import and export are both estimated', estimates: [taken, given] }];
  const beside = { id: 'import', what: 'Import is estimated; export was read', estimates: [taken] };
  if (given !== null) return [importOnly];
  return isExportPrinted || right === 0 ? [beside] : [importOnly, beside];
}

/** C07: a reading was estimated, of import alone or of both registers. */
export const ESTIMATED_READING: Cause = {
  id: 'estimated-reading',
  name: 'Reading estimated',
  stage: 'readings',
  evidence: [
    'a photo of the meter on or near the day of the reading',
    'the bill of the same month last year',
    'the rule by which readings are estimated, and of which registers',
  ],
  variants: (facts, context): readonly Variant[] => {
    const taken = estimateOf(facts, context, 'import');
    if (taken === null) return [];
    // Any number of units could be an estimate: without a word of it on the bill it has to look like one.
    if (context.status !== 'estimated' && !isRound(taken) && !isRepeated(taken, context)) return [];
    const given = estimateOf(facts, context, 'export');
    const isExportPrinted =
      printedUnitsOf(context, 'export') !== null || printedEnds(context, 'export').present !== null;
    return ways(taken, given, facts, isExportPrinted)
      .map(({ id, what, estimates }) => ({
        id,
        what,
        facts: estimates.reduce((own, estimate) => withEstimate(own, context, estimate), facts),
        fitted: estimates.flatMap(({ channel, units }) =>
          units === 0 ? [] : [FIGURE.units(channel), FIGURE.reading(channel, 'present')],
        ),
        signs: signsOf(estimates, context),
      }))
      .filter((one) => isPossible(one.facts));
  },
};
