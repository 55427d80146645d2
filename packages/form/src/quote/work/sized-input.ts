import { roundQuotient, type QuoteInput } from '@unitbook/engine';

/**
 * A quote for a plant of another size, to be tried: generation by capacity. Prices follow in the engine, which
 * knows what of them goes by capacity.
 *
 * @param watts  of the size tried; null: as it is offered
 */
export function sizedInput(input: QuoteInput, watts: number | null): QuoteInput {
  if (watts === null || watts === input.watts) return input;
  const { unitStep } = input;
  const generation = input.generation.map(
    (made) => roundQuotient(made * watts, input.watts * unitStep, 'half-up') * unitStep,
  );
  return { ...input, watts, generation };
}
