import type { Tariff } from '@unitbook/engine';

/** A charge of a tariff, and whether its rate can rise by itself. */
export interface KnownCharge {
  readonly id: string;
  readonly label: string;
  /** Why it has no rise of its own; '' for one that can have one. */
  readonly follows: string;
}

/** Every charge of a tariff once, by its latest name. */
export function chargesOf({ document }: Tariff): readonly KnownCharge[] {
  const charges = document.versions.flatMap((version) => version.charges);
  const known = charges.map(({ id, label, kind }): [string, KnownCharge] => {
    const follows =
      kind === 'percentage'
        ? 'follows the charges it is a percentage of'
        : kind === 'credit'
          ? 'sets credit off'
          : '';
    return [id, { id, label, follows }];
  });
  return [...new Map(known).values()];
}

/** The powers of the account that a tariff charges, such as the sanctioned load. */
export function powersOf({ document }: Tariff): readonly string[] {
  const charges = document.versions.flatMap((version) => version.charges);
  const names = charges.flatMap((charge) => (charge.kind === 'per-kilowatt' ? [charge.on] : []));
  return [...new Set(names)];
}
