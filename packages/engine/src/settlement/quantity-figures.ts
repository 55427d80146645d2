import {
  dayText,
  givenFigure,
  periodDays,
  unfoldingFigure,
  type AppliedRounding,
  type Choice,
  type Figure,
  type FigureKind,
  type FigureUnit,
  type Operation,
  type Rounding,
} from '../quantity/index.ts';
import type { Definition, NamedQuantity } from '../tariff/index.ts';
import { nettingInputs } from './netting-figures.ts';
import { arithmetic, daysOfShare, exactOf, stepReached, THOUSAND, valueOf } from './operations.ts';
import { pastPeriods, type LookingBack } from './past.ts';
import type { Operand, PreparedStep, QuantitySource, StepSource } from './settle-context.ts';

const NONE: readonly never[] = [];

/** A number of the document as a figure. */
function numberFigure({ whole, scale, text }: Operand, unit: FigureUnit): Figure {
  return givenFigure({ id: text, label: 'Number', unit, numerator: whole, denominator: scale, clause: '' });
}

/** An operand as a figure: a quantity, or a number of the document. */
export function operandFigure(source: QuantitySource, operand: Operand, unit: FigureUnit): Figure {
  return operand.at < 0 ? numberFigure(operand, unit) : quantityFigure(source, operand.at);
}

const OPERATIONS: Readonly<Record<Definition['is'], Operation>> = {
  sum: 'sum',
  difference: 'difference',
  excess: 'excess',
  least: 'least',
  greatest: 'greatest',
  product: 'product',
  quotient: 'quotient',
  percent: 'share',
  part: 'excess',
  choice: 'sum',
  'running-total': 'sum',
  mean: 'quotient',
  'days-share': 'product',
  netting: 'sum',
};

const unitOf = ({ prepared, step }: StepSource): FigureUnit => prepared.named[step.at]?.unit ?? 'kWh';

/** A figure between the lines: what a definition works with on the way. */
function between(
  source: StepSource,
  words: { readonly id: string; readonly label: string; readonly operation: Operation },
  parts: { readonly inputs: readonly Figure[]; readonly numerator: number },
): Figure {
  const { definition } = source.step;
  return {
    id: `${definition.id}-${words.id}`,
    label: words.label,
    unit: unitOf(source),
    numerator: parts.numerator,
    denominator: THOUSAND,
    operation: words.operation,
    inputs: parts.inputs,
    parameters: NONE,
    rounding: null,
    clause: definition.clause,
  };
}

/** The quantities of the periods that a total or a mean looks back to. */
function pastFigures(source: StepSource, definition: LookingBack): readonly Figure[] {
  const { context, step } = source;
  const operand = step.operands[0] as Operand;
  const earlier = pastPeriods(definition, context).map(({ period, quantities }) =>
    givenFigure({
      id: definition.of,
      label: `${definition.of}, period to ${dayText(period.to)}`,
      unit: unitOf(source),
      numerator: quantities[definition.of] ?? 0,
      denominator: THOUSAND,
      clause: 'earlier period',
    }),
  );
  return definition.through === 'this-period' ? [...earlier, quantityFigure(source, operand.at)] : earlier;
}

function meanInputs(source: StepSource, definition: LookingBack): readonly Figure[] {
  const inputs = pastFigures(source, definition);
  const numerator = inputs.reduce((sum, figure) => sum + (figure.numerator as number), 0);
  const words = { id: 'total', label: 'Total of the periods', operation: 'sum' } as const;
  const count = Math.max(1, inputs.length);
  const periods = { id: 'periods', label: 'Periods', unit: 'count', clause: definition.clause } as const;
  return [
    between(source, words, { inputs, numerator }),
    givenFigure({ ...periods, numerator: count, denominator: 1 }),
  ];
}

/** The part of a quantity: the smaller of it and the upper limit, less the lower one. */
function partInputs(source: StepSource, definition: Definition & { is: 'part' }): readonly Figure[] {
  const { operands } = source.step;
  const unit = unitOf(source);
  const figures = operands.map((operand) => operandFigure(source, operand, unit));
  const [of, second, third] = figures as [Figure, Figure?, Figure?];
  const above = definition.above === undefined ? undefined : second;
  const upTo = definition.upTo === undefined ? undefined : (third ?? second);
  if (upTo === undefined) return above === undefined ? [of] : [of, above];
  const values = operands.map((operand) => valueOf(operand, source.context));
  const numerator = Math.min(values[0] ?? 0, values.at(-1) ?? 0);
  const words = { id: 'limited', label: 'Up to the limit', operation: 'least' } as const;
  const limited = between(source, words, { inputs: [of, upTo], numerator });
  return above === undefined ? [limited] : [limited, above];
}

