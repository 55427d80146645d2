import { exactText } from '../quantity/index.ts';
import type { Register, RegisterId } from '../readings/index.ts';
import type { CauseContext } from './cause.ts';
import { withShown, type BillFacts } from './facts.ts';
import { agrees, EXACT } from './figures.ts';
import { registersOfChannels, withReadings } from './readings-changed.ts';

/** A multiplying factor. */
export type Factor = Register['factor'];

/** A factor of 1. */
export const FACTOR_ONE: Factor = { numerator: 1, denominator: 1, text: '1' };

/** A factor times itself. */
export function squaredFactor({ numerator, denominator }: Factor): Factor {
  const [top, bottom] = [numerator * numerator, denominator * denominator];
  return { numerator: top, denominator: bottom, text: exactText(top, bottom) };
}

/** Whether a factor is another one than 1. */
export const isFactor = ({ numerator, denominator }: Factor): boolean => numerator !== denominator;

/**
 * Facts in which the registers of some channels are multiplied by another factor. A bill can print the right factor
 * beside units that were not multiplied by it: it does not say which one was applied.
 *
 * @returns null where none of the channels has a register with a factor other than 1
 */
export function withFactor(
  facts: BillFacts,
  context: Pick<CauseContext, 'printed'>,
  channels: readonly RegisterId[],
  change: (factor: Factor) => Factor,
): BillFacts | null {
  const registers = registersOfChannels(facts, channels).filter(({ register }) => isFactor(register.factor));
  const [first] = registers;
  if (first === undefined) return null;
  const changes = registers.map(
    ({ register }) => [register.key, { register: { ...register, factor: change(register.factor) } }] as const,
  );
  const changed = withReadings(facts, Object.fromEntries(changes));
  const printed = context.printed.get('factor');
  const isRight =
    first.register.id === 'import' && printed !== undefined && agrees(printed, first.register.factor, EXACT);
  const { numerator, denominator } = first.register.factor;
  return isRight ? withShown(changed, { factor: { numerator, denominator } }) : changed;
}
