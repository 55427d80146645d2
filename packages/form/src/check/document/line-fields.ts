import type { PrintedBillDocument } from '@unitbook/engine';
import type { BillField } from './bill-fields.ts';
import { billGroups, chargesOf, labelOf, MONEY, slabFields, type BillForm } from './bill-groups.ts';
import { putInBill } from './edit-bills.ts';

type Lines = NonNullable<PrintedBillDocument['lines']>;

/** A line of money as it is typed: what it is of, and where it stands. */
export interface LineField extends BillField {
  /** Stays while other lines come and go. */
  readonly id: string;
  readonly charge: string;
  /** Whether the tariff has it; one that it has not has a name to type, and can be taken out. */
  readonly isOfTariff: boolean;
  /** Its place in the list of lines; null: nothing is typed of it yet. */
  readonly at: number | null;
}

const SURPLUS = 'surplus';

/** The charges that a bill of this tariff can print, in their order; what surplus is paid comes last. */
function idsOf(form: BillForm): readonly string[] {
  const paysSurplus = (form.tariff?.document.settlements.length ?? 0) > 0;
  return [...chargesOf(form).map(({ id }) => id), ...(paysSurplus ? [SURPLUS] : [])];
}

const idText = (text: string): string => text.replace(/[^\w-]+/g, '_');

/** The lines of one charge: those that are typed, or a blank one. Only the last is set beside the computed sum. */
function linesOf(charge: string, lines: Lines, form: BillForm): readonly LineField[] {
  const places = lines.flatMap((line, at) => (line.charge === charge ? [at] : []));
  const label = labelOf(`line.${charge}`, form);
  return (places.length > 0 ? places : [null]).map((at, count): LineField => {
    const isLast = count >= places.length - 1;
    return {
      id: `check-line-${idText(charge)}${count === 0 ? '' : `-${String(count + 1)}`}`,
      path: ['lines', at ?? lines.length, 'amount'],
      label: count === 0 ? label : `${label}, once more`,
      ...MONEY,
      ...(isLast ? { figure: `line.${charge}` } : {}),
      charge,
      isOfTariff: true,
      at,
    };
  });
}

/** Lines that the tariff does not have. */
function otherLines(lines: Lines, ids: readonly string[]): readonly LineField[] {
  const others = lines.flatMap(({ charge }, at) => (ids.includes(charge) ? [] : [{ charge, at }]));
  return others.map(({ charge, at }, count): LineField => {
    return {
      id: `check-line-other-${String(count + 1)}`,
      path: ['lines', at, 'amount'],
      label: charge.trim() === '' ? 'Its amount' : charge,
      ...MONEY,
      figure: `line.${charge}`,
      charge,
      isOfTariff: false,
      at,
    };
  });
}

/** Every line of money: the charges of the tariff in their order, then lines that it does not have. */
export function lineFields(form: BillForm): readonly LineField[] {
  const lines = form.bill.lines ?? [];
  const ids = idsOf(form);
  return [...ids.flatMap((id) => linesOf(id, lines, form)), ...otherLines(lines, ids)];
}

/** Units and rate that stand beside a line. */
export function besideLine({ at, label }: LineField): readonly BillField[] {
  if (at === null) return [];
  return [
    { path: ['lines', at, 'units'], label: `${label}: units`, is: 'number', places: 2 },
    { path: ['lines', at, 'rate'], label: `${label}: rate`, is: 'number', places: 4 },
  ];
}

/**
 * A bill with the amount of a line typed; one that was not there comes in where its charge stands in the tariff.
 */
export function typeLine(
  form: BillForm,
  { charge, at, path }: LineField,
  amount: string,
): PrintedBillDocument {
  const { bill } = form;
  if (at !== null) return putInBill(bill, path, amount);
  const lines = bill.lines ?? [];
  const ids = idsOf(form);
  const place = ids.indexOf(charge);
  const before = lines.findIndex((line) => !ids.includes(line.charge) || ids.indexOf(line.charge) > place);
  const into = before === -1 ? lines.length : before;
  return { ...bill, lines: [...lines.slice(0, into), { charge, amount }, ...lines.slice(into)] };
}

/** Every field of a bill that is there or can be typed. */
export function allFields(form: BillForm): readonly BillField[] {
  const lines = lineFields(form);
  const slabs = (form.bill.slabs ?? []).flatMap((_, at) => slabFields(at));
  return [
    ...billGroups(form).flatMap(({ fields }) => fields),
    ...lines.filter(({ at }) => at !== null),
    ...lines.flatMap(besideLine),
    ...slabs,
  ];
}
