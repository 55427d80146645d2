import type { BillRun, Figure } from '@unitbook/engine';

/** Figures of the passbook by the name that they have on a bill. */
function passbookFigures({ month }: BillRun): Readonly<Record<string, Figure | null>> {
  const { passbook, ledgers } = month;
  const balances = ledgers.flatMap(({ id, opening, closing }): (readonly [string, Figure])[] => [
    [`opening.${id}`, opening],
    [`closing.${id}`, closing],
  ]);
  if (passbook === null) return Object.fromEntries(balances);
  const { opening, closing, imported, exported, billed, energy } = passbook;
  return {
    ...Object.fromEntries(balances),
    'opening.credit': opening,
    'closing.credit': closing,
    'units.import': imported,
    'units.export': exported,
    'units.billed': billed,
    'units.generation': energy.generation,
  };
}

/**
 * The figures that a computed figure of a bill stands for, each of which explains itself: a charge under several
 * versions of a tariff has one for each. None where it is given and follows from nothing.
 *
 * @param name  see `FIGURE` of the engine
 */
export function figuresBehind(name: string, right: BillRun): readonly Figure[] {
  const { bill, quantities } = right.month;
  if (name === 'sum') return [bill.sum];
  if (name === 'payable') return [bill.payable];
  if (name === 'rounding') return bill.roundingDifference === null ? [] : [bill.roundingDifference];
  if (name.startsWith('line.')) {
    const id = name.slice('line.'.length);
    return bill.lines.filter(({ figure, counts }) => counts && figure.id === id).map(({ figure }) => figure);
  }
  const own = passbookFigures(right)[name] ?? quantities[name.replace(/^units\./, '')];
  return own === undefined ? [] : [own];
}
