import { isSameQuotient, unfoldingFigure, type Figure, type FigureKind } from '../quantity/index.ts';
import { capShare, cappedQuantity, wattHours, type SettleSource, type UnitMoves } from './unit-moves.ts';

/** Where units went, and why. */
export interface MoveSource extends SettleSource {
  readonly moves: UnitMoves;
}

const UNIT_STEPS = { '0': '1', '1': '0.1', '2': '0.01', '3': '0.001' } as const;

type Kind = FigureKind<MoveSource>;

const units = { unit: 'kWh', denominator: 1000 } as const;
const byRule = ({ rule }: MoveSource): string => rule.clause;
const byCap = ({ rule }: MoveSource): string => rule.cap?.clause ?? rule.clause;
const byClose = ({ rule }: MoveSource): string => rule.close.clause;

const AVAILABLE: Kind = {
  id: 'available',
  label: 'Export and credit brought forward',
  ...units,
  operation: 'sum',
  clause: byRule,
  inputs: ({ energy, opening }) => [energy.export, opening],
};

const CAP: Kind = {
  id: 'cap',
  label: 'Most that may be set off',
  ...units,
  operation: 'share',
  clause: byCap,
  inputs: ({ energy, rule }) => {
    const quantity = rule.cap === undefined ? null : cappedQuantity(energy, rule.cap);
    return quantity === null ? [] : [quantity];
  },
  parameters: ({ rule: { cap } }) =>
    cap === undefined ? [] : [{ name: 'cap', text: cap.percent, unit: 'percent', clause: cap.clause }],
  rounding: ({ energy, rule: { cap }, unitsRule }, value) => {
    const quantity = cap === undefined ? null : cappedQuantity(energy, cap);
    if (cap === undefined || quantity === null) return null;
    const { numerator, denominator } = capShare(cap, quantity);
    if (isSameQuotient({ numerator: value, denominator: 1 }, { numerator, denominator })) return null;
    const rounding = {
      step: UNIT_STEPS[unitsRule.decimals],
      mode: unitsRule.rounding,
      clause: unitsRule.clause,
    };
    return { ...rounding, numerator, denominator: denominator * 1000 };
  },
};

const availableFigure = (source: MoveSource): Figure =>
  unfoldingFigure(AVAILABLE, source.moves.available, source);

const WANTED: Kind = {
  id: 'wanted',
  label: 'Units that could be set off',
  ...units,
  operation: 'least',
  clause: byRule,
  inputs: (source) => [source.energy.import, availableFigure(source)],
};

const SET_OFF: Kind = {
  ...WANTED,
  id: 'set-off',
  label: 'Units set off',
  clause: byCap,
  inputs: (source) => {
    const { most } = source.moves;
    const both = [source.energy.import, availableFigure(source)];
    return most === null ? both : [...both, unfoldingFigure(CAP, most, source)];
  },
};

const setOffFigure = (source: MoveSource): Figure => unfoldingFigure(SET_OFF, source.moves.setOff, source);

const LEFT: Kind = {
  id: 'left',
  label: 'Units left over',
  ...units,
  operation: 'difference',
  clause: byRule,
  inputs: (source) => [availableFigure(source), setOffFigure(source)],
};

const CUT: Kind = {
  id: 'kept-by-cap',
  label: 'Units the cap keeps from being set off',
  ...units,
  operation: 'difference',
  clause: byCap,
  inputs: (source) => [unfoldingFigure(WANTED, source.moves.wanted, source), setOffFigure(source)],
};

const cutUnits = ({ moves, rule }: MoveSource): number =>
  rule.cap?.excess === 'lapses' ? moves.wanted - moves.setOff : 0;

const leftFigure = (source: MoveSource): Figure => unfoldingFigure(LEFT, source.moves.left, source);
const cutFigure = (source: MoveSource): Figure => unfoldingFigure(CUT, cutUnits(source), source);

const REST: Kind = {
  id: 'rest',
  label: 'Units left over below the cap',
  ...units,
  operation: 'difference',
  clause: byCap,
  inputs: (source) => [leftFigure(source), cutFigure(source)],
};

/** What is left once the cap has taken its part. */
function restFigure(source: MoveSource): Figure {
  const cut = cutUnits(source);
  return cut === 0 ? leftFigure(source) : unfoldingFigure(REST, source.moves.left - cut, source);
}

const PAID: Kind = {
  id: 'paid',
  label: 'Units paid',
  ...units,
  operation: 'sum',
  clause: byClose,
  inputs: (source) => (source.moves.paid === 0 ? [] : [restFigure(source)]),
};

const LAPSED: Kind = {
  id: 'lapsed',
  label: 'Units lapsed',
  ...units,
  operation: 'sum',
  clause: (source) => (source.moves.lapsed > cutUnits(source) ? byClose(source) : byCap(source)),
  inputs: (source) => {
    const cut = cutUnits(source);
    const ends = source.moves.lapsed - cut;
    return [...(cut === 0 ? [] : [cutFigure(source)]), ...(ends === 0 ? [] : [restFigure(source)])];
  },
};

const CREDIT_USED: Kind = {
  id: 'credit-used',
  label: 'Credit units used',
  ...units,
  operation: 'excess',
  clause: byRule,
  inputs: (source) => [setOffFigure(source), source.energy.export],
};

const BILLED: Kind = {
  id: 'billed',
  label: 'Units billed',
  ...units,
  operation: 'difference',
  clause: byRule,
  inputs: (source) => [source.energy.import, setOffFigure(source)],
};

const CLOSING: Kind = {
  id: 'closing',
  label: 'Credit carried forward',
  ...units,
  operation: 'difference',
  clause: ({ rule }) => rule.carry?.clause ?? rule.close.clause,
  inputs: (source) => [
    leftFigure(source),
    unfoldingFigure(PAID, source.moves.paid, source),
    unfoldingFigure(LAPSED, source.moves.lapsed, source),
  ],
};

/** The figures of a passbook entry, each unfolding down to the registers. */
export function moveFigures(source: MoveSource) {
  const { moves, energy } = source;
  const used = moves.setOff - wattHours(energy.export);
  return {
    setOff: setOffFigure(source),
    creditUsed: unfoldingFigure(CREDIT_USED, used > 0 ? used : 0, source),
    billed: unfoldingFigure(BILLED, wattHours(energy.import) - moves.setOff, source),
    paid: unfoldingFigure(PAID, moves.paid, source),
    lapsed: unfoldingFigure(LAPSED, moves.lapsed, source),
    closing: unfoldingFigure(CLOSING, moves.closing, source),
  };
}
