import type { Charge } from '../../tariff/index.ts';
import type { Cause, Variant } from '../cause.ts';
import { chargeVariant, chargeIds } from '../changed-tariff.ts';
import { grossOf, isNegative, isUnitCharge } from '../charge-basis.ts';
import type { BillFacts } from '../facts.ts';

const ID = 'tax-base-wrong';

type Tax = Extract<Charge, { kind: 'percentage' }>;
type Base = Tax['of'][number];

const isTax = (charge: Charge): charge is Tax => charge.kind === 'percentage' && !isNegative(charge);

const lineOf = (base: Base): string => (typeof base === 'string' ? base : base.line);

/** A line of the base charged again on all units taken. */
function onGross(base: Base, charges: readonly Charge[]): Base {
  const charge = charges.find(({ id }) => id === lineOf(base));
  if (charge === undefined || typeof base !== 'string' || !isUnitCharge(charge)) return base;
  const gross = grossOf(charge.on);
  return gross === null ? base : { line: base, recomputedOn: gross };
}

/** Lines above a tax that it is not taken on, and that ask for money. */
function untaxedAbove(tax: Tax, charges: readonly Charge[]): readonly string[] {
  const bases = tax.of.map(lineOf);
  return charges
    .slice(0, charges.indexOf(tax))
    .filter(
      (charge) =>
        charge.inTotal !== false && charge.kind !== 'credit' && !isTax(charge) && !isNegative(charge),
    )
    .map(({ id }) => id)
    .filter((id) => !bases.includes(id));
}

/** A tax with another base, in every version. */
function withBase(
  facts: BillFacts,
  { tax, id, what }: { readonly tax: string; readonly id: string; readonly what: string },
  change: (own: Tax, charges: readonly Charge[]) => readonly Base[],
): readonly Variant[] {
  return chargeVariant(facts, { cause: ID, id: `${tax} ${id}`, what }, (charge, charges) => {
    if (charge.id !== tax || !isTax(charge)) return charge;
    const of = change(charge, charges);
    const isSame = of.length === charge.of.length && of.every((base, at) => base === charge.of[at]);
    return isSame ? charge : { ...charge, of: [...of] };
  });
}

/** Lines that some version leaves out of the base of a tax. */
function leftOut({ tariff }: BillFacts, id: string): readonly string[] {
  const lines = tariff.versions.flatMap(({ charges }) =>
    charges
      .filter(isTax)
      .filter((tax) => tax.id === id)
      .flatMap((tax) => untaxedAbove(tax, charges)),
  );
  return [...new Set(lines)];
}

function basesOf(facts: BillFacts, tax: string): readonly Variant[] {
  const others = leftOut(facts, tax);
  const wider = others.length > 1 ? [...others.map((line) => [line]), others] : others.map((line) => [line]);
  const addedTo = (lines: readonly string[]) => (own: Tax, charges: readonly Charge[]) => [
    ...own.of,
    ...untaxedAbove(own, charges).filter((line) => lines.includes(line)),
  ];
  return [
    ...withBase(
      facts,
      { tax, id: 'gross', what: 'The tax is taken on the charge for all units imported' },
      ({ of }, charges) => of.map((base) => onGross(base, charges)),
    ),
    ...withBase(
      facts,
      { tax, id: 'net', what: 'The tax is taken on the charge for units billed alone' },
      ({ of }) => of.map(lineOf),
    ),
    ...wider.flatMap((lines) =>
      withBase(
        facts,
        {
          tax,
          id: `with ${lines.join('+')}`,
          what: `The tax is taken on these lines too: ${lines.join(', ')}`,
        },
        addedTo(lines),
      ),
    ),
  ];
}

/** C36: a tax is taken on the charge for all units imported, on lines that bear none, or on less than it is due on. */
export const TAX_BASE_WRONG: Cause = {
  id: ID,
  name: 'Tax on a wrong base',
  stage: 'charges',
  evidence: ['the clause of the tax, which says what it is taken on', 'the tax line of the bill'],
  source: 'C36, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts) => chargeIds(facts.tariff, isTax).flatMap((tax) => basesOf(facts, tax)),
};
