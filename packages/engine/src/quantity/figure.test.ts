import { describe, expect, it } from 'vitest';
import { givenFigure, renamedFigure, unfoldingFigure, type Figure, type FigureKind } from './figure.ts';

const LOAD = givenFigure({
  id: 'load',
  label: 'Sanctioned load',
  unit: 'kW',
  numerator: 4000,
  denominator: 1000,
  clause: 'account',
});

/** Twice a load, and how often its inputs were asked for. */
function doubled() {
  let asked = 0;
  const kind: FigureKind<Figure> = {
    id: 'double',
    label: 'Twice the load',
    unit: 'kW',
    denominator: 1000,
    operation: 'sum',
    clause: (load) => `twice ${load.clause}`,
    inputs: (load) => {
      asked += 1;
      return [load, load];
    },
    parameters: (load) => [{ name: 'load', text: String(load.numerator), unit: 'kW', clause: '' }],
    rounding: (load, numerator) => ({
      step: '1',
      mode: 'down',
      clause: load.clause,
      numerator,
      denominator: 1000,
    }),
  };
  return { figure: unfoldingFigure(kind, 8000, LOAD), asked: () => asked };
}

describe('figures', () => {
  it('that are given have no derivation', () => {
    expect(LOAD).toMatchObject({ operation: 'given', inputs: [], parameters: [], rounding: null });
  });

  it('unfold from their source what is asked for, their inputs once', () => {
    const { figure, asked } = doubled();
    expect([figure.id, figure.label, figure.unit, figure.operation]).toEqual([
      'double',
      'Twice the load',
      'kW',
      'sum',
    ]);
    expect([figure.numerator, figure.denominator, figure.clause]).toEqual([8000, 1000, 'twice account']);
    expect(asked()).toBe(0);
    expect(figure.inputs).toEqual([LOAD, LOAD]);
    expect(figure.inputs).toBe(figure.inputs);
    expect(asked()).toBe(1);
    expect(figure.parameters).toEqual([{ name: 'load', text: '4000', unit: 'kW', clause: '' }]);
    expect(figure.rounding).toMatchObject({ numerator: 8000, clause: 'account' });
  });

  it('have no parameters and no rounding where their kind has none', () => {
    const kind: FigureKind<null> = {
      id: 'x',
      label: 'X',
      unit: 'kWh',
      denominator: 1,
      operation: 'given',
      clause: '',
      inputs: () => [],
    };
    const figure = unfoldingFigure(kind, 1, null);
    expect([figure.parameters, figure.rounding, figure.inputs, figure.clause]).toEqual([[], null, [], '']);
  });

  it('keep their value under another name, with themselves as the only input', () => {
    const { figure } = doubled();
    const renamed = renamedFigure(figure, { id: 'next', label: 'Next' });
    expect([renamed.id, renamed.label, renamed.numerator, renamed.denominator, renamed.unit]).toEqual([
      'next',
      'Next',
      8000,
      1000,
      'kW',
    ]);
    expect([renamed.operation, renamed.inputs, renamed.rounding]).toEqual(['sum', [figure], null]);
  });
});