function stepInputs(source: StepSource): readonly Figure[] {
  const { step, context } = source;
  const { definition, operands } = step;
  const unit = unitOf(source);
  const figures = (some: readonly Operand[]): readonly Figure[] =>
    some.map((operand) => operandFigure(source, operand, definition.is === 'product' ? 'ratio' : unit));
  switch (definition.is) {
    case 'choice': {
      const by = valueOf(operands.at(-1) as Operand, context);
      return figures([operands[stepReached(definition, by)] as Operand]);
    }
    case 'running-total':
      return pastFigures(source, definition);
    case 'mean':
      return meanInputs(source, definition);
    case 'part':
      return partInputs(source, definition);
    case 'days-share': {
      const days = { id: 'days-share', label: 'Days counted ÷ days of the period', unit: 'ratio' } as const;
      const numerator = daysOfShare(definition, context.period);
      const share = givenFigure({
        ...days,
        clause: definition.clause,
        numerator,
        denominator: periodDays(context.period),
      });
      return [...figures(operands), share];
    }
    case 'quotient': {
      const [top, bottom] = operands as [Operand, Operand];
      return [operandFigure(source, top, unit), operandFigure(source, bottom, 'ratio')];
    }
    default:
      return figures(operands);
  }
}

/** The rounding of a definition, where it changed the result. */
function stepRounding({ step, context }: StepSource, value: number): AppliedRounding | null {
  const { definition, operands } = step;
  const rounding: Rounding | undefined = 'rounding' in definition ? definition.rounding : undefined;
  if (rounding === undefined) return null;
  const plain = (): number => arithmetic(definition.is, operands, context);
  const exact = exactOf(definition, operands, context) ?? { numerator: plain(), denominator: 1 };
  if (BigInt(exact.numerator) === BigInt(value) * BigInt(exact.denominator)) return null;
  return {
    ...rounding,
    clause: definition.clause,
    numerator: exact.numerator,
    denominator: exact.denominator * THOUSAND,
  };
}

function stepChoice(source: StepSource): Choice | null {
  const { definition, operands } = source.step;
  if (definition.is !== 'choice') return null;
  const by = operands.at(-1) as Operand;
  const reached = stepReached(definition, valueOf(by, source.context));
  const unit = source.prepared.named[by.at]?.unit ?? 'kWh';
  const limit = (name: string, text: string | undefined) =>
    text === undefined ? null : { name, text, unit, clause: definition.clause };
  return {
    by: quantityFigure(source, by.at),
    above: limit('above', definition.steps[reached - 1]?.upTo),
    upTo: limit('up to', definition.steps[reached]?.upTo),
  };
}

/** How a quantity that is worked out unfolds: what all of its figures have in common. */
function stepKind(step: PreparedStep, at: number, named: NamedQuantity): FigureKind<QuantitySource> {
  const { definition } = step;
  const within = (source: QuantitySource): StepSource => ({ ...source, step, at });
  const common = { unit: named.unit, denominator: THOUSAND, clause: definition.clause } as const;
  if (definition.is === 'netting') {
    return {
      ...common,
      id: definition.id,
      label: named.label,
      operation: at === step.at ? 'sum' : 'difference',
      inputs: (source) => {
        const step = within(source);
        return nettingInputs(step, (operand) => operandFigure(source, operand, named.unit));
      },
    };
  }
  return {
    ...common,
    id: definition.id,
    label: definition.label,
    operation: OPERATIONS[definition.is],
    inputs: (source) => stepInputs(within(source)),
    parameters: () =>
      definition.is === 'percent'
        ? [{ name: 'percent', text: definition.percent, unit: 'percent', clause: definition.clause }]
        : NONE,
    choice: (source) => stepChoice(within(source)),
    rounding: (source, numerator) => stepRounding(within(source), numerator as number),
  };
}

/** How the quantities of a rule unfold, in their places; null for those given. */
export function quantityKinds(
  names: readonly string[],
  named: readonly NamedQuantity[],
  madeBy: readonly (PreparedStep | null)[],
): readonly (FigureKind<QuantitySource> | null)[] {
  return names.map((name, at) => {
    const step = madeBy[at];
    if (step === null || step === undefined) return null;
    return { ...stepKind(step, at, named[at] ?? { unit: 'kWh', label: name }), id: name };
  });
}

/**
 * A quantity of a settled period, with how it was worked out: it unfolds when it is asked.
 *
 * @param at  its place in the vector
 */
export function quantityFigure(source: QuantitySource, at: number): Figure {
  const { prepared, context } = source;
  const kind = prepared.kinds[at] as FigureKind<QuantitySource> | null | undefined;
  if (kind === null || kind === undefined) return context.given[at] as Figure;
  return unfoldingFigure(kind, context.values[at] as number, source);
}
