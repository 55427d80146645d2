import {
  givenFigure,
  type AppliedRounding,
  type Figure,
  type FigureUnit,
  type Operation,
} from '../quantity/index.ts';
import { netMoves, partsOf, routesOf, type Move, type Netting } from './netting.ts';
import { percentOf, THOUSAND, thousandths } from './operations.ts';
import type { Operand, StepSource } from './settle-context.ts';

const NONE: readonly never[] = [];

/** Everything a netting does, as figures: what each had and lacked on the way, and what moved. */
interface Walk {
  readonly setOff: readonly Figure[];
  /** Of each of the supply: what was used. */
  readonly used: readonly (readonly Figure[])[];
  readonly met: readonly (readonly Figure[])[];
  readonly supply: readonly Figure[];
  readonly demand: readonly Figure[];
}

interface Words {
  readonly id: string;
  readonly label: string;
  readonly operation: Operation;
}

class Walker {
  private readonly netting: Netting;
  private readonly unit: FigureUnit;

  constructor(netting: Netting, unit: FigureUnit) {
    this.netting = netting;
    this.unit = unit;
  }

  figure(
    words: Words,
    numerator: number,
    inputs: readonly Figure[],
    rounding: AppliedRounding | null = null,
  ): Figure {
    const { id, clause } = this.netting;
    return {
      id: `${id}-${words.id}`,
      label: words.label,
      unit: this.unit,
      numerator,
      denominator: THOUSAND,
      operation: words.operation,
      inputs,
      parameters: NONE,
      rounding,
      clause,
    };
  }

  /** What is left of a quantity after some of it went. */
  left(whole: Figure, gone: readonly Figure[], numerator: number): Figure {
    if (gone.length === 0) return whole;
    const words = { id: 'left', label: `${whole.label}, left so far`, operation: 'difference' } as const;
    return this.figure(words, numerator, [whole, ...gone]);
  }

  /** What units are worth on a route, rounded as the netting says. */
  worth(left: Figure, { route, had }: Move): Figure {
    if (route.worth === '100') return left;
    const { numerator, denominator } = percentOf(route.worth, had);
    const exact = { numerator, denominator: denominator * THOUSAND };
    const rounded = this.rounded(exact);
    const words = { id: 'worth', label: 'What they are worth here', operation: 'share' } as const;
    const parameter = {
      name: 'worth',
      text: route.worth,
      unit: 'percent',
      clause: this.netting.clause,
    } as const;
    return { ...this.figure(words, rounded.value, [left], rounded.applied), parameters: [parameter] };
  }

  private rounded(exact: { numerator: number | bigint; denominator: number }): {
    value: number;
    applied: AppliedRounding | null;
  } {
    const { rounding, clause } = this.netting;
    const value = thousandths(
      { numerator: exact.numerator, denominator: exact.denominator / THOUSAND },
      rounding,
      this.netting,
    );
    const same = BigInt(value) * BigInt(exact.denominator) === BigInt(exact.numerator) * BigInt(THOUSAND);
    return { value, applied: same || rounding === undefined ? null : { ...rounding, clause, ...exact } };
  }
}

function walk(source: StepSource, asFigure: (operand: Operand) => Figure): Walk {
  const { step, context, prepared } = source;
  const netting = step.definition as Netting;
  const unit = prepared.named[step.at]?.unit ?? 'kWh';
  const walker = new Walker(netting, unit);
  const parts = partsOf(netting, step.operands);
  const supply = parts.supply.map(asFigure);
  const demand = parts.demand.map(asFigure);
  const most = parts.most === null ? null : asFigure(parts.most);
  const used: Figure[][] = supply.map(() => []);
  const met: Figure[][] = demand.map(() => []);
  const setOff: Figure[] = [];
  for (const move of netMoves(netting, routesOf(netting), { operands: step.operands, context })) {
    if (move.setOff === 0 && move.used === 0) continue;
    const { route } = move;
    const had = walker.left(supply[route.from] as Figure, used[route.from] ?? [], move.had);
    const lacked = walker.left(demand[route.to] as Figure, met[route.to] ?? [], move.lacked);
    const allowed = most === null ? [] : [walker.left(most, [...setOff], move.allowed)];
    const label = `${supply[route.from]?.label ?? ''} set off against ${demand[route.to]?.label ?? ''}`;
    const inputs = [walker.worth(had, move), lacked, ...allowed];
    const moved = walker.figure({ id: 'move', label, operation: 'least' }, move.setOff, inputs);
    setOff.push(moved);
    met[route.to]?.push(moved);
    used[route.from]?.push(move.used === move.setOff ? moved : usedFigure(netting, move, unit));
  }
  return { setOff, used, met, supply, demand };
}

/** Units used up for units set off, where one is not worth one: as they were counted. */
function usedFigure(netting: Netting, move: Move, unit: FigureUnit): Figure {
  return givenFigure({
    id: `${netting.id}-used`,
    label: `Units used for them, at ${move.route.worth} percent`,
    unit,
    numerator: move.used,
    denominator: THOUSAND,
    clause: netting.clause,
  });
}

/** The place of a result among those of its netting: −1 for what was set off, else the supply's, then the demand's. */
function partAt({ step, prepared, at }: StepSource): number {
  const netting = step.definition as Netting;
  const name = prepared.names[at] ?? '';
  return [...netting.supply, ...netting.demand].findIndex((part) => `${netting.id}.${part}` === name);
}

/**
 * What a result of a netting follows from: what was set off, or what it left of one of the supply or demand.
 *
 * @param asFigure  an operand as a figure
 */
export function nettingInputs(source: StepSource, asFigure: (operand: Operand) => Figure): readonly Figure[] {
  const walked = walk(source, asFigure);
  const part = partAt(source);
  if (part < 0) return walked.setOff;
  const count = walked.supply.length;
  return part < count
    ? [walked.supply[part] as Figure, ...(walked.used[part] ?? [])]
    : [walked.demand[part - count] as Figure, ...(walked.met[part - count] ?? [])];
}
